// GeoTIFF: GDAL as writer and witness, and what is refused.
#include "sweepwright/formats/geotiff_reader.hpp"

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

class GeoTiff : public testing::Test {
 protected:
  GeoTiff() {
    terrain::ElevationTile tile =
        test::make_tile(test::degrees_lattice(38.1, -105.5, 0.002), 51, 61,
                        [](Position place) { return std::round(test::rolling_ground(place)); });
    tile.heights_m[tile.index(10, 10)] = test::kGap;
    test::write_ascii_grid(folder_.path() / "ground.asc", tile);
  }

  void run(const std::string& command) {
    const test::CommandResult made =
        test::run_command(command, folder_.path(), {{"PATH", "/usr/bin:/bin"}});
    ASSERT_EQ(made.status, 0) << made.standard_error << "(Debian package gdal-bin)";
    output_ = made.standard_output;
  }

  std::string bytes() const { return test::read_file(folder_.path() / "ground.tif"); }

  /// Converts the ground with these options of gdal_translate, and reads it.
  ElevationReading converted(const std::string& options) {
    run("gdal_translate -q -a_srs EPSG:4326 " + options + " ground.asc ground.tif");
    return parse_geotiff(bytes(), "ground.tif");
  }

  std::string refusal(const std::string& command) {
    run(command);
    try {
      parse_geotiff(bytes(), "ground.tif");
    } catch (const Error& error) {
      return error.what();
    }
    return "none";
  }

  /// Compares every 7th post with what GDAL says of that pixel.
  void expect_as_gdal(const ElevationReading& reading) {
    std::string wanted;
    for (int row = 0; row < reading.tile.rows; row += 7) {
      for (int column = 0; column < reading.tile.columns; column += 7) {
        wanted += std::to_string(column) + " " + std::to_string(row) + "\n";
      }
    }
    run("printf '" + wanted + "' | gdallocationinfo -valonly ground.tif");
    std::istringstream values(output_);
    for (int row = 0; row < reading.tile.rows; row += 7) {
      for (int column = 0; column < reading.tile.columns; column += 7) {
        double expected = NAN;
        values >> expected;
        const float found = reading.tile.heights_m[reading.tile.index(row, column)];
        if (expected == -9999) {
          EXPECT_TRUE(std::isnan(found));
        } else {
          EXPECT_NEAR(static_cast<double>(found), expected, 1e-3);
        }
      }
    }
  }

  test::TemporaryFolder folder_;
  std::string output_;
};

TEST_F(GeoTiff, ReadsEveryKindOfNumberAndLayout) {
  for (const char* options :
       {"-ot Int16", "-ot UInt16 -a_nodata 0", "-ot Int32", "-ot Float32", "-ot Float64",
        "-ot Int16 -co TILED=YES -co BLOCKXSIZE=16 -co BLOCKYSIZE=32 -co COMPRESS=DEFLATE",
        "-ot Float32 -co COMPRESS=LZW -co PREDICTOR=3", "-ot Int16 -co ENDIANNESS=BIG",
        "-ot Int16 -co BIGTIFF=YES -co BLOCKYSIZE=7"}) {
    SCOPED_TRACE(options);
    const ElevationReading reading = converted(std::string("-mo AREA_OR_POINT=Area ") + options);
    EXPECT_EQ(reading.tile.rows, 51);
    EXPECT_EQ(reading.tile.columns, 61);
    EXPECT_EQ(reading.tile.posts, terrain::PostKind::area);
    expect_as_gdal(reading);
    const auto& lattice = std::get<terrain::GeographicLattice>(reading.tile.lattice);
    EXPECT_NEAR(lattice.north.degrees(), 38.1, 1e-9);
    EXPECT_NEAR(lattice.west.degrees(), -105.5, 1e-9);
    EXPECT_NEAR(lattice.latitude_step.degrees(), 0.002, 1e-12);
  }
}

