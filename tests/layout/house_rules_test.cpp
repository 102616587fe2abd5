// Each rule finds its fault in a small made-up repository.
#include "layout/house_rules.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/files.hpp"

namespace sweepwright::test {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

class HouseRules : public testing::Test {
 protected:
  void write(const std::string& file, const std::string& text) {
    write_file(folder_.path() / file, text);
  }
  std::filesystem::path repository() const { return folder_.path(); }

 private:
  TemporaryFolder folder_;
};

TEST_F(HouseRules, rooms_reach_what_their_rooms_reach) {
  write("lib/rooms.txt", "# comment\nbase:\nplace: base\ngrid: place\n");
  const Rooms rooms = read_rooms(repository());
  EXPECT_THAT(rooms.faults, IsEmpty());
  EXPECT_THAT(rooms.may_include.at("grid"), UnorderedElementsAre("base", "place", "grid"));
  EXPECT_THAT(rooms.may_include.at("base"), UnorderedElementsAre("base"));
}

TEST_F(HouseRules, a_room_cannot_use_one_below_its_line) {
  write("lib/rooms.txt", "base: grid\ngrid: base\nbase:\nodd\n");
  EXPECT_THAT(read_rooms(repository()).faults,
              ElementsAre("lib/rooms.txt:1: room base uses grid, which is not above it",
                          "lib/rooms.txt:3: room base stands here again",
                          "lib/rooms.txt:4: no colon after the room's name"));
}

TEST_F(HouseRules, includes_against_the_rooms_are_found) {
  write("lib/rooms.txt", "base:\ngrid: base\nsweep: base\ncli: grid\n");
  write("lib/include/sweepwright/base/a.hpp",
        "#include <vector>\n#include \"sweepwright/grid/b.hpp\"\n");
  write("lib/include/sweepwright/grid/b.hpp", "#include \"sweepwright/base/a.hpp\"\n");
  write("lib/src/grid/b.cpp",
        "  #  include \"sweepwright/sweep/c.hpp\"  // why\n#include \"grid/own.hpp\"\n");
  write("lib/src/sweep/c.cpp", "#include \"grid/own.hpp\"\n#include \"own.hpp\"\n");
  write("lib/src/stray/d.cpp", "");
  write("cli/main.cpp", "#include <sweepwright/base/a.hpp>\n#include <sweepwright/sweep/c.hpp>\n");
  EXPECT_THAT(include_faults(repository()),
              ElementsAre("lib/include/sweepwright/base/a.hpp:2: room base may not use grid",
                          "lib/src/grid/b.cpp:1: room grid may not use sweep",
                          "lib/src/stray/d.cpp: belongs to no room of lib/rooms.txt",
                          "lib/src/sweep/c.cpp:1: grid/own.hpp is private to grid",
                          "cli/main.cpp:2: room cli may not use sweep"));
}

TEST_F(HouseRules, lists_and_disk_are_compared_both_ways) {
  write("lib/src/base/room.cmake",
        "add_room(base SOURCES a.cpp\n  gone.cpp)  # not old.cpp\n"
        "set_source_files_properties(src/base/a.cpp PROPERTIES COMPILE_OPTIONS -Wno-x)\n");
  write("lib/src/base/a.cpp", "");
  write("lib/src/base/deep/forgotten.cpp", "");
  write("lib/src/bare/b.cpp", "");
  write("tests/unit/base/CMakeLists.txt", "add_room_tests(base a_test.cpp)\n");
  write("tests/unit/base/a_test.cpp", "");
  write("tests/unit/base/b_test.cpp", "");
  write("cli/CMakeLists.txt", "add_executable(x main.cpp commands/plan.cpp)\n");
  write("cli/main.cpp", "");
  write("cli/commands/plan.cpp", "");
  EXPECT_THAT(
      source_list_faults(repository()),
      ElementsAre("lib/src/bare/b.cpp: not listed in lib/src/bare/room.cmake",
                  "lib/src/base/deep/forgotten.cpp: not listed in lib/src/base/room.cmake",
                  "lib/src/base/room.cmake: lists gone.cpp, which is not there",
                  "tests/unit/base/b_test.cpp: not listed in tests/unit/base/CMakeLists.txt"));
}

TEST_F(HouseRules, forgotten_check_tables_are_found) {
  write("tests/checks/grid/used.csv", "");
  write("tests/checks/grid/deep/forgotten.csv", "");
  write("tests/unit/grid/a_test.cpp", "check_rows(\"grid/used.csv\", {})");
  EXPECT_THAT(check_table_faults(repository()),
              ElementsAre("tests/checks/grid/deep/forgotten.csv: no unit test reads it"));
}

TEST_F(HouseRules, the_room_map_is_held_against_the_rooms) {
  write("lib/rooms.txt", "base:\ngrid: base\n");
  write("DEVELOPERS.md",
        "| room | the question that it answers | start with | may use |\n"
        "| --- | --- | --- | --- |\n"
        "| base | how big? | `a.hpp` | - |\n"
        "| attic | what is up there? | `b.hpp` | base |\n");
  EXPECT_THAT(room_map_faults(repository()),
              ElementsAre("DEVELOPERS.md: the room map lacks grid",
                          "DEVELOPERS.md: the room map has attic, which is no room"));
}

TEST_F(HouseRules, the_top_level_is_fixed) {
  for (const char* name : {"lib/x", "cli/x", "tests/x", "docs/x", "demo-scenarios/x"}) {
    write(name, "");
  }
  for (const char* name : {"CMakeLists.txt", "README.md", "LICENSE"}) write(name, "");
  for (const char* name : {".gitignore", "build/x", "build-mine/x", "demo-output/x"}) {
    write(name, "");
  }
  write("notes.txt", "");
  EXPECT_THAT(top_level_faults(repository()),
              UnorderedElementsAre("notes.txt: not one of the names at the top level",
                                   "DEVELOPERS.md: missing at the top level"));
}

TEST_F(HouseRules, machine_paths_are_found) {
  const std::string home = std::string("/") + "home/someone";
  write("a.md", "see " + home + "\nand " + home + "\n");
  write("lib/b.txt", "lib" + home + " is inside a name\n");
  write("lib/c.txt", "\"" + repository().string() + "/x\"\n");
  write("build/d.txt", home + "\n");
  EXPECT_THAT(machine_path_faults(repository()),
              ElementsAre("a.md:1: a path of one machine", "a.md:2: a path of one machine",
                          "lib/c.txt:1: a path of one machine"));
}

TEST_F(HouseRules, public_headers_are_plain) {
  write("lib/include/sweepwright/base/good.hpp",
        "// Good.\n#pragma once\n#include <vector>\n#include \"sweepwright/base/a.hpp\"\n");
  write("lib/include/sweepwright/base/bad.hpp",
        "#include <boost/geometry.hpp>\n#include <pugixml.hpp>\n#include \"own.hpp\"\n");
  const std::string bad = "lib/include/sweepwright/base/bad.hpp:";
  EXPECT_THAT(public_header_faults(repository()),
              ElementsAre(bad + "1: does not start with a comment that says what it is",
                          bad + "1: no #pragma once",
                          bad + "1: a public header includes boost/geometry.hpp",
                          bad + "2: a public header includes pugixml.hpp",
                          bad + "3: a public header includes own.hpp"));
}

}  // namespace
}  // namespace sweepwright::test
