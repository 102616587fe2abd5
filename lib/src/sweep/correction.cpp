#include "sweep/correction.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "sweep/interpolation.hpp"
#include "sweep/name_matching.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::sweep {
namespace {

enum class Weather { light, moderate, high };

// In the order of Weather.
constexpr std::array<std::string_view, 3> kWeatherNames{"light", "moderate", "high"};

Correction correction(std::string label, std::string expression, double factor,
                      const TableInfo& info, std::string_view row = {}) {
  return {
      {std::move(label), std::move(expression), format_value(factor), citation(info, row), factor},
      info.status == TableStatus::from_memory};
}

Error not_listed(const std::string& object, const TableInfo& info) {
  return Error(
      ErrorCode::impossible,
      fmt::format("{}, {} has no row for '{}'", info.title, info.section, printable(object)),
      "choose another table, or give the sweep width from your own manual");
}

/// The row whose class holds the object.
template <typename Row>
const Row& row_for(const std::vector<Row>& rows, const std::string& object, const TableInfo& info) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) {
    return same_name(row.class_name, object) || holds_name(row.objects, object);
  });
  if (found == rows.end()) throw not_listed(object, info);
  return *found;
}

const WeatherTable& weather_table(const Tables& tables, const std::string& key) {
  for (const WeatherTable& table : tables.weather) {
    if (same_name(table.key, key)) return table;
  }
  const std::vector<std::string> keys = weather_table_keys(tables);
  const std::vector<std::string_view> choices(keys.begin(), keys.end());
  throw Error(ErrorCode::value, fmt::format("'{}' is not a weather table", printable(key)),
              spelling_hint(key, choices));
}

Weather weather_of(const WeatherTable& table, Speed wind, Length sea) {
  if (wind > table.high_wind_over || sea > table.high_sea_over) return Weather::high;
  if (wind > table.moderate_wind_over || sea >= table.moderate_sea_from) return Weather::moderate;
  return Weather::light;
}

double factor_of(const WeatherRow& row, Weather weather) {
  switch (weather) {
    case Weather::light:
      return row.light;
    case Weather::moderate:
      return row.moderate;
    case Weather::high:
      return row.high;
  }
  return row.high;
}

/// "wind 18 kt, sea 1.2 m", or what of it is known.
std::string weather_text(const Request& request) {
  std::string text;
  if (request.wind) text = fmt::format("wind {} kt", format_value(request.wind->knots()));
  if (request.sea) {
    text +=
        fmt::format("{}sea {} m", text.empty() ? "" : ", ", format_value(request.sea->metres()));
  }
  return text.empty() ? "wind and sea not given" : text;
}

double factor_of(const TerrainRow& row, Terrain terrain) {
  switch (terrain) {
    case Terrain::open:
      return 1;
    case Terrain::hilly:
      return row.hilly;
    case Terrain::mountainous:
      return row.mountainous;
    case Terrain::dense_vegetation:
      return row.dense_vegetation;
  }
  return row.dense_vegetation;
}

}  // namespace

Correction weather_correction(const Request& request, const std::string& object,
                              const Tables& tables) {
  const WeatherTable& table = weather_table(tables, request.weather_table);
  const WeatherRow& row = row_for(table.rows, object, table.info);
  const Weather weather =
      weather_of(table, request.wind.value_or(Speed()), request.sea.value_or(Length()));
  Correction result =
      correction("Weather factor",
                 fmt::format("{}: {}, in table '{}'", weather_text(request),
                             kWeatherNames.at(static_cast<std::size_t>(weather)), table.key),
                 factor_of(row, weather), table.info, row.class_name);
  // What is not known may be worse than what is; only the worst weather cannot get worse.
  if (weather != Weather::high && !(request.wind && request.sea)) {
    result.caution = fmt::format("{} not given: the weather factor takes {} for calm",
                                 !request.wind && !request.sea ? "Wind and sea"
                                 : request.wind                ? "Sea height"
                                                               : "Wind",
                                 !request.wind && !request.sea ? "both" : "it");
  }
  return result;
}

Correction speed_correction(const Request& request, const std::string& object,
                            const SpeedTable& table) {
  if (!request.ground_speed) {
    return {{"Speed factor", "ground speed not given: none applied", "1", "", 1.0},
            false,
            "Ground speed not given: the sweep width is not corrected for it"};
  }
  const SpeedRow& row = row_for(table.rows, object, table.info);
  const std::vector<SpeedFactor>& factors =
      request.platform == Platform::helicopter ? row.helicopter : row.fixed_wing;
  std::vector<double> knots;
  for (const SpeedFactor& factor : factors) knots.push_back(factor.speed.knots());
  const double given = request.ground_speed->knots();
  const std::optional<Bracket> found = bracket(knots, std::max(given, knots.front()));
  if (!found) {
    throw Error(
        ErrorCode::impossible,
        fmt::format("the ground speed {} kt is above the speed table's last, {} kt for {}",
                    format_value(given), format_value(knots.back()), name(request.platform)),
        "search more slowly, or give the sweep width from your own manual");
  }
  const Interpolated factor =
      interpolate({knots[found->low], factors[found->low].factor},
                  {knots[found->high], factors[found->high].factor}, found->at);
  std::string expression =
      found->low == found->high
          ? fmt::format("{} kt, read at {} kt", format_value(given), format_value(found->at))
          : factor.expression;
  return correction("Speed factor", std::move(expression), factor.value, table.info,
                    row.class_name);
}

Correction terrain_correction(const Request& request, const std::string& object,
                              const TerrainTable& table) {
  const Terrain terrain = request.terrain.value_or(Terrain::open);
  const auto row = std::find_if(table.rows.begin(), table.rows.end(), [&](const TerrainRow& each) {
    return same_name(each.object, object);
  });
  if (row == table.rows.end()) throw not_listed(object, table.info);
  Correction result = correction("Terrain factor", std::string(description(terrain)),
                                 factor_of(*row, terrain), table.info);
  if (!request.terrain) {
    result.line.expression = "terrain not given: taken as " + result.line.expression;
    result.caution = "Terrain not given: taken as open, where an object is easiest to see";
  }
  return result;
}

Correction fatigue_correction(bool fatigued) {
  const double factor = fatigued ? kFatigueFactor : 1;
  return {{"Fatigue factor",
           fatigued ? "crews report excessive fatigue"
                    : "no report of excessive fatigue; tables hold ordinary fatigue",
           format_value(factor), "Joint Pub 3-50 Volume I, Appendix D.C", factor}};
}

}  // namespace sweepwright::sweep
