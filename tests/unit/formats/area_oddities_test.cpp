// Odd things that map editors write, one by one: how each is read, what is said of it, and where
// an error says that it lies. The forms are common practice; no published list of them is known.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/area_reader.hpp"

namespace sweepwright::formats {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::string kml(const std::string& content) {
  return "<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document>" + content + "</Document></kml>";
}

std::string placemark(const std::string& geometry) {
  return "<Placemark><name>A</name>" + geometry + "</Placemark>";
}

std::string ring(const std::string& coordinates) {
  return "<LinearRing><coordinates>" + coordinates + "</coordinates></LinearRing>";
}

std::string polygon(const std::string& coordinates, const std::string& holes = "") {
  return "<Polygon><outerBoundaryIs>" + ring(coordinates) + "</outerBoundaryIs>" + holes +
         "</Polygon>";
}

constexpr const char* kSquare = "10,50 11,50 11,51 10,51 10,50";

double square_kilometres(const std::string& text) {
  return area(parse_area(text).region).square_kilometres();
}

std::string message(const std::string& text) {
  try {
    parse_area(text);
  } catch (const Error& error) {
    return error.what();
  }
  return "no error";
}

TEST(KmlOddities, coordinates_in_every_spelling_are_the_same_square) {
  const double expected = square_kilometres(kml(placemark(polygon(kSquare))));
  EXPECT_NEAR(expected, 7800, 200);
  for (const char* spelling :
       {"10,50,0 11,50,0 11,51,0 10,51,0 10,50,0", "\n\t10,50\r\n11,50\n\n11,51 10,51 10,50\n",
        "10, 50 11, 50 11, 51 10, 51 10, 50", "+10.0,5e1 11,50 11,51 10,51 10,50",
        "10,50 11,50 11,51 10,51", "10,50 10,51 11,51 11,50 10,50",
        "370,50 371,50 371,51 370,51 370,50"}) {
    const std::string text = kml(placemark(polygon(spelling)));
    if (std::string(spelling).starts_with("370")) {
      EXPECT_THAT(message(text), HasSubstr("longitude 370"));
    } else {
      EXPECT_EQ(square_kilometres(text), expected) << spelling;
    }
  }
  EXPECT_NEAR(square_kilometres(kml(placemark(polygon("350,50 351,50 351,51 350,51 350,50")))),
              expected, 0.1);
  EXPECT_EQ(
      square_kilometres(kml(placemark(
          "<Polygon><outerBoundaryIs><LinearRing><coordinates><![CDATA[" + std::string(kSquare) +
          "]]></coordinates></LinearRing></outerBoundaryIs></Polygon>"))),
      expected);
}

TEST(KmlOddities, a_clean_file_needs_no_remark) {
  EXPECT_THAT(parse_area(kml(placemark(polygon(kSquare)))).remarks, IsEmpty());
}

TEST(KmlOddities, holes_in_one_boundary_or_several) {
  const std::string a = ring("10.1,50.1 10.2,50.1 10.2,50.2 10.1,50.2 10.1,50.1");
  const std::string b = ring("10.3,50.3 10.4,50.3 10.4,50.4 10.3,50.4 10.3,50.3");
  const std::string apart =
      "<innerBoundaryIs>" + a + "</innerBoundaryIs><innerBoundaryIs>" + b + "</innerBoundaryIs>";
  const std::string together = "<innerBoundaryIs>" + a + b + "</innerBoundaryIs>";
  for (const std::string& holes : {apart, together}) {
    const AreaReading reading = parse_area(kml(placemark(polygon(kSquare, holes))));
    ASSERT_EQ(reading.region.polygons.size(), 1u);
    EXPECT_EQ(reading.region.polygons[0].holes.size(), 2u);
  }
}

TEST(KmlOddities, several_placemarks_are_one_area_with_the_documents_name) {
  const AreaReading reading =
      parse_area(kml("<name>Both</name><Folder><name>F</name>" + placemark(polygon(kSquare)) +
                     "</Folder><Placemark><name>B</name>" +
                     polygon("12,50 13,50 13,51 12,51 12,50") + "</Placemark>"));
  EXPECT_EQ(reading.region.polygons.size(), 2u);
  EXPECT_EQ(reading.name, "Both");
}

TEST(KmlOddities, rings_and_closed_lines_without_polygon_are_areas_with_a_remark) {
  EXPECT_THAT(parse_area(kml(placemark(ring(kSquare)))).remarks,
              ElementsAre(HasSubstr("taken for an area")));
  const std::string line =
      "<LineString><coordinates>" + std::string(kSquare) + "</coordinates></LineString>";
  EXPECT_THAT(parse_area(kml(placemark(line))).remarks,
              ElementsAre("no polygon: 1 closed line was taken for the area"));
  // Beside a polygon the same line is only a line.
  const AreaReading both =
      parse_area(kml(placemark(polygon("12,50 13,50 13,51 12,51 12,50")) + placemark(line)));
  EXPECT_EQ(both.region.polygons.size(), 1u);
  EXPECT_THAT(both.remarks, ElementsAre("1 line was left out"));
}

TEST(KmlOddities, what_is_left_out_is_said) {
  const AreaReading reading =
      parse_area(kml("<NetworkLink><name>n</name></NetworkLink><GroundOverlay/><Style id=\"s\"/>" +
                     placemark("<Point><coordinates>1,2</coordinates></Point>") + placemark("") +
                     placemark(polygon("10,50,7 11,50,7 11,51,7 10,51,7"))));
  EXPECT_THAT(reading.remarks,
              ElementsAre(HasSubstr("not closed"), "4 altitudes were left out",
                          "1 point was left out", "1 feature was without geometry",
                          HasSubstr("link was not followed"), HasSubstr("picture was left out")));
}

TEST(KmlErrors, name_the_line_and_the_path) {
  const std::string text =
      "<kml xmlns=\"http://www.opengis.net/kml/2.2\">\n<Document>\n<Placemark><name>North</name>\n"
      "<Polygon><outerBoundaryIs><LinearRing><coordinates>\n10,50\n11,50\n11,abc\n10,50\n"
      "</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark></Document></kml>";
  EXPECT_THAT(message(text), HasSubstr("line 7"));
  EXPECT_THAT(message(text), HasSubstr("/Document/Placemark 'North'/Polygon/outerBoundaryIs/"
                                       "LinearRing/coordinates point 3"));
  EXPECT_THAT(message(text), HasSubstr("'abc'"));
}

TEST(KmlErrors, of_every_kind_are_one_clear_message) {
  const auto of = [](const std::string& coordinates) {
    return message(kml(placemark(polygon(coordinates))));
  };
  EXPECT_THAT(of("nan,1 2,3 4,5"), HasSubstr("finite"));
  EXPECT_THAT(of("inf,1 2,3 4,5"), HasSubstr("finite"));
  EXPECT_THAT(of("1,91 2,3 4,5"), HasSubstr("latitude 91"));
  EXPECT_THAT(of("37,-106 38,-106 38,-105"), HasSubstr("swapped"));
  EXPECT_THAT(of("500000,4649776 500100,4649776 500100,4649876"), HasSubstr("metres"));
  EXPECT_THAT(of("1 2 3"), HasSubstr("longitude only"));
  EXPECT_THAT(of("1,2,3,4 5,6 7,8"), HasSubstr("4 numbers"));
  EXPECT_THAT(of("1,,2 3,4 5,6"), HasSubstr("number is missing"));
  EXPECT_THAT(of("10;50 11;50 11;51"), HasSubstr("'10;50'"));
  EXPECT_THAT(of(""), HasSubstr("three corners"));
  EXPECT_THAT(of("0,0 1,1 1,0 0,1 0,0"), HasSubstr("cross near"));
  EXPECT_THAT(message(kml(placemark("<Polygon/>"))), HasSubstr("outerBoundaryIs"));
  EXPECT_THAT(message(kml(placemark("<Polygon><outerBoundaryIs><LinearRing/></outerBoundaryIs>"
                                    "</Polygon>"))),
              HasSubstr("no coordinates"));
  EXPECT_THAT(message("<gpx version=\"1.1\"/>"), HasSubstr("GPX holds no areas"));
  EXPECT_THAT(message("<html><body/></html>"), HasSubstr("no KML"));
  std::string deep;
  for (int i = 0; i < 100'000; ++i) deep += "<Folder>";
  for (int i = 0; i < 100'000; ++i) deep += "</Folder>";
  EXPECT_THAT(message(kml(deep)), HasSubstr("nested more than"));
}

TEST(GeoJsonOddities, closed_lines_names_and_old_reference_systems) {
  const AreaReading line = parse_area(
      R"({"type":"LineString","coordinates":[[10,50],[11,50],[11,51],[10,51],[10,50]]})");
  EXPECT_THAT(line.remarks, ElementsAre(HasSubstr("closed line was taken for the area")));
  const AreaReading named = parse_area(
      R"({"type":"FeatureCollection","name":"layer","crs":{"type":"name","properties":)"
      R"({"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}},"features":[{"type":"Feature","properties":{},)"
      R"("geometry":{"type":"Polygon","coordinates":[[[10,50],[11,50],[11,51],[10,51],[10,50]]]}}]})");
  EXPECT_EQ(named.name, "layer");
  EXPECT_THAT(named.remarks, IsEmpty());
}

TEST(GeoJsonOddities, an_uncut_ring_across_the_antimeridian_is_read_the_short_way_and_said) {
  const AreaReading reading = parse_area(
      R"({"type":"Polygon","coordinates":[[[179,-17],[-179,-17],[-179,-16],[179,-16],[179,-17]]]})");
  EXPECT_TRUE(contains(reading.region, test::at(-16.5, 180)));
  EXPECT_LT(area(reading.region), Area::square_kilometres(30'000));
  EXPECT_THAT(reading.remarks, Contains(HasSubstr("2 edges were more than half way round")));
}

TEST(GeoJsonErrors, name_the_line_the_pointer_and_the_nearest_spelling) {
  EXPECT_THAT(
      message("{\n\"type\": \"FeatureCollection\",\n\"features\": [{\"type\": \"Feature\",\n"
              "\"properties\": {}, \"geometry\": {\"type\": \"Polygon\",\n\"coordinates\": "
              "[[[10, 50],\n[11, 50],\n[11, 95], [10, 50]]]}}]}"),
      HasSubstr("line 7 /features/0/geometry/coordinates/0/2"));
  EXPECT_THAT(message(R"({"type":"polygon","coordinates":[]})"), HasSubstr("'Polygon'"));
  EXPECT_THAT(message(R"({"type":"Polygon"})"), HasSubstr("'coordinates' is missing"));
  EXPECT_THAT(message(R"([1,2])"), HasSubstr("no GeoJSON"));
  EXPECT_THAT(message(R"({"a":1})"), HasSubstr("no 'type'"));
  EXPECT_THAT(
      message(R"({"type":"Polygon","coordinates":[[[37,-106],[38,-106],[38,-105],[37,-106]]]})"),
      HasSubstr("swapped"));
}

// Two polygons of one file that share ground may be a drawing of something else.
TEST(GeoJsonErrors, overlapping_polygons_are_refused) {
  EXPECT_THAT(message(R"({"type":"MultiPolygon","coordinates":[)"
                      R"([[[10,50],[11,50],[11,51],[10,51],[10,50]]],)"
                      R"([[[10.5,50],[11.5,50],[11.5,51],[10.5,51],[10.5,50]]]]})"),
              HasSubstr("overlap"));
}

}  // namespace
}  // namespace sweepwright::formats
