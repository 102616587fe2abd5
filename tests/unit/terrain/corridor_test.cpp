// Promises P1 to P3 of corridor.hpp: a spike is planted, and must be found; a gap, and must be
// told.
#include "sweepwright/terrain/corridor.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "support/elevation.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::terrain {
namespace {

using test::at;
using test::degrees_lattice;
using test::kGap;
using test::make_tile;
using test::part_of;

constexpr float kSpike = 5000;

using Random = std::mt19937_64;

double uniform(Random& random, double least, double most) {
  return std::uniform_real_distribution<double>(least, most)(random);
}

int whole(Random& random, int least, int most) {
  return std::uniform_int_distribution<int>(least, most)(random);
}

/// A search somewhere: flat ground round a place, a path over it, a corridor.
struct Situation {
  ElevationTile ground;
  Path path;
  CorridorOptions options;
};

/// A flat tile of about 12 km round `middle`, its columns between half and twice as wide as its
/// rows.
ElevationTile ground_round(Position middle, PostKind posts, Random& random) {
  const double cosine = std::cos(middle.latitude().radians());
  const double step = uniform(random, 1.0 / 1200, 1.0 / 400);
  const double longitude_step = step * uniform(random, 0.5, 2) / std::max(cosine, 0.01);
  const int rows = static_cast<int>(0.11 / step) | 1;
  const int columns = std::min(static_cast<int>(0.11 / std::max(cosine, 0.01) / longitude_step) | 1,
                               static_cast<int>(359 / longitude_step));
  const double north = std::min(90.0, middle.latitude().degrees() + rows / 2 * step);
  const GeographicLattice lattice{Angle::degrees(std::max(north, -90 + (rows - 1) * step)),
                                  middle.longitude() - Angle::degrees(columns / 2 * longitude_step),
                                  Angle::degrees(step), Angle::degrees(longitude_step)};
  return make_tile(
      lattice, rows, columns, [](Position) { return 100; }, posts);
}

Situation situation(Position middle, Random& random) {
  Situation made;
  made.ground =
      ground_round(middle, whole(random, 0, 1) == 0 ? PostKind::point : PostKind::area, random);
  made.path.push_back(middle);
  for (int legs = whole(random, 1, 3); legs > 0; --legs) {
    made.path.push_back(travel(made.path.back(), TrueDirection::degrees(uniform(random, 0, 360)),
                               Length::metres(uniform(random, 30, 1500)))
                            .position);
  }
  made.options.half_width =
      whole(random, 0, 4) == 0 ? Length() : Length::metres(uniform(random, 1, 1500));
  if (whole(random, 0, 1) == 0) made.options.piece = Length::metres(uniform(random, 50, 3000));
  return made;
}

/// Any place within the corridor; every third at its very edge, every third under the line.
Position place_in_corridor(const Situation& here, Random& random) {
  const auto leg =
      static_cast<std::size_t>(whole(random, 0, static_cast<int>(here.path.size()) - 2));
  const GeodesicLine line = geodesic(here.path[leg], here.path[leg + 1]);
  const Arrival on = travel(here.path[leg], line.start_track, line.length * uniform(random, 0, 1));
  const int which = whole(random, 0, 2);
  const double share = which == 0 ? 0 : which == 1 ? 1 : uniform(random, 0, 1);
  const Angle aside = Angle::degrees(which == 1 ? 90 : uniform(random, 0, 360));
  return travel(on.position, on.track + aside, here.options.half_width * share).position;
}

struct PostName {
  int row;
  int column;
};

/// A post of the cell that holds the place.
std::optional<PostName> post_of_cell(const ElevationTile& tile, Position place, Random& random) {
  const auto& lattice = std::get<GeographicLattice>(tile.lattice);
  const double v = (lattice.north - place.latitude()) / lattice.latitude_step;
  const double u =
      normalized_360(place.longitude() - lattice.west).degrees() / lattice.longitude_step.degrees();
  const PostName post{static_cast<int>(std::floor(v)) + whole(random, 0, 1),
                      static_cast<int>(std::floor(u)) + whole(random, 0, 1)};
  if (post.row < 0 || post.row >= tile.rows || post.column < 0 || post.column >= tile.columns) {
    return std::nullopt;
  }
  return post;
}

/// The tile whole, or cut into four that share their edge posts or abut.
ElevationModel model_of(const ElevationTile& tile, Random& random) {
  if (whole(random, 0, 2) == 0) return ElevationModel({tile});
  const int row = whole(random, 2, tile.rows - 3);
  const int column = whole(random, 2, tile.columns - 3);
  const int shared = whole(random, 0, 1);
  return ElevationModel({part_of(tile, row, tile.rows - row, column, tile.columns - column),
                         part_of(tile, 0, row + shared, 0, column + shared),
                         part_of(tile, 0, row + shared, column, tile.columns - column),
                         part_of(tile, row, tile.rows - row, 0, column + shared)});
}

std::vector<Position> places(Random& random) {
  std::vector<Position> all = {at(38.25, -117), at(0, 0),       at(-17.5, 180),  at(72, -180),
                               at(84.5, 31),    at(-88.9, -75), at(89.95, 179.9)};
  for (int i = 0; i < 5; ++i) {
    all.push_back(at(uniform(random, -88, 88), uniform(random, -180, 180)));
  }
  return all;
}

TEST(Corridor, P1APlantedSpikeIsFound) {
  Random random(11);
  int planted = 0;
  for (int round = 0; round < 200; ++round) {
    for (const Position middle : places(random)) {
      Situation here = situation(middle, random);
      const Position place = place_in_corridor(here, random);
      const std::optional<PostName> post = post_of_cell(here.ground, place, random);
      if (!post) continue;
      here.ground.heights_m[here.ground.index(post->row, post->column)] = kSpike;
      const Corridor corridor =
          make_corridor(model_of(here.ground, random), here.path, here.options);
      const auto found = highest(corridor);
      ASSERT_TRUE(found);
      ASSERT_EQ(found->height.metres(), static_cast<double>(kSpike))
          << "latitude " << middle.latitude().degrees() << " round " << round;
      EXPECT_LT(geodesic(found->position,
                         test::post_position(here.ground.lattice, post->row, post->column))
                    .length.metres(),
                1e-3);
      ++planted;
    }
  }
  EXPECT_GT(planted, 2000);
}

TEST(Corridor, P2AGapIsNeverKnownGround) {
  Random random(12);
  int planted = 0;
  for (int round = 0; round < 200; ++round) {
    for (const Position middle : places(random)) {
      Situation here = situation(middle, random);
      const Position place = place_in_corridor(here, random);
      const std::optional<PostName> post = post_of_cell(here.ground, place, random);
      if (!post) continue;
      here.ground.heights_m[here.ground.index(post->row, post->column)] = kGap;
      const ElevationModel model = model_of(here.ground, random);
      // A gap that only bounds the cell may leave the place known, where posts stand for areas.
      if (height(model, place)) continue;
      EXPECT_FALSE(known(make_corridor(model, here.path, here.options)))
          << "latitude " << middle.latitude().degrees() << " round " << round;
      ++planted;
    }
  }
  EXPECT_GT(planted, 1300);
}

/// Distance from the nearest place of the path, on the gnomonic plane, where legs are straight;
/// good to a millimetre over these few kilometres.
Length distance_from(const Path& path, Position place) {
  const LocalPlane plane(path.front());
  const PlanePoint p = plane.to_plane(place);
  double least = 1e9;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const PlanePoint a = plane.to_plane(path[i]);
    const PlanePoint b = plane.to_plane(path[i + 1]);
    const double x = (b.right - a.right).metres();
    const double y = (b.up - a.up).metres();
    const double share =
        ((p.right - a.right).metres() * x + (p.up - a.up).metres() * y) / (x * x + y * y);
    const double at = std::clamp(share, 0.0, 1.0);
    least = std::min(
        least, std::hypot((p.right - a.right).metres() - at * x, (p.up - a.up).metres() - at * y));
  }
  return Length::metres(least);
}

