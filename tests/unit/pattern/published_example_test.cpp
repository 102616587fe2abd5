// Ladders against published worked examples.
#include <gtest/gtest.h>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::pattern {
namespace {

using test::CheckRow;

/// A hundredth of a minute, the last digit of a position on the radio.
constexpr double kHundredthOfMinute = 0.01 / 60;

class PublishedCreepingLine : public testing::TestWithParam<CheckRow> {};

TEST_P(PublishedCreepingLine, is_flown) {
  const CheckRow& row = GetParam();
  LadderFromStart request;
  request.start = test::at(row.number("entry_latitude_deg"), row.number("entry_longitude_deg"));
  request.first_track = TrueDirection::degrees(row.number("first_track_deg"));
  request.leg_length = Length::nautical_miles(row.number("leg_nm"));
  request.spacing = Length::nautical_miles(row.number("spacing_nm"));
  request.legs = 2;
  const Pattern pattern = make_creeping_line(request);
  ASSERT_EQ(pattern.legs.size(), 3u);
  const Leg& first = pattern.legs[0];
  const Leg& second = pattern.legs[2];
  // The line at right angles to a leg is not the meridian at both its ends: half a hundredth more.
  EXPECT_NEAR(second.to.latitude().degrees(), row.number("second_leg_latitude_deg"),
              1.5 * kHundredthOfMinute);
  EXPECT_NEAR((first.to.longitude() - first.from.longitude()).minutes(),
              row.number("leg_longitude_min"), 0.01);
}

INSTANTIATE_TEST_SUITE_P(
    Text, PublishedCreepingLine,
    testing::ValuesIn(test::check_rows("pattern/creeping_line.csv",
                                       {"entry_latitude_deg", "entry_longitude_deg",
                                        "first_track_deg", "leg_nm", "spacing_nm",
                                        "second_leg_latitude_deg", "leg_longitude_min"})),
    test::RowName());

class PublishedParallelTrack : public testing::TestWithParam<CheckRow> {};

TEST_P(PublishedParallelTrack, is_entered_where_the_text_says) {
  const CheckRow& row = GetParam();
  const double north = row.number("north_deg");
  const double south = row.number("south_deg");
  const double west = row.number("west_deg");
  const double east = row.number("east_deg");
  const Region cell = make_region({{{test::at(south, west), test::at(south, east),
                                     test::at(north, east), test::at(north, west)},
                                    {}}});
  const Pattern pattern = make_parallel_track(
      cell, {.spacing = Length::nautical_miles(row.number("spacing_nm")),
             .first_track = TrueDirection::degrees(row.number("first_track_deg")),
             .first_turn = parse_turn(row.text("first_turn")),
             .turn_room = TurnRoom::outside});
  const Position entry = commence_search_point(pattern);
  EXPECT_NEAR(entry.latitude().degrees(), row.number("entry_latitude_deg"), kHundredthOfMinute);
  EXPECT_NEAR(entry.longitude().degrees(), row.number("entry_longitude_deg"), kHundredthOfMinute);
}

INSTANTIATE_TEST_SUITE_P(
    Text, PublishedParallelTrack,
    testing::ValuesIn(test::check_rows("pattern/parallel_track.csv",
                                       {"north_deg", "south_deg", "west_deg", "east_deg",
                                        "first_track_deg", "first_turn", "spacing_nm",
                                        "entry_latitude_deg", "entry_longitude_deg"})),
    test::RowName());

}  // namespace
}  // namespace sweepwright::pattern
