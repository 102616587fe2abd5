// Routes as GeoJSON lines, points in order and lists of positions; mistakes with their line.
#include "sweepwright/formats/route_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using test::at;
using testing::HasSubstr;

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
  EXPECT_EQ(parse_route("# out\n38-00.0N 117-00.0W\r\n\n39-00.0N 117-30.0W\n"), wanted);
  EXPECT_EQ(parse_route(R"({"type":"LineString","coordinates":[[-117,38],[-117.5,39,500]]})"),
            wanted);
  EXPECT_EQ(parse_route(R"({"type":"FeatureCollection","features":[
      {"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[-117,38]}},
      {"type":"Feature","properties":{},"geometry":null},
      {"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[-117.5,39]}}]})"),
            wanted);
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
  EXPECT_THAT(message(R"({"type":"Polygon","coordinates":[]})"), HasSubstr("Polygon"));
  EXPECT_THAT(message(R"({"type":"FeatureCollection","features":[
      {"type":"LineString","coordinates":[[1,2],[3,4]]},
      {"type":"LineString","coordinates":[[1,2],[3,4]]}]})"),
              HasSubstr("2 lines"));
}

}  // namespace
}  // namespace sweepwright::formats
