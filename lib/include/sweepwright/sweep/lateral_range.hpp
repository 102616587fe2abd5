// Lateral range curve: the chance that one pass detects, against how far abeam the object lies.
//
// Problem: a planner who has trials of his own crew and object has a curve, not a sweep width. The
//   width, and what parallel sweeps find, follow from it (parallel_sweeps.hpp).
// Conventions: an offset is the object's distance from the track line, taken at right angles: above
//   0 to the right of the way that the crew travels, below 0 to the left. Between two points of a
//   curve it runs straight; beyond its first and last point it is 0.
// Domain: 2 to kMostLateralRangePoints points, offsets rising, none beyond kFarthestLateralRange,
//   probabilities 0 to 1 and at least one above 0. A curve that is alike on both sides is given
//   from offset 0 outwards.
// Accuracy: the area under the curve is exact but for rounding, 1e-14 of its value
//   (lateral_range_test.cpp).
// Promises:
//   P1 at() gives the curve's points back and lies between them in between.
//   P2 a curve alike on both sides has at(x) = at(-x).
//   P3 the area under the curve of a law is the sweep width that it was made for.
// Source: B. O. Koopman, Search and Screening, OEG Report 56 (1946), reissued 1980, chapter 2:
//   lateral range curves, W as the area under the curve, the inverse cube law [from memory].
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/sweep/detection.hpp"
#include "sweepwright/sweep/sweep_width.hpp"
#include "sweepwright/sweep/tables.hpp"

namespace sweepwright::sweep {

inline constexpr std::size_t kMostLateralRangePoints = 200;
inline constexpr Length kFarthestLateralRange = Length::nautical_miles(100);

struct LateralRangePoint {
  Length offset;
  Probability probability;
  bool operator==(const LateralRangePoint&) const = default;
};

/// Whether a crew sees alike on both sides of its track, or the curve says each side apart.
enum class Sides { alike, apart };
Sides parse_sides(std::string_view text);

class LateralRangeCurve {
 public:
  /// Sides::alike: `points` from offset 0 outwards. Sides::apart: from the left to the right.
  /// Throws Error (value) outside the domain.
  LateralRangeCurve(std::span<const LateralRangePoint> points, Sides sides);

  /// From the left to the right, on both sides.
  const std::vector<LateralRangePoint>& points() const { return points_; }
  Probability at(Length offset) const;

 private:
  std::vector<LateralRangePoint> points_;
};

/// The sweep width W: the area under the curve.
Length area_under(const LateralRangeCurve& curve);

/// The lateral range curve of a law with that sweep width. Inverse cube: 1 - exp(-W^2 / (4 pi
/// x^2)); definite range: 1 within W/2, else 0. Throws Error (impossible) for the exponential law,
/// which is that of searching at random and has none, and Error (value) for a width that is not
/// above 0.
Probability lateral_range(DetectionLaw law, Length sweep_width, Length offset);

/// A curve as a planner's file has it, with where it comes from.
struct LateralRangeTable {
  TableInfo info;
  LateralRangeCurve curve;
};

/// Reads a table of the form of tables.hpp: kind `lateral range`, a setting `sides` (`alike` or
/// `apart`), columns `distance_nm` (or `_km`, `_m`, `_ft`) and `probability`. `where` names it in
/// messages. Throws Error (input) with the line.
LateralRangeTable parse_lateral_range(std::string_view text, std::string_view where);

/// The area under the curve, with working and cautions. No factor is applied: the curve holds for
/// the conditions of its trials.
SweepWidth measured_sweep_width(const LateralRangeTable& table);

}  // namespace sweepwright::sweep
