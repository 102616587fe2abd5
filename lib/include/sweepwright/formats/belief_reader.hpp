// Reads a belief, or the probabilities of detection of a search, from a file of cells.
//
// Problem: a belief is made by `belief`, mended in a spreadsheet, or comes from elsewhere, and goes
//   into the division of effort and into the next update.
// Conventions: GeoJSON, CSV or JSON as write_belief() writes them; told apart by the text itself.
//   Each cell has `cell` (its name) and `probability` (or `pod`), from 0 to 1; `system` names its
//   grid, and its ground is then the grid's. A GeoJSON feature of another system brings its own
//   polygon. `outside` stands beside the cells in GeoJSON and JSON; where it is missing (always in
//   CSV), it is what the cells leave of 1.
// Domain: files up to kLargestTextBytes; a hundred thousand cells in GeoJSON and JSON.
// Errors: Error(input) with the line for what cannot be read, a cell that stands twice or a cell
//   whose ground is not known; Error(value) for probabilities outside 0 to 1 and for sums that are
//   not 1 (belief.hpp).
// Promises: P1 what write_belief() wrote is read back with the same probabilities, within 1e-15
//   (belief_files_test.cpp).
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/belief/belief.hpp"
#include "sweepwright/belief/patches.hpp"
#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::formats {

belief::Belief parse_belief(std::string_view text);

/// `-` is standard input. Errors have the path in front of their place.
belief::Belief read_belief_file(const std::string& path);

/// The same with the digest of the file, for the record.
struct BeliefFile {
  belief::Belief belief;
  InputDigest digest;
};
BeliefFile read_belief_file_and_digest(const std::string& path);

/// The probability of detection of each of `cells`, 0 where the file does not name the cell. Throws
/// Error(input) for a cell that is not among them.
std::vector<double> parse_cell_pods(std::string_view text, std::span<const grid::Cell> cells);

/// A belief from elsewhere, as shares of ground.
struct StatedProbabilities {
  belief::Patches patches;
  double cumulative_success = 0;  ///< of the searches that it counts, when the file says so
};

/// A file of cells that need not name their grid (it is then `system`), or an Esri ASCII grid in
/// degrees whose values are the probabilities of its cells. What they leave of 1 is outside. Throws
/// Error(value) for values below 0 and sums above 1.
StatedProbabilities parse_stated_probabilities(std::string_view text, std::string_view system);

}  // namespace sweepwright::formats
