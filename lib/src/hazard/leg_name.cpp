#include "sweepwright/hazard/leg_name.hpp"

#include <fmt/format.h>

namespace sweepwright::hazard {

std::string leg_name(const flight::FlownPattern& flown, std::size_t index) {
  const flight::FlownLeg& leg = flown.legs.at(index);
  if (!leg.searching) return index == 0 ? "way out" : "way back";
  // A leg that the flight needed and the pattern does not have goes by its row.
  const std::string number =
      leg.drawn ? std::to_string(*leg.drawn) : fmt::format("in row {}", index + 1);
  switch (leg.leg.kind) {
    case pattern::LegKind::cross:
      return "cross leg " + number;
    case pattern::LegKind::transit:
      return "transit leg " + number;
    case pattern::LegKind::search:
      break;
  }
  return "leg " + number;
}

}  // namespace sweepwright::hazard