TEST_F(GeoTiff, GapsAndUnits) {
  EXPECT_TRUE(std::isnan(converted("-ot Int16").tile.heights_m[10 * 61 + 10]));
  const ElevationReading plain = converted("-ot Int16");
  EXPECT_EQ(plain.unit, std::nullopt);
  EXPECT_EQ(plain.tile.vertical_reference, "");
  EXPECT_TRUE(plain.remarks.empty());
  run("gdal_translate -q -a_srs EPSG:4326+5773 ground.asc ground.tif");
  EXPECT_EQ(parse_geotiff(bytes(), "ground.tif").tile.vertical_reference, "mean sea level (EGM96)");
  EXPECT_THAT(converted("-ot Int16 -a_nodata none").remarks,
              testing::ElementsAre(HasSubstr("names no gap")));
}

TEST_F(GeoTiff, PointsLieWhereGdalSaysTheyDo) {
  const ElevationReading reading = converted("-ot Int16 -mo AREA_OR_POINT=Point");
  EXPECT_EQ(reading.tile.posts, terrain::PostKind::point);
  const auto& lattice = std::get<terrain::GeographicLattice>(reading.tile.lattice);
  EXPECT_NEAR(lattice.north.degrees(), 38.1, 1e-9);
  EXPECT_NEAR(lattice.west.degrees(), -105.5, 1e-9);
}

TEST_F(GeoTiff, ReadsUtm) {
  for (const char* system : {"EPSG:32613", "EPSG:26913"}) {
    run(std::string("rm -f ground.tif && gdalwarp -q -s_srs EPSG:4326 -t_srs ") + system +
        " -tr 150 150 -r near ground.asc ground.tif");
    const ElevationReading reading = parse_geotiff(bytes(), "ground.tif");
    const auto& lattice = std::get<terrain::UtmLattice>(reading.tile.lattice);
    EXPECT_EQ(lattice.zone, 13);
    expect_as_gdal(reading);
    // The place of a pixel, asked for by longitude and latitude.
    const Position place = test::post_position(lattice, 30, 30);
    run("echo '" + std::to_string(place.longitude().degrees()) + " " +
        std::to_string(place.latitude().degrees()) +
        "' | gdallocationinfo -valonly -wgs84 ground.tif");
    EXPECT_EQ(terrain::height(terrain::ElevationModel({reading.tile}), place)->metres(),
              std::stod(output_));
  }
}

TEST_F(GeoTiff, RefusesWhatItCannotPlace) {
  const std::string warp =
      "rm -f ground.tif && gdalwarp -q -s_srs EPSG:4326 ground.asc ground.tif ";
  EXPECT_THAT(refusal(warp + "-t_srs EPSG:3857"), HasSubstr("projection EPSG:3857"));
  EXPECT_THAT(refusal("gdal_translate -q -a_srs EPSG:4230 ground.asc ground.tif"),
              HasSubstr("EPSG:4230"));
  EXPECT_THAT(refusal("rm -f ground.tif; gdal_translate -q -a_srs EPSG:4326 -b 1 -b 1 ground.asc "
                      "ground.tif"),
              HasSubstr("several bands"));
  EXPECT_THAT(refusal("gdal_translate -q -co PROFILE=BASELINE ground.asc ground.tif"),
              HasSubstr("does not say where it lies"));
  EXPECT_THAT(refusal("gdal_translate -q -a_srs EPSG:4326 -ot Int16 ground.asc a.tif && "
                      "head -c 2000 a.tif > ground.tif"),
              HasSubstr("is the file damaged?"));
  EXPECT_THAT(refusal("printf 'II*\\0abc' > ground.tif"), HasSubstr("cannot be read"));
}

TEST_F(GeoTiff, RefusesHeightsAboveAnEllipsoid) {
  EXPECT_THAT(refusal("gdal_translate -q -a_srs EPSG:4979 -ot Int16 ground.asc ground.tif"),
              HasSubstr("EPSG:4979"));
}

}  // namespace
}  // namespace sweepwright::formats
