// Every edge of both axes, and a million random places against GeographicLib.
#include <gtest/gtest.h>

#include <GeographicLib/GARS.hpp>
#include <GeographicLib/Georef.hpp>
#include <cmath>
#include <random>

#include "sweepwright/grid/systems.hpp"

namespace sweepwright::grid {
namespace {

constexpr double kNudge = 1e-9;  // a tenth of a millimetre

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

/// The limits, in 1/240 degree, of the cell that holds a place; a cell's own box is the witness.
struct Limits {
  long south, north, west, east;
};
Limits limits(const Grid& used, const Level& level, Position place) {
  const LatLonBox box = *used.cell(used.name_of(place, level)).box;
  const auto whole = [](Angle a) { return std::lround(a.degrees() * 240); };
  return {whole(box.south), whole(box.north), whole(box.west), whole(box.east)};
}

class Lines : public testing::TestWithParam<std::string_view> {};

// Every line of the level's own lattice, written in the ways in which a double can come about.
TEST_P(Lines, OfLatitudeBelongToTheCellNorthOfThem) {
  const Grid& used = grid(GetParam());
  for (const Level& level : used.levels()) {
    const long step = std::lround(std::get<Angle>(level.size).degrees() * 240);
    for (long line = -90 * 240; line <= 90 * 240; line += step) {
      const double exact = static_cast<double>(line) / 240;
      const long whole = line / 240;
      const double summed =
          static_cast<double>(whole) + static_cast<double>(line - whole * 240) / 4 / 60;
      const long south = line == 90 * 240 ? line - step : line;  // the pole belongs to the top row
      for (const double latitude : {exact, summed, std::nextafter(exact, 0.0)}) {
        ASSERT_EQ(limits(used, level, at(latitude, 12.34)).south, south)
            << level.name << ' ' << latitude;
      }
      if (line > -90 * 240) {
        ASSERT_EQ(limits(used, level, at(exact - kNudge, 12.34)).north, line) << level.name;
      }
    }
  }
}

TEST_P(Lines, OfLongitudeBelongToOneSide) {
  const Grid& used = grid(GetParam());
  const bool owns_east = GetParam() == "quarter";
  for (const Level& level : used.levels()) {
    const long step = std::lround(std::get<Angle>(level.size).degrees() * 240);
    for (long line = -180 * 240; line <= 180 * 240; line += step) {
      const double exact = static_cast<double>(line) / 240;
      const long whole = line / 240;
      const double summed =
          static_cast<double>(whole) + static_cast<double>(line - whole * 240) / 4 / 60;
      const bool end = std::abs(line) == 180 * 240;
      for (const double longitude :
           {exact, summed, std::nextafter(exact, 0.0), std::nextafter(exact, 400.0)}) {
        const Limits found = limits(used, level, at(-12.34, longitude));
        if (owns_east) {
          ASSERT_EQ(found.east, end ? 180 * 240 : line) << level.name << ' ' << longitude;
        } else {
          ASSERT_EQ(found.west, end ? -180 * 240 : line) << level.name << ' ' << longitude;
        }
      }
      const Limits west = limits(used, level, at(-12.34, exact - kNudge));
      const Limits east = limits(used, level, at(-12.34, exact + kNudge));
      ASSERT_EQ(west.east, line == -180 * 240 ? 180 * 240 : line) << level.name;
      ASSERT_EQ(east.west, line == 180 * 240 ? -180 * 240 : line) << level.name;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Systems, Lines, testing::Values("quarter", "gars", "georef"),
                         [](const auto& test) { return std::string(test.param); });

template <typename Forward>
void compare_on_a_million_places(const Grid& used, Forward forward) {
  std::mt19937_64 random(20'260'801);
  std::uniform_real_distribution<double> latitude(-90, 90);
  std::uniform_real_distribution<double> longitude(-180, 180);
  std::string expected;
  for (int i = 0; i < 1'000'000; ++i) {
    const Position place = at(latitude(random), longitude(random));
    const Level& level = used.levels()[static_cast<std::size_t>(i % 3)];
    forward(place.latitude().degrees(), place.longitude().degrees(), level.depth, expected);
    ASSERT_EQ(used.name_of(place, level), expected);
  }
}

// GeographicLib 2.1.2, classes GARS and Georef.
TEST(GarsAgainstGeographicLib, AgreesOnAMillionPlaces) {
  compare_on_a_million_places(grid("gars"), GeographicLib::GARS::Forward);
}

TEST(GeorefAgainstGeographicLib, AgreesOnAMillionPlaces) {
  compare_on_a_million_places(
      grid("georef"), [](double latitude, double longitude, int depth, std::string& name) {
        // Its precisions: -1 for 15 degrees, 0 for 1 degree, 2 for 1 minute.
        constexpr int kPrecisions[] = {-1, 0, 2};
        GeographicLib::Georef::Forward(latitude, longitude, kPrecisions[depth], name);
      });
}

TEST(GarsAgainstGeographicLib, AgreesOnEveryFiveMinuteLine) {
  const Grid& gars = grid("gars");
  const Level& level = gars.level("5min");
  std::string expected;
  const auto compare = [&](double latitude, double longitude) {
    GeographicLib::GARS::Forward(latitude, longitude, 2, expected);
    ASSERT_EQ(gars.name_of(at(latitude, longitude), level), expected) << latitude << longitude;
  };
  for (int line = -90 * 12; line <= 90 * 12; ++line) compare(line / 12.0, 33.3);
  for (int line = -180 * 12; line <= 180 * 12; ++line) compare(-33.3, line / 12.0);
}

}  // namespace
}  // namespace sweepwright::grid
