// The crew assignment sheet.
//
// Checks against the outside: the page is read back with pugixml, an XML parser; its figures are
// worked out again from what it shows, as a planner would by hand, and compared with the plan's;
// its positions are read back with our own reader. Field names: ICS 204 Assignment List and ICS 220
// Air Operations Summary, public forms (seen).
#include "sweepwright/formats/sheet.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <pugixml.hpp>
#include <sstream>

#include "plan_cases.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::Not;

Provenance provenance() {
  return {"0.1.0",
          "sweepwright plan mission.json -o out",
          std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(11),
          {{"mission.json", std::string(64, 'a')}}};
}

/// A spacing so close that the leg table is long.
plan::Mission long_mission() {
  plan::Mission mission = test::mountain_mission();
  for (plan::SearchUnit& unit : mission.units) {
    unit.sweep_width = Length::nautical_miles(0.5);
    unit.on_scene_endurance = std::chrono::hours(9);
  }
  return mission;
}

pugi::xml_document parsed(const std::string& html) {
  pugi::xml_document document;
  const pugi::xml_parse_result result = document.load_string(html.c_str());
  EXPECT_TRUE(result) << result.description() << " at " << result.offset;
  return document;
}

/// All text under a node, in order, with blanks between.
std::string text_of(const pugi::xml_node& node) {
  std::string text;
  for (const pugi::xml_node& child : node.children()) {
    if (child.type() == pugi::node_pcdata) text += std::string(child.value()) + " ";
    text += text_of(child);
  }
  return text;
}

/// The rows of a table of legs, as texts of their cells.
std::vector<std::vector<std::string>> leg_rows(const pugi::xml_document& page) {
  std::vector<std::vector<std::string>> rows;
  for (const pugi::xpath_node& row :
       page.select_nodes("//table[contains(@class,'legs')]/tbody/tr")) {
    rows.emplace_back();
    for (const pugi::xml_node& cell : row.node().children("td")) {
      rows.back().emplace_back(cell.text().get());
    }
  }
  return rows;
}

/// `h:mm:ss` or `h:mm` in seconds.
double seconds(const std::string& text) {
  std::istringstream in(text);
  double total = 0;
  std::string part;
  int parts = 0;
  while (std::getline(in, part, ':')) {
    total = total * 60 + std::stod(part);
    ++parts;
  }
  return parts == 2 ? total * 60 : total;
}

Position position(const std::string& text) {
  const PositionOutcome outcome = parse_latitude_longitude(PlainText(text));
  return std::get<std::vector<PositionReading>>(outcome).at(0).position;
}

std::string value_of(const std::vector<SheetField>& fields, const std::string& name) {
  for (const SheetField& field : fields) {
    if (field.name == name) return field.value;
  }
  ADD_FAILURE() << "no field " << name;
  return {};
}

const SheetStep& step(const Sheet& sheet, const std::string& name) {
  for (const SheetStep& candidate : sheet.working) {
    if (candidate.name == name) return candidate;
  }
  throw std::runtime_error("no step " + name);
}

TEST(Sheet, IsWellFormedEverywhere) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
      const pugi::xml_document page = parsed(write_sheet(plan, i, provenance()));
      EXPECT_EQ(page.child("html").child("body").child("main").empty(), false) << name;
      EXPECT_EQ(page.select_nodes("//svg[@role='img']").size(), 1U) << name;
    }
  }
}

TEST(Sheet, LoadsAndRunsNothing) {  // P3
  const std::string html = write_sheet(make_plan(test::mountain_mission()), 0, provenance());
  for (const char* loader : {"http", "src=", "href", "<script", "url(", "@import", "<link"}) {
    EXPECT_THAT(html, Not(HasSubstr(loader)));
  }
}

TEST(Sheet, SamePlanSameBytes) {  // P1
  const plan::Plan plan = make_plan(test::mountain_mission());
  EXPECT_EQ(write_sheet(plan, 0, provenance()), write_sheet(plan, 0, provenance()));
}

