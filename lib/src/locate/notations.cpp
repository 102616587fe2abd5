#include "sweepwright/locate/notations.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/grid/chart.hpp"
#include "sweepwright/grid/gars.hpp"
#include "sweepwright/grid/quarter.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::locate {
namespace {

/// The name of the smallest cell that holds the position, empty where the grid has none.
std::string finest_name(const grid::Grid& grid, Position position) {
  return grid.covers(position) ? grid.name_of(position, grid.levels().back()) : std::string();
}

std::string decimal(Position position, const Writing& writing) {
  return format_position(position, Notation::decimal_degrees, writing.degree_decimals);
}
std::string minutes(Position position, const Writing& writing) {
  return format_position(position, Notation::degrees_minutes, writing.minute_decimals);
}
std::string seconds(Position position, const Writing& writing) {
  return format_position(position, Notation::degrees_minutes_seconds, writing.second_decimals);
}
std::string utm(Position position, const Writing& writing) {
  return format_utm(position, writing.utm_decimals);
}
std::string mgrs(Position position, const Writing& writing) {
  return format_mgrs(position, writing.mgrs_digits);
}
std::string gars(Position position, const Writing&) {
  return finest_name(grid::gars_grid(), position);
}
std::string georef(Position position, const Writing& writing) {
  return format_georef(position, writing.georef_decimals);
}
std::string quarter(Position position, const Writing& writing) {
  return finest_name(
      writing.hemisphere_letters ? grid::lettered_quarter_grid() : grid::quarter_grid(), position);
}
std::string chart(Position position, const Writing& writing) {
  return finest_name(writing.charts ? *writing.charts : grid::chart_grid(), position);
}

struct KnownNotation {
  std::string_view key;
  std::string (*text)(Position, const Writing&);
};
constexpr KnownNotation kNotations[] = {
    {"decimal", decimal}, {"minutes", minutes}, {"seconds", seconds},
    {"utm", utm},         {"mgrs", mgrs},       {"gars", gars},
    {"georef", georef},   {"quarter", quarter}, {"chart", chart},
};

}  // namespace

std::vector<Written> notations(Position position, const Writing& writing) {
  std::vector<Written> all;
  for (const KnownNotation& notation : kNotations) {
    all.push_back({notation.key, notation.text(position, writing)});
  }
  return all;
}

std::vector<std::string_view> notation_keys() {
  std::vector<std::string_view> keys;
  for (const KnownNotation& notation : kNotations) keys.push_back(notation.key);
  return keys;
}

std::string format_notation(std::string_view key, Position position, const Writing& writing) {
  for (const KnownNotation& notation : kNotations) {
    if (notation.key == key) return notation.text(position, writing);
  }
  throw Error(ErrorCode::value, fmt::format("there is no notation '{}'", printable(key)),
              spelling_hint(key, notation_keys()));
}

}  // namespace sweepwright::locate