// Brute force over every post of the box round the corridor.
TEST(Corridor, IsNoWiderThanItSays) {
  Random random(13);
  for (const Position middle : {at(38.25, -117), at(-17.5, 180), at(72, -180), at(84.5, 31)}) {
    for (int round = 0; round < 2; ++round) {
      Situation here = situation(middle, random);
      here.options.half_width = Length::metres(uniform(random, 0, 800));
      // Heights grow with distance from the path: the highest found is the farthest that counts.
      for (int row = 0; row < here.ground.rows; ++row) {
        for (int column = 0; column < here.ground.columns; ++column) {
          const Position post = test::post_position(here.ground.lattice, row, column);
          here.ground.heights_m[here.ground.index(row, column)] =
              static_cast<float>(distance_from(here.path, post).metres());
        }
      }
      const auto& lattice = std::get<GeographicLattice>(here.ground.lattice);
      const double diagonal =
          geodesic(middle, Position::at(middle.latitude() - lattice.latitude_step,
                                        middle.longitude() + lattice.longitude_step))
              .length.metres();
      const Corridor corridor =
          make_corridor(ElevationModel({here.ground}), here.path, here.options);
      EXPECT_TRUE(known(corridor));
      const double width = here.options.half_width.metres();
      // Within the corridor by promise; beyond it by what the header allows and a cell's diagonal.
      EXPECT_GT(highest(corridor)->height.metres(), width);
      EXPECT_LT(highest(corridor)->height.metres(), 1.01 * width + 2 + 1.02 * diagonal)
          << "latitude " << middle.latitude().degrees();
    }
  }
}

