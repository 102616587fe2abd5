#include "sweepwright/debrief/crew_match.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/flown.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::debrief {
namespace {

using testing::HasSubstr;

plan::Plan two_crews() {
  plan::Mission mission = test::small_mission(test::at(38.25, -117));
  mission.units.push_back(mission.units[0]);
  mission.units[0].callsign = "Lark 2";
  mission.units[1].callsign = "Lark 21";
  return plan::make_plan(mission);
}

track::Track named(const std::string& name, const std::string& source) {
  return {name, source, {}};
}

TEST(CrewMatch, names_tell_in_their_order) {
  const plan::Plan plan = two_crews();
  EXPECT_EQ(crew_of(plan, named("LARK21", "x/lark-2.gpx")).assignment, 1U);
  EXPECT_EQ(crew_of(plan, named("", "logs/A1-lark_21.gpx")).assignment, 1U);
  EXPECT_EQ(crew_of(plan, named("", "lark 2.igc")).assignment, 0U);
  EXPECT_EQ(crew_of(plan, named("morning", "a2 first.csv")).assignment, 1U);
  EXPECT_EQ(crew_of(plan, named("LARK 21", ""), "a1").assignment, 0U);
}

TEST(CrewMatch, else_the_ground_tells) {
  const plan::Plan plan = two_crews();
  track::Track track = test::flown_track(plan.assignments[1].pattern, Speed::knots(90), Instant());
  track.name = "device 7";
  const CrewMatch match = crew_of(plan, track);
  EXPECT_EQ(match.assignment, 1U);
  EXPECT_THAT(match.reason, HasSubstr("check"));
}

TEST(CrewMatch, what_nothing_tells_is_refused) {
  const plan::Plan plan = two_crews();
  EXPECT_THROW(crew_of(plan, named("device", "log.gpx")), Error);
  try {
    crew_of(plan, named("", ""), "Lrk 21");
    FAIL();
  } catch (const Error& error) {
    EXPECT_THAT(error.hint(), HasSubstr("Lark 21"));
  }
}

}  // namespace
}  // namespace sweepwright::debrief
