// Straight-line interpolation between table values, with the expression that a planner can repeat.
#pragma once

#include <optional>
#include <span>
#include <string>

namespace sweepwright::sweep {

/// A column or row of a table: where it stands, and its value there.
struct Node {
  double at;
  double value;
};

struct Interpolated {
  double value;
  std::string expression;  ///< "1.4 + (1.5 - 1.4) x (700 - 500) / (1000 - 500)"
};

/// The value at `at`, between the nodes or on one.
Interpolated interpolate(Node low, Node high, double at);

/// The table places on both sides of a wanted one. Both are the same where a table place is met.
struct Bracket {
  std::size_t low;
  std::size_t high;
  double at;  ///< the wanted place, moved to the table's edge when it lay a little outside
};

/// Finds the bracket of `at` among rising `places`. Up to 2 percent outside counts as the edge,
/// because manuals print 150 m for 500 ft. None further outside.
std::optional<Bracket> bracket(std::span<const double> places, double at);

/// A number with up to four decimals, without trailing zeros.
std::string format_value(double value);

}  // namespace sweepwright::sweep
