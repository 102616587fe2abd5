// The best rectangle to search evenly: round one datum, round two, along a datum line.
//
// Problem: crews fly rectangles at one track spacing. Too small a rectangle misses what lies
//   outside; too large a one is searched too thinly. Between them is the size whose probability of
//   success, POC x POD, is greatest; for one datum it is a square.
// Conventions: everything lies on one axis. A datum is a place on it, or a stretch of it (a datum
//   line: any place along it equally likely), with a total probable error E: the radius that holds
//   50 percent of a circular normal, so that its standard deviation is E / sqrt(2 ln 2) = E /
//   1.1774. A rectangle reaches from `low` to `high` along the axis and `half_width` to both sides.
// Method: the chance inside a rectangle is a product, along x across, of closed forms of the
// normal;
//   the best rectangle is climbed to in steps that halve, from each datum and from all together.
// Domain: errors and efforts above 0, weights 0 or more with a sum above 0. Far under the radius of
//   the Earth: the ground is taken for flat.
// Accuracy: containment within 1e-12 (rectangle_test.cpp, beside scipy's quadrature); the
//   probability of success within 1e-9 of the optimum's, sides within 1e-4 of themselves.
// Promises:
//   P1 for one datum the rectangle is a square about it.
//   P2 more effort never gives less.
//   P3 two datums far apart get a rectangle each, close together one for both.
// Source: IAMSAR Manual Volume II, chapter 4 and Appendix L, optimal search areas for single point,
//   leeway divergence and line datums [from memory; its graphs were not seen, the optimum is
//   computed]; B. O. Koopman, Search and Screening (1946), chapter 3 [from memory].
#pragma once

#include <span>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/position/region.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::effort {

/// A datum on the axis, or a stretch of datum line when `from` and `to` differ.
struct Datum {
  Length from;
  Length to;
  Length error;       ///< total probable error E
  double weight = 1;  ///< beside the others'; the sum of all counts as certainty
};

struct Rectangle {
  Length low;
  Length high;
  Length half_width;
  Length length() const { return high - low; }
  Length width() const { return 2 * half_width; }
  Area area() const { return length() * width(); }
};

/// A rectangle searched evenly.
struct RectangleSearch {
  Rectangle rectangle;
  Area effort;
  sweep::Coverage coverage;
  sweep::Probability poc;
  sweep::Probability pod;
  sweep::Probability pos;
};

/// The chance that the object is in the rectangle. Throws Error(value) for datums outside their
/// domain.
sweep::Probability containment(const Rectangle& rectangle, std::span<const Datum> datums);

/// What an evenly spread effort finds in the rectangle.
RectangleSearch search_rectangle(const Rectangle& rectangle, std::span<const Datum> datums,
                                 Area effort, sweep::DetectionLaw law);

/// The rectangle with the greatest probability of success.
RectangleSearch best_rectangle(std::span<const Datum> datums, Area effort, sweep::DetectionLaw law);

/// One rectangle for both datums, or one for each with the effort divided between them, whichever
/// finds more. Two rectangles do not overlap.
std::vector<RectangleSearch> best_rectangles(const Datum& first, const Datum& second, Area effort,
                                             sweep::DetectionLaw law);

/// The rectangle on the ground: `origin` is the axis's zero, `axis` its direction there.
Region to_region(const Rectangle& rectangle, Position origin, TrueDirection axis);

}  // namespace sweepwright::effort
