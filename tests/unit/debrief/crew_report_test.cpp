#include "sweepwright/debrief/crew_report.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/flown.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::debrief {
namespace {

using testing::HasSubstr;

std::string refusal(const CrewReport& report, const plan::Plan& plan) {
  try {
    assignment_of(report, plan);
  } catch (const Error& error) {
    return error.what();
  }
  return "none";
}

CrewReport named(const std::string& sector, const std::string& callsign) {
  CrewReport report;
  report.sector = sector;
  report.callsign = callsign;
  return report;
}

TEST(CrewReport, finds_its_assignment_by_sector_or_callsign) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(38.25, -117)));
  EXPECT_EQ(assignment_of(named("a1", ""), plan), 0U);
  EXPECT_EQ(assignment_of(named("", "LARK 1"), plan), 0U);
  EXPECT_EQ(assignment_of(named("A1", "Lark 1"), plan), 0U);
}

TEST(CrewReport, unknown_names_are_refused_with_the_nearest) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(38.25, -117)));
  EXPECT_THAT(refusal(named("A2", ""), plan), HasSubstr("A1"));
  EXPECT_THAT(refusal(named("", "Lrk 1"), plan), HasSubstr("did you mean 'Lark 1'?"));
  EXPECT_THAT(refusal(named("", ""), plan), HasSubstr("neither"));
}

TEST(CrewReport, parts_of_a_form_are_joined) {
  CrewReport first = named("A1", "");
  first.visibility = Length::nautical_miles(5);
  first.sightings = {{{}, {}, "glint", ""}};
  CrewReport second = named("A1", "Lark 1");
  second.visibility = Length::nautical_miles(9);
  second.fatigued = true;
  second.sightings = {{{}, {}, "smoke", ""}};
  const CrewReport both = merged(first, second);
  EXPECT_EQ(both.callsign, "Lark 1");
  EXPECT_EQ(both.visibility, Length::nautical_miles(5));
  EXPECT_TRUE(both.fatigued);
  EXPECT_EQ(both.sightings.size(), 2U);
}

}  // namespace
}  // namespace sweepwright::debrief
