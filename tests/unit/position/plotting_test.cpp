// Lines and areas as maps draw them. What is drawn is compared with GeographicLib's own lines and
// areas, which stand in no file of ours.
#include "sweepwright/position/plotting.hpp"

#include <gtest/gtest.h>

#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/GeodesicLine.hpp>
#include <GeographicLib/PolygonArea.hpp>
#include <algorithm>
#include <cmath>
#include <random>

namespace sweepwright {
namespace {

const GeographicLib::Geodesic& wgs84() {
  return GeographicLib::Geodesic::WGS84();
}

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

PlotPoint point(double longitude, double latitude) {
  return {Angle::degrees(longitude), Angle::degrees(latitude)};
}

double x(const PlotPoint& p) {
  return p.longitude.degrees();
}
double y(const PlotPoint& p) {
  return p.latitude.degrees();
}

/// Metres from a place to the straight longitude-latitude line a-b, near the place.
double metres_to_drawn(Position place, const PlotPoint& a, const PlotPoint& b) {
  const double degree = 111320;
  const double shrink = std::cos(place.latitude().radians());
  const auto near = [&](double longitude) {
    return std::remainder(longitude - place.longitude().degrees(), 360) * shrink * degree;
  };
  const double ax = near(x(a));
  const double ay = (y(a) - place.latitude().degrees()) * degree;
  // The end lies as far from the start as it was drawn.
  const double bx = ax + (x(b) - x(a)) * shrink * degree;
  const double by = (y(b) - place.latitude().degrees()) * degree;
  const double square = (bx - ax) * (bx - ax) + (by - ay) * (by - ay);
  const double along =
      square == 0 ? 0 : std::clamp(-(ax * (bx - ax) + ay * (by - ay)) / square, 0.0, 1.0);
  return std::hypot(ax + along * (bx - ax), ay + along * (by - ay));
}

double metres_to_drawn(Position place, const std::vector<PlotLine>& lines) {
  double nearest = 1e9;
  for (const PlotLine& line : lines) {
    for (std::size_t i = 1; i < line.size(); ++i) {
      nearest = std::min(nearest, metres_to_drawn(place, line[i - 1], line[i]));
    }
  }
  return nearest;
}

/// The largest distance of a geodesic, in 1000 places, from what was drawn for it.
double worst_distance(Position from, Position to, const std::vector<PlotLine>& lines) {
  const GeographicLib::GeodesicLine line =
      wgs84().InverseLine(from.latitude().degrees(), from.longitude().degrees(),
                          to.latitude().degrees(), to.longitude().degrees());
  double worst = 0;
  for (int i = 0; i <= 1000; ++i) {
    double latitude = 0;
    double longitude = 0;
    line.Position(line.Distance() * i / 1000, latitude, longitude);
    worst = std::max(worst, metres_to_drawn(at(latitude, longitude), lines));
  }
  return worst;
}

/// Area on the ellipsoid inside a ring whose edges are straight in longitude and latitude.
double ground_area(const PlotLine& ring) {
  GeographicLib::PolygonArea polygon(wgs84());
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
    constexpr int kPieces = 50;
    for (int k = 0; k < kPieces; ++k) {
      const double share = static_cast<double>(k) / kPieces;
      polygon.AddPoint(y(ring[i]) + share * (y(ring[i + 1]) - y(ring[i])),
                       x(ring[i]) + share * (x(ring[i + 1]) - x(ring[i])));
    }
  }
  double perimeter = 0;
  double area = 0;
  polygon.Compute(false, true, perimeter, area);
  return area;
}

double ground_area(const std::vector<PlotPolygon>& polygons) {
  double sum = 0;
  for (const PlotPolygon& polygon : polygons) {
    sum += ground_area(polygon.outer);
    for (const PlotLine& hole : polygon.holes) sum += ground_area(hole);
  }
  return sum;
}

/// Planimeter's area of a ring of geodesics.
double planimeter(const Ring& ring) {
  GeographicLib::PolygonArea polygon(wgs84());
  for (const Position& p : ring) polygon.AddPoint(p.latitude().degrees(), p.longitude().degrees());
  double perimeter = 0;
  double area = 0;
  polygon.Compute(false, true, perimeter, area);
  return area;
}

double perimeter(const Region& region) {
  double sum = 0;
  const auto add = [&](const Ring& ring) {
    Path path = ring;
    path.push_back(ring.front());
    sum += length(path).metres();
  };
  for (const Polygon& polygon : region.polygons) {
    add(polygon.outer);
    for (const Ring& hole : polygon.holes) add(hole);
  }
  return sum;
}

double shoelace(const PlotLine& ring) {
  double twice = 0;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
    twice += x(ring[i]) * y(ring[i + 1]) - x(ring[i + 1]) * y(ring[i]);
  }
  return twice / 2;
}