TEST(Corridor, PiecesFollowEachOtherAlongThePath) {
  const Path path = {at(38, -117), at(38.05, -117), at(38.05, -116.9)};
  const ElevationModel model(
      {make_tile(degrees_lattice(38.2, -117.2, 0.005), 80, 100, test::rolling_ground)});
  const Corridor corridor = make_corridor(model, path);
  Length before;
  int leg = 0;
  for (const CorridorPiece& piece : corridor.pieces) {
    EXPECT_EQ(piece.from, before);
    EXPECT_GT(piece.to, piece.from);
    EXPECT_NEAR(geodesic(piece.start, piece.end).length.metres(), (piece.to - piece.from).metres(),
                1e-6);
    EXPECT_GE(piece.leg, leg);
    ASSERT_TRUE(piece.highest && piece.below);
    EXPECT_GE(piece.highest->height, piece.below->height);
    // P3: a height of a post, no mixture.
    EXPECT_EQ(piece.highest->height, height(model, piece.highest->position));
    // What lies under the line is no lower than the surface there.
    EXPECT_GE(piece.below->height, *height(model, piece.start));
    before = piece.to;
    leg = piece.leg;
  }
  EXPECT_NEAR(before.metres(), length(path).metres(), 1e-6);
  EXPECT_EQ(corridor.pieces.front().start, path.front());
  EXPECT_EQ(corridor.pieces.back().end, path.back());
  EXPECT_TRUE(known(corridor));
}

