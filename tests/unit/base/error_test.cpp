// Error: one line for a person, its parts for a program.
#include "sweepwright/base/error.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace sweepwright {
namespace {

TEST(Error, joins_its_parts_into_one_line) {
  EXPECT_STREQ(Error(ErrorCode::value, "what").what(), "what");
  EXPECT_STREQ(Error(ErrorCode::value, "what", "mend it").what(), "what; mend it");
  EXPECT_STREQ(Error(ErrorCode::value, "what", "", "there").what(), "there: what");
  EXPECT_STREQ(Error(ErrorCode::value, "what", "mend it", "there").what(), "there: what; mend it");
}

TEST(Error, keeps_its_parts) {
  const Error error(ErrorCode::geometry, "what", "mend it", "there");
  EXPECT_EQ(error.code(), ErrorCode::geometry);
  EXPECT_EQ(error.message(), "what");
  EXPECT_EQ(error.hint(), "mend it");
  EXPECT_EQ(error.where(), "there");
}

TEST(Error, is_placed_from_the_inside_out) {
  const Error inner(ErrorCode::input, "what", "mend it");
  const Error placed = inner.at("/units/0").at("mission.json");
  EXPECT_EQ(placed.where(), "mission.json: /units/0");
  EXPECT_EQ(placed.code(), ErrorCode::input);
  EXPECT_STREQ(placed.what(), "mission.json: /units/0: what; mend it");
  EXPECT_EQ(inner.where(), "");
}

TEST(Error, every_code_has_a_name_of_its_own) {
  std::set<std::string_view> names;
  for (const ErrorCode code :
       {ErrorCode::usage, ErrorCode::input, ErrorCode::value, ErrorCode::geometry,
        ErrorCode::impossible, ErrorCode::unreadable, ErrorCode::unwritable}) {
    names.insert(name(code));
  }
  EXPECT_EQ(names, (std::set<std::string_view>{"usage", "input", "value", "geometry", "impossible",
                                               "unreadable", "unwritable"}));
}

}  // namespace
}  // namespace sweepwright
