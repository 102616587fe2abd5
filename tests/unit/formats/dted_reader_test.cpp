// DTED: GDAL as writer and witness, and damaged files.
#include "sweepwright/formats/dted_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "support/command.hpp"
#include "support/elevation.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;

/// A level 0 cell (121 by 121 posts of 30 arc-seconds) made by GDAL: heights of both signs, one
/// gap.
const std::string& sample() {
  static const std::string bytes = [] {
    const test::TemporaryFolder folder;
    terrain::ElevationTile tile = test::make_tile(
        test::degrees_lattice(-16, 179, 1.0 / 120), 121, 121,
        [](Position place) { return std::round(test::rolling_ground(place) - 700); });
    tile.heights_m[tile.index(0, 0)] = -32767;  // the form's gap
    test::write_ascii_grid(folder.path() / "ground.asc", tile);
    const test::CommandResult made = test::run_command(
        "gdal_translate -q -a_srs EPSG:4326 -ot Int16 -a_nodata -32767 -a_ullr "
        "178.9958333333333333 -15.9958333333333333 180.0041666666666667 -17.0041666666666667 "
        "ground.asc ground.tif && gdal_translate -q -of DTED ground.tif ground.dt0",
        folder.path(), {{"PATH", "/usr/bin:/bin"}});
    EXPECT_EQ(made.status, 0) << made.standard_error << "(Debian package gdal-bin)";
    return test::read_file(folder.path() / "ground.dt0");
  }();
  return bytes;
}

TEST(Dted, ReadsWhatGdalWrites) {
  const ElevationReading reading = parse_dted(sample(), "ground.dt0");
  EXPECT_EQ(reading.unit, HeightUnit::metre);
  EXPECT_EQ(reading.tile.rows, 121);
  EXPECT_EQ(reading.tile.columns, 121);
  const terrain::ElevationModel model({reading.tile});
  const test::TemporaryFolder folder;
  test::write_file(folder.path() / "ground.dt0", sample());
  std::string wanted;
  std::vector<Position> places;
  for (int row = 1; row <= 119; row += 13) {
    for (int column = 1; column <= 119; column += 17) {
      places.push_back(test::post_position(reading.tile.lattice, row, column));
      wanted += std::to_string(column) + " " + std::to_string(row) + "\n";
    }
  }
  const test::CommandResult there =
      test::run_command("echo '" + wanted + "' | gdallocationinfo -valonly ground.dt0",
                        folder.path(), {{"PATH", "/usr/bin:/bin"}});
  std::istringstream values(there.standard_output);
  bool any_below_sea = false;
  for (const Position place : places) {
    double expected = NAN;
    values >> expected;
    ASSERT_TRUE(terrain::height(model, place));
    EXPECT_EQ(terrain::height(model, place)->metres(), expected);
    any_below_sea = any_below_sea || expected < 0;
  }
  EXPECT_TRUE(any_below_sea);
  EXPECT_FALSE(terrain::height(model, test::at(-16, 179)));  // the gap
  EXPECT_TRUE(terrain::height(model, test::at(-17, 180)));   // the corner post
}

std::string refusal(const std::string& bytes) {
  try {
    parse_dted(bytes, "ground.dt0");
  } catch (const Error& error) {
    return error.what();
  }
  return "none";
}

TEST(Dted, RefusesDamagedFiles) {
  EXPECT_EQ(refusal(sample()), "none");
  EXPECT_THAT(refusal(sample().substr(0, 1000)), HasSubstr("within its header"));
  EXPECT_THAT(refusal(sample().substr(0, sample().size() - 5)), HasSubstr("121 profiles need"));
  std::string damaged = sample();
  damaged[5000] = static_cast<char>(damaged[5000] ^ 1);
  EXPECT_THAT(refusal(damaged), HasSubstr("sum of profile"));
  damaged = sample();
  damaged[3428] = 0;
  EXPECT_THAT(refusal(damaged), HasSubstr("profile 1 is not where"));
  damaged = sample();
  damaged.replace(80 + 144, 5, "TOKYO");
  EXPECT_THAT(refusal(damaged), HasSubstr("'TOKYO'"));
  damaged = sample();
  damaged[11] = 'X';
  EXPECT_THAT(refusal(damaged), HasSubstr("neither E nor W"));
}

}  // namespace
}  // namespace sweepwright::formats
