#include "sweepwright/sweep/search_object.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::sweep {
namespace {

using testing::HasSubstr;

std::string hint_for(std::string_view text) {
  try {
    parse_search_object(text);
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::value);
    return error.hint();
  }
  return "no error";
}

TEST(SearchObjectPromise1, EveryNameReadsBack) {
  for (const SearchObject& object : search_objects()) {
    EXPECT_EQ(parse_search_object(object.name).name, object.name);
    EXPECT_EQ(parse_search_object(to_upper_ascii(object.name)).name, object.name);
    EXPECT_FALSE(object.aliases.empty()) << object.name;
    for (const std::string& alias : object.aliases) {
      const SearchObject read = parse_search_object(alias);
      EXPECT_EQ(read.name, object.name) << alias;
      EXPECT_EQ(read.surface, object.surface) << alias;
    }
  }
}

TEST(SearchObjectPromise2, NoNameStandsForTwo) {
  std::map<std::string, std::string> owner;
  for (const SearchObject& object : search_objects()) {
    std::vector<std::string> names = object.aliases;
    names.push_back(object.name);
    for (const std::string& each : names) {
      EXPECT_TRUE(owner.emplace(to_lower_ascii(each), object.name).second) << each;
    }
  }
}

TEST(SearchObject, ShortNamesBelongToListedObjects) {
  for (const ObjectAliases& entry : built_in_tables().aliases) {
    EXPECT_EQ(parse_search_object(entry.object).name, entry.object);
  }
}

TEST(SearchObject, KnowsLandFromWater) {
  EXPECT_EQ(parse_search_object("person").surface, Surface::land);
  EXPECT_EQ(parse_search_object("person-in-water").surface, Surface::water);
  EXPECT_EQ(parse_search_object("PIW").name, "Person in water");
  EXPECT_EQ(parse_search_object("light_aircraft").name, "Aircraft under 5700 kg");
  EXPECT_EQ(search_objects().size(), 13u);
}

TEST(SearchObject, OffersTheNearestSpellings) {
  EXPECT_EQ(hint_for("Persn"), "did you mean 'Person'?");
  EXPECT_THAT(hint_for("boat 8 m"), HasSubstr("boat 7 m"));
  EXPECT_THAT(hint_for("xylophone"), HasSubstr("choose one of: Person, Vehicle"));
  EXPECT_THAT(hint_for(""), HasSubstr("Person"));
}

}  // namespace
}  // namespace sweepwright::sweep
