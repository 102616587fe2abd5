// Areas as map editors write them, and everything that is wrong with such files.
#include "sweepwright/formats/area_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

/// The rectangle that most samples draw: 37.5 to 38 N, 106 to 105.5 W.
Region drawn_box() {
  return make_region({{from_plotted_edges({test::at(37.5, -106), test::at(37.5, -105.5),
                                           test::at(38, -105.5), test::at(38, -106)}),
                       {}}});
}

double km2(const Region& region) {
  return area(region).square_kilometres();
}

void expect_box(const AreaReading& reading) {
  EXPECT_NEAR(km2(reading.region), km2(drawn_box()), 1e-3);
  EXPECT_TRUE(contains(reading.region, test::at(37.75, -105.75)));
  EXPECT_FALSE(contains(reading.region, test::at(37.75, -105.4)));
}

constexpr const char* kRing = "[[-106,37.5],[-105.5,37.5],[-105.5,38],[-106,38],[-106,37.5]]";

std::string polygon(const std::string& ring) {
  return R"({"type":"Polygon","coordinates":[)" + ring + "]}";
}

TEST(GeoJsonArea, IsReadFromEveryKindOfObject) {
  const std::string shape = polygon(kRing);
  const std::string feature =
      R"({"type":"Feature","id":7,"properties":{"name":"Box","stroke":"#f00","n":null},"geometry":)" +
      shape + "}";
  for (const std::string& text :
       {shape, R"({"type":"MultiPolygon","coordinates":[[)" + std::string(kRing) + "]]}", feature,
        R"({"type":"FeatureCollection","generator":"an editor","features":[)" + feature + "]}",
        R"({"type":"GeometryCollection","geometries":[)" + shape + "]}"}) {
    SCOPED_TRACE(text);
    expect_box(parse_area(text));
  }
  EXPECT_EQ(parse_area(feature).name, "Box");
}

TEST(GeoJsonArea, OddThingsAreMendedAndSaid) {
  const AreaReading open =
      parse_area(polygon("[[-106,37.5,100],[-105.5,37.5,2],[-105.5,38,3],[-106,38,4]]"));
  expect_box(open);
  EXPECT_THAT(open.remarks, testing::Contains(HasSubstr("not closed")));
  EXPECT_THAT(open.remarks, testing::Contains(HasSubstr("altitude")));

  // Clockwise, and longitudes past 180.
  expect_box(parse_area(polygon("[[-106,37.5],[-106,38],[-105.5,38],[-105.5,37.5],[-106,37.5]]")));
  expect_box(parse_area(polygon("[[254,37.5],[254.5,37.5],[254.5,38],[254,38],[254,37.5]]")));

  const AreaReading mixed = parse_area(
      R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":null,"geometry":)"
      R"({"type":"Point","coordinates":[-106,37]}},{"type":"Feature","properties":{},"geometry":)" +
      polygon(kRing) + "}]}");
  expect_box(mixed);
  EXPECT_THAT(mixed.remarks, testing::Contains(HasSubstr("point")));
}

TEST(GeoJsonArea, HolesAndPartsAreKept) {
  const AreaReading holed =
      parse_area(R"({"type":"Polygon","coordinates":[)" + std::string(kRing) +
                 ",[[-105.9,37.6],[-105.9,37.7],[-105.8,37.7],[-105.8,37.6],[-105.9,37.6]]]}");
  EXPECT_FALSE(contains(holed.region, test::at(37.65, -105.85)));
  EXPECT_LT(km2(holed.region), km2(drawn_box()));

  // An area cut at the antimeridian, as RFC 7946 section 3.1.9 asks, is one piece of ground.
  const AreaReading cut = parse_area(
      R"({"type":"MultiPolygon","coordinates":[[[[179,-17],[180,-17],[180,-16],[179,-16],[179,-17]]],)"
      R"([[[-180,-17],[-179,-17],[-179,-16],[-180,-16],[-180,-17]]]]})");
  EXPECT_EQ(cut.region.polygons.size(), 1u);
  EXPECT_TRUE(contains(cut.region, test::at(-16.5, 180)));
}

