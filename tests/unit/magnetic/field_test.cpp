// The field against the published test values, and against GeographicLib's spherical harmonics.
#include "sweepwright/magnetic/field.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/SphericalHarmonic.hpp>
#include <cmath>
#include <limits>
#include <vector>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::magnetic {
namespace {

constexpr double kNanotesla = 0.001;
constexpr double kHundredthOfDegree = 0.005 + 1e-9;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

class PublishedField : public testing::TestWithParam<test::CheckRow> {};

TEST_P(PublishedField, comes_back) {
  const test::CheckRow& row = GetParam();
  const MagneticField found = field(at(row.number("lat_deg"), row.number("lon_deg")),
                                    Length::kilometres(row.number("height_km_wgs84")),
                                    DecimalYear(row.number("decimal_year")));
  EXPECT_NEAR(found.north.nanotesla(), row.number("x_nT"), kNanotesla);
  EXPECT_NEAR(found.east.nanotesla(), row.number("y_nT"), kNanotesla);
  EXPECT_NEAR(found.down.nanotesla(), row.number("z_nT"), kNanotesla);
  EXPECT_NEAR(found.horizontal().nanotesla(), row.number("h_nT"), kNanotesla);
  EXPECT_NEAR(found.total().nanotesla(), row.number("f_nT"), kNanotesla);
  EXPECT_NEAR(found.inclination().degrees(), row.number("incl_deg"), kHundredthOfDegree);
  EXPECT_NEAR(found.declination().degrees(), row.number("decl_deg"), kHundredthOfDegree);
}

INSTANTIATE_TEST_SUITE_P(
    WorldMagneticModel, PublishedField,
    testing::ValuesIn(test::check_rows("magnetic/wmm2025.csv",
                                       {"set", "decimal_year", "height_km_wgs84", "lat_deg",
                                        "lon_deg", "x_nT", "y_nT", "z_nT", "h_nT", "f_nT",
                                        "incl_deg", "decl_deg", "how"})),
    test::RowName());

/// The same field by the spherical harmonics of GeographicLib 2.1: the gradient of the potential
/// a V in geocentric axes, turned to those of the place.
MagneticField by_geographiclib(Position place, Length height, DecimalYear time) {
  using GeographicLib::SphericalHarmonic;
  const Model& model = world_magnetic_model();
  const double years = time.years() - model.epoch.years();
  std::vector<double> cosines;
  std::vector<double> sines;
  for (int m = 0; m <= kDegree; ++m) {  // GeographicLib orders by m, and leaves out sines of m = 0
    for (int n = m; n <= kDegree; ++n) {
      const Coefficient& coefficient = model.coefficients[index(n, m)];
      cosines.push_back(coefficient.g + years * coefficient.g_rate);
      if (m > 0) sines.push_back(coefficient.h + years * coefficient.h_rate);
    }
  }
  constexpr double kRadius = 6371200;
  const SphericalHarmonic potential(cosines, sines, kDegree, kRadius, SphericalHarmonic::SCHMIDT);
  double x = 0;
  double y = 0;
  double z = 0;
  std::vector<double> turn(9);
  GeographicLib::Geocentric::WGS84().Forward(
      place.latitude().degrees(), place.longitude().degrees(), height.metres(), x, y, z, turn);
  double gx = 0;
  double gy = 0;
  double gz = 0;
  potential(x, y, z, gx, gy, gz);
  const auto along = [&](std::size_t column) {  // 0 east, 1 north, 2 up
    return FluxDensity::nanotesla(
        -kRadius * (turn[column] * gx + turn[column + 3] * gy + turn[column + 6] * gz));
  };
  return {along(1), along(0), -along(2)};
}

RC_GTEST_PROP(Field, equals_geographiclib_everywhere, ()) {
  const Position place =
      at(*rc::gen::inRange(-9000, 9001) / 100.0, *rc::gen::inRange(-18000, 18000) / 100.0);
  const Length height = Length::metres(*rc::gen::inRange(-1000, 850000));
  const DecimalYear time(2025 + *rc::gen::inRange(-500, 1001) / 100.0);
  const MagneticField found = field(place, height, time);
  const MagneticField expected = by_geographiclib(place, height, time);
  RC_ASSERT(std::abs((found.north - expected.north).nanotesla()) < 1e-6);
  RC_ASSERT(std::abs((found.east - expected.east).nanotesla()) < 1e-6);
  RC_ASSERT(std::abs((found.down - expected.down).nanotesla()) < 1e-6);
}

/// The largest difference of any component.
double difference(const MagneticField& a, const MagneticField& b) {
  return std::max({std::abs((a.north - b.north).nanotesla()),
                   std::abs((a.east - b.east).nanotesla()),
                   std::abs((a.down - b.down).nanotesla())});
}

// 1e-9 degree is 0.1 mm on the ground; the field changes by under 0.1 nT on 1 m anywhere.
constexpr double kStep = 1e-9;
constexpr DecimalYear kTime(2026.5);

TEST(Field, is_the_same_on_both_sides_of_the_antimeridian) {
  for (double latitude = -90; latitude <= 90; latitude += 2.5) {
    const MagneticField east = field(at(latitude, 180 - kStep), {}, kTime);
    const MagneticField west = field(at(latitude, -180 + kStep), {}, kTime);
    EXPECT_LT(difference(east, west), 1e-4) << latitude;
    EXPECT_EQ(difference(field(at(latitude, 180), {}, kTime), field(at(latitude, -180), {}, kTime)),
              0);
  }
}

TEST(Field, runs_smoothly_into_the_poles) {
  for (const double pole : {-90.0, 90.0}) {
    const MagneticField at_zero = field(at(pole, 0), {}, kTime);
    for (double longitude = -180; longitude < 180; longitude += 15) {
      const MagneticField there = field(at(pole, longitude), {}, kTime);
      const MagneticField near = field(at(pole - std::copysign(kStep, pole), longitude), {}, kTime);
      EXPECT_LT(difference(there, near), 1e-4) << pole << ' ' << longitude;
      // One and the same arrow, seen from each meridian: its horizontal part turns with longitude.
      EXPECT_NEAR(there.horizontal().nanotesla(), at_zero.horizontal().nanotesla(), 1e-6);
      EXPECT_NEAR(there.down.nanotesla(), at_zero.down.nanotesla(), 1e-6);
      const Angle turned = there.declination() - at_zero.declination() -
                           Angle::degrees(std::copysign(longitude, pole * longitude));
      EXPECT_NEAR(std::remainder(turned.degrees(), 360), 0, 1e-9) << pole << ' ' << longitude;
    }
  }
}

TEST(Field, height_above_sea_level_does_for_height_above_the_ellipsoid) {
  // The geoid lies within 110 m of the ellipsoid [EGM96: -107 m to 85 m, from memory].
  for (double latitude = -90; latitude <= 90; latitude += 5) {
    for (double longitude = -180; longitude < 180; longitude += 5) {
      const MagneticField on = field(at(latitude, longitude), {}, kTime);
      const MagneticField over = field(at(latitude, longitude), Length::metres(110), kTime);
      if (on.horizontal() < FluxDensity::nanotesla(6000)) continue;  // compasses are no use there
      EXPECT_LT(std::abs(std::remainder((on.declination() - over.declination()).degrees(), 360)),
                0.003)
          << latitude << ' ' << longitude;
    }
  }
}

TEST(Field, refuses_what_the_model_does_not_cover) {
  const auto refuses = [](Length height, double year, const std::string& word) {
    try {
      field({}, height, DecimalYear(year));
      ADD_FAILURE() << "no error: " << word;
    } catch (const Error& error) {
      EXPECT_EQ(error.code(), ErrorCode::value);
      EXPECT_NE(error.message().find(word), std::string::npos) << error.what();
    }
  };
  refuses(Length::kilometres(-1.01), 2026, "-1.01 km");
  refuses(Length::kilometres(851), 2026, "851 km");
  refuses(Length::metres(std::numeric_limits<double>::quiet_NaN()), 2026, "nan km");
  refuses({}, 2019.99, "2020.0");
  refuses({}, 2035.01, "2035.0");
  refuses({}, 1926, "WMM-2025 holds for 2025.0 to 2030.0 and says nothing about 1926.0");
  refuses({}, std::numeric_limits<double>::infinity(), "inf");
  EXPECT_NO_THROW(field({}, Length::kilometres(850), DecimalYear(2020)));
  EXPECT_NO_THROW(field({}, Length::kilometres(-1), DecimalYear(2035)));
}

}  // namespace
}  // namespace sweepwright::magnetic
