#include "sweepwright/grid/systems.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/grid/chart.hpp"
#include "sweepwright/grid/gars.hpp"
#include "sweepwright/grid/georef.hpp"
#include "sweepwright/grid/mgrs.hpp"
#include "sweepwright/grid/quarter.hpp"

namespace sweepwright::grid {
namespace {

struct System {
  std::string_view name;
  const Grid& (*grid)();
};

constexpr System kSystems[] = {
    {"quarter", quarter_grid}, {"chart", chart_grid}, {"gars", gars_grid},
    {"georef", georef_grid},   {"mgrs", mgrs_grid},
};

}  // namespace

std::vector<std::string_view> systems() {
  std::vector<std::string_view> names;
  for (const System& system : kSystems) names.push_back(system.name);
  return names;
}

const Grid& grid(std::string_view system) {
  for (const System& known : kSystems) {
    if (known.name == system) return known.grid();
  }
  if (system == "local") {
    throw Error(ErrorCode::value, "a local grid is not known by its name alone",
                "give its origin, its direction and the side of a cell");
  }
  throw Error(ErrorCode::value, fmt::format("'{}' is not a grid system", printable(system)),
              spelling_hint(system, systems()));
}

}  // namespace sweepwright::grid