TEST(KmlArea, IsReadFromNestedFoldersWithAllTheirOddThings) {
  const AreaReading reading = parse_area(R"(<?xml version="1.0" encoding="UTF-8"?>
<kml:kml xmlns:kml="http://www.opengis.net/kml/2.2"><kml:Document><kml:Style id="s"/>
<kml:Folder><kml:name>Untitled</kml:name><kml:Folder><kml:Placemark>
<kml:name><![CDATA[Box & more]]></kml:name><kml:description><![CDATA[<b>bold</b>]]></kml:description>
<kml:MultiGeometry><kml:Point><kml:coordinates>-106,37,0</kml:coordinates></kml:Point><kml:Polygon>
<kml:outerBoundaryIs><kml:LinearRing><kml:coordinates>
  -106,37.5,2000 -105.5,37.5,2000
  -105.5,38,2000 -106,38,2000
</kml:coordinates></kml:LinearRing></kml:outerBoundaryIs></kml:Polygon></kml:MultiGeometry>
</kml:Placemark></kml:Folder></kml:Folder></kml:Document></kml:kml>)");
  expect_box(reading);
  EXPECT_EQ(reading.name, "Box & more");
  EXPECT_THAT(reading.remarks, testing::Contains(HasSubstr("not closed")));
}

struct Refusal {
  const char* name;
  std::string text;
  ErrorCode code;
  const char* words;  ///< of what() as a whole
};

class AreaRefusal : public testing::TestWithParam<Refusal> {};

TEST_P(AreaRefusal, SaysWhatWhereAndHowToMend) {
  const Refusal& refusal = GetParam();
  try {
    parse_area(refusal.text);
    FAIL() << "the text was accepted";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), refusal.code) << error.what();
    EXPECT_THAT(std::string(error.what()), HasSubstr(refusal.words));
    EXPECT_THAT(error.hint(), testing::Not(IsEmpty())) << error.what();
  }
}

std::string nested(std::size_t depth) {
  std::string text;
  for (std::size_t i = 0; i < depth; ++i) text += R"({"type":"GeometryCollection","geometries":[)";
  return text;
}

INSTANTIATE_TEST_SUITE_P(
    Own, AreaRefusal,
    testing::Values(
        Refusal{"truncated_json", R"({"type":"Polygon","coordinates":[[[-106,)", ErrorCode::input,
                "line 1"},
        Refusal{"not_json_not_xml", "hello", ErrorCode::input, "GeoJSON"},
        Refusal{"no_polygon", R"({"type":"FeatureCollection","features":[]})", ErrorCode::input,
                "polygon"},
        Refusal{"only_a_point", R"({"type":"Point","coordinates":[1,2]})", ErrorCode::input,
                "polygon"},
        Refusal{"text_for_a_number", polygon(R"([["x",1],[2,3],[4,5],[0,1]])"), ErrorCode::input,
                "/coordinates/0/0/0"},
        Refusal{"nan", polygon("[[NaN,1],[2,3],[4,5],[0,1]]"), ErrorCode::input, "line 1"},
        Refusal{"huge_number", polygon("[[1e999,1],[2,3],[4,5],[0,1]]"), ErrorCode::input,
                "line 1"},
        Refusal{"latitude_91", polygon("[[0,0],[1,0],[1,91],[0,0]]"), ErrorCode::input, "91"},
        Refusal{"longitude_400", polygon("[[400,0],[401,0],[401,1],[400,0]]"), ErrorCode::input,
                "400"},
        Refusal{"one_number", polygon("[[0],[1,0],[1,1],[0,0]]"), ErrorCode::input,
                "/coordinates/0/0"},
        Refusal{"two_corners", polygon("[[0,0],[1,0],[0,0]]"), ErrorCode::geometry, "corner"},
        Refusal{"bow_tie", polygon("[[0,0],[1,1],[1,0],[0,1],[0,0]]"), ErrorCode::geometry,
                "cross"},
        Refusal{"no_area", polygon("[[0,0],[1,0],[2,0],[0,0]]"), ErrorCode::geometry, "line"},
        Refusal{"too_large", polygon("[[0,0],[60,0],[60,40],[0,40],[0,0]]"), ErrorCode::geometry,
                "1000 km"},
        Refusal{
            "other_reference_system",
            R"({"type":"Polygon","crs":{"type":"name","properties":{"name":"EPSG:3857"}},"coordinates":[)" +
                std::string(kRing) + "]}",
            ErrorCode::input, "crs"},
        Refusal{"nested_too_deep", nested(5000), ErrorCode::input, "deep"},
        Refusal{"truncated_kml", "<kml><Document><Placemark>", ErrorCode::input, "line"},
        Refusal{"kml_without_polygon",
                "<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document/></kml>", ErrorCode::input,
                "polygon"},
        Refusal{"entities",
                "<?xml version=\"1.0\"?><!DOCTYPE kml [<!ENTITY a "
                "\"aaaa\">]><kml><name>&a;</name></kml>",
                ErrorCode::input, "document type"},
        Refusal{"kml_words_for_coordinates",
                "<kml><Placemark><Polygon><outerBoundaryIs><LinearRing><coordinates>a,b c,d e,f"
                "</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark></kml>",
                ErrorCode::input, "coordinates"}),
    [](const auto& test) { return std::string(test.param.name); });

