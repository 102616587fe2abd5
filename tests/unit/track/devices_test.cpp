#include "sweepwright/track/devices.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::track {
namespace {

using test::at;

const Instant kNoon =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(12);

Segment flown(int from_s, int to_s, int step_s) {
  Segment segment;
  for (int s = from_s; s <= to_s; s += step_s) {
    segment.push_back(
        {travel(at(38, -117), TrueDirection::degrees(90), Length::metres(50 * s)).position,
         kNoon + std::chrono::seconds(s),
         {}});
  }
  return segment;
}

TEST(Devices, one_log_comes_back_as_it_was) {
  const JoinedTrack joined = join_devices({{"A", "a.gpx", {flown(0, 100, 1), flown(200, 300, 1)}}});
  EXPECT_EQ(joined.left_out, 0U);
  EXPECT_EQ(joined.track.name, "A");
  ASSERT_EQ(joined.track.segments.size(), 2U);
  EXPECT_EQ(joined.track.segments[1].size(), 101U);
}

TEST(Devices, the_second_device_fills_the_gaps_of_the_first_only) {
  const JoinedTrack joined =
      join_devices({{"coarse", "b.igc", {flown(0, 400, 10)}},
                    {"fine", "a.gpx", {flown(0, 100, 1), flown(200, 300, 1)}}});
  EXPECT_EQ(joined.track.name, "fine");
  ASSERT_EQ(joined.track.segments.size(), 4U);
  EXPECT_EQ(joined.track.segments[1].front().time, kNoon + std::chrono::seconds(110));
  EXPECT_EQ(joined.track.segments[1].back().time, kNoon + std::chrono::seconds(190));
  EXPECT_EQ(joined.track.segments[3].front().time, kNoon + std::chrono::seconds(310));
  // 0 to 100 and 200 to 300 in tens.
  EXPECT_EQ(joined.left_out, 22U);
}

TEST(Devices, a_step_over_what_the_other_covers_is_cut) {
  const JoinedTrack joined =
      join_devices({{"fine", "", {flown(10, 20, 1)}}, {"coarse", "", {flown(0, 60, 30)}}});
  ASSERT_EQ(joined.track.segments.size(), 3U);
  EXPECT_EQ(joined.track.segments[0].size(), 1U);
  EXPECT_EQ(joined.left_out, 0U);
}

TEST(Devices, a_log_without_times_is_added_whole_and_said) {
  Segment untimed = flown(0, 10, 1);
  for (Fix& fix : untimed) fix.time.reset();
  const JoinedTrack joined = join_devices({{"A", "", {flown(0, 100, 1)}}, {"B", "", {untimed}}});
  EXPECT_TRUE(joined.untimed);
  EXPECT_EQ(fix_count(joined.track), 112U);
}

}  // namespace
}  // namespace sweepwright::track
