// Flights over invented ground, for the checks of the room hazard.
#pragma once

#include "support/elevation.hpp"
#include "sweepwright/flight/flown_pattern.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/pattern/waypoints.hpp"

namespace sweepwright::test {

inline flight::Aircraft aircraft(Speed airspeed) {
  return {.true_airspeed = airspeed, .transit_airspeed = {}, .fuel_flow = {}};
}

/// Without headings: no date is needed.
inline flight::FlyOptions options_from(std::optional<Position> base) {
  flight::FlyOptions options;
  options.base = base;
  options.magnetic_headings = false;
  return options;
}

/// Six legs of 3 NM, 0.7 NM apart, from a base 4 NM off, in a wind of 20 kt.
inline flight::FlownPattern ladder_flight(Position place, TrueDirection track) {
  const pattern::Pattern pattern =
      pattern::make_parallel_track({place, track, Length::nautical_miles(3),
                                    Length::nautical_miles(0.7), 6, pattern::Turn::right});
  const Position base = travel(place, track.reversed(), Length::nautical_miles(4)).position;
  return flight::fly(pattern, aircraft(Speed::knots(90)),
                     flight::WindField::uniform({TrueDirection::degrees(310), Speed::knots(20)}),
                     options_from(base));
}

/// One leg from west to east, in calm air, without ways out and back.
inline flight::FlownPattern one_leg(Position west, Length length) {
  pattern::Pattern pattern;
  const Position east = travel(west, TrueDirection::degrees(90), length).position;
  pattern.legs.push_back(pattern::make_leg(pattern::LegKind::search, west, east));
  return flight::fly(pattern, aircraft(Speed::knots(90)), {}, options_from({}));
}

/// Ground so many degrees of latitude to each side of a place, and as wide as it is high.
template <typename Height>
terrain::ElevationTile ground_round(Position middle, double step_deg, const Height& height_m,
                                    double half_deg = 0.25) {
  const double stretch = 1 / std::max(std::cos(middle.latitude().radians()), 0.05);
  const int half = static_cast<int>(half_deg / step_deg);
  const int half_columns = static_cast<int>(half_deg * stretch / step_deg);
  return make_tile(
      degrees_lattice(middle.latitude().degrees() + half * step_deg,
                      middle.longitude().degrees() - half_columns * step_deg, step_deg),
      2 * half + 1, 2 * half_columns + 1, height_m);
}

}  // namespace sweepwright::test
