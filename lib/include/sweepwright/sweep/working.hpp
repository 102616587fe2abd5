// Working: how a number was found, line by line, so that a planner can check it by hand.
//
// Conventions: a line says what is worked out (label), how (expression), what came out (value, with
//   its unit) and where the rule or the table stands (source). Lines stand in the order of work.
//   Numbers are shown with up to four decimals; the computing itself does not round.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::sweep {

/// One step of the working.
struct WorkingLine {
  std::string label;       ///< "Terrain factor"
  std::string expression;  ///< "hilly, or vegetation 15 to 60 percent"
  std::string value;       ///< "0.7", or "1.45 NM"; empty for a remark
  std::string source;      ///< the table or rule; empty when none is needed
  /// The value of a factor, for machine-readable output; empty for other lines.
  std::optional<double> factor = std::nullopt;
  bool operator==(const WorkingLine&) const = default;
};

using Working = std::vector<WorkingLine>;

/// A length for a line of the working: `1.05 NM` with up to four decimals, below 0.2 NM `41.1 m`
/// with one.
std::string working_length(Length length);

/// The working as plain text: aligned columns, the sources numbered and listed underneath. Ends
/// with a line end; empty for no lines.
std::string format_working(const Working& working);

}  // namespace sweepwright::sweep