TEST(Corridor, IsKnownAcrossLatticesThatMeet) {
  // As where the columns of a series of tiles become wider: both have posts at 50 N.
  const auto flat = [](Position) { return 100; };
  const ElevationTile south = make_tile(degrees_lattice(50, 10, 0.002), 101, 101, flat);
  ElevationTile north = make_tile(degrees_lattice(50.2, 10, 0.002), 101, 51, flat);
  std::get<GeographicLattice>(north.lattice).longitude_step = Angle::degrees(0.004);
  const Path path = {at(49.9, 10.1), at(50.1, 10.11)};
  EXPECT_TRUE(known(make_corridor(ElevationModel({south, north}), path)));
  EXPECT_TRUE(known(make_corridor(ElevationModel({north, south}), path)));
  EXPECT_FALSE(known(make_corridor(ElevationModel({south}), path)));
  // A gap of the one is filled by the other only where the other knows it.
  const ElevationTile both = make_tile(degrees_lattice(50.2, 10, 0.01), 41, 21, flat);
  north.heights_m[north.index(60, 27)] = kGap;
  EXPECT_FALSE(known(make_corridor(ElevationModel({south, north}), path)));
  EXPECT_TRUE(known(make_corridor(ElevationModel({south, north, both}), path)));
}

TEST(Corridor, WorksOnUtmLatticesAndWithOthersBesideThem) {
  UtmLattice lattice{60,
                     Hemisphere::south,
                     Length::metres(7'900'000),
                     Length::metres(750'000),
                     Length::metres(30),
                     Length::metres(30)};
  ElevationTile tile = make_tile(lattice, 400, 600, [](Position) { return 100; });
  tile.heights_m[tile.index(200, 300)] = kSpike;
  const Position spike = test::post_position(lattice, 200, 300);
  const TrueDirection track = TrueDirection::degrees(70);
  const auto beside = [&](double metres) {
    const Position middle =
        travel(spike, track + Angle::degrees(90), Length::metres(metres)).position;
    return Path{travel(middle, track, Length::kilometres(-3)).position,
                travel(middle, track, Length::kilometres(3)).position};
  };
  CorridorOptions options;
  options.half_width = Length::metres(500);
  for (const double metres : {0.0, 300.0, 499.0, -499.0}) {
    const Corridor corridor = make_corridor(ElevationModel({tile}), beside(metres), options);
    EXPECT_EQ(highest(corridor)->height.metres(), static_cast<double>(kSpike)) << metres;
    EXPECT_TRUE(known(corridor));
  }
  EXPECT_EQ(highest(make_corridor(ElevationModel({tile}), beside(560), options))->height.metres(),
            100);
  // The line runs on past the tile's edge, over a coarser geographic one.
  const Path far = {spike, travel(spike, track, Length::kilometres(20)).position};
  EXPECT_FALSE(known(make_corridor(ElevationModel({tile}), far, options)));
  const ElevationTile coarse = make_tile(
      degrees_lattice(spike.latitude().degrees() + 0.5, spike.longitude().degrees() - 0.5, 0.01),
      101, 101, [](Position) { return 50; });
  EXPECT_TRUE(known(make_corridor(ElevationModel({coarse, tile}), far, options)));
}

TEST(Corridor, WithoutAModelNothingIsKnown) {
  const Corridor corridor = make_corridor(ElevationModel(), {at(1, 1), at(1, 2)});
  EXPECT_FALSE(known(corridor));
  EXPECT_FALSE(highest(corridor));
}

TEST(Corridor, RefusesWhatIsNoCorridor) {
  const ElevationModel model;
  const Path path = {at(1, 1), at(1, 2)};
  EXPECT_THROW(make_corridor(model, {at(1, 1)}), Error);
  EXPECT_THROW(make_corridor(model, {at(1, 1), at(1, 1)}), Error);
  EXPECT_THROW(make_corridor(model, path, {Length::metres(-1), {}}), Error);
  EXPECT_THROW(make_corridor(model, path, {Length::kilometres(101), {}}), Error);
  EXPECT_THROW(make_corridor(model, path, {Length::metres(NAN), {}}), Error);
  EXPECT_THROW(make_corridor(model, path, {Length::metres(1), Length::metres(-1)}), Error);
  EXPECT_THROW(make_corridor(model, path, {Length::metres(1), Length::metres(0.01)}), Error);
}

}  // namespace
}  // namespace sweepwright::terrain
