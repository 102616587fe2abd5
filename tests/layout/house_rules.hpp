// The rules of the house that a program can check. Each function looks at a repository and returns
// its faults, one line each (`file:line: what is wrong`), none when all is well.
#pragma once

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace sweepwright::test {

using Faults = std::vector<std::string>;

/// The rooms of lib/rooms.txt, and all rooms that each may include: itself, those on its line, and
/// what those may include.
struct Rooms {
  std::map<std::string, std::set<std::string>> may_include;
  Faults faults;  ///< a room named twice, or one that uses a room that is not above its own line
};
Rooms read_rooms(const std::filesystem::path& repository);

/// Files that include a room which theirs may not use, or another room's private header.
Faults include_faults(const std::filesystem::path& repository);

/// Sources on disk that no list of CMake names, and names without a file: rooms, the command, unit
/// tests.
Faults source_list_faults(const std::filesystem::path& repository);

/// Check tables (tests/checks/**.csv) that no unit test names.
Faults check_table_faults(const std::filesystem::path& repository);

/// Rooms of lib/rooms.txt without a row in the room map of DEVELOPERS.md, and rows without a room.
Faults room_map_faults(const std::filesystem::path& repository);

/// Names at the top level beside the fixed ones, dotfiles and build folders.
Faults top_level_faults(const std::filesystem::path& repository);

/// Lines that hold a path of somebody's machine: a home folder, or this repository's own place.
Faults machine_path_faults(const std::filesystem::path& repository);

/// Public headers that include more than the standard library and our own headers, lack
/// `#pragma once`, or do not start with a comment that says what they are.
Faults public_header_faults(const std::filesystem::path& repository);

}  // namespace sweepwright::test
