// Minima: how far a crew keeps from the ground, and on whose word.
//
// Problem: a clearance is only worth what its minimum is worth. Where nobody states one, a cautious
//   published value holds, and it is shown with its source on everything that was checked by it.
// Conventions: clearance is height above the highest ground in the corridor; the corridor's
//   half-width reaches to each side of the flown path.
// Domain: clearance 0 or more; corridor.hpp.
// Promises: P1 the half-width is never under half the track spacing unless the planner says so, so
//   that the corridors of neighbouring legs leave no ground between them (terrain_check_test.cpp).
// Source: 1,000 ft above the highest obstacle near: ICAO Annex 2, 4.6 a), there over congested
//   areas [from memory]; terrain/clearance.hpp. Half-width: common practice, no source.
#pragma once

#include <optional>
#include <string>

#include "sweepwright/terrain/clearance.hpp"

namespace sweepwright::hazard {

struct Minima {
  Length clearance = terrain::kMinimumClearance;
  /// Whose word the clearance is: a rule's name, or the default's.
  std::string source = "default: 1,000 ft, ICAO Annex 2, 4.6 a), from memory";
  std::optional<Length> corridor;  ///< half-width, as the planner states it
};

/// As stated; else half the track spacing or terrain::kCorridorHalfWidth, whichever is more.
Length corridor_half_width(const Minima& minima, Length track_spacing);

}  // namespace sweepwright::hazard
