// The timeline of all crews.
//
// Checks against the outside: bars against the clock labels under them, read as a planner reads
// them with a ruler; sunset from the daylight room, which is checked against a general astronomy
// library in its own tests.
#include "sweepwright/formats/timeline.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "drawn.hpp"
#include "plan_cases.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/flight/daylight.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

using test::all;
using test::words;

/// Minutes since local midnight of the first day from `hh:mm`.
double minutes_of(const std::string& clock) {
  return 60 * std::stod(clock.substr(0, 2)) + std::stod(clock.substr(3));
}

/// The chart's scale, from its own bold clock labels: x = a + b minutes.
struct Ruler {
  double start_mm = 0;
  double mm_per_minute = 0;
  double first_minute = 0;
  double at(double minute) const { return start_mm + mm_per_minute * (minute - first_minute); }
};

Ruler ruler(const Drawing& chart) {
  std::vector<Text> clocks;
  for (const Text& text : all<Text>(chart)) {
    if (text.bold && text.text.size() == 5 && text.text[2] == ':') clocks.push_back(text);
  }
  EXPECT_GE(clocks.size(), 2U);
  const double first = minutes_of(clocks[0].text);
  double step = minutes_of(clocks[1].text) - first;
  if (step < 0) step += 24 * 60;
  return {clocks[0].at.x_mm, (clocks[1].at.x_mm - clocks[0].at.x_mm) / step, first};
}

/// Left and right end of the bar that is filled with the crew's colour.
std::pair<double, double> scene_bar(const Drawing& chart, std::size_t crew) {
  for (const Shape& shape : all<Shape>(chart)) {
    if (shape.fill != crew_style(crew).colour) continue;
    return {shape.rings[0][0].x_mm, shape.rings[0][1].x_mm};
  }
  ADD_FAILURE() << "no bar for crew " << crew;
  return {};
}

double local_minute(const plan::Plan& plan, TimePoint time) {
  const TimePoint local = time + plan.mission.incident.offset_from_utc;
  return Duration(local - std::chrono::floor<std::chrono::days>(local)) / std::chrono::minutes(1);
}

TEST(Timeline, BarsLieUnderTheirTimes) {  // P2
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const Drawing chart = draw_timeline(plan, 270);
    const Ruler scale = ruler(chart);
    for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
      const flight::FlownPattern& flown = plan.assignments[i].flown;
      const double depart = local_minute(plan, flown.depart);
      const auto [left, right] = scene_bar(chart, i);
      constexpr double kNear = 0.1;  // mm
      EXPECT_NEAR(left, scale.at(depart + flown.arrival / std::chrono::minutes(1)), kNear) << name;
      EXPECT_NEAR(right, scale.at(depart + flown.search_end / std::chrono::minutes(1)), kNear)
          << name;
    }
  }
}

TEST(Timeline, AllThatIsDrawnLiesOnThePaper) {  // P1
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    for (const double width : {kLeastTimelineWidth, 180.0, 281.0}) {
      const Drawing chart = draw_timeline(plan, width);
      for (const Element& element : chart.elements) {
        const auto box = bounds(element);
        if (!box) continue;
        EXPECT_GE(box->left_mm, -1e-9) << name;
        EXPECT_GE(box->top_mm, 0) << name;
        EXPECT_LE(box->right_mm, width) << name;
        EXPECT_LE(box->bottom_mm, chart.size.height_mm) << name;
      }
    }
  }
}

TEST(Timeline, LabelsKeepClearOfEachOther) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const std::vector<Text> texts = all<Text>(draw_timeline(make_plan(mission), 270));
    for (std::size_t i = 0; i < texts.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        EXPECT_TRUE(test::are_apart(texts[i], texts[j]))
            << name << ": '" << texts[i].text << "' and '" << texts[j].text << "'";
      }
    }
  }
}

TEST(Timeline, SunsetIsMarkedWhereItFalls) {
  plan::Mission mission = test::mountain_mission();
  // Two crews that come home after dark, at 38.7 N in July.
  mission.incident.operational_period.from += std::chrono::hours(11);
  for (plan::SearchUnit& unit : mission.units) unit.searches_at_night = true;
  const plan::Plan plan = make_plan(mission);
  const Drawing chart = draw_timeline(plan, 270);
  const Position place = middle(plan.area);
  const flight::Daylight day =
      flight::daylight(place, flight::local_date(place, mission.incident.operational_period.from));
  ASSERT_TRUE(day.sun.set.has_value());
  const double minute = local_minute(plan, *day.sun.set);
  const Ruler scale = ruler(chart);
  bool found = false;
  for (const Text& text : all<Text>(chart)) {
    if (text.text.rfind("sunset ", 0) != 0) continue;
    found = true;
    EXPECT_NEAR(minutes_of(text.text.substr(7)), minute, 0.51);
    EXPECT_NEAR(text.at.x_mm, scale.at(minute), 0.1);
  }
  EXPECT_TRUE(found);
  EXPECT_EQ(words(chart).count("civil twilight"), 1U);
}

TEST(Timeline, BingoAndReserveAreShownWhereTheMissionTellsThem) {
  plan::Mission mission = test::mountain_mission();
  EXPECT_EQ(words(draw_timeline(make_plan(mission), 270)).count("bingo"), 0U);
  mission.units[0].on_scene_endurance.reset();
  mission.units[0].time_away = plan::TimeAway{std::chrono::hours(5), std::chrono::minutes(45)};
  const Drawing chart = draw_timeline(make_plan(mission), 270);
  EXPECT_EQ(words(chart).count("bingo"), 1U);
  EXPECT_EQ(words(chart).count("reserve"), 1U);
}

TEST(Timeline, SamePlanSameDrawing) {  // P3
  const plan::Plan plan = make_plan(test::mountain_mission());
  EXPECT_EQ(write_svg(draw_timeline(plan, 270)), write_svg(draw_timeline(plan, 270)));
}

TEST(Timeline, RefusesPaperTooNarrowAndAPlanWithoutCrews) {
  plan::Plan plan = make_plan(test::mountain_mission());
  EXPECT_THROW(draw_timeline(plan, kLeastTimelineWidth - 1), Error);
  plan.assignments.clear();
  EXPECT_THROW(draw_timeline(plan, 270), Error);
}

}  // namespace
}  // namespace sweepwright::formats
