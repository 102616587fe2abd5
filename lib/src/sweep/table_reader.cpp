#include "sweep/table_reader.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>

#include "sweep/name_matching.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::sweep {
namespace {

constexpr std::string_view kVisibilityColumn = "width_nm_vis_";
// A table value beyond these is a slip of the pen: no visual sweep is so wide, no factor so large.
constexpr double kWidestNauticalMiles = 60;
constexpr double kLargestFactor = 3;

Error wrong(std::string message) {
  return Error(ErrorCode::input, std::move(message));
}

double number_between(std::string_view cell, double least, double most, std::string_view what) {
  const double value = parse_number(cell, what);
  if (value < least || value > most) {
    throw wrong(fmt::format("{} is {}, expected {} to {}", what, printable(cell), least, most));
  }
  return value;
}

double parse_factor(std::string_view cell) {
  return number_between(cell, 0, kLargestFactor, "the factor");
}

std::string required(std::string_view cell, std::string_view what) {
  if (cell.empty()) throw wrong(fmt::format("{} is empty", what));
  return std::string(cell);
}

/// The visibility of a column such as `width_nm_vis_10nm`; none when it is not of that form.
std::optional<Length> visibility_of(std::string_view column) {
  if (!column.starts_with(kVisibilityColumn) || !column.ends_with("nm")) return std::nullopt;
  column.remove_prefix(kVisibilityColumn.size());
  column.remove_suffix(2);
  return Length::nautical_miles(number_between(column, 0.01, 100, "the visibility of a column"));
}

std::vector<Length> visibilities_of(const DataTable& data, std::size_t first) {
  std::vector<Length> visibilities;
  for (std::size_t i = first; i < data.columns().size(); ++i) {
    const std::string& column = data.columns()[i];
    data.read_at(data.column_line(), [&] {
      const std::optional<Length> visibility = visibility_of(column);
      if (!visibility) {
        throw wrong(
            fmt::format("the column '{}' is not known; expected search_object, then height_ft "
                        "unless the table has no heights, then columns such as "
                        "width_nm_vis_10nm",
                        printable(column)));
      }
      if (!visibilities.empty() && *visibility <= visibilities.back()) {
        throw wrong("the visibilities of the columns do not rise");
      }
      visibilities.push_back(*visibility);
    });
  }
  if (visibilities.empty()) {
    throw data.at_line(data.column_line(), wrong("the table has no column for a visibility"));
  }
  return visibilities;
}

/// Refuses an object whose rows are doubled, or whose heights do not rise.
void check_new_row(const std::vector<WidthRow>& rows, const WidthRow& row) {
  for (const WidthRow& earlier : rows) {
    if (!same_name(earlier.object, row.object)) continue;
    if (!row.height) throw wrong(fmt::format("'{}' stands twice", printable(row.object)));
    if (*row.height <= *earlier.height) {
      throw wrong(fmt::format("the heights of '{}' do not rise", printable(row.object)));
    }
  }
}

WidthRow read_width_row(const DataRow& row, bool has_heights) {
  WidthRow result{required(row.cells[0], "the search object"), std::nullopt, {}};
  std::size_t next = 1;
  if (has_heights) {
    result.height = Length::feet(number_between(row.cells[next++], 1, 50000, "the height"));
  }
  for (; next < row.cells.size(); ++next) {
    std::optional<Length> width;
    if (!row.cells[next].empty()) {
      width = Length::nautical_miles(
          number_between(row.cells[next], 0, kWidestNauticalMiles, "the sweep width"));
    }
    result.widths.push_back(width);
  }
  return result;
}

/// Refuses an object that stands in two classes of one table.
template <typename Row>
void check_classes(const std::vector<Row>& rows, const Row& row) {
  for (const Row& earlier : rows) {
    for (const std::string& object : row.objects) {
      if (holds_name(earlier.objects, object)) {
        throw wrong(fmt::format("'{}' stands in two classes", printable(object)));
      }
    }
  }
}

std::vector<SpeedFactor> speed_factors(const std::vector<std::string>& cells, std::size_t first,
                                       std::span<const int> knots) {
  std::vector<SpeedFactor> factors;
  for (std::size_t i = 0; i < knots.size(); ++i) {
    factors.push_back({Speed::knots(knots[i]), parse_factor(cells[first + i])});
  }
  return factors;
}

}  // namespace

