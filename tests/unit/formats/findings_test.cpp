// What the checks of a plan find, in words, in JSON, on overlays and on sheets.
#include "sweepwright/formats/findings.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>

#include "ground_cases.hpp"
#include "support/command.hpp"
#include "support/files.hpp"
#include "sweepwright/formats/mission_reader.hpp"
#include "sweepwright/formats/plan_json.hpp"
#include "sweepwright/formats/plan_overlays.hpp"
#include "sweepwright/formats/plan_summary.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/sheet_pages.hpp"

namespace sweepwright::formats {
namespace {

using hazard::Finding;
using hazard::Severity;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

const plan::Plan& over_a_cone() {
  static const plan::Plan plan = plan::make_plan(test::mission_over_a_cone());
  return plan;
}

Provenance provenance() {
  return {"0.1.0", "sweepwright plan", TimePoint(std::chrono::seconds(1781000000)), {}};
}

Finding finding(Severity severity, std::string text) {
  Finding made;
  made.severity = severity;
  made.crew = "ALFA";
  made.sector = "A1";
  made.text = std::move(text);
  return made;
}

TEST(Findings, are_one_line_each_whatever_they_hold) {
  const std::string text = findings_text({finding(Severity::must_not_fly, "leg 1:\nlow\t"),
                                          finding(Severity::not_checked, std::string(500, 'x'))});
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 2);
  EXPECT_THAT(text, testing::StartsWith("MUST NOT FLY terrain      A1 ALFA: leg 1: low"));
  EXPECT_THAT(text, HasSubstr("NOT CHECKED"));
  EXPECT_THAT(text, HasSubstr(std::string(500, 'x')));
}

TEST(Findings, none_is_said_and_not_called_safe) {
  EXPECT_EQ(findings_text({}), "The checks that were made found nothing.\n");
}

// The cone's summit, 3,000 m, is 9,843 ft high: 9,000 ft do not clear it, steps do.
TEST(Findings, of_a_plan_name_the_crew_that_is_too_low) {
  const plan::Plan& plan = over_a_cone();
  ASSERT_FALSE(plan.findings.empty());
  EXPECT_TRUE(hazard::forbids_flight(plan.assignments[0].findings));
  EXPECT_FALSE(hazard::forbids_flight(plan.assignments[1].findings));
  EXPECT_EQ(plan.findings[0].severity, Severity::must_not_fly);
  EXPECT_EQ(plan.findings[0].crew, "FALCON 2");
  EXPECT_THAT(plan_summary(plan), HasSubstr("MUST NOT FLY terrain"));
  EXPECT_THAT(minima_text(plan), HasSubstr("minimum clearance 1000 ft (default: 1,000 ft, ICAO"));
}

TEST(Findings, stand_in_json_with_their_places_and_the_heights_of_each_leg) {
  const plan::Plan& plan = over_a_cone();
  const json checked = json::parse(findings_json(plan, provenance()));
  EXPECT_EQ(checked["must_not_fly"], true);
  EXPECT_EQ(checked["findings"].size(), plan.findings.size());
  EXPECT_EQ(checked["findings"][0]["severity"], "must not fly");
  EXPECT_EQ(checked["findings"][0]["position"].size(), 2u);
  const json& legs = checked["crews"][1]["terrain"]["legs"];
  ASSERT_EQ(legs.size(), plan.assignments[1].flown.legs.size());
  for (const json& leg : legs) {
    EXPECT_GE(leg["planned_m"].get<double>(), leg["safe_altitude_m"].get<double>() - 1e-6);
    EXPECT_GE(leg["least_clearance_m"].get<double>(), 304.8 - 1e-6);
  }
  const json whole = json::parse(plan_json(plan, provenance()));
  EXPECT_EQ(whole["findings"], checked["findings"]);
  EXPECT_EQ(whole["assignments"][1]["terrain"], checked["crews"][1]["terrain"]);
}

// GDAL (Debian package gdal-bin) finds the same height where the highest ground of each leg of the
// mountain demo is said to stand.
TEST(Findings, highest_ground_of_each_leg_is_what_gdal_finds_there) {
  const std::filesystem::path demo = test::repository() / "demo-scenarios" / "01-dry-mountains";
  const plan::Plan plan = plan::make_plan(read_mission((demo / "mission.json").string()));
  const json checked = json::parse(findings_json(plan, provenance()));
  std::string places;
  std::vector<double> heights;
  for (const json& crew : checked["crews"]) {
    for (const json& leg : crew["terrain"]["legs"]) {
      places += leg["highest_at"][0].dump() + " " + leg["highest_at"][1].dump() + "\n";
      heights.push_back(leg["highest_m"].get<double>());
    }
  }
  ASSERT_GT(heights.size(), 50u);
  const test::TemporaryFolder folder;
  test::write_file(folder.path() / "places.txt", places);
  const test::CommandResult there = test::run_command(
      "gdallocationinfo -valonly -geoloc " +
          test::shell_word((demo / "sawback-ground.tif").string()) + " < places.txt",
      folder.path(), {{"PATH", "/usr/bin:/bin"}});
  ASSERT_EQ(there.status, 0) << there.standard_error << "(Debian package gdal-bin)";
  std::istringstream lines(there.standard_output);
  for (const double height : heights) {
    double found = 0;
    ASSERT_TRUE(lines >> found);
    EXPECT_NEAR(height, found, 0.01);
  }
}

TEST(Findings, with_places_are_on_the_overlays) {
  const plan::Plan& plan = over_a_cone();
  const auto with_places =
      std::count_if(plan.findings.begin(), plan.findings.end(),
                    [](const Finding& found) { return found.where.has_value(); });
  ASSERT_GT(with_places, 0);
  StringSink sink;
  write_plan_geojson(sink, plan, provenance());
  const json overlay = json::parse(sink.text());
  EXPECT_EQ(std::count_if(overlay["features"].begin(), overlay["features"].end(),
                          [](const json& feature) {
                            return feature["properties"]["part"] == "finding" &&
                                   feature["geometry"]["type"] == "Point";
                          }),
            with_places);
  StringSink kml;
  write_plan_kml(kml, plan, provenance());
  EXPECT_THAT(kml.text(), HasSubstr("MUST NOT FLY, terrain, A1 FALCON 2"));
}

TEST(Findings, are_on_the_sheet_with_heights_and_profile) {
  const Sheet sheet = make_sheet(over_a_cone(), 0, provenance());
  EXPECT_THAT(sheet.instructions.lines[0], HasSubstr("MUST NOT FLY"));
  EXPECT_THAT(sheet.findings.lines[0], HasSubstr("MUST NOT FLY: way out: 9000 ft"));
  EXPECT_THAT(sheet.findings.lines.back(), HasSubstr("ICAO Annex 2"));
  for (const SheetLeg& leg : sheet.legs) {
    EXPECT_EQ(leg.altitude_ft, "9000");
    EXPECT_FALSE(leg.safe_altitude_ft.empty());
  }
  EXPECT_TRUE(sheet.profile.has_value());
  const std::string html = write_sheet_html(sheet);
  EXPECT_THAT(html, HasSubstr("MSA ft"));
  EXPECT_THAT(html, HasSubstr("Terrain: BELOW MINIMUM"));
  const Sheet in_steps = make_sheet(over_a_cone(), 1, provenance());
  EXPECT_FALSE(in_steps.heights.lines.empty());
}

/// All texts of a drawing.
void collect(const std::vector<Element>& elements, std::string& text) {
  for (const Element& element : elements) {
    if (const auto* words = std::get_if<Text>(&element.what)) text += words->text + "\n";
    if (const auto* group = std::get_if<Group>(&element.what)) collect(group->elements, text);
  }
}

TEST(Findings, and_the_profile_are_on_the_pages_of_every_paper) {
  for (const Paper& paper : papers()) {
    std::string text;
    for (const Drawing& page : set_sheet(over_a_cone(), 0, provenance(), paper)) {
      collect(page.elements, text);
      EXPECT_GT(page.elements.size(), 20u) << "an empty page, " << paper.name;
    }
    EXPECT_THAT(text, HasSubstr("Findings of the checks"));
    EXPECT_THAT(text, HasSubstr("Terrain: BELOW MINIMUM"));
    EXPECT_THAT(text, HasSubstr("MSA ft"));
  }
}

TEST(Findings, without_a_model_the_sheet_says_that_nothing_was_checked) {
  const plan::Plan plan = plan::make_plan(test::mountain_mission());
  const Sheet sheet = make_sheet(plan, 0, provenance());
  EXPECT_THAT(sheet.findings.lines[0], HasSubstr("NOT CHECKED: nothing of this flight"));
  EXPECT_FALSE(sheet.profile.has_value());
  EXPECT_THAT(write_sheet_html(sheet), Not(HasSubstr("MSA ft")));
  EXPECT_FALSE(hazard::forbids_flight(plan.findings));
}

}  // namespace
}  // namespace sweepwright::formats
