// Promises P1 to P3 of isolines.hpp; closed forms (cone, plane) and gdal_contour as witnesses.
#include "sweepwright/terrain/isolines.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <random>

#include "support/command.hpp"
#include "support/elevation.hpp"

namespace sweepwright::terrain {
namespace {

using test::at;
using test::Cone;
using test::degrees_lattice;
using test::kGap;
using test::make_tile;
using test::part_of;
using test::rolling_ground;

constexpr double kStep = 1.0 / 1200;  // 3 arc-seconds

/// A lattice of `posts` rows and columns with its middle at a place.
GeographicLattice lattice_round(Position middle, int posts, double step = kStep) {
  const double half = (posts - 1) / 2 * step;
  return degrees_lattice(middle.latitude().degrees() + half, middle.longitude().degrees() - half,
                         step);
}

ElevationTile cone_tile(Position summit) {
  return make_tile(lattice_round(summit, 81), 81, 81, Cone{summit, 1000, 0.2});
}

/// Turn from one piece of the path to the next, added up: 360 for a closed counterclockwise line.
double whole_turn_degrees(const Path& path) {
  double left = 0;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const std::size_t next = i + 2 < path.size() ? i + 2 : 1;
    left -= turn_between(geodesic(path[i], path[i + 1]).end_track,
                         geodesic(path[i + 1], path[next]).start_track)
                .degrees();
  }
  return left;
}

// Closed form: the line of a cone at height h is the circle of radius (top - h) / slope.
TEST(Isolines, OfAConeAreCirclesCounterclockwise) {
  for (const Position summit :
       {at(38.25, -117), at(0, 0), at(-17.5, 180), at(72.25, -180), at(-45, 9.5)}) {
    const std::vector<Isoline> lines =
        isolines(ElevationModel({cone_tile(summit)}), Length::metres(902.5));
    ASSERT_EQ(lines.size(), 1u);
    EXPECT_TRUE(lines[0].closed);
    EXPECT_EQ(lines[0].points.front(), lines[0].points.back());
    for (const Position point : lines[0].points) {
      // Chords between posts 93 m apart on a cone at 490 m: height is off by 0.2 x 93^2 / (8 x
      // 490).
      EXPECT_NEAR(geodesic(summit, point).length.metres(), 487.5, 93.0 * 93 / (8 * 487.5) + 0.1);
    }
    EXPECT_NEAR(whole_turn_degrees(lines[0].points), 360, 1) << summit.latitude().degrees();
  }
}

TEST(Isolines, OfAHollowRunClockwise) {
  ElevationTile tile = cone_tile(at(10, 10));
  for (float& height : tile.heights_m) height = -height;
  const std::vector<Isoline> lines = isolines(ElevationModel({tile}), Length::metres(-902.5));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_NEAR(whole_turn_degrees(lines[0].points), -360, 1);
}

TEST(Isolines, OfAPlaneAreStraightAndOpen) {
  const auto plane = [](Position place) { return 1000 * (place.latitude().degrees() - 38); };
  const GeographicLattice lattice = degrees_lattice(38.05, -117, kStep);
  const std::vector<Isoline> lines =
      isolines(ElevationModel({make_tile(lattice, 61, 61, plane)}), Length::metres(20.3));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_FALSE(lines[0].closed);
  ASSERT_EQ(lines[0].points.size(), 61u);
  for (const Position point : lines[0].points) {
    EXPECT_NEAR(point.latitude().degrees(), 38.0203, 1e-8);
  }
  // Higher ground, to the north, is on the left: the line runs from west to east.
  EXPECT_NEAR(lines[0].points.front().longitude().degrees(), -117, 1e-9);
  EXPECT_NEAR(lines[0].points.back().longitude().degrees(), -116.95, 1e-9);
}

TEST(Isolines, P1P3EveryPointHasTheHeightAndHigherGroundOnTheLeft) {
  for (const Position middle : {at(38.25, -117), at(-17.5, 180), at(70, 0)}) {
    const ElevationTile tile = make_tile(lattice_round(middle, 121), 121, 121, rolling_ground);
    const ElevationModel model({tile});
    for (const double level : {611.1, 800.7, 1010.3}) {
      const std::vector<Isoline> lines = isolines(model, Length::metres(level));
      EXPECT_FALSE(lines.empty());
      for (const Isoline& line : lines) {
        ASSERT_GE(line.points.size(), 2u);
        for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
          const GeodesicLine piece = geodesic(line.points[i], line.points[i + 1]);
          ASSERT_TRUE(height(model, line.points[i]));
          EXPECT_NEAR(height(model, line.points[i])->metres(), level, 1e-3);
          if (piece.length.metres() < 5) continue;  // a corner cut off: no room for a left side
          const Arrival half = travel(line.points[i], piece.start_track, piece.length / 2);
          const auto left = height(
              model,
              travel(half.position, half.track - Angle::degrees(90), Length::metres(1)).position);
          const auto right = height(
              model,
              travel(half.position, half.track + Angle::degrees(90), Length::metres(1)).position);
          if (left && right) {
            EXPECT_GT(left->metres(), right->metres());
          }
        }
      }
    }
  }
}

