// Elevation files: what is read, what is refused, and GDAL as a witness for each form.
#include "sweepwright/formats/elevation_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <optional>
#include <sstream>

#include "support/command.hpp"
#include "support/elevation.hpp"
#include "support/files.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

using terrain::ElevationTile;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// what() of the Error, or `none`.
template <typename Action>
std::string refusal(const Action& action) {
  try {
    action();
  } catch (const Error& error) {
    return error.what();
  }
  return "none";
}

/// A 3 arc-second .hgt of one height everywhere, but for the posts that are set.
std::string flat_hgt() {
  return std::string(2 * 1201 * 1201, '\0');
}

void set_post(std::string& bytes, int row, int column, int height) {
  const std::size_t at =
      2 * (static_cast<std::size_t>(row) * 1201 + static_cast<std::size_t>(column));
  const auto value = static_cast<std::uint16_t>(static_cast<std::int16_t>(height));
  bytes[at] = static_cast<char>(value >> 8U);
  bytes[at + 1] = static_cast<char>(value & 0xFFU);
}

std::optional<Length> height(const ElevationTile& tile, double latitude, double longitude) {
  return terrain::height(terrain::ElevationModel({tile}), test::at(latitude, longitude));
}

TEST(Hgt, TheNameIsTheSouthWestCorner) {
  std::string bytes = flat_hgt();
  set_post(bytes, 0, 0, 4321);
  set_post(bytes, 1200, 1200, -12);
  set_post(bytes, 0, 1200, -32768);
  const ElevationReading reading = parse_elevation(bytes, "tiles/N37W106.hgt");
  EXPECT_EQ(reading.unit, HeightUnit::metre);
  EXPECT_EQ(reading.tile.posts, terrain::PostKind::point);
  EXPECT_EQ(height(reading.tile, 38, -106)->metres(), 4321);
  EXPECT_EQ(height(reading.tile, 37, -105)->metres(), -12);
  EXPECT_FALSE(height(reading.tile, 38, -105));
  EXPECT_EQ(height(parse_elevation(bytes, "s18e179.SRTMGL3.hgt").tile, -17, 179)->metres(), 4321);
}

TEST(Hgt, RefusesOtherNamesAndSizes) {
  for (const char* name : {"37W106.hgt", "N37W10.hgt", "X37W106.hgt", "N37W106a.hgt", "N91W106.hgt",
                           "N37W181.hgt", "N3aW106.hgt", ".hgt"}) {
    EXPECT_THAT(refusal([&] { parse_elevation(flat_hgt(), name); }), HasSubstr("N37W106.hgt"));
  }
  EXPECT_THAT(refusal([] { parse_elevation("abc", "N37W106.hgt"); }), HasSubstr("this one has 3"));
}

std::string ascii(std::string_view more = {}) {
  return "ncols 3\nnrows 2\nxllcorner 10\nyllcorner 50\ncellsize 0.5\n" + std::string(more);
}

TEST(EsriAscii, CornersAndCentres) {
  const ElevationTile corner = parse_elevation(ascii("1 2 3\n4 5 6\n"), "a.asc").tile;
  EXPECT_EQ(height(corner, 50.75, 10.25)->metres(), 1);
  EXPECT_EQ(height(corner, 50.25, 11.25)->metres(), 6);
  EXPECT_EQ(height(corner, 50.99, 10.01)->metres(), 1);  // the outer half of a cell
  const ElevationTile centre =
      parse_elevation("NROWS 2 NCOLS 3\nXLLCENTER 10 yllcenter 50 dx 0.5 dy 0.25 1 2 3 4 5 6", "a")
          .tile;
  EXPECT_EQ(height(centre, 50, 10)->metres(), 4);
  EXPECT_EQ(height(centre, 50.25, 11)->metres(), 3);
}

TEST(EsriAscii, GapsAndRemarks) {
  const ElevationReading with =
      parse_elevation(ascii("NODATA_value -9999\n-9999 2 nan 4 5 6"), "a.asc");
  EXPECT_FALSE(height(with.tile, 50.75, 10.25));
  EXPECT_FALSE(height(with.tile, 50.75, 11.25));
  EXPECT_EQ(height(with.tile, 50.75, 10.75)->metres(), 2);
  EXPECT_THAT(with.remarks, IsEmpty());
  EXPECT_EQ(with.unit, std::nullopt);
  EXPECT_THAT(parse_elevation(ascii("1 2 3 4 5 6"), "a.asc").remarks,
              ElementsAre(HasSubstr("no nodata_value")));
}

