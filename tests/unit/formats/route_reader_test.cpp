// Routes as GeoJSON lines, points in order and lists of positions; mistakes with their line.
#include "sweepwright/formats/route_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/files.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using test::at;
using testing::HasSubstr;

std::string seed(const std::string& name) {
  return test::read_file(test::repository() / "tests/fuzz/seeds/route" / name);
}

std::string message(std::string_view text) {
  try {
    parse_route(text);
  } catch (const Error& error) {
    return error.what();
  }
  return "no error";
}

TEST(RouteReader, reads_every_form) {
  const Path wanted{at(38, -117), at(39, -117.5)};
  EXPECT_EQ(parse_route("# out\n38-00.0N 117-00.0W\r\n\n39-00.0N 117-30.0W\n").route, wanted);
  EXPECT_EQ(parse_route(R"({"type":"LineString","coordinates":[[-117,38],[-117.5,39,500]]})").route,
            wanted);
  EXPECT_EQ(parse_route(R"({"type":"FeatureCollection","features":[
      {"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[-117,38]}},
      {"type":"Feature","properties":{},"geometry":null},
      {"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[-117.5,39]}}]})")
                .route,
            wanted);
}

// One route in each form, as other programs write it.
TEST(RouteReader, reads_the_same_route_in_every_form) {
  const Path valley{at(38, -117.2), at(38.15, -117), at(38.2, -116.7)};
  for (const std::string name : {"route.gpx", "run.geojson", "line.kml"}) {
    const RouteReading reading = parse_route(seed(name));
    ASSERT_EQ(reading.route.size(), valley.size()) << name;
    for (std::size_t i = 0; i < valley.size(); ++i) {
      EXPECT_LT(geodesic(reading.route[i], valley[i]).length.metres(), 0.01) << name;
    }
    EXPECT_EQ(reading.name, "Valley run") << name;
  }
  EXPECT_EQ(parse_route(seed("track.gpx")).route, (Path{at(-17.5, 179.9), at(-17.4, -179.9)}));
}

TEST(RouteReader, says_what_it_left_out_and_what_it_took) {
  EXPECT_THAT(parse_route(seed("run.geojson")).remarks,
              testing::ElementsAre("1 point was left out", "1 altitude was left out"));
  EXPECT_THAT(parse_route(seed("track.gpx")).remarks,
              testing::ElementsAre("no route: the track was taken for it"));
  EXPECT_THAT(
      parse_route("<gpx><wpt lat=\"1\" lon=\"2\"/><wpt lat=\"1\" lon=\"3\"/></gpx>").remarks,
      testing::ElementsAre("no route: the waypoints were taken for it, in their order"));
}

TEST(RouteReader, names_mistakes_with_their_line) {
  EXPECT_THAT(message(""), HasSubstr("empty"));
  EXPECT_THAT(message("38-00.0N 117-00.0W\n"), HasSubstr("1 place"));
  EXPECT_THAT(message("38-00.0N 117-00.0W\nnowhere\n"), HasSubstr("line 2"));
  EXPECT_THAT(message(R"({"type":"LineString","coordinates":[[-117,38],
      [-117,98]]})"),
              HasSubstr("line 2"));
  EXPECT_THAT(message(R"({"type":"LineString","coordinates":[[-117,38],"here"]})"),
              HasSubstr("[longitude, latitude]"));
  EXPECT_THAT(message(R"({"type":"Polygon","coordinates":[]})"), HasSubstr("no line and no point"));
  EXPECT_THAT(message("<gpx></gpx>"), HasSubstr("0 places"));
  EXPECT_THAT(message("<gpx><rte><rtept lat=\"1\" lon=\"2\"/></rte></gpx>"), HasSubstr("1 place"));
  EXPECT_THAT(message("<gpx><rte/><rte/></gpx>"), HasSubstr("2 routes"));
  EXPECT_THAT(message("<gpx><trk/><trk/></gpx>"), HasSubstr("2 tracks"));
  EXPECT_THAT(message("<gpx><trk><trkseg/><trkseg/></trk></gpx>"), HasSubstr("2 track segments"));
  EXPECT_THAT(message("<gpx>\n<rte><rtept lat=\"91\" lon=\"2\"/></rte></gpx>"),
              HasSubstr("line 2: lat of a place"));
  EXPECT_THAT(message("<gpx><rte><rtept lon=\"2\"/></rte></gpx>"),
              HasSubstr("lat of a place is ''"));
  EXPECT_THAT(message("<gpx><rte>"), HasSubstr("broken"));
  EXPECT_THAT(message(R"({"type":"FeatureCollection","features":[
      {"type":"LineString","coordinates":[[1,2],[3,4]]},
      {"type":"LineString","coordinates":[[1,2],[3,4]]}]})"),
              HasSubstr("2 lines"));
}

}  // namespace
}  // namespace sweepwright::formats
