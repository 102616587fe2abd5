// Reads a mission file: one search, everything that a planner states about it.
//
// Problem: a mission file is written by hand, in a hurry. Every slip must be named in a way that
//   helps to mend it: the file, the line, the JSON pointer, what was found, what was expected, the
//   nearest spelling. Nothing unknown is skipped and nothing missing is guessed.
// Conventions: docs/reference/mission-file.md describes every field, lib/data/mission.schema.json
//   says the same to programs, as far as a schema can. Values carry their units as text.
// Domain: JSON in UTF-8, version 1, up to kLargestMissionBytes.
// Errors: what is no JSON ends the reading with line and column. All other mistakes are collected
//   and named together, in the order of their lines: one as an Error like any other, several as one
//   Error whose message has a line for each, the first ten.
// Promises: P1 a Mission is returned only when every field was read and found in its range; P2 any
//   bytes are a Mission or one Error that begins with the file's name (mission_reader_test.cpp).
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/plan/mission.hpp"

namespace sweepwright::formats {

inline constexpr std::size_t kLargestMissionBytes = 16 * 1024 * 1024;

/// Gives a text file that a mission names, `name` as it stands in the mission.
using FileLoader = std::function<InputText(const std::string& name)>;

/// The files that a mission names.
struct MissionFiles {
  FileLoader text;    ///< areas, beliefs
  BytesLoader bytes;  ///< elevation models; a mission that names one is refused without it
};

/// `-` is standard input. Files that the mission names are looked for beside it.
plan::Mission read_mission(const std::string& path);

/// The same from a text that is already there.
plan::Mission parse_mission(const InputText& file, const MissionFiles& files);

}  // namespace sweepwright::formats
