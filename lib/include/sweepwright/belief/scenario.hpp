// Scenarios: what may have happened, each with its weight, and the belief that they make together.
//
// Problem: "he turned back" and "he went on" lead to different ground. Each scenario says where the
//   object is if it is true; the belief is their mean, weighted by how likely each is.
// Conventions: weights are relative: 3 and 1 are 0.75 and 0.25. Cell probabilities are integrated
//   over the cell's ground, not taken at its middle.
// Domain: 1 to 100 scenarios, up to kMostCells cells. Weights 0 or more, not all 0.
// Promises: P1 the cells and outside sum to 1 within 1e-12; P2 the order of the scenarios changes
// no
//   probability by more than 1e-15 (scenario_test.cpp).
// Errors: Error(value) for values outside their domain, Error(geometry) for ground that cannot be
//   worked with; `scenario 2` in where().
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "sweepwright/belief/belief.hpp"
#include "sweepwright/belief/datum.hpp"
#include "sweepwright/belief/datum_line.hpp"
#include "sweepwright/belief/error_ellipse.hpp"
#include "sweepwright/belief/patches.hpp"
#include "sweepwright/belief/route_bands.hpp"
#include "sweepwright/grid/grid.hpp"

namespace sweepwright::belief {

using Source = std::variant<Datum, ErrorEllipse, DatumLine, RouteBands, Patches>;

struct Scenario {
  double weight = 1;
  std::string name;  ///< in words; may be empty
  Source source;
};

inline constexpr std::size_t kMostCells = 1'000'000;
/// Datums, ellipses and lines have no end: their cells are those that hold this share of each.
inline constexpr double kHeldShare = 0.999;

/// The belief over the cells that hold kHeldShare of each scenario, those with most of it to the
/// square mile first, and all that an area or region touches. In grid order; on grids whose rows
/// are no parallels, the cells of later scenarios follow those of the first.
Belief make_belief(const std::vector<Scenario>& scenarios, const grid::Grid& grid,
                   const grid::Level& level);

/// The belief over all cells that touch a box. Throws Error(value) when none of it lies there.
Belief make_belief(const std::vector<Scenario>& scenarios, const grid::Grid& grid,
                   const grid::Level& level, const grid::LatLonBox& box);

/// The share of each scenario: weights divided by their sum. Throws Error(value) for a negative
/// weight or a sum of 0.
std::vector<double> shares(const std::vector<Scenario>& scenarios);

/// The circle or ellipse that holds a share of a datum or error ellipse; none for other sources.
/// `share` above 0 and below 1.
std::optional<Region> containment_ring(const Source& source, double share);

}  // namespace sweepwright::belief