TEST(AreaFile, BadFilesAreNamed) {
  const std::filesystem::path folder =
      std::filesystem::path(testing::TempDir()) / "area-reader-test";
  std::filesystem::create_directories(folder);
  const auto refused = [&](const std::string& name, const std::string& bytes) {
    const std::string path = (folder / name).string();
    std::ofstream(path, std::ios::binary) << bytes;
    try {
      read_area_file(path);
    } catch (const Error& error) {
      EXPECT_THAT(error.where(), HasSubstr(name));
      return std::string(error.what());
    }
    return std::string("accepted");
  };
  EXPECT_THAT(refused("empty.geojson", ""), HasSubstr("empty"));
  EXPECT_THAT(refused("latin1.geojson", "{\"type\":\"\xE9\"}"), HasSubstr("UTF-8"));
  EXPECT_THAT(refused("binary.kml", std::string("\x7F"
                                                "ELF\0\xFF\xFE",
                                                7)),
              HasSubstr("UTF-8"));
  try {
    read_area_file((folder / "missing.kml").string());
    FAIL();
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::unreadable);
  }
  // A file of a gigabyte (no bytes are stored) is refused unread.
  const std::string large = (folder / "large.geojson").string();
  std::ofstream(large).close();
  std::filesystem::resize_file(large, 1'000'000'000);
  EXPECT_THROW(read_area_file(large), Error);
  std::filesystem::remove_all(folder);
}

TEST(Area, WhatWeWriteIsReadBack) {
  for (const Position& place : test::awkward_places()) {
    const Region region = test::rectangle(place, TrueDirection::degrees(20),
                                          Length::nautical_miles(30), Length::nautical_miles(12));
    StringSink geojson;
    GeoJsonWriter writer(geojson);
    writer.feature(region, std::vector<Property>{{"name", std::string("R")}});
    writer.finish();
    EXPECT_NEAR(km2(parse_area(geojson.text()).region) / km2(region), 1, 1e-4);

    StringSink kml;
    KmlWriter kml_writer(kml, {.name = "R", .description = "", .styles = {}});
    kml_writer.placemark({.name = "R",
                          .description = "",
                          .time = {},
                          .style_id = "",
                          .properties = {},
                          .geometry = region});
    kml_writer.finish();
    EXPECT_NEAR(km2(parse_area(kml.text()).region) / km2(region), 1, 1e-4);
  }
}

}  // namespace
}  // namespace sweepwright::formats
