#include "layout/house_rules.hpp"

#include <algorithm>
#include <cctype>
#include <regex>
#include <sstream>

#include "support/files.hpp"

namespace sweepwright::test {
namespace {

namespace fs = std::filesystem;

struct Include {
  int line = 0;
  std::string path;
  bool angled = false;
};

std::vector<std::string> lines_in(const fs::path& file) {
  std::istringstream text(read_file(file));
  std::vector<std::string> lines;
  for (std::string line; std::getline(text, line);) lines.push_back(line);
  return lines;
}

/// All files below `folder` whose names end in one of `suffixes`, as paths from `repository`, in
/// order. Every file when there are no suffixes.
std::vector<fs::path> files_below(const fs::path& repository, const fs::path& folder,
                                  const std::vector<std::string>& suffixes = {}) {
  std::vector<fs::path> files;
  if (!fs::exists(repository / folder)) return files;
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(repository / folder)) {
    const bool wanted = suffixes.empty() || std::find(suffixes.begin(), suffixes.end(),
                                                      entry.path().extension()) != suffixes.end();
    if (entry.is_regular_file() && wanted) {
      files.push_back(entry.path().lexically_relative(repository));
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<fs::path> folders_in(const fs::path& folder) {
  std::vector<fs::path> folders;
  if (!fs::exists(folder)) return folders;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder)) {
    if (entry.is_directory()) folders.push_back(entry.path());
  }
  std::sort(folders.begin(), folders.end());
  return folders;
}

std::vector<Include> includes_of(const fs::path& file) {
  static const std::regex pattern(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"].*)");
  std::vector<Include> includes;
  int number = 0;
  for (const std::string& line : lines_in(file)) {
    ++number;
    std::smatch parts;
    if (std::regex_match(line, parts, pattern)) {
      includes.push_back({number, parts[2], parts[1] == "<"});
    }
  }
  return includes;
}

std::string part(const fs::path& path, int index) {
  auto at = path.begin();
  for (int i = 0; i < index && at != path.end(); ++i) ++at;
  return at == path.end() ? std::string() : at->string();
}

/// The room of a source: lib/src/ROOM/..., lib/include/sweepwright/ROOM/..., cli/...
std::string room_of(const fs::path& file) {
  if (part(file, 0) == "cli") return "cli";
  return part(file, part(file, 1) == "src" ? 2 : 3);
}

std::string place(const fs::path& file, int line) {
  return file.generic_string() + ":" + std::to_string(line) + ": ";
}

/// Compares the .cpp files in a folder with those that a list of CMake names.
void compare_list(const fs::path& repository, const fs::path& folder, const fs::path& list,
                  Faults& faults) {
  std::set<std::string> on_disk;
  for (const fs::path& file : files_below(repository, folder, {".cpp"})) {
    on_disk.insert(file.lexically_relative(folder).generic_string());
  }
  std::set<std::string> listed;
  if (fs::exists(repository / list)) {
    static const std::regex source(R"([A-Za-z0-9_./-]+\.cpp)");
    for (const std::string& line : lines_in(repository / list)) {
      const std::string code = line.substr(0, line.find('#'));
      for (std::sregex_iterator at(code.begin(), code.end(), source), end; at != end; ++at) {
        // Rooms are read from lib, so a room's file may also be called src/ROOM/FILE there.
        const std::string from_lib = folder.lexically_relative("lib").generic_string() + "/";
        const std::string name = at->str();
        listed.insert(name.starts_with(from_lib) ? name.substr(from_lib.size()) : name);
      }
    }
  }
  for (const std::string& file : on_disk) {
    if (!listed.count(file)) {
      faults.push_back((folder / file).generic_string() + ": not listed in " +
                       list.generic_string());
    }
  }
  for (const std::string& file : listed) {
    if (!on_disk.count(file)) {
      faults.push_back(list.generic_string() + ": lists " + file + ", which is not there");
    }
  }
}

bool is_output(const std::string& top_name) {
  return top_name == ".git" || top_name.starts_with("build") || top_name == "demo-output";
}

}  // namespace

Rooms read_rooms(const fs::path& repository) {
  Rooms rooms;
  int number = 0;
  for (const std::string& line : lines_in(repository / "lib/rooms.txt")) {
    ++number;
    const std::size_t colon = line.find(':');
    if (line.empty() || line[0] == '#') continue;
    const std::string name = line.substr(0, colon);
    const auto fault = [&](const std::string& what) {
      rooms.faults.push_back(place("lib/rooms.txt", number) + what);
    };
    if (colon == std::string::npos) {
      fault("no colon after the room's name");
      continue;
    }
    if (rooms.may_include.count(name)) fault("room " + name + " stands here again");
    std::set<std::string> allowed{name};
    std::istringstream uses(line.substr(colon + 1));
    for (std::string used; uses >> used;) {
      const auto found = rooms.may_include.find(used);
      if (found == rooms.may_include.end()) {
        fault("room " + name + " uses " + used + ", which is not above it");
      } else {
        allowed.insert(found->second.begin(), found->second.end());
      }
    }
    rooms.may_include[name] = allowed;
  }
  return rooms;
}

Faults include_faults(const fs::path& repository) {
  const Rooms rooms = read_rooms(repository);
  Faults faults;
  for (const char* folder : {"lib/include/sweepwright", "lib/src", "cli"}) {
    for (const fs::path& file : files_below(repository, folder, {".hpp", ".cpp"})) {
      const std::string room = room_of(file);
      const auto allowed = rooms.may_include.find(room);
      if (allowed == rooms.may_include.end()) {
        faults.push_back(file.generic_string() + ": belongs to no room of lib/rooms.txt");
        continue;
      }
      for (const Include& include : includes_of(repository / file)) {
        const bool is_public = part(include.path, 0) == "sweepwright";
        const std::string used = part(include.path, is_public ? 1 : 0);
        const bool is_private = !is_public && !include.angled && rooms.may_include.count(used);
        if (is_public && !allowed->second.count(used)) {
          faults.push_back(place(file, include.line) + "room " + room + " may not use " + used);
        }
        if (is_private && used != room) {
          faults.push_back(place(file, include.line) + include.path + " is private to " + used);
        }
      }
    }
  }
  return faults;
}

Faults source_list_faults(const fs::path& repository) {
  Faults faults;
  for (const fs::path& folder : folders_in(repository / "lib/src")) {
    const fs::path room = folder.lexically_relative(repository);
    compare_list(repository, room, room / "room.cmake", faults);
  }
  for (const fs::path& folder : folders_in(repository / "tests/unit")) {
    const fs::path room = folder.lexically_relative(repository);
    compare_list(repository, room, room / "CMakeLists.txt", faults);
  }
  compare_list(repository, "cli", "cli/CMakeLists.txt", faults);
  return faults;
}

Faults check_table_faults(const fs::path& repository) {
  std::string tests;
  for (const fs::path& file : files_below(repository, "tests/unit", {".cpp"})) {
    tests += read_file(repository / file);
  }
  Faults faults;
  for (const fs::path& file : files_below(repository, "tests/checks", {".csv"})) {
    const std::string name = file.lexically_relative("tests/checks").generic_string();
    if (tests.find('"' + name + '"') == std::string::npos) {
      faults.push_back(file.generic_string() + ": no unit test reads it");
    }
  }
  return faults;
}

Faults room_map_faults(const fs::path& repository) {
  static const std::regex row(R"(^\| ([a-z]+) \| .*\?.*\| .*\| .*\|$)");
  std::set<std::string> rows;
  for (const std::string& line : lines_in(repository / "DEVELOPERS.md")) {
    std::smatch parts;
    if (std::regex_match(line, parts, row)) rows.insert(parts[1]);
  }
  Faults faults;
  const Rooms rooms = read_rooms(repository);
  for (const auto& [room, allowed] : rooms.may_include) {
    if (!rows.count(room)) faults.push_back("DEVELOPERS.md: the room map lacks " + room);
  }
  for (const std::string& room : rows) {
    if (!rooms.may_include.count(room)) {
      faults.push_back("DEVELOPERS.md: the room map has " + room + ", which is no room");
    }
  }
  return faults;
}

Faults top_level_faults(const fs::path& repository) {
  static const std::set<std::string> fixed{"CMakeLists.txt", "README.md", "DEVELOPERS.md",
                                           "LICENSE",        "lib",       "cli",
                                           "tests",          "docs",      "demo-scenarios"};
  Faults faults;
  std::set<std::string> found;
  for (const fs::directory_entry& entry : fs::directory_iterator(repository)) {
    const std::string name = entry.path().filename().string();
    found.insert(name);
    if (!fixed.count(name) && name[0] != '.' && !is_output(name)) {
      faults.push_back(name + ": not one of the names at the top level");
    }
  }
  for (const std::string& name : fixed) {
    if (!found.count(name)) faults.push_back(name + ": missing at the top level");
  }
  return faults;
}

Faults machine_path_faults(const fs::path& repository) {
  // In two parts, so that this file has no such path.
  std::vector<std::string> paths{std::string("/") + "home/", std::string("/") + "root/"};
  const std::string own = repository.string();
  // A place such as /src is no sign of anybody's machine.
  if (std::count(own.begin(), own.end(), '/') > 1) paths.push_back(own);
  const auto in_name = [](char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '.' || c == '-';
  };
  Faults faults;
  for (const fs::directory_entry& top : fs::directory_iterator(repository)) {
    const std::string name = top.path().filename().string();
    if (is_output(name)) continue;
    const std::vector<fs::path> files =
        top.is_directory() ? files_below(repository, name) : std::vector<fs::path>{fs::path(name)};
    for (const fs::path& file : files) {
      int number = 0;
      for (const std::string& line : lines_in(repository / file)) {
        ++number;
        for (const std::string& path : paths) {
          const std::size_t at = line.find(path);
          if (at != std::string::npos && (at == 0 || !in_name(line[at - 1]))) {
            faults.push_back(place(file, number) + "a path of one machine");
          }
        }
      }
    }
  }
  std::sort(faults.begin(), faults.end());
  return faults;
}

Faults public_header_faults(const fs::path& repository) {
  static const std::regex standard("[a-z0-9_]+");
  Faults faults;
  for (const fs::path& file : files_below(repository, "lib/include", {".hpp"})) {
    const std::vector<std::string> lines = lines_in(repository / file);
    if (lines.empty() || !lines[0].starts_with("// ")) {
      faults.push_back(place(file, 1) + "does not start with a comment that says what it is");
    }
    if (std::find(lines.begin(), lines.end(), "#pragma once") == lines.end()) {
      faults.push_back(place(file, 1) + "no #pragma once");
    }
    for (const Include& include : includes_of(repository / file)) {
      const bool ours = !include.angled && include.path.starts_with("sweepwright/");
      if (!ours && !(include.angled && std::regex_match(include.path, standard))) {
        faults.push_back(place(file, include.line) + "a public header includes " + include.path);
      }
    }
  }
  return faults;
}

}  // namespace sweepwright::test
