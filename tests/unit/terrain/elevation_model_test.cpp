// Promises P1 to P3 of elevation_model.hpp, P1 of elevation_tile.hpp, and GDAL as a witness.
#include "sweepwright/terrain/elevation_model.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>
#include <sstream>

#include "support/command.hpp"
#include "support/elevation.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::terrain {
namespace {

using test::at;
using test::degrees_lattice;
using test::kGap;
using test::make_tile;
using test::part_of;
using test::rolling_ground;

constexpr double kStep = 1.0 / 1200;  // 3 arc-seconds

/// North-west corners of lattices where the Earth is awkward.
std::vector<GeographicLattice> awkward_lattices() {
  return {degrees_lattice(38.25, -117, kStep),   degrees_lattice(0.02, -0.02, kStep),
          degrees_lattice(-17.5, 179.98, kStep), degrees_lattice(78.2, 16, kStep),
          degrees_lattice(90, 20, kStep),        degrees_lattice(-89.96, -180, kStep)};
}

TEST(ElevationModel, P1APlaceAtAPostHasItsHeight) {
  for (const GeographicLattice& lattice : awkward_lattices()) {
    const ElevationTile tile = make_tile(lattice, 40, 50, rolling_ground);
    const ElevationModel model({tile});
    for (int row = 0; row < tile.rows; ++row) {
      for (int column = 0; column < tile.columns; ++column) {
        const auto found = height(model, test::post_position(lattice, row, column));
        ASSERT_TRUE(found) << row << " " << column;
        // At a pole all columns are one place, and any of them may answer.
        if (lattice.north.degrees() == 90 && row == 0) continue;
        EXPECT_EQ(found->metres(), static_cast<double>(tile.heights_m[tile.index(row, column)]));
      }
    }
  }
}

TEST(ElevationModel, P1HoldsOnUtmLattices) {
  for (const Hemisphere hemisphere : {Hemisphere::north, Hemisphere::south}) {
    const UtmLattice lattice{60,
                             hemisphere,
                             Length::metres(4'200'000),
                             Length::metres(780'000),
                             Length::metres(30),
                             Length::metres(25)};
    const ElevationTile tile = make_tile(lattice, 30, 30, rolling_ground);
    const ElevationModel model({tile});
    for (int row = 0; row < 30; ++row) {
      const Position post = test::post_position(lattice, row, 29 - row);
      ASSERT_TRUE(height(model, post));
      EXPECT_EQ(height(model, post)->metres(),
                static_cast<double>(tile.heights_m[tile.index(row, 29 - row)]));
    }
    EXPECT_FALSE(height(model, at(38, 0)));
  }
}

// Closed form: a bilinear surface through posts on a plane is that plane.
TEST(ElevationModel, APlaneStaysAPlaneBetweenPosts) {
  const auto plane = [](Position place) {
    return 500 + 1000 * (place.latitude().degrees() - 38) -
           700 * (place.longitude().degrees() + 117);
  };
  const ElevationModel model({make_tile(degrees_lattice(38.05, -117, kStep), 61, 61, plane)});
  std::mt19937_64 random(3);
  std::uniform_real_distribution<double> share(0, 0.05);
  for (int i = 0; i < 500; ++i) {
    const Position place = at(38 + share(random), -117 + share(random));
    ASSERT_TRUE(height(model, place));
    EXPECT_NEAR(height(model, place)->metres(), plane(place), 2e-4);
  }
}

TEST(ElevationModel, P2AGapIsNeverFilled) {
  ElevationTile tile = make_tile(degrees_lattice(10, 20, 0.1), 4, 4, [](Position) { return 7; });
  tile.heights_m[tile.index(1, 1)] = kGap;
  const ElevationModel model({tile});
  for (const double lat : {9.95, 9.85}) {
    for (const double lon : {20.05, 20.15}) EXPECT_FALSE(height(model, at(lat, lon)));
  }
  EXPECT_FALSE(height(model, at(9.9, 20.1)));
  EXPECT_TRUE(height(model, at(9.9, 20.0)));   // on the next post
  EXPECT_TRUE(height(model, at(9.95, 20.0)));  // on a side that does not touch the gap
  EXPECT_FALSE(height(model, at(10.01, 20.05)));
  EXPECT_FALSE(height(model, at(9.75, 19.999)));
  EXPECT_FALSE(height(ElevationModel(), at(0, 0)));
}

TEST(ElevationModel, AreaPostsReachHalfAStepRoundThem) {
  const ElevationModel model({make_tile(
      degrees_lattice(10, 20, 0.1), 4, 4, [](Position) { return 7; }, PostKind::area)});
  EXPECT_TRUE(height(model, at(10.04, 19.96)));
  EXPECT_FALSE(height(model, at(10.06, 19.96)));
}

TEST(ElevationModel, P3SeamsVanishAndTheOrderOfTilesDoesNotMatter) {
  for (const GeographicLattice& lattice : awkward_lattices()) {
    const ElevationTile whole = make_tile(lattice, 41, 61, rolling_ground);
    const ElevationModel one({whole});
    // Two tiles that share a column, and two that abut without sharing a row.
    const ElevationTile west = part_of(whole, 0, 21, 0, 31);
    const ElevationTile east = part_of(whole, 0, 21, 30, 31);
    const ElevationTile south = part_of(whole, 21, 20, 0, 61);
    const ElevationModel forward({west, east, south});
    const ElevationModel backward({south, east, west});
    std::mt19937_64 random(5);
    std::uniform_real_distribution<double> row(0, 40);
    std::uniform_real_distribution<double> column(0, 60);
    for (int i = 0; i < 300; ++i) {
      const Position place = Position::at(lattice.north - row(random) * lattice.latitude_step,
                                          lattice.west + column(random) * lattice.longitude_step);
      const auto expected = height(one, place);
      ASSERT_TRUE(expected);
      ASSERT_TRUE(height(forward, place));
      ASSERT_TRUE(height(backward, place));
      // Posts' coordinates count from another tile: the last bits differ.
      EXPECT_NEAR(height(forward, place)->metres(), expected->metres(), 1e-5);
      EXPECT_NEAR(height(backward, place)->metres(), expected->metres(), 1e-5);
    }
  }
}

TEST(ElevationModel, WhereTilesOverlapTheHigherCounts) {
  const auto tile = [](double metres) {
    return make_tile(degrees_lattice(1, 1, 0.1), 3, 3, [=](Position) { return metres; });
  };
  EXPECT_EQ(height(ElevationModel({tile(5), tile(9)}), at(0.9, 1.1))->metres(), 9);
  EXPECT_EQ(height(ElevationModel({tile(9), tile(5)}), at(0.9, 1.1))->metres(), 9);
}

TEST(ElevationModel, TheFinestLatticeThatKnowsAPlaceAnswers) {
  ElevationTile coarse = make_tile(degrees_lattice(2, 1, 0.1), 21, 21, [](Position) { return 1; });
  ElevationTile fine = make_tile(degrees_lattice(1.5, 1.5, 0.01), 9, 9, [](Position) { return 2; });
  fine.heights_m[fine.index(4, 4)] = kGap;
  const ElevationModel model({coarse, fine});
  EXPECT_EQ(height(model, at(1.495, 1.505))->metres(), 2);
  EXPECT_EQ(height(model, at(1.46, 1.54))->metres(), 1);  // the finer one's gap
  EXPECT_EQ(height(model, at(1.9, 1.1))->metres(), 1);
}

TEST(ElevationModel, GoesRoundTheEarth) {
  // Columns at 0, 1 ... 359: the last one's neighbour is the first.
  const ElevationModel model({make_tile(degrees_lattice(10, 0, 1), 21, 360, [](Position place) {
    return std::abs(place.longitude().degrees());
  })});
  EXPECT_NEAR(height(model, at(0, 359.5))->metres(), 0.5, 1e-9);
  EXPECT_NEAR(height(model, at(0, -0.25))->metres(), 0.25, 1e-9);
  EXPECT_NEAR(height(model, at(0, 180))->metres(), 180, 1e-9);
}

// GDAL (Debian package gdal-bin), an independent reader and resampler.
TEST(ElevationModel, BilinearAgreesWithGdalwarp) {
  const test::TemporaryFolder folder;
  const ElevationTile tile =
      make_tile(degrees_lattice(38.1, -105.5, 0.002), 51, 51, rolling_ground);
  test::write_ascii_grid(folder.path() / "ground.asc", tile);
  const test::CommandResult warped = test::run_command(
      "gdalwarp -q -s_srs EPSG:4326 -t_srs EPSG:4326 -r bilinear -ot Float64 -te -105.49 38.01 "
      "-105.42 38.08 -tr 0.0007 0.0007 ground.asc fine.tif && "
      "gdal_translate -q -of XYZ fine.tif fine.xyz",
      folder.path(), {{"PATH", "/usr/bin:/bin"}});
  ASSERT_EQ(warped.status, 0) << warped.standard_error << "(Debian package gdal-bin)";
  const ElevationModel model({tile});
  std::istringstream lines(test::read_file(folder.path() / "fine.xyz"));
  double x = 0;
  double y = 0;
  double z = 0;
  int compared = 0;
  while (lines >> x >> y >> z) {
    const auto found = height(model, at(y, x));
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->metres(), z, 1e-3) << y << " " << x;
    ++compared;
  }
  EXPECT_EQ(compared, 100 * 100);
}

TEST(ElevationTile, P1RefusesWhatIsNoModel) {
  const auto refusal = [](auto change) {
    ElevationTile tile = make_tile(degrees_lattice(1, 1, 0.1), 3, 3, [](Position) { return 5; });
    change(tile);
    try {
      check(tile);
    } catch (const Error& error) {
      EXPECT_EQ(error.where(), "test");
      return std::string(error.message());
    }
    return std::string("none");
  };
  using testing::HasSubstr;
  EXPECT_EQ(refusal([](ElevationTile&) {}), "none");
  EXPECT_THAT(refusal([](ElevationTile& t) { t.rows = 1; }), HasSubstr("1 rows"));
  EXPECT_THAT(refusal([](ElevationTile& t) { t.rows = 4; }), HasSubstr("9 heights"));
  EXPECT_THAT(refusal([](ElevationTile& t) { t.rows = t.columns = 90'000; }),
              HasSubstr("too many"));
  EXPECT_THAT(refusal([](ElevationTile& t) { t.heights_m[4] = INFINITY; }), HasSubstr("infinite"));
  EXPECT_THAT(refusal([](ElevationTile& t) { t.lattice = degrees_lattice(91, 0, 0.1); }),
              HasSubstr("91.0000"));
  EXPECT_THAT(refusal([](ElevationTile& t) { t.lattice = degrees_lattice(1, 0, 0); }),
              HasSubstr("step"));
  EXPECT_THAT(refusal([](ElevationTile& t) { t.lattice = degrees_lattice(1, 0, NAN); }),
              HasSubstr("step"));
  EXPECT_THAT(refusal([](ElevationTile& t) { t.lattice = degrees_lattice(1, 1000, 0.1); }),
              HasSubstr("longitude 1000"));
  EXPECT_THAT(refusal([](ElevationTile& t) {
                t.lattice = UtmLattice{61,
                                       Hemisphere::north,
                                       Length::metres(1),
                                       Length::metres(1),
                                       Length::metres(1),
                                       Length::metres(1)};
              }),
              HasSubstr("zone 61"));
  EXPECT_THAT(refusal([](ElevationTile& t) {
                t.lattice = UtmLattice{13,
                                       Hemisphere::north,
                                       Length::metres(4e6),
                                       Length::metres(3e6),
                                       Length::metres(1),
                                       Length::metres(1)};
              }),
              HasSubstr("outside any UTM zone"));
}

TEST(ElevationModel, SaysWhatHeightsCountFrom) {
  ElevationTile stated = make_tile(degrees_lattice(1, 1, 0.1), 3, 3, [](Position) { return 5; });
  ElevationTile silent = stated;
  silent.vertical_reference.clear();
  EXPECT_THAT(vertical_references(ElevationModel({stated, silent, stated})),
              testing::ElementsAre("mean sea level", "not stated"));
}

}  // namespace
}  // namespace sweepwright::terrain