TEST(Isolines, P2EndAtAGap) {
  const Position summit = at(38.25, -117);
  ElevationTile tile = cone_tile(summit);
  ASSERT_EQ(isolines(ElevationModel({tile}), Length::metres(902.5)).size(), 1u);
  tile.heights_m[tile.index(40, 46)] = kGap;  // on the ring, 5 posts east of the summit
  const ElevationModel model({tile});
  const std::vector<Isoline> lines = isolines(model, Length::metres(902.5));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_FALSE(lines[0].closed);
  const Position gap = test::post_position(tile.lattice, 40, 46);
  for (const Position point : lines[0].points) {
    const bool inside = std::abs((point.latitude() - gap.latitude()).degrees()) < kStep * 0.999 &&
                        std::abs((point.longitude() - gap.longitude()).degrees()) < kStep * 0.999;
    EXPECT_FALSE(inside);
  }
}

std::vector<std::size_t> sizes(const std::vector<Isoline>& lines) {
  std::vector<std::size_t> all;
  for (const Isoline& line : lines) all.push_back(line.points.size());
  std::sort(all.begin(), all.end());
  return all;
}

TEST(Isolines, GoOnAcrossSeamsAndTheAntimeridian) {
  for (const Position middle : {at(38.25, -117), at(-17.5, 180), at(66, -180)}) {
    const ElevationTile whole = make_tile(lattice_round(middle, 121), 121, 121, rolling_ground);
    const std::vector<Isoline> one = isolines(ElevationModel({whole}), Length::metres(800.7));
    const std::vector<Isoline> four =
        isolines(ElevationModel({part_of(whole, 61, 60, 60, 61), part_of(whole, 0, 61, 60, 61),
                                 part_of(whole, 61, 60, 0, 61), part_of(whole, 0, 61, 0, 61)}),
                 Length::metres(800.7));
    EXPECT_EQ(sizes(four), sizes(one));
  }
}

