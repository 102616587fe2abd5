#include "sweepwright/pattern/expanding_square.hpp"

#include <gtest/gtest.h>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

Pattern boat_square(Position datum) {
  return make_expanding_square(
      {datum, TrueDirection(), Length::nautical_miles(0.5), 8, Turn::right});
}

class ExpandingSquareCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(ExpandingSquareCheck, AgreesWithTheWorkedExample) {
  const test::CheckRow& row = GetParam();
  for (const Position& datum : test::awkward_places()) {
    const Pattern pattern = boat_square(datum);
    const Leg& leg = pattern.legs.at(static_cast<std::size_t>(row.number("leg")) - 1);
    EXPECT_NEAR(leg.line.length.nautical_miles(), row.number("length_nm"), 1e-9);
    EXPECT_NEAR((leg.line.length / Speed::knots(5)).count() / 60, row.number("minutes_at_5kt"),
                1e-7);
  }
  // Tracks as on paper, where north is the same all over the pattern.
  const Pattern on_equator = boat_square(at(0, 0));
  const Leg& leg = on_equator.legs.at(static_cast<std::size_t>(row.number("leg")) - 1);
  EXPECT_NEAR(
      turn_between(leg.line.start_track, TrueDirection::degrees(row.number("track_deg"))).degrees(),
      0, 0.001);
}

INSTANTIATE_TEST_SUITE_P(Published, ExpandingSquareCheck,
                         testing::ValuesIn(test::check_rows("pattern/expanding_square.csv",
                                                            {"leg", "length_nm", "minutes_at_5kt",
                                                             "track_deg"})),
                         test::RowName());

TEST(ExpandingSquare, TotalsFollowTheRule) {
  // 10 NM and 120 minutes for 8 legs at 0.5 NM and 5 kt: the same slides.
  const Pattern pattern = boat_square(at(38, -117));
  EXPECT_NEAR(total_distance(pattern).nautical_miles(), 10, 1e-9);
  for (int legs = 1; legs < 40; ++legs) {
    const Pattern square = make_expanding_square(
        {at(60, 10), TrueDirection::degrees(77), Length::nautical_miles(1), legs, Turn::left});
    const int m = legs / 2;
    EXPECT_NEAR(total_distance(square).nautical_miles(),
                legs % 2 == 0 ? m * (m + 1) : (m + 1) * (m + 1), 1e-7);
    EXPECT_NEAR(expanding_square_distance(legs, Length::nautical_miles(1)).nautical_miles(),
                total_distance(square).nautical_miles(), 1e-7);
  }
}

TEST(ExpandingSquare, TurnsToTheSideAskedFor) {
  for (const Turn turn : {Turn::left, Turn::right}) {
    const Pattern square = make_expanding_square(
        {at(78, 16), TrueDirection::degrees(200), Length::nautical_miles(2), 6, turn});
    for (std::size_t i = 1; i < square.legs.size(); ++i) {
      EXPECT_NEAR(turn_between(square.legs[i - 1].line.end_track, square.legs[i].line.start_track)
                      .degrees(),
                  turn == Turn::right ? 90 : -90, 1e-6);
    }
  }
}

// 45 degrees: the US National SAR Manual (seen); to the side of the turns: our choice.
TEST(ExpandingSquare, SecondPatternIsTurnedHalfARightAngle) {
  for (const Turn turn : {Turn::left, Turn::right}) {
    const ExpandingSquare first{at(38, -117), TrueDirection::degrees(10), Length::nautical_miles(1),
                                8, turn};
    ExpandingSquare second = first;
    second.second = true;
    EXPECT_NEAR(turn_between(make_expanding_square(first).legs[0].line.start_track,
                             make_expanding_square(second).legs[0].line.start_track)
                    .degrees(),
                turn == Turn::right ? 45 : -45, 1e-9);
  }
}

TEST(ExpandingSquare, RefusesWhatCannotBeFlown) {
  const auto square = [](Length spacing, int legs) {
    return make_expanding_square({at(0, 0), TrueDirection(), spacing, legs, Turn::right});
  };
  EXPECT_THROW(square(Length(), 8), Error);
  EXPECT_THROW(square(Length::nautical_miles(-1), 8), Error);
  EXPECT_THROW(square(Length::nautical_miles(1), 0), Error);
  EXPECT_THROW(square(Length::nautical_miles(1), 1001), Error);
  EXPECT_THROW(square(Length::nautical_miles(100), 500), Error);
}

}  // namespace
}  // namespace sweepwright::pattern
