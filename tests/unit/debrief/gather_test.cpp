#include "sweepwright/debrief/gather.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/flown.hpp"

namespace sweepwright::debrief {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr auto kStart =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(14);

class Gather : public testing::Test {
 protected:
  track::Track log(std::chrono::hours later) const {
    return test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart + later);
  }
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(38.25, -117)));
};

TEST_F(Gather, days_are_sorties_of_their_own_and_devices_are_not) {
  const Gathered found = gather(
      plan, {{{log(std::chrono::hours(24)), log(std::chrono::hours(0)), log(std::chrono::hours(0))},
              {}}});
  ASSERT_EQ(found.sorties.size(), 2U);
  EXPECT_EQ(track::fix_count(found.sorties[0].track), track::fix_count(log({})));
  EXPECT_EQ(track::fix_count(found.sorties[1].track), track::fix_count(log({})));
  EXPECT_LT(found.sorties[0].track.segments[0][0].time, found.sorties[1].track.segments[0][0].time);
  EXPECT_THAT(found.notes, ElementsAre(HasSubstr("2 logs of Lark 1 are of one sortie")));
}

TEST_F(Gather, a_report_goes_where_its_times_are) {
  CrewReport second_day;
  second_day.on_task = kStart + std::chrono::hours(24);
  second_day.visibility = Length::nautical_miles(4);
  CrewReport any;
  any.remarks = {"told once"};
  CrewReport other;
  other.off_task = kStart - std::chrono::hours(48);
  const Gathered found = gather(plan, {{{log(std::chrono::hours(0)), log(std::chrono::hours(24))},
                                        {second_day, any, other}}});
  ASSERT_EQ(found.sorties.size(), 2U);
  EXPECT_FALSE(found.sorties[0].report.value().visibility);
  EXPECT_EQ(found.sorties[1].report.value().visibility, Length::nautical_miles(4));
  EXPECT_THAT(found.sorties[0].report->remarks, ElementsAre("told once"));
  EXPECT_THAT(found.sorties[1].report->remarks, IsEmpty());
  EXPECT_THAT(found.notes, ElementsAre(HasSubstr("a report of Lark 1 is not used")));
}

TEST_F(Gather, a_crew_without_logs_has_no_sortie) {
  const Gathered found = gather(plan, {CrewLogs()});
  EXPECT_THAT(found.sorties, IsEmpty());
}

}  // namespace
}  // namespace sweepwright::debrief
