#include "sweepwright/locate/notations.hpp"

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

}  // namespace

std::vector<Written> notations(Position position, const Precision& precision,
                               const Options& options) {
  const grid::Grid& charts = options.charts ? *options.charts : grid::chart_grid();
  return {
      {"decimal", format_position(position, Notation::decimal_degrees, precision.degree_decimals)},
      {"minutes", format_position(position, Notation::degrees_minutes, precision.minute_decimals)},
      {"seconds",
       format_position(position, Notation::degrees_minutes_seconds, precision.second_decimals)},
      {"utm", format_utm(position, precision.utm_decimals)},
      {"mgrs", format_mgrs(position, precision.mgrs_digits)},
      {"gars", finest_name(grid::gars_grid(), position)},
      {"georef", format_georef(position, precision.georef_decimals)},
      {"quarter", finest_name(grid::quarter_grid(), position)},
      {"chart", finest_name(charts, position)},
  };
}

}  // namespace sweepwright::locate
