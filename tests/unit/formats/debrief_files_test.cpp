// A debrief as files: read back by other people's programs, whole, and with everything that was
// dropped on it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "outside_tools.hpp"
#include "support/command.hpp"
#include "support/files.hpp"
#include "support/flown.hpp"
#include "sweepwright/formats/debrief_folder.hpp"
#include "sweepwright/formats/debrief_map.hpp"
#include "sweepwright/formats/debrief_overlays.hpp"
#include "sweepwright/formats/debrief_report.hpp"
#include "sweepwright/formats/debrief_summary.hpp"
#include "sweepwright/formats/pdf_writer.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::Not;

constexpr Instant kStart =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(14);

Provenance provenance() {
  return {"0.1.0", "sweepwright debrief", TimePoint(std::chrono::seconds(1781000000)), {}};
}

/// One crew that leaves a leg out, sees something, and has a log with faults.
DebriefOutcome outcome_at(Position place) {
  DebriefOutcome outcome;
  outcome.plan = plan::make_plan(test::small_mission(place));
  debrief::SortieInput input;
  input.track = test::flown_track(outcome.plan.assignments[0].pattern, Speed::knots(90), kStart,
                                  {.offset = Length::metres(50), .left_out = {5}});
  input.report = debrief::CrewReport();
  input.report->own_pod = sweep::Probability(0.42);
  input.report->own_estimate = "fair";
  input.report->sightings = {{TimePoint(std::chrono::floor<std::chrono::seconds>(kStart)), place,
                              "smoke <b>&</b> glint", "none"},
                             {{}, {}, "seen somewhere", ""}};
  input.report->remarks = {"dusty windows"};
  outcome.debriefing = debrief::make_debriefing(
      outcome.plan, {debrief::make_sortie(outcome.plan, input, terrain::ElevationModel())});
  outcome.hole_below = sweep::Probability(0.3);
  outcome.holes = debrief::sector_holes(outcome.plan, outcome.debriefing, {outcome.hole_below, {}});
  outcome.logs = {"lark.gpx: 3 fixes at latitude 0 longitude 0 dropped"};
  outcome.problems = {"reports.json: line 4: '12' names no unit"};
  outcome.next.changes = {"the day letter is B"};
  outcome.next_refusal = "no next plan in this test";
  return outcome;
}

std::string geojson_of(const DebriefOutcome& outcome) {
  StringSink sink;
  write_debrief_geojson(sink, outcome, provenance());
  return sink.text();
}

std::string kml_of(const DebriefOutcome& outcome) {
  StringSink sink;
  write_debrief_kml(sink, outcome, provenance());
  return sink.text();
}

TEST(DebriefFiles, overlays_are_read_by_other_programs_anywhere) {
  for (const Position& place :
       {test::at(38.25, -117), test::at(-17.5, 179.9), test::at(78.2, 16)}) {
    const DebriefOutcome outcome = outcome_at(place);
    const std::string geojson = geojson_of(outcome);
    test::expect_rfc_7946(geojson);
    EXPECT_THAT(test::ogrinfo(geojson, "geojson"), HasSubstr("smoke"));
    const std::string kml = kml_of(outcome);
    test::expect_valid_xml(kml, test::kKmlSchema);
    EXPECT_THAT(test::ogrinfo(kml, "kml"), HasSubstr("smoke"));
  }
}

TEST(DebriefFiles, sightings_are_points_of_every_overlay) {
  const DebriefOutcome outcome = outcome_at(test::at(38.25, -117));
  int points = 0;
  const auto features = nlohmann::json::parse(geojson_of(outcome))["features"];
  for (const auto& feature : features) {
    if (feature["properties"]["part"] != "sighting") continue;
    if (!feature["geometry"].is_null()) ++points;
  }
  EXPECT_EQ(points, 1);  // the other has no position, and is there without
  EXPECT_EQ(sightings(outcome).size(), 2U);
  EXPECT_THAT(kml_of(outcome), HasSubstr("smoke"));
}

TEST(DebriefFiles, P2_P4_P5_the_report_says_all_and_texts_stay_texts) {
  const DebriefOutcome outcome = outcome_at(test::at(38.25, -117));
  const DebriefReport report = make_debrief_report(outcome, provenance());
  const std::string html = write_debrief_html(report);
  EXPECT_THAT(html, HasSubstr("smoke &lt;b&gt;&amp;&lt;/b&gt; glint"));
  EXPECT_THAT(html, Not(HasSubstr("<script")));
  for (const std::string text :
       {"3 fixes at latitude 0 longitude 0 dropped", "names no unit", "dusty windows",
        "Planning aid only. Not for navigation.", "42 %, fair", "no next plan in this test",
        "the day letter is B", "states no belief"}) {
    EXPECT_THAT(html, HasSubstr(text));
  }
  // The leg that was left out is named.
  EXPECT_THAT(html, HasSubstr("5 (0 %)"));
  for (const Paper& paper : papers()) {
    if (paper.name == "a5") continue;
    const std::string pdf =
        write_pdf(set_debrief(report, outcome, paper), {"Debrief", "test", TimePoint()});
    const std::string text = test::pdftotext(pdf);
    EXPECT_THAT(text, HasSubstr("seen somewhere"));
    EXPECT_THAT(text, HasSubstr("dropped"));
    EXPECT_THAT(text, HasSubstr("Not for navigation."));
  }
}

TEST(DebriefFiles, P1_the_same_outcome_gives_the_same_bytes) {
  const DebriefOutcome once = outcome_at(test::at(-17.5, 179.9));
  const DebriefOutcome again = outcome_at(test::at(-17.5, 179.9));
  EXPECT_EQ(debrief_json(once, provenance()), debrief_json(again, provenance()));
  EXPECT_EQ(geojson_of(once), geojson_of(again));
  EXPECT_EQ(write_debrief_html(make_debrief_report(once, provenance())),
            write_debrief_html(make_debrief_report(again, provenance())));
  EXPECT_EQ(debrief_summary(once), debrief_summary(again));
}

TEST(DebriefFiles, the_picture_lies_where_its_world_file_says) {
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() /
      ("sweepwright_debrief_" + std::to_string(static_cast<long>(::getpid())));
  const DebriefOutcome outcome = outcome_at(test::at(-17.5, 179.9));
  write_debrief_folder(outcome, folder, provenance());
  // GDAL reads size, place and reference system; the raster's middle is the area's.
  const test::CommandResult info = test::run_command("gdalinfo -json debrief/detection.png", folder,
                                                     {{"PATH", "/usr/bin:/bin"}});
  const test::CommandResult system = test::run_command("gdalsrsinfo -o proj4 debrief/detection.prj",
                                                       folder, {{"PATH", "/usr/bin:/bin"}});
  std::filesystem::remove_all(folder);
  ASSERT_EQ(info.status, 0);
  const auto json = nlohmann::json::parse(info.standard_output);
  const auto centre = json["cornerCoordinates"]["center"];
  EXPECT_NEAR(centre[0].get<double>(), 179.9, 0.02);
  EXPECT_NEAR(centre[1].get<double>(), -17.5, 0.02);
  EXPECT_THAT(system.standard_output, HasSubstr("+proj=longlat +datum=WGS84"));
}

TEST(DebriefFiles, no_picture_is_made_round_a_pole) {
  EXPECT_FALSE(detection_picture(outcome_at(test::at(-89.9, 30)).debriefing));
}

}  // namespace
}  // namespace sweepwright::formats