TEST(Isolines, CloseRoundAPole) {
  const ElevationModel model({make_tile(degrees_lattice(90, -180, 1), 41, 360, [](Position place) {
    return 1000 * (place.latitude().degrees() - 50);
  })});
  const std::vector<Isoline> lines = isolines(model, Length::metres(30'500));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_TRUE(lines[0].closed);
  EXPECT_EQ(lines[0].points.size(), 361u);
  for (const Position point : lines[0].points) {
    EXPECT_NEAR(point.latitude().degrees(), 80.5, 1e-5);
  }
}

TEST(Isolines, RoundARegionAreThoseOfTheGroundThere) {
  const Position middle = at(-17.5, 180);
  const ElevationModel model({make_tile(lattice_round(middle, 241), 241, 241, rolling_ground)});
  const Region region = test::rectangle(middle, TrueDirection::degrees(30),
                                        Length::nautical_miles(3), Length::nautical_miles(2));
  const std::vector<Isoline> there = isolines(model, Length::metres(800.7), region);
  const std::vector<Isoline> all = isolines(model, Length::metres(800.7));
  EXPECT_LT(there.size(), all.size());
  std::size_t inside = 0;
  for (const Isoline& line : all) {
    for (const Position point : line.points) {
      if (!contains(region, point)) continue;
      ++inside;
      const bool found = std::any_of(there.begin(), there.end(), [&](const Isoline& part) {
        return std::find(part.points.begin(), part.points.end(), point) != part.points.end();
      });
      EXPECT_TRUE(found);
    }
  }
  EXPECT_GT(inside, 50u);
}

TEST(Isolines, AreDrawnOnceWhereLatticesLieOverEachOther) {
  const Position summit = at(38.25, -117);
  const ElevationTile fine = cone_tile(summit);
  const ElevationTile coarse =
      make_tile(lattice_round(summit, 41, 4 * kStep), 41, 41, Cone{summit, 1000, 0.2});
  EXPECT_EQ(isolines(ElevationModel({coarse, fine}), Length::metres(902.5)).size(), 1u);
}

TEST(Isolines, OfAPointAreNone) {
  ElevationTile tile = make_tile(degrees_lattice(1, 1, 0.1), 5, 5, [](Position) { return 5; });
  tile.heights_m[tile.index(2, 2)] = 10;
  EXPECT_TRUE(isolines(ElevationModel({tile}), Length::metres(10)).empty());
  EXPECT_TRUE(isolines(ElevationModel(), Length::metres(10)).empty());
  EXPECT_EQ(isolines(ElevationModel({tile}), Length::metres(7)).size(), 1u);
}

using PointSet = std::vector<std::pair<double, double>>;

bool holds_near(const PointSet& sorted, std::pair<double, double> wanted, double tolerance) {
  for (auto at = std::lower_bound(sorted.begin(), sorted.end(),
                                  std::pair{wanted.first - tolerance, -1000.0});
       at != sorted.end() && at->first <= wanted.first + tolerance; ++at) {
    if (std::abs(at->second - wanted.second) <= tolerance) return true;
  }
  return false;
}

// GDAL (Debian package gdal-bin): the crossings of gdal_contour are ours. It draws on to the outer
// edge of the outermost cells, half a step past the posts; those points are left out.
TEST(Isolines, CrossWhereGdalContourCrosses) {
  const test::TemporaryFolder folder;
  const ElevationTile tile =
      make_tile(degrees_lattice(38.1, -105.5, 0.002), 51, 51, rolling_ground);
  test::write_ascii_grid(folder.path() / "ground.asc", tile);
  const test::CommandResult drawn = test::run_command(
      "gdal_contour -q -f GeoJSON -lco COORDINATE_PRECISION=12 -fl 800.7 ground.asc lines.json",
      folder.path(), {{"PATH", "/usr/bin:/bin"}});
  ASSERT_EQ(drawn.status, 0) << drawn.standard_error << "(Debian package gdal-bin)";
  PointSet theirs;
  const auto document = nlohmann::json::parse(test::read_file(folder.path() / "lines.json"));
  for (const auto& feature : document.at("features")) {
    for (const auto& point : feature.at("geometry").at("coordinates")) {
      const double x = point[0];
      const double y = point[1];
      if (x < -105.5 || x > -105.4 || y < 38.0 || y > 38.1) continue;
      theirs.emplace_back(x, y);
    }
  }
  PointSet ours;
  for (const Isoline& line : isolines(ElevationModel({tile}), Length::metres(800.7))) {
    for (const Position point : line.points) {
      ours.emplace_back(point.longitude().degrees(), point.latitude().degrees());
    }
  }
  std::sort(theirs.begin(), theirs.end());
  std::sort(ours.begin(), ours.end());
  EXPECT_GT(ours.size(), 200u);
  constexpr double kTolerance = 1e-8;  // 1 mm
  for (const auto& point : ours) EXPECT_TRUE(holds_near(theirs, point, kTolerance)) << point.second;
  for (const auto& point : theirs) EXPECT_TRUE(holds_near(ours, point, kTolerance)) << point.second;
}

}  // namespace
}  // namespace sweepwright::terrain
