#include "sweepwright/track/cleaning.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::track {
namespace {

using test::at;

const Instant kNoon =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(12);

/// A crew that flies north at 50 m/s, a fix each second.
RawFix flown(int second, long row = 0) {
  const Arrival there =
      travel(at(38, -117), TrueDirection::degrees(0), Length::metres(50 * second));
  return {{there.position, kNoon + std::chrono::seconds(second), Length::metres(900)},
          row == 0 ? second + 1 : row,
          0};
}

std::vector<RawFix> flown_for(int seconds) {
  std::vector<RawFix> log;
  for (int i = 0; i < seconds; ++i) log.push_back(flown(i));
  return log;
}

TEST(Cleaning, a_good_log_is_left_alone) {
  const CleanTrack cleaned = clean(flown_for(100));
  EXPECT_EQ(cleaned.report.kept, 100U);
  EXPECT_EQ(cleaned.report.dropped(), 0U);
  ASSERT_EQ(cleaned.track.segments.size(), 1U);
  EXPECT_NEAR(length(cleaned.track).metres(), 99 * 50, 0.01);
}

TEST(Cleaning, each_fault_is_counted_under_its_own_name_with_its_first_row) {
  std::vector<RawFix> log = flown_for(50);
  log.insert(log.begin() + 10, RawFix{{at(0, 0), kNoon + std::chrono::seconds(10), {}}, 901, 0});
  log.insert(log.begin() + 20,
             RawFix{{at(38, -117), Instant(std::chrono::seconds(5)), {}}, 902, 0});
  log.insert(log.begin() + 30, RawFix{{at(38, -117), {}, {}}, 903, 0});
  log.insert(log.begin() + 40, flown(36, 904));  // the one before again
  log.insert(log.begin() + 45, flown(12, 905));  // back in time
  log.insert(log.begin() + 50,
             RawFix{{at(39, -117), kNoon + std::chrono::seconds(45), {}}, 906, 0});
  const CleanTrack cleaned = clean(log);
  EXPECT_EQ(cleaned.report.pushed, 56U);
  EXPECT_EQ(cleaned.report.kept, 50U);
  const auto first_row = [&](Drop reason) {
    return cleaned.report.drops[static_cast<std::size_t>(reason)].first_row;
  };
  EXPECT_EQ(first_row(Drop::null_position), 901);
  EXPECT_EQ(first_row(Drop::clock_not_set), 902);
  EXPECT_EQ(first_row(Drop::no_time), 903);
  EXPECT_EQ(first_row(Drop::duplicate), 904);
  EXPECT_EQ(first_row(Drop::out_of_order), 905);
  EXPECT_EQ(first_row(Drop::jump), 906);
  EXPECT_EQ(cleaned.track.segments.size(), 1U);
}

TEST(Cleaning, no_track_is_invented_across_a_gap) {
  std::vector<RawFix> log = flown_for(100);
  log.push_back(flown(400));
  log.push_back(flown(401));
  const CleanTrack cleaned = clean(log);
  ASSERT_EQ(cleaned.track.segments.size(), 2U);
  EXPECT_NEAR(length(cleaned.track).metres(), 100 * 50, 0.01);
  EXPECT_EQ(cleaned.report.gaps, 1U);
  ASSERT_TRUE(cleaned.report.longest_gap);
  EXPECT_EQ(cleaned.report.longest_gap->from, kNoon + std::chrono::seconds(99));
  EXPECT_EQ(cleaned.report.longest_gap->to, kNoon + std::chrono::seconds(400));
}

TEST(Cleaning, a_new_place_that_stays_is_kept_after_a_gap) {
  std::vector<RawFix> log = flown_for(20);
  for (int i = 20; i < 40; ++i) {
    RawFix far = flown(i);
    far.fix.position =
        travel(far.fix.position, TrueDirection::degrees(90), Length::kilometres(80)).position;
    log.push_back(far);
  }
  const CleanTrack cleaned = clean(log);
  EXPECT_EQ(cleaned.report.kept, 40U);
  EXPECT_EQ(cleaned.track.segments.size(), 2U);
  EXPECT_NEAR(length(cleaned.track).metres(), 2 * 19 * 50, 0.1);
}

TEST(Cleaning, parts_of_the_log_stay_apart) {
  std::vector<RawFix> log = flown_for(20);
  for (std::size_t i = 10; i < 20; ++i) log[i].log_part = 1;
  EXPECT_EQ(clean(log).track.segments.size(), 2U);
}

TEST(Cleaning, a_log_without_times_is_taken_in_its_order) {
  std::vector<RawFix> log = flown_for(20);
  for (RawFix& raw : log) raw.fix.time.reset();
  log[19].fix.position = at(39, -117);
  const CleanTrack cleaned = clean(log);
  EXPECT_FALSE(cleaned.report.timed);
  EXPECT_EQ(cleaned.report.kept, 20U);
  EXPECT_EQ(cleaned.track.segments.size(), 2U) << "a step over the longest is a gap";
}

TEST(Cleaning, limits_have_to_be_above_0) {
  EXPECT_THROW(
      clean({},
            {.fastest = Speed(), .longest_gap = Duration(1), .longest_step = Length::metres(1)}),
      Error);
}

RC_GTEST_PROP(Cleaning, whatever_the_log_nothing_is_lost_unseen, ()) {
  std::vector<RawFix> log;
  const int count = *rc::gen::inRange(0, 200);
  int second = 0;
  for (int i = 0; i < count; ++i) {
    second += *rc::gen::element(-5, 0, 1, 1, 1, 1, 2, 90);
    RawFix raw = flown(std::max(second, 0), i + 1);
    switch (*rc::gen::inRange(0, 20)) {
      case 0:
        raw.fix.position = at(0, 0);
        break;
      case 1:
        raw.fix.time.reset();
        break;
      case 2:
        raw.fix.time = Instant();
        break;
      case 3:
        raw.fix.position = at(-30, 179.99);
        break;
      default:
        break;
    }
    log.push_back(raw);
  }
  const CleanTrack cleaned = clean(log);
  std::size_t drops = 0;
  for (const DropCount& each : cleaned.report.drops) drops += each.count;
  RC_ASSERT(cleaned.report.kept == fix_count(cleaned.track));
  RC_ASSERT(cleaned.report.kept + drops == log.size());
  RC_ASSERT(cleaned.report.segments == cleaned.track.segments.size());
  std::vector<RawFix> again;
  for (const Segment& segment : cleaned.track.segments) {
    for (std::size_t i = 0; i < segment.size(); ++i) {
      again.push_back({segment[i], 1, 0});
      if (i == 0 || !cleaned.report.timed) continue;
      const Duration time = *segment[i].time - *segment[i - 1].time;
      RC_ASSERT(time.count() > 0 && time.count() <= 60);
      RC_ASSERT(geodesic(segment[i - 1].position, segment[i].position).length.metres() <=
                400 * 0.5144445 * time.count() + 50.001);
    }
  }
  if (cleaned.report.timed) RC_ASSERT(clean(again).report.dropped() == 0U);
}

}  // namespace
}  // namespace sweepwright::track
