// This repository keeps the rules of the house.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "layout/house_rules.hpp"
#include "support/files.hpp"

namespace sweepwright::test {
namespace {

using testing::IsEmpty;

TEST(Layout, rooms_use_only_rooms_above_their_line) {
  const Rooms rooms = read_rooms(repository());
  EXPECT_THAT(rooms.faults, IsEmpty());
  EXPECT_TRUE(rooms.may_include.count("cli"));
}

TEST(Layout, includes_follow_the_rooms) {
  EXPECT_THAT(include_faults(repository()), IsEmpty());
}

TEST(Layout, every_source_is_listed) {
  EXPECT_THAT(source_list_faults(repository()), IsEmpty());
}

TEST(Layout, every_check_table_is_read) {
  EXPECT_THAT(check_table_faults(repository()), IsEmpty());
}

TEST(Layout, room_map_is_complete) {
  EXPECT_THAT(room_map_faults(repository()), IsEmpty());
}

TEST(Layout, top_level_has_only_the_fixed_names) {
  EXPECT_THAT(top_level_faults(repository()), IsEmpty());
}

TEST(Layout, no_file_names_a_path_of_one_machine) {
  EXPECT_THAT(machine_path_faults(repository()), IsEmpty());
}

TEST(Layout, public_headers_show_only_our_own_types) {
  EXPECT_THAT(public_header_faults(repository()), IsEmpty());
}

}  // namespace
}  // namespace sweepwright::test
