// Contour search, single unit (OS): level lines round high ground, one below the other.
//
// Problem: on a mountain side straight legs are flown now high above the ground, now into it. A
//   crew that keeps one height flies along the slope, and sees the same strip of it all the way.
// Conventions: a leg lies over a line on which the ground has one height; the crew flies
//   `clearance` above that height, so also above the ground right below, not above the slope beside
//   it. Lines are cut at the area's edge and end at gaps of the model. Round a summit high ground
//   is on the side of the first turn: with turns to the right a summit is passed round clockwise,
//   and a closed line is flown round once. An open line is begun at its nearer end, so high ground
//   changes sides. Heights are above mean sea level as in the model.
// Spacing: the strips that the crew sweeps lie along the slope, so two lines are one track spacing
//   apart when their heights differ by spacing x sin(slope). One difference of height is used for
//   the whole area: the one that is right on the gentlest slopes but for the gentlest tenth, not
//   counting ground flatter than kFlat; rounded down. On steeper ground lines lie closer. The first
//   line lies half that difference under the highest ground, so that the strips meet from the
//   summit down; a lesser summit or a hollow that no line comes near gets a line of its own. Lines
//   shorter than half a spacing are left out. Heights worked out are whole numbers of 50 ft (10 ft
//   for differences under 200 ft, 1 ft under 40 ft), rounded so that strips overlap.
// Domain: areas at whose edge the model knows all heights; ground steeper than kFlat over a fifth
// of
//   the area at least.
// Accuracy: legs leave the model's level lines by at most a twentieth of the spacing. Summits and
//   hollows are looked for a sixth of a spacing apart, or on 120 by 120 places of the area when
//   that is coarser. A remark says what share of the area lies within half a spacing of a leg.
// Promises: P1 all leg ends are in the area; P2 closed lines keep high ground on one side; P3 on
//   slopes as steep as the difference of height suits, or steeper, no ground is farther from a leg
//   than half a spacing and a twentieth, measured along the slope (contour_search_test.cpp).
// Source: descending orbits from the summit, each level lower by 500 to 1,000 ft (at most)
//   [IAMSAR Manual Vol II, ch. 5, from memory]; the spacing along the slope and all joins are
//   worked out here. To which side high ground is best, no source that we read says.
#pragma once

#include <optional>

#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/position/region.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::pattern {

/// Ground flatter than this is no slope.
inline constexpr Angle kFlat = Angle::degrees(5);

enum class ContourOrder { descending, ascending };
/// Throws Error(value) with the two names.
ContourOrder parse_contour_order(std::string_view name);

struct ContourSearch {
  Region region;
  Length spacing;  ///< above 0
  /// Of the crew above the line on the ground, above 0; none when heights are planned elsewhere.
  std::optional<Length> clearance = std::nullopt;
  /// Difference of height between lines; worked out from the slopes when absent.
  std::optional<Length> height_step = std::nullopt;
  ContourOrder order = ContourOrder::descending;
  Turn first_turn = Turn::right;
};

/// Remarks say the height of each level and its legs. Throws Error(value) for a number out of range
/// and, with the place, for a model that does not know the height of the area's edge;
/// Error(impossible) for ground that is too flat, or when no line is long enough to be flown.
Pattern make_contour_search(const ContourSearch& request, const terrain::ElevationModel& model);

}  // namespace sweepwright::pattern
