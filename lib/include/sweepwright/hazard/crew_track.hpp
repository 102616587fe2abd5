// CrewTrack: where a crew will be and when, transits and turns included, for checks against ground,
// airspace and other crews.
//
// Conventions: between two points the crew goes the shortest way at an even pace, climbing or
//   descending evenly; altitudes are above mean sea level. An altitude that is not known counts in
//   every check as one that could be any.
// Accuracy: that of flight/flown_path.hpp.
// Promises: P1 times never go back; P2 the track begins with the flight's departure and ends with
//   its end.
// Source: flight/flown_path.hpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/flight/flown_pattern.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::hazard {

struct TrackPoint {
  Position position;
  Instant time;
  int leg = 0;  ///< of the way on from here: index into FlownPattern::legs
  std::optional<Length> altitude;
};

struct CrewTrack {
  std::string crew;    ///< callsign
  std::string sector;  ///< may be empty
  std::vector<TrackPoint> points;
};

/// All of it at one altitude, or at none that is known.
CrewTrack crew_track(std::string crew, std::string sector, const flight::FlownPattern& flown,
                     std::optional<Length> altitude);

}  // namespace sweepwright::hazard
