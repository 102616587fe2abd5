// The profile of a crew's whole flight, legs and turns one after the other, for the chart of
// profile_chart.hpp.
//
// Conventions: distances count from leaving the base. Neighbouring pieces of a leg are told as one
//   where there would be more than a chart can show: with the highest ground of all of them, and
//   known only when all of them are.
// Promises: P1 no class of the check is lost by joining pieces (flight_profile_test.cpp).
// Source: hazard/terrain_check.hpp.
#pragma once

#include "sweepwright/flight/flown_pattern.hpp"
#include "sweepwright/formats/terrain_report.hpp"
#include "sweepwright/hazard/terrain_check.hpp"

namespace sweepwright::formats {

/// More pieces than this are joined, legs apart.
inline constexpr double kPiecesOfAChart = 400;

/// Throws Error(value) for a check without legs.
TerrainReport flight_profile(const hazard::TerrainCheck& check, const flight::FlownPattern& flown);

}  // namespace sweepwright::formats
