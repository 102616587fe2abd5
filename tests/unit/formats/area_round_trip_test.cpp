// Whatever area is written, as GeoJSON or KML, is read back as the same ground. The comparison is
// with GeographicLib's Planimeter routines, not with the writer.
#include <gtest/gtest.h>

#include <GeographicLib/PolygonArea.hpp>
#include <algorithm>
#include <cmath>
#include <random>

#include "outside_tools.hpp"
#include "support/ground.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"

namespace sweepwright::formats {
namespace {

using test::at;

std::string as_geojson(const Geometry& geometry) {
  StringSink sink;
  GeoJsonWriter writer(sink);
  writer.feature(geometry, {});
  writer.finish();
  return sink.text();
}

std::string as_kml(const Geometry& geometry) {
  StringSink sink;
  KmlWriter writer(sink, {});
  Placemark placemark;
  placemark.geometry = geometry;
  writer.placemark(placemark);
  writer.finish();
  return sink.text();
}

struct Measure {
  double perimeter_m = 0;
  double area_m2 = 0;
};

Measure measure(const Region& region) {
  Measure sum;
  const auto add = [&](const Ring& ring) {
    GeographicLib::PolygonArea polygon(GeographicLib::Geodesic::WGS84());
    for (const Position& p : ring)
      polygon.AddPoint(p.latitude().degrees(), p.longitude().degrees());
    double perimeter = 0;
    double area = 0;
    polygon.Compute(false, true, perimeter, area);
    sum.perimeter_m += perimeter;
    sum.area_m2 += area;
  };
  for (const Polygon& polygon : region.polygons) {
    add(polygon.outer);
    for (const Ring& hole : polygon.holes) add(hole);
  }
  return sum;
}

bool has_corner_near(const Region& region, Position place) {
  const auto near = [&](const Ring& ring) {
    return std::any_of(ring.begin(), ring.end(), [&](Position corner) {
      return geodesic(corner, place).length < Length::metres(0.05);
    });
  };
  return std::any_of(region.polygons.begin(), region.polygons.end(), [&](const Polygon& polygon) {
    return near(polygon.outer) || std::any_of(polygon.holes.begin(), polygon.holes.end(), near);
  });
}

void expect_same_ground(const Region& region, const std::string& text) {
  const Region back = parse_area(text).region;
  ASSERT_EQ(back.polygons.size(), region.polygons.size());
  const Measure before = measure(region);
  const Measure after = measure(back);
  // Drawn edges may be off by a metre, and corners by a centimetre.
  EXPECT_NEAR(after.area_m2, before.area_m2, 1.1 * before.perimeter_m + 1);
  EXPECT_NEAR(after.perimeter_m, before.perimeter_m, 1e-4 * before.perimeter_m + 1);
  for (std::size_t i = 0; i < region.polygons.size(); ++i) {
    EXPECT_EQ(back.polygons[i].holes.size(), region.polygons[i].holes.size());
    for (const Position& corner : region.polygons[i].outer) {
      EXPECT_TRUE(has_corner_near(back, corner))
          << corner.latitude().degrees() << " " << corner.longitude().degrees();
    }
  }
}

void expect_round_trip(const Region& region) {
  const std::string geojson = as_geojson(region);
  test::expect_rfc_7946(geojson);
  expect_same_ground(region, geojson);
  expect_same_ground(region, as_kml(region));
}

Ring ring_round(Position centre, double metres, int corners, const auto& share) {
  Ring ring;
  for (int i = 0; i < corners; ++i) {
    ring.push_back(travel(centre, TrueDirection::degrees(-360.0 * i / corners),
                          Length::metres(metres * share()))
                       .position);
  }
  return ring;
}

TEST(AreaRoundTrip, random_stars_with_and_without_holes_anywhere) {
  std::mt19937 random(31);
  std::uniform_real_distribution<double> unit(0, 1);
  for (int i = 0; i < 200; ++i) {
    SCOPED_TRACE(i);
    const double u = unit(random);
    const Position centre = i % 3 == 0   ? at(180 * u - 90, 360 * unit(random) - 180)
                            : i % 3 == 1 ? at(160 * u - 80, 180 + 0.3 * (unit(random) - 0.5))
                                         : at((u < 0.5 ? 1 : -1) * (90 - 0.3 * u), 360 * u);
    const double size = std::pow(10, 3 + 2 * unit(random));  // 1 to 100 km
    const int corners = 3 + static_cast<int>(12 * unit(random));
    Polygon polygon{ring_round(centre, size, corners, [&] { return 0.7 + 0.3 * unit(random); }),
                    {}};
    if (i % 2 == 1) {
      // Inside even where three corners come nearest to the middle.
      polygon.holes = {ring_round(centre, size, 5, [&] { return 0.1 + 0.15 * unit(random); })};
    }
    expect_round_trip(make_region({polygon}));
  }
}

TEST(AreaRoundTrip, with_an_edge_on_the_antimeridian) {
  expect_round_trip(make_region({{{at(50, 178), at(50, 180), at(51, 180), at(51, 178)}, {}}}));
  expect_round_trip(make_region({{{at(50, -180), at(50, -178), at(51, -178), at(51, -180)}, {}}}));
}

TEST(AreaRoundTrip, with_the_pole_inside_on_the_edge_or_at_a_corner) {
  for (const double sign : {1.0, -1.0}) {
    const auto polar = [&](double latitude, double longitude) {
      return at(sign * latitude, longitude);
    };
    expect_round_trip(make_region({{{polar(86, 10), polar(86, 100), polar(86, -150)}, {}}}));
    expect_round_trip(make_region({{{polar(86, -180), polar(86, -60), polar(86, 60)}, {}}}));
    expect_round_trip(make_region({{{polar(86, 30), polar(86, 120), polar(86, -150)}, {}}}));
    expect_round_trip(make_region({{{polar(86, 10), polar(86, 100), polar(90, 0)}, {}}}));
    expect_round_trip(make_region(
        {{{polar(86, 10), polar(86, 100), polar(86, 170), polar(86, -110), polar(90, 0)}, {}}}));
  }
}

TEST(AreaRoundTrip, a_belt_round_the_pole) {
  for (const double sign : {1.0, -1.0}) {
    for (const double first : {-180.0, 20.0, 170.0}) {
      Ring outer;
      Ring hole;
      for (int i = 0; i < 6; ++i) {
        outer.push_back(at(sign * (85 + 0.5 * (i % 2)), first + 60.0 * i));
        hole.push_back(at(sign * 88, first + 60.0 * i + 30));
      }
      expect_round_trip(make_region({{outer, {hole}}}));
    }
  }
}

TEST(AreaRoundTrip, several_parts) {
  expect_round_trip(make_region({{{at(0, 0), at(0, 1), at(1, 1), at(1, 0)}, {}},
                                 {{at(0, 2), at(0, 3), at(1, 3), at(1, 2)}, {}}}));
}

// A box between parallels is drawn with straight parallels, and read with them.
TEST(AreaRoundTrip, boxes_keep_their_parallels) {
  const grid::LatLonBox box{Angle::degrees(60), Angle::degrees(61), Angle::degrees(179.5),
                            Angle::degrees(-179.5)};
  for (const std::string& text : {as_geojson(box), as_kml(box)}) {
    const Region back = parse_area(text).region;
    ASSERT_EQ(back.polygons.size(), 1u);
    EXPECT_NEAR(measure(back).area_m2, area(box).square_metres(), 1.1 * measure(back).perimeter_m);
    EXPECT_TRUE(contains(back, at(60.0001, 180)));
    EXPECT_FALSE(contains(back, at(61.0001, 180)));
  }
}

// What the simplest RFC 7946 drawing of a polar cap looks like: one edge goes all the way round.
TEST(AreaRoundTrip, a_cap_drawn_with_four_corners_is_a_cap) {
  const Region cap =
      parse_area(
          R"({"type":"Polygon","coordinates":[[[-180,85],[180,85],[180,90],[-180,90],[-180,85]]]})")
          .region;
  ASSERT_EQ(cap.polygons.size(), 1u);
  EXPECT_TRUE(contains(cap, at(90, 0)));
  EXPECT_TRUE(contains(cap, at(85.001, 45)));
  EXPECT_FALSE(contains(cap, at(84.999, 45)));
  const grid::LatLonBox box{Angle::degrees(85), Angle::degrees(90), Angle::degrees(-180),
                            Angle::degrees(180)};
  EXPECT_NEAR(measure(cap).area_m2, area(box).square_metres(), 1.1 * measure(cap).perimeter_m);
}

}  // namespace
}  // namespace sweepwright::formats
