// What doubts.hpp finds strange, and that it leaves real ground alone.
#include "sweepwright/terrain/doubts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/check_table.hpp"
#include "support/elevation.hpp"
#include "sweepwright/formats/elevation_reader.hpp"

namespace sweepwright::terrain {
namespace {

using test::degrees_lattice;
using test::make_tile;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr double kStep = 1.0 / 1200;

ElevationTile real_ground(formats::HeightUnit unit) {
  const std::string path = (test::checks() / "terrain" / "sangre_de_cristo_feet.asc").string();
  return formats::read_elevation_files({path}, {unit, {}}).model.tiles().front();
}

// Real ground: the file's heights are feet, and nothing in it says so.
TEST(Doubts, FindFeetThatAreReadAsMetres) {
  EXPECT_THAT(doubts(real_ground(formats::HeightUnit::metre)),
              AllOf(Contains(AllOf(HasSubstr("14176 m"), HasSubstr("feet?"))),
                    Contains(AllOf(HasSubstr("steeper than 45"), HasSubstr("feet?")))));
  EXPECT_THAT(doubts(real_ground(formats::HeightUnit::foot)), IsEmpty());
}

TEST(Doubts, FindFeetWhereNoHeightIsImpossible) {
  ElevationTile tile = real_ground(formats::HeightUnit::metre);
  for (float& height : tile.heights_m) height -= 8000;
  EXPECT_THAT(doubts(tile), Contains(HasSubstr("steeper than 45")));
}

TEST(Doubts, FindAGapThatCarriesANumber) {
  ElevationTile tile =
      make_tile(degrees_lattice(38, -105, kStep), 50, 50, [](Position) { return 2000; });
  EXPECT_THAT(doubts(tile), IsEmpty());
  tile.heights_m[tile.index(20, 30)] = 0;
  EXPECT_THAT(doubts(tile), ElementsAre(AllOf(HasSubstr("jump by 2000 m"), HasSubstr("37-59.0"))));
  tile.heights_m[tile.index(20, 30)] = -9999;
  EXPECT_THAT(doubts(tile), Contains(HasSubstr("below any dry land")));
  tile.heights_m[tile.index(20, 30)] = test::kGap;
  EXPECT_THAT(doubts(tile), IsEmpty());
}

TEST(Doubts, FindTilesThatDisagree) {
  ElevationTile west =
      make_tile(degrees_lattice(38, -105, kStep), 50, 50, [](Position) { return 500; });
  ElevationTile east = west;
  std::get<GeographicLattice>(east.lattice).west = Angle::degrees(-105 + 49 * kStep);
  west.source = "west";
  east.source = "east";
  EXPECT_THAT(doubts(ElevationModel({west, east})), IsEmpty());
  for (float& height : east.heights_m) height /= 0.3048F;
  EXPECT_THAT(doubts(ElevationModel({west, east})),
              ElementsAre(AllOf(HasSubstr("west and east differ by 1140 m"))));
}

}  // namespace
}  // namespace sweepwright::terrain
