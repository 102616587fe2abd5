// The terrain report: promise P1, its numbers against GDAL, its chart.
#include "sweepwright/formats/terrain_report.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "support/command.hpp"
#include "support/elevation.hpp"
#include "support/files.hpp"
#include "sweepwright/formats/elevation_reader.hpp"
#include "sweepwright/formats/profile_chart.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::json;
using terrain::ClearanceClass;
using test::at;
using testing::HasSubstr;
using testing::Not;

std::string real_file() {
  return (test::checks() / "terrain" / "sangre_de_cristo_feet.asc").string();
}

TerrainReport real_report(TerrainQuestion question) {
  ElevationOptions feet;
  feet.unit = HeightUnit::foot;
  question.path = {at(37.583, -105.517), at(37.567, -105.45), at(37.6, -105.483)};
  return make_terrain_report(read_elevation_files({real_file()}, feet).model, question);
}

json json_of(const TerrainReport& report) {
  return json::parse(terrain_report_json(report, {"0", "test", {}, {}}));
}

// GDAL (Debian package gdal-bin) says that the highest post stands where the report says.
TEST(TerrainReport, HighestGroundIsWhatGdalFindsThere) {
  TerrainQuestion question;
  question.altitude = Length::feet(15'500);
  const json report = json_of(real_report(question));
  const test::TemporaryFolder folder;
  const test::CommandResult there = test::run_command(
      "echo '" + report["highest_at"][0].dump() + " " + report["highest_at"][1].dump() +
          "' | gdallocationinfo -valonly -geoloc " + test::shell_word(real_file()),
      folder.path(), {{"PATH", "/usr/bin:/bin"}});
  ASSERT_EQ(there.status, 0) << there.standard_error << "(Debian package gdal-bin)";
  EXPECT_NEAR(std::stod(there.standard_output) * 0.3048, report["highest_m"].get<double>(), 0.006);
  EXPECT_NEAR(report["least_clearance_m"].get<double>(),
              15'500 * 0.3048 - report["highest_m"].get<double>(), 0.011);
  EXPECT_EQ(report["verdict"], "marginal");
  EXPECT_EQ(report["heights"].size(), 1u);
  EXPECT_EQ(report["safe_altitude_by_leg"].size(), 2u);
}

TEST(TerrainReport, ProfileHoldsEveryPieceInOrder) {
  const json report = json_of(real_report({}));
  double before = 0;
  double highest = -1e9;
  for (const json& piece : report["profile"]) {
    EXPECT_EQ(piece["from_m"].get<double>(), before);
    EXPECT_LE(piece["ground_m"].get<double>(), piece["highest_m"].get<double>());
    highest = std::max(highest, piece["highest_m"].get<double>());
    before = piece["to_m"];
  }
  EXPECT_EQ(before, report["length_m"].get<double>());
  EXPECT_EQ(highest, report["highest_m"].get<double>());
}

TEST(TerrainReport, PlansHeightsThatKeepTheMinimum) {
  TerrainQuestion question;
  for (const HeightSteps steps : {HeightSteps::line, HeightSteps::leg, HeightSteps::length}) {
    question.steps = steps;
    question.shortest_step = Length::nautical_miles(1);
    const TerrainReport report = real_report(question);
    EXPECT_NE(verdict(report), ClearanceClass::below_minimum);
    EXPECT_NE(verdict(report), ClearanceClass::not_checked);
    EXPECT_THAT(terrain_report_text(report), Not(HasSubstr("NOT CHECKED")));
  }
}

TEST(TerrainReport, P1WhatCouldNotBeCheckedIsNeverClear) {
  TerrainQuestion question;
  question.path = {at(10, 10), at(10, 10.1)};
  question.altitude = Length::feet(30'000);
  const TerrainReport report = make_terrain_report(terrain::ElevationModel(), question);
  EXPECT_EQ(verdict(report), ClearanceClass::not_checked);
  EXPECT_THAT(terrain_report_text(report), HasSubstr("Verdict            NOT CHECKED"));
  const json document = json_of(report);
  EXPECT_EQ(document["verdict"], "not checked");
  EXPECT_TRUE(document["highest_m"].is_null());
  EXPECT_TRUE(document["least_clearance_m"].is_null());
  EXPECT_TRUE(document["safe_altitude_m"].is_null());
  for (const json& piece : document["profile"]) EXPECT_EQ(piece["class"], "not checked");
  EXPECT_THAT(write_svg(draw_profile(report)), HasSubstr("NOT CHECKED"));
}

TEST(ProfileChart, TellsClassesByLabelAndPattern) {
  TerrainQuestion question;
  question.altitude = Length::feet(14'400);
  const TerrainReport report = real_report(question);
  EXPECT_EQ(verdict(report), ClearanceClass::below_minimum);
  const std::string svg = write_svg(draw_profile(report));
  for (const char* label : {"Terrain: BELOW MINIMUM", "NOT CHECKED", "marginal", "clear",
                            "planned 14400 ft", "least clearance", "leg 2", "Not for navigation"}) {
    EXPECT_THAT(svg, HasSubstr(label));
  }
  EXPECT_EQ(svg, write_svg(draw_profile(report)));
}

TEST(ProfileChart, EveryElementIsOnThePaper) {
  TerrainQuestion question;
  question.steps = HeightSteps::leg;
  const Drawing drawing = draw_profile(real_report(question));
  for (const Element& element : drawing.elements) {
    if (std::holds_alternative<Group>(element.what)) continue;  // cut at its frame
    const std::optional<PaperBox> box = bounds(element);
    ASSERT_TRUE(box);
    EXPECT_GE(box->left_mm, 0);
    EXPECT_GE(box->top_mm, 0);
    EXPECT_LE(box->right_mm, drawing.size.width_mm);
    EXPECT_LE(box->bottom_mm, drawing.size.height_mm);
  }
}

}  // namespace
}  // namespace sweepwright::formats