/// What RFC 7946 section 3.1.6 wants of every ring, and our own promise on the limits.
void expect_well_drawn(const std::vector<PlotPolygon>& polygons) {
  const auto check = [](const PlotLine& ring, bool counterclockwise) {
    ASSERT_GE(ring.size(), 4u);
    EXPECT_EQ(ring.front(), ring.back());
    EXPECT_EQ(shoelace(ring) > 0, counterclockwise);
    for (const PlotPoint& p : ring) {
      EXPECT_LE(std::abs(x(p)), 180);
      EXPECT_LE(std::abs(y(p)), 90);
    }
  };
  EXPECT_FALSE(polygons.empty());
  for (const PlotPolygon& polygon : polygons) {
    check(polygon.outer, true);
    for (const PlotLine& hole : polygon.holes) check(hole, false);
  }
}

/// Draws a region and compares the drawing with Planimeter's area of its rings.
std::vector<PlotPolygon> checked_drawing(const Region& region) {
  const std::vector<PlotPolygon> drawn = plotted(region);
  expect_well_drawn(drawn);
  double expected = 0;
  for (const Polygon& polygon : region.polygons) {
    expected += planimeter(polygon.outer);
    for (const Ring& hole : polygon.holes) expected += planimeter(hole);
  }
  // An edge may be off by the tolerance all along.
  EXPECT_NEAR(ground_area(drawn), expected, perimeter(region) * kPlottingTolerance.metres() + 1);
  EXPECT_NEAR(area(region).square_metres(), expected, 1);
  return drawn;
}

Region region_of(Ring outer, std::vector<Ring> holes = {}) {
  return make_region({Polygon{std::move(outer), std::move(holes)}});
}

bool has_point(const PlotLine& line, const PlotPoint& p) {
  return std::find(line.begin(), line.end(), p) != line.end();
}

TEST(PlottedPath, straight_lines_leave_a_geodesic_that_runs_east_at_60_north) {
  // 40 NM along the parallel of 60 N: 1.3288 degrees of longitude.
  const Path path{at(60, 10), at(60, 11.3288)};
  const std::vector<PlotLine> bare{{point(10, 60), point(11.3288, 60)}};
  EXPECT_NEAR(worst_distance(path[0], path[1], bare), 190, 15);
  const std::vector<PlotLine> drawn = plotted(path);
  ASSERT_EQ(drawn.size(), 1u);
  EXPECT_LE(worst_distance(path[0], path[1], drawn), 1.0);
  EXPECT_EQ(drawn[0].front(), point(10, 60));
  EXPECT_NEAR(x(drawn[0].back()), 11.3288, 1e-12);
}

TEST(PlottedPath, a_geodesic_across_the_equator_is_followed_though_its_middle_lies_on_the_line) {
  const Path path{at(-10, 0), at(10, 20)};
  EXPECT_LE(worst_distance(path[0], path[1], plotted(path)), 1.0);
}

TEST(PlottedPath, a_meridian_needs_no_points) {
  EXPECT_EQ(plotted({at(10, 20), at(15, 20)}),
            (std::vector<PlotLine>{{point(20, 10), point(20, 15)}}));
}

TEST(PlottedPath, is_cut_at_the_antimeridian) {
  const Path path{at(-17, 179), at(-16, -178)};
  const std::vector<PlotLine> drawn = plotted(path);
  ASSERT_EQ(drawn.size(), 2u);
  EXPECT_EQ(x(drawn[0].back()), 180);
  EXPECT_EQ(x(drawn[1].front()), -180);
  EXPECT_EQ(y(drawn[0].back()), y(drawn[1].front()));
  EXPECT_LE(worst_distance(path[0], path[1], drawn), 1.0);
}

