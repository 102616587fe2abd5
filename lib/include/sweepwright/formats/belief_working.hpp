// The working of a belief: its scenarios and searches as JSON, to be checked by hand; and the lines
// of equal containment of its datums and ellipses.
//
// Conventions: lengths in metres (`_m`), directions in degrees true; `share` is the scenario's
//   weight divided by the sum of all.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/formats/belief_writer.hpp"

namespace sweepwright::formats {

/// A list of objects, one for each scenario.
RawJson scenarios_json(const std::vector<belief::Scenario>& scenarios);

/// A search that found nothing, and its probability of success beforehand.
struct FailedSearch {
  std::string file;  ///< that its probabilities of detection were read from
  double success = 0;
};
RawJson searches_json(const std::vector<FailedSearch>& searches);

/// The lines that hold 50, 90 and 95 % of each datum and error ellipse.
std::vector<ContainmentLine> containment_lines(const std::vector<belief::Scenario>& scenarios);

}  // namespace sweepwright::formats
