#include "sweepwright/position/geodesic.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright {
namespace {

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

class GeodesicCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(GeodesicCheck, AgreesWithThePublishedLine) {
  const test::CheckRow& row = GetParam();
  const Position from = at(row.number("lat1_deg"), row.number("lon1_deg"));
  const Position to = at(row.number("lat2_deg"), row.number("lon2_deg"));
  const TrueDirection start = TrueDirection::degrees(row.number("azi1_deg"));
  const TrueDirection end = TrueDirection::degrees(row.number("azi2_deg"));

  const GeodesicLine line = geodesic(from, to);
  EXPECT_NEAR(line.length.metres(), row.number("s12_m"), 1e-8 * 1.5);
  EXPECT_NEAR(turn_between(line.start_track, start).degrees(), 0, 1e-12);
  EXPECT_NEAR(turn_between(line.end_track, end).degrees(), 0, 1e-12);

  const Arrival arrival = travel(from, start, Length::metres(row.number("s12_m")));
  EXPECT_NEAR(arrival.position.latitude().degrees(), to.latitude().degrees(), 1e-12);
  EXPECT_NEAR(arrival.position.longitude().degrees(), to.longitude().degrees(), 1e-12);
}

INSTANTIATE_TEST_SUITE_P(Published, GeodesicCheck,
                         testing::ValuesIn(test::check_rows("position/geodesic.csv",
                                                            {"lat1_deg", "lon1_deg", "azi1_deg",
                                                             "lat2_deg", "lon2_deg", "azi2_deg",
                                                             "s12_m"})),
                         test::RowName());

TEST(Position, RefusesWhatIsNoPlace) {
  EXPECT_THROW(at(90.0000001, 0), Error);
  EXPECT_THROW(at(-91, 0), Error);
  EXPECT_THROW(at(std::nan(""), 0), Error);
  EXPECT_THROW(at(0, std::nan("")), Error);
  EXPECT_THROW(at(0, INFINITY), Error);
}

TEST(Position, TakesBothNamesOfTheAntimeridian) {
  EXPECT_EQ(at(10, 180), at(10, -180));
  EXPECT_EQ(at(10, 540), at(10, -180));
  EXPECT_DOUBLE_EQ(at(10, 190).longitude().degrees(), -170);
}

TEST(Travel, BackwardsAndForwardsMeet) {
  const Position start = at(78, 16);
  const Arrival out = travel(start, TrueDirection::degrees(123), Length::nautical_miles(40));
  const Arrival back = travel(out.position, out.track, Length::nautical_miles(-40));
  EXPECT_NEAR(geodesic(start, back.position).length.metres(), 0, 1e-7);
  EXPECT_NEAR(turn_between(back.track, TrueDirection::degrees(123)).degrees(), 0, 1e-9);
}

TEST(Geodesic, FromAPlaceToItselfIsNothing) {
  EXPECT_EQ(geodesic(at(1, 2), at(1, 2)).length, Length());
}

}  // namespace
}  // namespace sweepwright