TEST(EsriAscii, UtmMetresNeedTheirZone) {
  const std::string text =
      "ncols 2\nnrows 2\nxllcorner 455000\nyllcorner 4180000\ncellsize 30\n1 2 3 4";
  EXPECT_THAT(refusal([&] { parse_elevation(text, "a.asc"); }), HasSubstr("UTM zone"));
  ElevationOptions options;
  options.zone = parse_utm_zone("13N");
  const ElevationTile tile = parse_elevation(text, "a.asc", options).tile;
  // The lower left post lies half a cell inside the corner.
  const Position post = test::post_position(
      terrain::UtmLattice{13, terrain::Hemisphere::north, Length::metres(4'180'015),
                          Length::metres(455'015), Length::metres(30), Length::metres(30)},
      0, 0);
  EXPECT_EQ(terrain::height(terrain::ElevationModel({tile}), post)->metres(), 3);
}

TEST(EsriAscii, Refusals) {
  const auto said = [](const std::string& text) {
    return refusal([&] { parse_elevation(text, "a.asc"); });
  };
  EXPECT_THAT(said(ascii("1 2 3\n4 5\n")), HasSubstr("ends after 5 of 6 heights"));
  EXPECT_THAT(said(ascii("1 2 3\n4 5 6\n7")),
              AllOf(HasSubstr("line 8"), HasSubstr("more heights")));
  EXPECT_THAT(said(ascii("1 2 3\n4 5 6,5")),
              AllOf(HasSubstr("line 7"), HasSubstr("'6,5' is no number")));
  EXPECT_THAT(said(ascii("1 2 3\n4 5 1e9")), HasSubstr("no height of ground"));
  EXPECT_THAT(said(ascii("celsize 1\n1 2 3 4 5 6")), HasSubstr("did you mean 'cellsize'"));
  EXPECT_THAT(said(ascii("ncols 3\n1 2 3 4 5 6")), HasSubstr("'ncols' stands twice"));
  EXPECT_THAT(said("ncols 3\nnrows 2\nxllcorner 10\ncellsize 1\n1 2 3 4 5 6"),
              HasSubstr("no 'yllcorner'"));
  EXPECT_THAT(said("ncols 3\nnrows 2.5\n1"), HasSubstr("'nrows' is 2.5"));
  EXPECT_THAT(said("ncols 90000\nnrows 90000\nxllcorner 1\nyllcorner 1\ncellsize 0.0001\n1 2"),
              HasSubstr("more than the file can hold"));
  EXPECT_THAT(said("ncols 3\nnrows 2\nxllcorner 10\nyllcorner 50\ncellsize 0\n1 2 3 4 5 6"),
              HasSubstr("a cell of size 0"));
  EXPECT_THAT(said("ncols"), HasSubstr("has no value"));
}

TEST(Elevation, RefusesWhatIsNoModel) {
  EXPECT_THAT(refusal([] { parse_elevation("hello", "a.txt"); }), HasSubstr("no elevation model"));
  EXPECT_THAT(refusal([] { parse_utm_zone("61N"); }), HasSubstr("zone"));
  EXPECT_THAT(refusal([] { parse_utm_zone("13"); }), HasSubstr("13N"));
}

TEST(Elevation, FilesBecomeOneModelInMetres) {
  const test::TemporaryFolder folder;
  const std::string path = (folder.path() / "a.asc").string();
  test::write_file(path, ascii("nodata_value -1\n1000 2000 3000\n4000 5000 6000"));
  const ElevationFiles metres = read_elevation_files({path});
  EXPECT_THAT(metres.remarks, ElementsAre(HasSubstr("does not state the unit")));
  EXPECT_EQ(metres.digests.size(), 1u);
  EXPECT_EQ(terrain::height(metres.model, test::at(50.75, 10.25))->metres(), 1000);
  ElevationOptions feet;
  feet.unit = HeightUnit::foot;
  const ElevationFiles turned = read_elevation_files({path}, feet);
  EXPECT_THAT(turned.remarks, IsEmpty());
  EXPECT_NEAR(terrain::height(turned.model, test::at(50.75, 10.25))->feet(), 1000, 1e-4);
  EXPECT_THAT(refusal([&] {
                read_elevation_files({path, "none.hgt"});
              }),
              HasSubstr("none.hgt: there is no such file"));
}

// GDAL (Debian package gdal-bin) writes the file, and says what stands where.
TEST(Elevation, GdalWritesWhatIsRead) {
  const test::TemporaryFolder folder;
  const ElevationTile tile =
      test::make_tile(test::degrees_lattice(38, -106, 1.0 / 60), 61, 61, test::rolling_ground);
  test::write_ascii_grid(folder.path() / "ground.asc", tile);
  const test::CommandResult made = test::run_command(
      "gdal_translate -q -a_srs EPSG:4326 -ot Int16 -outsize 1201 1201 -r bilinear -a_ullr "
      "-106.00041666666667 38.000416666666667 -104.99958333333333 36.999583333333333 ground.asc "
      "big.tif && gdal_translate -q -of SRTMHGT big.tif N37W106.hgt && "
      "gdal_translate -q -of AAIGrid big.tif big.asc && "
      "echo '-105.5 37.5\n-105.9 37.1\n-105.25 37.75\n-106 38\n-105 37' | "
      "gdallocationinfo -valonly -wgs84 N37W106.hgt",
      folder.path(), {{"PATH", "/usr/bin:/bin"}});
  ASSERT_EQ(made.status, 0) << made.standard_error << "(Debian package gdal-bin)";
  const std::vector<Position> places = {test::at(37.5, -105.5), test::at(37.1, -105.9),
                                        test::at(37.75, -105.25), test::at(38, -106),
                                        test::at(37, -105)};
  for (const char* name : {"N37W106.hgt", "big.asc"}) {
    const ElevationFiles read = read_elevation_files({(folder.path() / name).string()});
    std::istringstream values(made.standard_output);
    for (const Position place : places) {
      double expected = NAN;
      values >> expected;
      ASSERT_TRUE(terrain::height(read.model, place)) << name;
      EXPECT_NEAR(terrain::height(read.model, place)->metres(), expected, 1e-6) << name;
    }
  }
}

}  // namespace
}  // namespace sweepwright::formats