TEST(Sheet, TextsStayTexts) {  // P2
  const std::string nasty = "<b>&\"' <i>x</i>";
  plan::Mission mission = test::mountain_mission();
  mission.incident.name = mission.incident.number = mission.incident.prepared_by = nasty;
  mission.object.description = mission.conditions.weather = nasty;
  mission.channels = {{nasty, nasty}};
  mission.hazards = {nasty};
  for (plan::SearchUnit& unit : mission.units) {
    unit.callsign = unit.type = unit.leader = unit.base.name = unit.sweep_width_source = nasty;
    unit.remarks = {nasty};
  }
  mission.datum->name = nasty;
  const pugi::xml_document page = parsed(write_sheet(make_plan(mission), 0, provenance()));
  EXPECT_TRUE(page.select_nodes("//b").empty());
  EXPECT_TRUE(page.select_nodes("//i").empty());
  EXPECT_EQ(page.select_node("//h1/span[2]").node().text().get(), nasty);
  const std::string text = text_of(page);
  std::size_t count = 0;
  for (std::size_t at = text.find(nasty); at != std::string::npos; at = text.find(nasty, at + 1)) {
    ++count;
  }
  EXPECT_GE(count, 12U);
}

TEST(Sheet, CarriesTheCautionsOnEveryPage) {  // P4
  const pugi::xml_document one =
      parsed(write_sheet(make_plan(test::mountain_mission()), 0, provenance()));
  const pugi::xml_document more = parsed(write_sheet(make_plan(long_mission()), 0, provenance()));
  for (const std::string_view caution : kCautions) {
    for (const pugi::xml_document* document : {&one, &more}) {
      const pugi::xpath_node_set pages = document->select_nodes("//*[@class='page']");
      EXPECT_EQ(pages.size(), 3U);
      for (const pugi::xpath_node& page : pages) {
        EXPECT_THAT(text_of(page.node()), HasSubstr(std::string(caution)));
      }
    }
  }
}

TEST(Sheet, NamesItsFieldsAsThePublicFormsDo) {
  const pugi::xml_document page =
      parsed(write_sheet(make_plan(test::mountain_mission()), 0, provenance()));
  const std::string text = text_of(page);
  for (const char* name :
       {"Incident Name", "Operational Period", "Prepared by", "Resources Assigned", "Leader",
        "Work Assignment", "Special Instructions", "Communications"}) {
    EXPECT_THAT(text, HasSubstr(name));
  }
}

TEST(Sheet, LegTableIsThePlans) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    for (std::size_t crew = 0; crew < plan.assignments.size(); ++crew) {
      const flight::FlownPattern& flown = plan.assignments[crew].flown;
      const auto rows = leg_rows(parsed(write_sheet(plan, crew, provenance())));
      ASSERT_EQ(rows.size(), flown.legs.size()) << name;
      EXPECT_EQ(rows.front()[0], "out");
      EXPECT_EQ(rows.back()[0], "back");
      for (std::size_t i = 0; i < rows.size(); ++i) {
        const flight::FlownLeg& leg = flown.legs[i];
        const Length distance = leg.distance + (leg.turn ? leg.turn->distance : Length());
        EXPECT_NEAR(std::remainder(std::stod(rows[i][1]) - leg.leg.line.start_track.degrees(), 360),
                    0, 0.5);
        if (const auto heading = leg.magnetic_heading()) {
          EXPECT_NEAR(std::remainder(std::stod(rows[i][2]) - heading->degrees(), 360), 0, 0.501);
        } else {
          EXPECT_EQ(rows[i][2], "") << name;
        }
        EXPECT_NEAR(std::stod(rows[i][3]), leg.triangle.ground_speed.knots(), 0.501);
        EXPECT_NEAR(std::stod(rows[i][4]), distance.nautical_miles(), 0.00501);
        EXPECT_NEAR(seconds(rows[i][5]), (leg.end - leg.start).count(), 0.501);
        EXPECT_NEAR(seconds(rows[i][7]), leg.end.count(), 0.501);
        EXPECT_EQ(rows[i].back(), format_position(leg.leg.to, Notation::degrees_minutes));
        // Two decimals of minutes: within 13 m in both directions together.
        EXPECT_LT(geodesic(position(rows[i].back()), leg.leg.to).length.metres(), 13.2);
      }
    }
  }
}

