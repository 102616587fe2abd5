#include "sweepwright/track/statistics.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::track {
namespace {

using test::at;

TEST(Statistics, time_distance_speed_and_height_inside_and_in_all) {
  const Instant noon =
      std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(12);
  const Position start = at(38, -117);
  StatisticsCounter counter(test::rectangle(start, TrueDirection::degrees(0), Length::metres(2000),
                                            Length::metres(2000)));
  // 50 m/s to the north for 40 s, of which 20 are inside; a gap; 10 s at 100 m/s outside.
  for (int s = 0; s <= 40; ++s) {
    counter.add({travel(start, TrueDirection::degrees(0), Length::metres(50 * s)).position,
                 noon + std::chrono::seconds(s), Length::metres(900 + s)},
                s == 0);
  }
  for (int s = 0; s <= 10; ++s) {
    counter.add({travel(start, TrueDirection::degrees(0), Length::metres(5000 + 100 * s)).position,
                 noon + std::chrono::seconds(200 + s), Length::metres(700)},
                s == 0);
  }
  const TrackStatistics& all = counter.statistics();
  EXPECT_EQ(all.begin, noon);
  EXPECT_EQ(all.end, noon + std::chrono::seconds(210));
  EXPECT_DOUBLE_EQ(all.all.time.count(), 50);
  EXPECT_NEAR(all.all.distance.metres(), 3000, 1e-6);
  EXPECT_DOUBLE_EQ(all.inside.time.count(), 20);
  EXPECT_NEAR(all.inside.distance.metres(), 1000, 1e-6);
  EXPECT_NEAR(all.slowest->metres_per_second(), 50, 1e-6);
  EXPECT_NEAR(all.fastest->metres_per_second(), 100, 1e-6);
  EXPECT_NEAR(mean_speed(all.all)->metres_per_second(), 60, 1e-6);
  EXPECT_EQ(all.lowest, Length::metres(700));
  EXPECT_EQ(all.highest, Length::metres(940));
}

TEST(Statistics, without_times_there_is_no_speed) {
  StatisticsCounter counter;
  counter.add({at(38, -117), {}, {}}, true);
  counter.add({at(38.1, -117), {}, {}}, false);
  EXPECT_GT(counter.statistics().all.distance, Length::kilometres(11));
  EXPECT_EQ(mean_speed(counter.statistics().all), std::nullopt);
  EXPECT_EQ(counter.statistics().slowest, std::nullopt);
}

}  // namespace
}  // namespace sweepwright::track
