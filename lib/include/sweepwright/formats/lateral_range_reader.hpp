// Reads a planner's lateral range curve from a file.
//
// Conventions: the form of the sweep width tables: lines `# key: value`, column names, rows of
//   comma-separated cells (sweep/lateral_range.hpp, docs/methods/lateral-range.md).
// Errors: Error(unreadable) for the file; Error(input) with file and line for what it holds.
#pragma once

#include <string>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/sweep/lateral_range.hpp"

namespace sweepwright::formats {

struct LateralRangeFile {
  sweep::LateralRangeTable table;
  InputDigest digest;
};

/// `-` is standard input.
LateralRangeFile read_lateral_range_file(const std::string& path);

}  // namespace sweepwright::formats
