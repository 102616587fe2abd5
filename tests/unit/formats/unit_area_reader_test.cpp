#include "sweepwright/formats/unit_area_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

std::string collection(const std::string& features) {
  return R"({"type": "FeatureCollection", "features": [)" + features + "]}";
}

std::string square(const std::string& properties) {
  return R"({"type": "Feature", "properties": )" + properties +
         R"(, "geometry": {"type": "Polygon", "coordinates": [[[0,0],[1,0],[1,1],[0,1],[0,0]]]}})";
}

TEST(ParseUnitAreas, KeepsPlainPropertiesInTheirOrder) {
  const UnitAreas found = parse_unit_areas(collection(square(
      R"({"coverage": 1.25, "unit": " Kestrel 1 ", "night": false, "note": "low", "more": [1], "gone": null})")));
  ASSERT_EQ(found.areas.size(), 1u);
  EXPECT_EQ(found.areas[0].unit, "Kestrel 1");
  EXPECT_THAT(found.areas[0].kept, ElementsAre(Property{"coverage", 1.25}, Property{"night", false},
                                               Property{"note", std::string("low")}));
  // One degree square on the equator: 12,308.8 km2 [GeographicLib Planimeter, run once].
  EXPECT_NEAR(area(found.areas[0].region).square_kilometres(), 12308.8, 1);
  EXPECT_TRUE(found.remarks.empty());
}

TEST(ParseUnitAreas, CountsAreasWithoutAUnit) {
  const UnitAreas found = parse_unit_areas(collection(
      square(R"({"unit": "One"})") + "," + square("{}") + "," + square(R"({"unit": null})") + "," +
      R"({"type": "Feature", "properties": {}, "geometry": null})"));
  EXPECT_EQ(found.areas.size(), 1u);
  EXPECT_THAT(found.remarks, ElementsAre("2 areas without a unit left out"));
}

TEST(ParseUnitAreas, FindsNoneInOtherTexts) {
  EXPECT_TRUE(parse_unit_areas(collection(square("{}"))).areas.empty());
  EXPECT_TRUE(parse_unit_areas(square(R"({"unit": "One"})")).areas.empty());
  EXPECT_TRUE(parse_unit_areas("<kml/>").areas.empty());
}

TEST(ParseUnitAreas, NamesTheUnitThatIsWrong) {
  for (const char* wrong : {"7", "\"\"", "\"  \"", "[\"One\"]"}) {
    try {
      parse_unit_areas(collection(square(std::string(R"({"unit": )") + wrong + "}")));
      FAIL() << wrong;
    } catch (const Error& error) {
      EXPECT_THAT(error.where(), HasSubstr("/features/0/properties/unit"));
    }
  }
}

TEST(ParseUnitAreas, NamesTheAreaThatIsWrong) {
  try {
    parse_unit_areas(collection(
        R"({"type": "Feature", "properties": {"unit": "One"}, "geometry": {"type": "Polygon", "coordinates": [[[0,0],[1,1],[1,0],[0,1],[0,0]]]}})"));
    FAIL();
  } catch (const Error& error) {
    EXPECT_THAT(error.where(), HasSubstr("/features/0/geometry/coordinates/0"));
  }
}

}  // namespace
}  // namespace sweepwright::formats