TEST(Sheet, LegTableHasFuelWhereTheFlowIsKnown) {
  plan::Mission mission = test::mountain_mission();
  mission.units[0].fuel_flow = flight::parse_fuel_flow("9 USgal/h");
  const plan::Plan plan = make_plan(mission);
  const Sheet sheet = make_sheet(plan, 0, provenance());
  EXPECT_EQ(sheet.leg_heads.fuel, "Fuel USgal");
  const double hours = plan.assignments[0].flown.total_time.count() / 3600;
  EXPECT_NEAR(std::stod(sheet.legs.back().total_fuel), 9 * hours, 0.0501);
  EXPECT_EQ(leg_rows(parsed(write_sheet(plan, 0, provenance()))).back().size(), 10U);
  EXPECT_EQ(make_sheet(plan, 1, provenance()).leg_heads.fuel, "");
}

TEST(Sheet, EveryPageNamesSectorAndCallsign) {
  const pugi::xml_document document =
      parsed(write_sheet(make_plan(test::mountain_mission()), 0, provenance()));
  for (const pugi::xpath_node& page : document.select_nodes("//*[@class='page']")) {
    EXPECT_STREQ(page.node().select_node(".//h1/span[1]").node().text().get(), "A1");
    EXPECT_STREQ(page.node().select_node(".//h1/span[2]").node().text().get(), "FALCON 2");
  }
}

TEST(Sheet, ATrackThatTurnsByADegreeIsGivenAtBothEnds) {
  std::size_t turning = 0;
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const Sheet sheet = make_sheet(plan, 0, provenance());
    for (std::size_t i = 0; i < sheet.legs.size(); ++i) {
      const GeodesicLine& line = plan.assignments[0].flown.legs[i].leg.line;
      const bool turns = std::abs(turn_between(line.start_track, line.end_track).degrees()) >= 1;
      EXPECT_EQ(sheet.legs[i].track.find(" to ") != std::string::npos, turns) << name << " " << i;
      if (turns) ++turning;
    }
  }
  EXPECT_GT(turning, 0U);  // round the pole all legs do
}

TEST(Sheet, KeyFiguresAreThePlans) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  const plan::Assignment& assignment = plan.assignments[0];
  const Sheet sheet = make_sheet(plan, 0, provenance());
  EXPECT_EQ(value_of(sheet.key_figures, "Commence search point (CSP)"),
            format_position(commence_search_point(assignment.pattern)));
  EXPECT_EQ(value_of(sheet.key_figures, "Track spacing"),
            format_length(assignment.spacing, LengthUnit::nautical_mile, 2) + " (" +
                format_length(assignment.spacing, LengthUnit::metre, 0) + ")");
  EXPECT_EQ(value_of(sheet.key_figures, "Height above surface"), "1000 ft");
  EXPECT_EQ(value_of(sheet.key_figures, "Search speed"), "90 kt");
  EXPECT_EQ(value_of(sheet.key_figures, "Pattern, of search time"),
            format_duration_minutes(assignment.pattern_time) + " of 2:33");
  EXPECT_EQ(value_of(sheet.key_figures, "First leg, first turn"),
            format_direction(assignment.pattern.legs[0].line.start_track) + ", " +
                std::string(pattern::name(assignment.pattern.first_turn)));
}

TEST(Sheet, ThePlannerCanCheckTheWorkingByHand) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const plan::Assignment& assignment = plan.assignments[0];
    const Sheet sheet = make_sheet(plan, 0, provenance());
    double width = 0;
    double spacing = 0;
    const SheetStep& coverage = step(sheet, "Coverage C");
    ASSERT_EQ(std::sscanf(coverage.expression.c_str(), "W %lf NM / S %lf NM", &width, &spacing), 2);
    EXPECT_NEAR(width, assignment.sweep_width.width.nautical_miles(), 0.0005);
    EXPECT_NEAR(std::stod(coverage.value), width / spacing, 0.002) << name;
    // 1 - exp(-C): Koopman (1946), random search.
    const SheetStep& detection = step(sheet, "POD, exponential");
    EXPECT_THAT(detection.expression, HasSubstr("C = " + coverage.value));
    EXPECT_NEAR(std::stod(detection.value), 100 * (1 - std::exp(-std::stod(coverage.value))), 0.6);
    EXPECT_EQ(step(sheet, "Search time").expression, "on-scene endurance 3:00 x 0.85");
    EXPECT_EQ(step(sheet, "Search time").value, "2:33");
    for (const char* which : {"Base to CSP", "End to base"}) {
      double distance = 0;
      double speed = 0;
      const SheetStep& time = step(sheet, which);
      ASSERT_EQ(std::sscanf(time.expression.c_str(), "%lf NM / %lf kt", &distance, &speed), 2);
      // 0.005 NM, 0.05 kt and half a second: within a thousandth of the way.
      EXPECT_NEAR(seconds(time.value), distance / speed * 3600, 2 + 1e-3 * seconds(time.value))
          << name << " " << which;
    }
  }
}

