// Source of what is checked: RFC 7946. GDAL's ogrinfo is the independent reader.
#include "sweepwright/formats/geojson_writer.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "outside_tools.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

grid::LatLonBox box(double south, double west, double north, double east) {
  return {Angle::degrees(south), Angle::degrees(north), Angle::degrees(west), Angle::degrees(east)};
}

Region square_with_hole() {
  return make_region({Polygon{{at(10, 10), at(10, 11), at(11, 11), at(11, 10)},
                              {{at(10.2, 10.2), at(10.2, 10.4), at(10.4, 10.4), at(10.4, 10.2)}}}});
}

std::string collection(const std::vector<Geometry>& geometries,
                       const std::vector<Property>& properties = {}) {
  StringSink sink;
  GeoJsonWriter writer(sink);
  for (const Geometry& geometry : geometries) writer.feature(geometry, properties);
  writer.finish();
  return sink.text();
}

TEST(GeoJsonWriter, one_cell_looks_like_this) {
  EXPECT_EQ(collection({box(36, -103, 36.5, -102.5)}, {{"cell", "36/102A"}, {"level", "30min"}}),
            "{\"type\":\"FeatureCollection\",\"features\":[\n"
            "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
            "[[[-103,36],[-102.5,36],[-102.5,36.5],[-103,36.5],[-103,36]]]},"
            "\"properties\":{\"cell\":\"36/102A\",\"level\":\"30min\"}}\n]}\n");
}

TEST(GeoJsonWriter, coordinates_have_seven_decimals_and_no_more_than_they_need) {
  const std::string text =
      collection({at(5.0 / 60, -7.0 / 12), at(-0.00000004, 1e-8), at(89.99999996, 179.99999996)});
  EXPECT_THAT(text, HasSubstr("[-0.5833333,0.0833333]"));
  EXPECT_THAT(text, HasSubstr("[0,0]"));
  EXPECT_THAT(text, HasSubstr("[180,90]"));
}

TEST(GeoJsonWriter, every_kind_of_geometry_is_read_by_gdal) {
  const std::string text = collection(
      {at(1, 2), Path{at(1, 2), at(3, 4)}, Path{at(1, 179), at(3, -178)}, square_with_hole(),
       make_region({Polygon{{at(-18, 179), at(-18, -179), at(-17, -179), at(-17, 179)}, {}}}),
       box(50, 179.5, 51, -179.5), std::monostate{}},
      {{"name", "<b>&\""},
       {"legs", std::int64_t{7}},
       {"crews", std::vector<std::string>{"a", "b"}}});
  test::expect_rfc_7946(text);
  const std::string read = test::ogrinfo(text, "geojson");
  EXPECT_THAT(read, HasSubstr("Feature Count: 7"));
  // The shortest line between two places on 18 S, two degrees apart, bows poleward: on a sphere its
  // middle is at atan(tan 18 / cos 1) = 18.00257 S.
  EXPECT_THAT(read, HasSubstr("Extent: (-180.000000, -18.002581) - (180.000000, 51.000000)"));
  EXPECT_THAT(read, HasSubstr("POINT (2 1)"));
  EXPECT_EQ(test::occurrences(read, "MULTILINESTRING (("), 1u);
  EXPECT_EQ(test::occurrences(read, "MULTIPOLYGON ((("), 2u);
  EXPECT_EQ(test::occurrences(read, "name (String) = <b>&\""), 7u);
  EXPECT_EQ(test::occurrences(read, "legs (Integer) = 7"), 7u);
  EXPECT_EQ(test::occurrences(read, "crews (StringList) = (2:a,b)"), 7u);
}

TEST(GeoJsonWriter, a_box_across_the_antimeridian_is_cut) {
  const auto json = nlohmann::json::parse(collection({box(50, 179.5, 51, -179.5)}));
  EXPECT_EQ(json["features"][0]["geometry"],
            nlohmann::json::parse(R"({"type":"MultiPolygon","coordinates":[
                [[[179.5,50],[180,50],[180,51],[179.5,51],[179.5,50]]],
                [[[-180,50],[-179.5,50],[-179.5,51],[-180,51],[-180,50]]]]})"));
}

TEST(GeoJsonWriter, polar_areas_and_a_box_round_the_earth_hold) {
  Ring cap;
  for (int i = 0; i < 6; ++i) cap.push_back(at(85, 60.0 * i));
  const std::string text =
      collection({make_region({Polygon{cap, {}}}), box(89, -180, 90, 180), box(-90, 0, -89, 30)});
  test::expect_rfc_7946(text);
  EXPECT_THAT(test::ogrinfo(text, "geojson"),
              HasSubstr("Extent: (-180.000000, -90.000000) - (180.000000, 90.000000)"));
}

TEST(GeoJsonWriter, members_and_bounds_stand_on_top_and_behind) {
  StringSink sink;
  const std::vector<Property> top{
      {"provenance", provenance_json({"0.1.0", "sweepwright grid", TimePoint{}, {}})}};
  const std::vector<Property> behind{{"outside", 0.25}};
  GeoJsonWriter writer(sink, top, box(36, -103, 36.5, -102.5));
  writer.feature(at(36.2, -102.7), {});
  writer.finish(behind);
  const auto json = nlohmann::json::parse(sink.text());
  EXPECT_EQ(json["bbox"], nlohmann::json::parse("[-103,36,-102.5,36.5]"));
  EXPECT_EQ(json["provenance"]["command"], "sweepwright grid");
  EXPECT_EQ(json["outside"], 0.25);
  test::expect_rfc_7946(sink.text());
  test::ogrinfo(sink.text(), "geojson");
}

TEST(GeoJsonWriter, an_empty_collection_is_a_collection) {
  EXPECT_EQ(collection({}), "{\"type\":\"FeatureCollection\",\"features\":[\n]}\n");
  test::expect_rfc_7946(collection({}));
}

TEST(GeoJsonWriter, refuses_a_line_of_one_place_and_numbers_that_are_not_finite) {
  StringSink sink;
  GeoJsonWriter writer(sink);
  EXPECT_THROW(writer.feature(Path{at(1, 2)}, {}), Error);
  EXPECT_THROW(writer.feature(at(1, 2), std::vector<Property>{{"x", 0.0 / 0.0}}), Error);
}

TEST(GeoJsonWriter, hands_over_pieces_and_never_the_whole) {
  class Largest : public Sink {
   public:
    void write(std::string_view bytes) override { most = std::max(most, bytes.size()); }
    std::size_t most = 0;
  } sink;
  GeoJsonWriter writer(sink);
  for (int i = 0; i < 20000; ++i) writer.feature(box(1, 2, 3, 4), {});
  writer.finish();
  EXPECT_LT(sink.most, 1'200'000u);  // of more than four million
  EXPECT_GT(sink.most, 10'000u);
}

TEST(GeoJsonWriter, gives_the_same_bytes_twice) {
  const std::vector<Geometry> all{Path{at(60, 2), at(61, 14)}, square_with_hole(),
                                  box(50, 179.5, 51, -179.5)};
  EXPECT_EQ(collection(all), collection(all));
}

}  // namespace
}  // namespace sweepwright::formats