TEST(PlottedPath, that_crosses_again_and_again_is_cut_each_time) {
  const std::vector<PlotLine> drawn =
      plotted({at(0, 179.9), at(0.1, -179.9), at(0.2, 179.9), at(0.3, -179.9)});
  ASSERT_EQ(drawn.size(), 4u);
  for (const PlotLine& line : drawn) {
    for (const PlotPoint& p : line) EXPECT_GT(x(p) * x(line.front()), 0);
  }
}

TEST(PlottedPath, that_ends_on_the_antimeridian_is_not_cut) {
  const std::vector<PlotLine> east{{point(179, 5), point(180, 5)}};
  const std::vector<PlotLine> from_west = plotted({at(0, 179), at(0, 180)});
  ASSERT_EQ(from_west.size(), 1u);
  EXPECT_EQ(from_west[0].back(), point(180, 0));
  const std::vector<PlotLine> from_east = plotted({at(0, -179), at(0, 180)});
  ASSERT_EQ(from_east.size(), 1u);
  EXPECT_EQ(from_east[0].back(), point(-180, 0));
}

TEST(PlottedPath, over_the_pole_goes_up_one_meridian_and_down_the_other) {
  const std::vector<PlotLine> drawn = plotted({at(85, 10), at(86, -170)});
  ASSERT_EQ(drawn.size(), 1u);
  EXPECT_EQ(drawn[0], (PlotLine{point(10, 85), point(10, 90), point(-170, 90), point(-170, 86)}));
}

TEST(PlottedPath, near_the_pole_is_followed) {
  const Path path{at(89.9, 10), at(89.95, 150)};
  EXPECT_LE(worst_distance(path[0], path[1], plotted(path)), 1.0);
}

TEST(PlottedRegion, far_from_seams_keeps_its_corners) {
  const Ring ring{at(38, -117), at(38, -116), at(39, -116), at(39, -117)};
  const std::vector<PlotPolygon> drawn = checked_drawing(region_of(ring));
  ASSERT_EQ(drawn.size(), 1u);
  for (const Position& p : ring) {
    EXPECT_TRUE(std::any_of(drawn[0].outer.begin(), drawn[0].outer.end(), [&](const PlotPoint& q) {
      return std::abs(x(q) - p.longitude().degrees()) < 1e-11 && q.latitude == p.latitude();
    }));
  }
}

TEST(PlottedRegion, across_the_antimeridian_becomes_two_parts_with_the_same_cut) {
  const Region region = region_of({at(-18, 179), at(-18, -179), at(-17, -179), at(-17, 179)});
  const std::vector<PlotPolygon> drawn = checked_drawing(region);
  ASSERT_EQ(drawn.size(), 2u);
  std::vector<double> cuts[2];
  for (int i = 0; i < 2; ++i) {
    for (const PlotPoint& p : drawn[static_cast<std::size_t>(i)].outer) {
      if (std::abs(x(p)) == 180) cuts[i].push_back(y(p));
    }
    std::sort(cuts[i].begin(), cuts[i].end());
    cuts[i].erase(std::unique(cuts[i].begin(), cuts[i].end()), cuts[i].end());
  }
  ASSERT_EQ(cuts[0].size(), 2u);
  ASSERT_EQ(cuts[1].size(), 2u);
  EXPECT_NEAR(cuts[0][0], cuts[1][0], 1e-9);
  EXPECT_NEAR(cuts[0][1], cuts[1][1], 1e-9);
}

TEST(PlottedRegion, with_an_edge_on_the_antimeridian_stays_whole) {
  const std::vector<PlotPolygon> west =
      checked_drawing(region_of({at(50, 178), at(50, 180), at(51, 180), at(51, 178)}));
  ASSERT_EQ(west.size(), 1u);
  EXPECT_TRUE(has_point(west[0].outer, point(180, 50)));
  const std::vector<PlotPolygon> east =
      checked_drawing(region_of({at(50, -180), at(50, -178), at(51, -178), at(51, -180)}));
  ASSERT_EQ(east.size(), 1u);
  EXPECT_TRUE(has_point(east[0].outer, point(-180, 50)));
  // The same with another corner first.
  EXPECT_EQ(
      checked_drawing(region_of({at(50, -178), at(51, -178), at(51, -180), at(50, -180)})).size(),
      1u);
}

