#include "common/box_option.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::cli {

grid::LatLonBox parse_box(std::string_view text) {
  std::vector<double> sides;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t end = std::min(text.find(',', start), text.size());
    sides.push_back(
        parse_number(text.substr(start, end - start), "each side of the box in degrees"));
    start = end + 1;
  }
  if (sides.size() != 4) {
    throw Error(ErrorCode::value, fmt::format("'{}' has not four sides", printable(text)),
                "write WEST,SOUTH,EAST,NORTH in degrees, such as -118,37,-117,38");
  }
  const grid::LatLonBox box{.south = Angle::degrees(sides[1]),
                            .north = Angle::degrees(sides[3]),
                            .west = Angle::degrees(sides[0]),
                            .east = Angle::degrees(sides[2])};
  grid::check(box);
  return box;
}

}  // namespace sweepwright::cli
