// Systems against published projection tests, and against datum shifts calculated independently.
//
// The expected shifts are those of a computer with the grids of Debian's proj-data; more grids let
// PROJ choose better ones.
#include "sweepwright/reference/system.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <GeographicLib/Geocentric.hpp>
#include <limits>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/reference/coordinates_text.hpp"

namespace sweepwright::reference {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

Error error_of(std::string_view code, std::optional<Coordinates> coordinates = {}) {
  try {
    const System system(code);
    if (coordinates) system.to_wgs84(*coordinates);
  } catch (const Error& error) {
    return error;
  }
  return Error(ErrorCode::usage, "no error");
}

class SamePlace : public testing::TestWithParam<test::CheckRow> {};

TEST_P(SamePlace, is_reached_from_both_systems) {
  const test::CheckRow& row = GetParam();
  const Coordinates coordinates{row.number("first"), row.number("second")};
  if (row.text("outcome") == "outside") {
    const Error error = error_of(row.text("system"), coordinates);
    EXPECT_EQ(error.code(), ErrorCode::value);
    EXPECT_THAT(error.message(), HasSubstr("it is used in"));
    return;
  }
  if (row.text("outcome") == "no shift") {
    EXPECT_EQ(error_of(row.text("system"), coordinates).code(), ErrorCode::impossible);
    return;
  }
  ASSERT_EQ(row.text("outcome"), "same");
  const Conversion found = System(row.text("system")).to_wgs84(coordinates);
  const Conversion expected = System(row.text("base_system"))
                                  .to_wgs84({row.number("base_first"), row.number("base_second")});
  EXPECT_LT(geodesic(found.position, expected.position).length.metres(), row.number("tolerance_m"));
  EXPECT_EQ(found.operation, expected.operation);
  EXPECT_EQ(found.accuracy, expected.accuracy);
}

INSTANTIATE_TEST_SUITE_P(
    Published, SamePlace,
    testing::ValuesIn(test::check_rows("reference/same_place.csv",
                                       {"system", "first", "second", "base_system", "base_first",
                                        "base_second", "tolerance_m", "outcome", "row_source"})),
    test::RowName());

class DatumShift : public testing::TestWithParam<test::CheckRow> {};

TEST_P(DatumShift, equals_three_geocentric_translations) {
  const test::CheckRow& row = GetParam();
  const GeographicLib::Geocentric old(row.number("semi_major_axis_m"),
                                      1 / row.number("inverse_flattening"));
  double x = 0;
  double y = 0;
  double z = 0;
  old.Forward(row.number("latitude_deg"), row.number("longitude_deg"), 0, x, y, z);
  double latitude = 0;
  double longitude = 0;
  double height = 0;
  GeographicLib::Geocentric::WGS84().Reverse(x + row.number("dx_m"), y + row.number("dy_m"),
                                             z + row.number("dz_m"), latitude, longitude, height);
  const Conversion found = System(row.text("system"))
                               .to_wgs84({row.number("latitude_deg"), row.number("longitude_deg")});
  EXPECT_EQ(found.operation, row.text("operation"));
  EXPECT_LT(
      geodesic(found.position, Position::at(Angle::degrees(latitude), Angle::degrees(longitude)))
          .length.metres(),
      0.01);
  ASSERT_TRUE(found.accuracy);
  EXPECT_EQ(found.accuracy->metres(), row.number("accuracy_m"));
}

INSTANTIATE_TEST_SUITE_P(
    Tr83502, DatumShift,
    testing::ValuesIn(test::check_rows("reference/datum_shifts.csv",
                                       {"system", "latitude_deg", "longitude_deg", "operation",
                                        "semi_major_axis_m", "inverse_flattening", "dx_m", "dy_m",
                                        "dz_m", "accuracy_m"})),
    test::RowName());

TEST(System, tells_its_axes_in_the_order_of_the_registry) {
  EXPECT_EQ(axes_in_words(System("EPSG:4267").info()),
            "first geodetic latitude (degree, north), then geodetic longitude (degree, east)");
  EXPECT_EQ(axes_in_words(System("EPSG:27700").info()),
            "first easting (metre, east), then northing (metre, north)");
  EXPECT_EQ(axes_in_words(System("EPSG:2193").info()),
            "first northing (metre, north), then easting (metre, east)");
  EXPECT_EQ(axes_in_words(System("EPSG:2049").info()),
            "first westing (metre, west), then southing (metre, south)");
  EXPECT_EQ(axes_in_words(System("EPSG:4807").info()),
            "first geodetic latitude (grad, north), then geodetic longitude (grad, east)");
}

TEST(System, says_what_it_is_and_what_reads_it) {
  const SystemInfo info = System(" epsg:4267 ").info();
  EXPECT_EQ(info.code, "EPSG:4267");
  EXPECT_EQ(info.name, "NAD27");
  EXPECT_TRUE(info.geographic);
  EXPECT_THAT(info.area.name, HasSubstr("North and central America"));
  EXPECT_THAT(info.software, testing::MatchesRegex("PROJ [0-9.]+, EPSG registry v[0-9.]+"));
  EXPECT_FALSE(System("EPSG:32611").info().geographic);
}

TEST(System, wgs84_is_itself) {
  for (const Coordinates there : {Coordinates{38.25, -117.5}, Coordinates{-90, 0},
                                  Coordinates{90, 12}, Coordinates{0, 180}}) {
    const Conversion found = System("EPSG:4326").to_wgs84(there);
    EXPECT_EQ(found.position,
              Position::at(Angle::degrees(there.first), Angle::degrees(there.second)));
    EXPECT_EQ(found.accuracy, Length());
    EXPECT_THAT(found.warnings, IsEmpty());
  }
}

TEST(System, counts_grads_from_its_own_meridian) {
  // Paris lies 2 20' 14.025" east of Greenwich, the prime meridian of NTF (Paris) [IGN; from
  // memory], and NTF differs from WGS 84 by less than 100 m there.
  const Conversion found = System("EPSG:4807").to_wgs84({54, 0});
  const Position paris =
      Position::at(Angle::degrees(48.6), Angle::degrees(2 + 20.0 / 60 + 14.025 / 3600));
  EXPECT_LT(geodesic(found.position, paris).length.metres(), 100);
}

TEST(System, works_across_the_antimeridian) {
  // Fiji 1986 is used on both sides of 180 degrees.
  const System fiji("EPSG:4720");
  const Conversion east = fiji.to_wgs84({-17, 179.9999});
  const Conversion west = fiji.to_wgs84({-17, -179.9999});
  const double metres = geodesic(east.position, west.position).length.metres();
  EXPECT_NEAR(metres, 21.3, 0.1);  // 0.0002 degree of longitude at 17 S
  EXPECT_EQ(east.operation, west.operation);
}

TEST(System, names_the_missing_grid_of_a_better_shift) {
  EXPECT_THAT(System("EPSG:4267").to_wgs84({39, -105}).warnings,
              Contains(HasSubstr("us_noaa_conus.tif")));
}

TEST(System, tells_when_other_shifts_disagree) {
  // The 2 m shift for Great Britain and the older 21 m one.
  EXPECT_THAT(System("EPSG:4277").to_wgs84({52.66, 1.72}).warnings,
              Contains(HasSubstr("Other shifts")));
}

TEST(System, refuses_a_shift_that_is_only_a_guess) {
  // St. Lawrence Island Datum: the registry's one shift needs a grid.
  const Error without_grid = error_of("EPSG:4136", Coordinates{63.5, -170.5});
  EXPECT_EQ(without_grid.code(), ErrorCode::impossible);
  EXPECT_THAT(without_grid.message(), HasSubstr("no accurate shift from St. Lawrence Island"));
  EXPECT_THAT(without_grid.message(), HasSubstr("63-30N 170-30W"));
  EXPECT_THAT(without_grid.hint(), HasSubstr("us_noaa_stlrnc.tif"));
  // TWD67: the registry has none.
  const Error without_shift = error_of("EPSG:3821", Coordinates{23.5, 121});
  EXPECT_EQ(without_shift.code(), ErrorCode::impossible);
  EXPECT_THAT(without_shift.message(), HasSubstr("no accurate shift from TWD67"));
  // A projected system on it (TWD67 / TM2 zone 121).
  EXPECT_EQ(error_of("EPSG:3828", Coordinates{250000, 2600000}).code(), ErrorCode::impossible);
}

TEST(System, refuses_places_far_outside_its_area_and_warns_of_near_ones) {
  const Error far = error_of("EPSG:4267", Coordinates{10, -30});
  EXPECT_EQ(far.code(), ErrorCode::value);
  EXPECT_THAT(far.message(), HasSubstr("EPSG:4267 (NAD27) has no place at 10, -30"));
  EXPECT_LT(far.message().size(), 200u);
  EXPECT_THAT(far.hint(), HasSubstr("first geodetic latitude"));
  // Zone 11 of UTM ends at 114 W.
  const System utm("EPSG:32611");
  const Conversion near = utm.to_wgs84({783000, 4233000});
  EXPECT_GT(near.position.longitude().degrees(), -114);
  EXPECT_THAT(near.warnings, Contains(HasSubstr("outside the area")));
  EXPECT_THAT(utm.to_wgs84({500000, 4200000}).warnings, IsEmpty());
}

TEST(System, refuses_numbers_that_are_no_place) {
  constexpr double kInfinity = std::numeric_limits<double>::infinity();
  EXPECT_EQ(error_of("EPSG:4267", Coordinates{kInfinity, -105}).code(), ErrorCode::value);
  EXPECT_EQ(error_of("EPSG:4267", Coordinates{39, std::nan("")}).code(), ErrorCode::value);
  EXPECT_EQ(error_of("EPSG:4326", Coordinates{91, 0}).code(), ErrorCode::value);
  EXPECT_EQ(error_of("EPSG:32611", Coordinates{1e30, 1e30}).code(), ErrorCode::value);
  EXPECT_EQ(error_of("EPSG:27700", Coordinates{3e8, 0}).code(), ErrorCode::value);
}

TEST(System, refuses_what_is_no_code) {
  for (const char* code : {"", "4267", "EPSG", "EPSG:", "EPSG:12x", "EPSG:-4", "ESRI:102100",
                           "EPSG:12345678901234567890", "EPSG: 4267", "+proj=longlat"}) {
    const Error error = error_of(code);
    EXPECT_EQ(error.code(), ErrorCode::value) << code;
    EXPECT_THAT(error.hint(), HasSubstr("EPSG:4267")) << code;
  }
}

TEST(System, refuses_unknown_codes_and_other_kinds_of_system) {
  EXPECT_THAT(error_of("EPSG:99999").message(), HasSubstr("no reference system EPSG:99999"));
  EXPECT_THAT(error_of("EPSG:4979").message(), HasSubstr("in three dimensions"));
  EXPECT_THAT(error_of("EPSG:4978").message(), HasSubstr("geocentric"));
  EXPECT_THAT(error_of("EPSG:5773").message(), HasSubstr("a system of heights"));
  EXPECT_THAT(error_of("EPSG:9518").message(), HasSubstr("a system with heights"));
  EXPECT_THAT(error_of("EPSG:9895").message(), HasSubstr("in three dimensions"));
}

TEST(System, warns_of_a_withdrawn_code) {
  const System withdrawn("EPSG:4140");  // an older entry of NAD83(CSRS)
  EXPECT_TRUE(withdrawn.info().deprecated);
  EXPECT_THAT(withdrawn.to_wgs84({50, -100}).warnings, Contains(HasSubstr("withdrawn EPSG:4140")));
}

TEST(System, a_reading_outside_its_area_is_no_second_meaning) {
  const System europe("EPSG:4258");
  const auto readings = read_coordinates("50 10", europe);
  ASSERT_EQ(readings.size(), 1u);
  EXPECT_THAT(readings[0].read_as, HasSubstr("latitude first"));
  EXPECT_EQ(readings[0].conversion.position, Position::at(Angle::degrees(50), Angle::degrees(10)));
  const auto swapped = read_coordinates("10 50", europe);
  ASSERT_EQ(swapped.size(), 1u);
  EXPECT_EQ(swapped[0].conversion.position, readings[0].conversion.position);
  EXPECT_EQ(read_coordinates("50 10", System("EPSG:4326")).size(), 2u);
  EXPECT_THROW(read_coordinates("5 -150", europe), Error);
  // TWD67 has no shift: its place stays a meaning.
  EXPECT_THROW(read_coordinates("23.5N 121E", System("EPSG:3821")), Error);
}

TEST(System, gives_the_same_twice) {
  const System system("EPSG:4267");
  EXPECT_EQ(system.to_wgs84({39, -105}).position, system.to_wgs84({39, -105}).position);
  EXPECT_EQ(system.to_wgs84({39, -105}).position,
            System("EPSG:4267").to_wgs84({39, -105}).position);
}

}  // namespace
}  // namespace sweepwright::reference