TEST(PlottedRegion, that_crosses_the_antimeridian_with_teeth_is_cut_into_each) {
  // A comb whose back lies west of the line and whose two teeth lie across it.
  const Region comb = region_of({at(0, 179.5), at(0, -179.5), at(0.2, -179.5), at(0.2, 179.8),
                                 at(0.4, 179.8), at(0.4, -179.5), at(0.6, -179.5), at(0.6, 179.5)});
  EXPECT_EQ(checked_drawing(comb).size(), 3u);
}

TEST(PlottedRegion, round_a_pole_is_two_halves_closed_along_it) {
  for (const double hemisphere : {1.0, -1.0}) {
    for (const double first : {-180.0, -60.0, 100.0, 179.0}) {
      Ring ring;
      for (int i = 0; i < 6; ++i) ring.push_back(at(hemisphere * (84 + i % 2), first + 60.0 * i));
      const std::vector<PlotPolygon> drawn = checked_drawing(region_of(ring));
      ASSERT_EQ(drawn.size(), 2u);
      for (const PlotPolygon& half : drawn) {
        const double side = std::copysign(180, x(half.outer[1]) + x(half.outer[2]));
        EXPECT_TRUE(has_point(half.outer, point(side, hemisphere * 90)));
        EXPECT_TRUE(has_point(half.outer, point(0, hemisphere * 90)));
      }
    }
  }
}

TEST(PlottedRegion, with_the_pole_on_its_boundary_is_drawn_along_it) {
  // A corner on the pole; sectors of 90 and of 240 degrees.
  EXPECT_EQ(checked_drawing(region_of({at(86, 10), at(86, 100), at(90, 0)})).size(), 1u);
  checked_drawing(region_of({at(86, 10), at(86, 100), at(86, 170), at(86, -110), at(90, 0)}));
  checked_drawing(region_of({at(90, 0), at(86, -180), at(86, -90), at(86, 0), at(86, 60)}));
  // An edge through the pole.
  checked_drawing(region_of({at(86, 30), at(86, 120), at(86, -150)}));
  checked_drawing(region_of({at(-86, 120), at(-86, 30), at(-86, -60)}));
}

TEST(PlottedRegion, holes_are_kept_and_run_clockwise) {
  const Ring outer{at(10, 10), at(10, 12), at(12, 12), at(12, 10)};
  const Ring hole{at(11, 11), at(11, 11.5), at(11.5, 11.5), at(11.5, 11)};
  const std::vector<PlotPolygon> drawn = checked_drawing(region_of(outer, {hole}));
  ASSERT_EQ(drawn.size(), 1u);
  EXPECT_EQ(drawn[0].holes.size(), 1u);
}

TEST(PlottedRegion, a_hole_across_the_antimeridian_opens_both_parts) {
  const Ring outer{at(-20, 178), at(-20, -178), at(-16, -178), at(-16, 178)};
  const Ring across{at(-19, 179), at(-19, -179), at(-17, -179), at(-17, 179)};
  EXPECT_EQ(checked_drawing(region_of(outer, {across})).size(), 2u);
  const Ring beside{at(-19, 178.5), at(-19, 179.5), at(-17, 179.5), at(-17, 178.5)};
  const std::vector<PlotPolygon> drawn = checked_drawing(region_of(outer, {beside}));
  ASSERT_EQ(drawn.size(), 2u);
  EXPECT_EQ(drawn[0].holes.size() + drawn[1].holes.size(), 1u);
}

TEST(PlottedRegion, a_hole_round_the_pole_leaves_a_belt) {
  Ring outer;
  Ring hole;
  for (int i = 0; i < 8; ++i) {
    outer.push_back(at(84, 45.0 * i + 20));
    hole.push_back(at(88, 45.0 * i + 20));
  }
  const std::vector<PlotPolygon> drawn = checked_drawing(region_of(outer, {hole}));
  EXPECT_EQ(drawn.size(), 2u);
  for (const PlotPolygon& polygon : drawn) {
    for (const PlotPoint& p : polygon.outer) EXPECT_LT(y(p), 89);
  }
}