TEST(Sheet, PeriodIsGivenInLocalTimeAndUtc) {
  plan::Mission mission = test::mountain_mission();
  EXPECT_EQ(value_of(make_sheet(make_plan(mission), 0, provenance()).heading, "Operational Period"),
            "14 Jul 2026 06:00 to 20:00 local (UTC-7)\n14 Jul 2026 13:00 to 15 Jul 2026 03:00 UTC");
  mission.incident.offset_from_utc = std::chrono::minutes(345);
  EXPECT_THAT(
      value_of(make_sheet(make_plan(mission), 0, provenance()).heading, "Operational Period"),
      HasSubstr("14 Jul 2026 18:45 to 15 Jul 2026 08:45 local (UTC+5:45)"));
}

TEST(Sheet, WhatIsNotKnownIsABlankToFillIn) {
  plan::Mission mission = test::mountain_mission();
  mission.units[0].leader.clear();
  mission.channels.clear();
  const Sheet sheet = make_sheet(make_plan(mission), 0, provenance());
  EXPECT_EQ(value_of(sheet.assignment.at(1).fields, "Leader"), "");
  EXPECT_EQ(value_of(sheet.facts.at(1).fields, "Primary"), "");
}

TEST(Sheet, HasTheBlanksOfTheDebrief) {
  const pugi::xml_document page =
      parsed(write_sheet(make_plan(test::mountain_mission()), 0, provenance()));
  const std::string text = text_of(page.select_node("//section[@class='debrief']").node());
  for (const char* blank :
       {"Left base", "On scene", "Off scene", "Visibility met", "Legs completed",
        "Legs not completed", "not seen well", "Sighting 1", "coverage", "tired", "Signature"}) {
    EXPECT_THAT(text, HasSubstr(blank));
  }
}

TEST(Sheet, CornersAreThoseOfTheSectorAndTheMap) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  const Sheet sheet = make_sheet(plan, 0, provenance());
  const std::string corners = value_of(sheet.assignment.at(0).fields, "Corners");
  const std::string names = "ABCD";
  std::istringstream lines(corners);
  std::string line;
  std::size_t count = 0;
  while (std::getline(lines, line)) {
    ASSERT_LT(count, names.size());
    EXPECT_EQ(line.substr(0, 3), std::string(1, names[count++]) + "  ");
    double nearest = 1e9;
    for (const Position& corner : plan.assignments[0].sector.polygons[0].outer) {
      nearest = std::min(nearest, geodesic(position(line.substr(3)), corner).length.metres());
    }
    EXPECT_LT(nearest, 13.2) << line;
  }
  EXPECT_EQ(count, 4U);
}

TEST(Sheet, FooterSaysWhereItCameFrom) {
  const pugi::xml_document page =
      parsed(write_sheet(make_plan(test::mountain_mission()), 0, provenance()));
  std::string text;
  for (const pugi::xpath_node& node : page.select_nodes("//*[@class='footer']")) {
    text += text_of(node.node());
  }
  for (const std::string& fact :
       {std::string("Sweepwright 0.1.0"), std::string("sweepwright plan mission.json -o out"),
        std::string("2026-07-14T11:00:00Z"), std::string(64, 'a'), std::string("WGS 84"),
        std::string("MAGNETIC north"), std::string("crew's own manual")}) {
    EXPECT_THAT(text, HasSubstr(fact));
  }
}

TEST(Sheet, RefusesAMissingAssignment) {
  EXPECT_THROW(make_sheet(make_plan(test::mountain_mission()), 2, provenance()), Error);
}

}  // namespace
}  // namespace sweepwright::formats