WidthTable read_width_table(const DataTable& data) {
  data.allow_settings(std::array<std::string_view, 2>{"surface", "platforms"});
  WidthTable table{data.info(), {}, {}, {}, {}};
  const DataSetting& surface = data.setting("surface");
  table.surface = data.read_at(surface.line, [&] { return parse_surface(surface.value); });
  const DataSetting& platforms = data.setting("platforms");
  for (const std::string& text : parse_list(platforms.value)) {
    table.platforms.push_back(data.read_at(platforms.line, [&] { return parse_platform(text); }));
  }
  if (data.columns()[0] != "search_object") {
    throw data.at_line(data.column_line(), wrong("the first column must be 'search_object'"));
  }
  const bool has_heights = data.columns().size() > 1 && data.columns()[1] == "height_ft";
  table.visibilities = visibilities_of(data, has_heights ? 2 : 1);
  for (const DataRow& row : data.rows()) {
    data.read_at(row.line, [&] {
      WidthRow read = read_width_row(row, has_heights);
      check_new_row(table.rows, read);
      table.rows.push_back(std::move(read));
    });
  }
  return table;
}

WeatherTable read_weather_table(const DataTable& data) {
  constexpr std::array<std::string_view, 5> kKeys{"key", "moderate_wind_over", "moderate_sea_from",
                                                  "high_wind_over", "high_sea_over"};
  constexpr std::array<std::string_view, 5> kColumns{"class", "search_objects", "light", "moderate",
                                                     "high"};
  data.allow_settings(kKeys);
  data.expect_columns(kColumns);
  const auto speed = [&](std::string_view key) {
    const DataSetting& setting = data.setting(key);
    return data.read_at(setting.line, [&] { return parse_speed(setting.value); });
  };
  const auto length = [&](std::string_view key) {
    const DataSetting& setting = data.setting(key);
    return data.read_at(setting.line, [&] { return parse_length(setting.value); });
  };
  WeatherTable table{data.info(),
                     data.setting("key").value,
                     speed("moderate_wind_over"),
                     length("moderate_sea_from"),
                     speed("high_wind_over"),
                     length("high_sea_over"),
                     {}};
  if (table.high_wind_over < table.moderate_wind_over ||
      table.high_sea_over < table.moderate_sea_from) {
    throw data.at_line(data.setting("high_wind_over").line,
                       wrong("high weather begins below moderate weather"));
  }
  for (const DataRow& row : data.rows()) {
    data.read_at(row.line, [&] {
      WeatherRow read{required(row.cells[0], "the class"), parse_list(row.cells[1]),
                      parse_factor(row.cells[2]), parse_factor(row.cells[3]),
                      parse_factor(row.cells[4])};
      check_classes(table.rows, read);
      table.rows.push_back(std::move(read));
    });
  }
  return table;
}

TerrainTable read_terrain_table(const DataTable& data) {
  data.allow_settings({});
  data.expect_columns(std::array<std::string_view, 4>{
      "search_object", "hilly_or_vegetation_15_60_percent",
      "mountainous_or_vegetation_60_85_percent", "vegetation_over_85_percent"});
  TerrainTable table{data.info(), {}};
  for (const DataRow& row : data.rows()) {
    data.read_at(row.line, [&] {
      TerrainRow read{required(row.cells[0], "the search object"), parse_factor(row.cells[1]),
                      parse_factor(row.cells[2]), parse_factor(row.cells[3])};
      for (const TerrainRow& earlier : table.rows) {
        if (same_name(earlier.object, read.object)) {
          throw wrong(fmt::format("'{}' stands twice", printable(read.object)));
        }
      }
      table.rows.push_back(std::move(read));
    });
  }
  return table;
}

SpeedTable read_speed_table(const DataTable& data) {
  // The speeds of the columns below, in knots.
  constexpr std::array<int, 3> kFixedWing{150, 180, 210};
  constexpr std::array<int, 4> kHelicopter{60, 90, 120, 140};
  constexpr std::array<std::string_view, 9> kColumns{"class",
                                                     "search_objects",
                                                     "fixed_wing_150kt",
                                                     "fixed_wing_180kt",
                                                     "fixed_wing_210kt",
                                                     "helicopter_60kt",
                                                     "helicopter_90kt",
                                                     "helicopter_120kt",
                                                     "helicopter_140kt"};
  data.allow_settings({});
  data.expect_columns(kColumns);
  SpeedTable table{data.info(), {}};
  for (const DataRow& row : data.rows()) {
    data.read_at(row.line, [&] {
      SpeedRow read{required(row.cells[0], "the class"), parse_list(row.cells[1]),
                    speed_factors(row.cells, 2, kFixedWing),
                    speed_factors(row.cells, 2 + kFixedWing.size(), kHelicopter)};
      check_classes(table.rows, read);
      table.rows.push_back(std::move(read));
    });
  }
  return table;
}

std::vector<ObjectAliases> read_object_aliases(const DataTable& data) {
  data.allow_settings({});
  data.expect_columns(std::array<std::string_view, 2>{"search_object", "aliases"});
  std::vector<ObjectAliases> objects;
  for (const DataRow& row : data.rows()) {
    objects.push_back(data.read_at(row.line, [&] {
      return ObjectAliases{required(row.cells[0], "the search object"), parse_list(row.cells[1])};
    }));
  }
  return objects;
}

}  // namespace sweepwright::sweep