TEST(PlottedRegion, random_stars_anywhere_keep_their_area) {
  std::mt19937 random(20261);
  std::uniform_real_distribution<double> unit(0, 1);
  for (int i = 0; i < 300; ++i) {
    // Centres gather at the antimeridian and the poles, where drawings go wrong.
    const double u = unit(random);
    const Position centre = i % 3 == 0   ? at(180 * u - 90, 360 * unit(random) - 180)
                            : i % 3 == 1 ? at(160 * u - 80, 180 + 0.5 * (unit(random) - 0.5))
                                         : at((u < 0.5 ? 1 : -1) * (90 - 0.5 * u), 360 * u);
    const double size = std::pow(10, 2.5 + 2.8 * unit(random));  // 300 m to 200 km
    const int corners = 3 + static_cast<int>(15 * unit(random));
    Ring ring;
    for (int k = 0; k < corners; ++k) {
      ring.push_back(travel(centre, TrueDirection::degrees(-360.0 * k / corners),
                            Length::metres(size * (0.4 + 0.6 * unit(random))))
                         .position);
    }
    std::vector<Ring> holes;
    if (i % 2 == 1) {
      // Inside even where three corners come nearest to the middle.
      holes.emplace_back();
      for (int k = 0; k < 5; ++k) {
        holes[0].push_back(travel(centre, TrueDirection::degrees(-72.0 * k),
                                  Length::metres(size * (0.05 + 0.1 * unit(random))))
                               .position);
      }
    }
    SCOPED_TRACE(i);
    checked_drawing(region_of(ring, holes));
  }
}

TEST(PlottedRegion, gives_the_same_numbers_twice) {
  const Region region = region_of({at(-18, 179), at(-18, -179), at(-17, -179), at(-17, 179)});
  const std::vector<PlotPolygon> once = plotted(region);
  const std::vector<PlotPolygon> twice = plotted(region);
  ASSERT_EQ(once.size(), twice.size());
  for (std::size_t i = 0; i < once.size(); ++i) EXPECT_EQ(once[i].outer, twice[i].outer);
}

TEST(FromPlottedEdges, a_parallel_stays_a_parallel) {
  const Ring ring = from_plotted_edges({at(60, 10), at(60, 15), at(61, 15), at(61, 10)});
  EXPECT_EQ(ring.front(), at(60, 10));
  double worst = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Position a = ring[i];
    const Position b = ring[(i + 1) % ring.size()];
    if (a.latitude() != b.latitude()) continue;
    const std::vector<PlotLine> parallel{
        {{a.longitude(), a.latitude()}, {b.longitude(), b.latitude()}}};
    worst = std::max(worst, worst_distance(a, b, parallel));
  }
  EXPECT_GT(worst, 0.1);
  EXPECT_LE(worst, 1.0);
}

TEST(FromPlottedEdges, a_drawn_line_across_the_equator_is_followed) {
  const Ring ring = from_plotted_edges({at(-10, 0), at(10, 20), at(10, 0)});
  const std::vector<PlotLine> meant{{point(0, -10), point(20, 10), point(0, 10), point(0, -10)}};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    EXPECT_LE(worst_distance(ring[i], ring[(i + 1) % ring.size()], meant), 1.0);
  }
}

TEST(FromPlottedEdges, takes_the_shorter_way_across_the_antimeridian) {
  const Ring ring = from_plotted_edges({at(0, 179), at(0, -179), at(1, -179), at(1, 179)});
  for (const Position& p : ring) EXPECT_GE(std::abs(p.longitude().degrees()), 179);
}

TEST(FromPlottedEdges, of_a_drawing_adds_nothing) {
  const Ring ring{at(60, 10), at(60, 11.5), at(61, 11.5), at(61, 10)};
  const std::vector<PlotPolygon> drawn = plotted(region_of(ring));
  Ring corners;
  for (std::size_t i = 0; i + 1 < drawn[0].outer.size(); ++i) {
    corners.push_back(Position::at(drawn[0].outer[i].latitude, drawn[0].outer[i].longitude));
  }
  EXPECT_EQ(from_plotted_edges(corners).size(), corners.size());
}

}  // namespace
}  // namespace sweepwright
