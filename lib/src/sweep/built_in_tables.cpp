#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "embedded/sweep_objects.hpp"
#include "embedded/sweep_speed.hpp"
#include "embedded/sweep_terrain.hpp"
#include "embedded/sweep_weather_iamsar.hpp"
#include "embedded/sweep_weather_iamsar_vessel.hpp"
#include "embedded/sweep_weather_us_1991.hpp"
#include "embedded/sweep_width_land.hpp"
#include "embedded/sweep_width_vessel.hpp"
#include "sweep/table_reader.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/sweep/tables.hpp"

namespace sweepwright::sweep {
namespace {

/// Takes the platforms of `table` from the older tables of its surface, and adds it.
void put_width_table(std::vector<WidthTable>& tables, WidthTable table) {
  for (WidthTable& older : tables) {
    if (older.surface != table.surface) continue;
    std::erase_if(older.platforms, [&](Platform platform) {
      return std::count(table.platforms.begin(), table.platforms.end(), platform) > 0;
    });
  }
  std::erase_if(tables, [](const WidthTable& older) { return older.platforms.empty(); });
  tables.push_back(std::move(table));
}

void put_weather_table(std::vector<WeatherTable>& tables, WeatherTable table) {
  for (WeatherTable& older : tables) {
    if (older.key == table.key) {
      older = std::move(table);
      return;
    }
  }
  tables.push_back(std::move(table));
}

}  // namespace

std::string citation(const TableInfo& info, std::string_view row) {
  std::string place = info.title + ", " + info.section;
  if (!row.empty()) place += fmt::format(", row '{}'", row);
  if (info.status != TableStatus::from_memory) return place;
  return place + " (from memory, unconfirmed: check against your manual)";
}

Tables with_table(Tables tables, std::string_view text, std::string_view where) {
  const DataTable data(text, where);
  const std::string& kind = data.kind();
  if (kind == kWidthKind) {
    put_width_table(tables.widths, read_width_table(data));
  } else if (kind == kWeatherKind) {
    put_weather_table(tables.weather, read_weather_table(data));
  } else if (kind == kTerrainKind) {
    tables.terrain = read_terrain_table(data);
  } else if (kind == kSpeedKind) {
    tables.speed = read_speed_table(data);
  } else if (kind == kObjectsKind) {
    std::vector<ObjectAliases> read = read_object_aliases(data);
    tables.aliases.insert(tables.aliases.end(), read.begin(), read.end());
  } else {
    constexpr std::array<std::string_view, 5> kKinds{kWidthKind, kWeatherKind, kTerrainKind,
                                                     kSpeedKind, kObjectsKind};
    throw data.at_line(
        data.setting("kind").line,
        Error(ErrorCode::input, fmt::format("'{}' is not a kind of table", printable(kind)),
              spelling_hint(kind, kKinds)));
  }
  return tables;
}

std::vector<std::string> weather_table_keys(const Tables& tables) {
  std::vector<std::string> keys;
  for (const WeatherTable& table : tables.weather) keys.push_back(table.key);
  return keys;
}

const Tables& built_in_tables() {
  static const Tables tables = [] {
    Tables built;
    built = with_table(built, embedded::sweep_width_land(), "sweep_width_land.csv");
    built = with_table(built, embedded::sweep_width_vessel(), "sweep_width_vessel.csv");
    built = with_table(built, embedded::sweep_weather_iamsar(), "sweep_weather_iamsar.csv");
    built = with_table(built, embedded::sweep_weather_iamsar_vessel(),
                       "sweep_weather_iamsar_vessel.csv");
    built = with_table(built, embedded::sweep_weather_us_1991(), "sweep_weather_us_1991.csv");
    built = with_table(built, embedded::sweep_terrain(), "sweep_terrain.csv");
    built = with_table(built, embedded::sweep_speed(), "sweep_speed.csv");
    built = with_table(built, embedded::sweep_objects(), "sweep_objects.csv");
    return built;
  }();
  return tables;
}

}  // namespace sweepwright::sweep
