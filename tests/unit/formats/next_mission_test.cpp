#include "sweepwright/formats/next_mission.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

#include "support/files.hpp"
#include "sweepwright/formats/belief_writer.hpp"
#include "sweepwright/formats/digest.hpp"
#include "sweepwright/formats/elevation_reader.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/formats/mission_reader.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::Not;

std::filesystem::path demo(const std::string& name) {
  return test::repository() / "demo-scenarios" / name / "mission.json";
}

std::string belief_text(const plan::Plan& plan) {
  belief::Belief belief = plan.belief.value().belief;
  belief.cumulative_success = 0.4;
  StringSink sink;
  write_belief(sink, belief, BeliefFormat::geojson, {});
  return sink.text();
}

TEST(NextMission, P1_plan_takes_it_as_it_is) {
  for (const std::string name : {"01-dry-mountains", "02-dateline-boat"}) {
    const plan::Mission mission = read_mission(demo(name).string());
    const plan::Plan plan = plan::make_plan(mission);
    const NextMission next =
        next_mission(test::read_file(demo(name)), mission, "belief.geojson", "");
    const plan::Mission read =
        parse_mission({next.text, {"next.json", sha256(next.text)}},
                      {[&](const std::string& file) {
                         EXPECT_EQ(file, "belief.geojson");
                         return InputText{belief_text(plan), {file, "0"}};
                       },
                       [&](const std::string& file) {
                         return read_binary_file((demo(name).parent_path() / file).string(),
                                                 kLargestElevationBytes);
                       }});
    EXPECT_TRUE(read.area.polygons.empty());
    EXPECT_EQ(read.incident.day_letter, "B");
    EXPECT_EQ(read.incident.operational_period.from,
              mission.incident.operational_period.from + std::chrono::hours(24));
    EXPECT_EQ(read.incident.offset_from_utc, mission.incident.offset_from_utc);
    const plan::Plan again = plan::make_plan(read);
    EXPECT_EQ(again.assignments.size(), plan.assignments.size());
    EXPECT_EQ(again.belief.value().belief.cumulative_success, 0.4);
    // The cells that were written are those that are read, not their neighbours too.
    EXPECT_NEAR(again.belief->belief.outside, plan.belief->belief.outside, 1e-9);
  }
}

TEST(NextMission, P2_all_other_bytes_are_kept) {
  const std::string text = test::read_file(demo("01-dry-mountains"));
  const plan::Mission mission = read_mission(demo("01-dry-mountains").string());
  const NextMission next = next_mission(text, mission, "belief.geojson", "");
  const auto from = [](const std::string& all, std::string_view begin) {
    return all.substr(all.find(begin));
  };
  const auto part = [&](const std::string& all, std::string_view begin, std::string_view end) {
    return all.substr(all.find(begin), all.find(end) - all.find(begin));
  };
  EXPECT_EQ(part(next.text, "\"search_object\"", "\"datum\": { \"name\""),
            part(text, "\"search_object\"", "\"search_area\""));
  // The belief comes last; what stood from the datum on stands as it stood.
  EXPECT_EQ(part(next.text, "\"datum\": { \"name\"", ",\n  \"belief\""),
            from(text, "\"datum\": { \"name\"")
                .substr(0, from(text, "\"datum\": { \"name\"").size() - 3));
  EXPECT_THAT(next.text, Not(HasSubstr("search_area")));
}

TEST(NextMission, files_are_found_from_the_new_place_and_departures_move) {
  const std::string text = R"({
  "sweepwright_mission": 1,
  "incident": {"name": "x", "operational_period": {}},
  "elevation": {"files": ["a.hgt", "/srv/b.hgt"]},
  "obstacles": "masts.csv",
  "search_units": [{"callsign": "one"}, {"pattern": {"file": "route.txt"}, "depart": "old"}]
})";
  plan::Mission mission;
  mission.incident.operational_period = {parse_local_time("2026-06-14T06:30:00-06:00").time,
                                         parse_local_time("2026-06-16T06:00:00-06:00").time};
  mission.incident.offset_from_utc = std::chrono::hours(-6);
  mission.units.resize(2);
  mission.units[1].depart = parse_local_time("2026-06-14T23:45:00-06:00").time;
  const std::string next = next_mission(text, mission, "b.geojson", "../../m/").text;
  EXPECT_THAT(next, HasSubstr(R"("files": ["../../m/a.hgt", "/srv/b.hgt"])"));
  EXPECT_THAT(next, HasSubstr(R"("obstacles": "../../m/masts.csv")"));
  EXPECT_THAT(next, HasSubstr(R"({"file": "../../m/route.txt"})"));
  EXPECT_THAT(next, HasSubstr(R"("file": "b.geojson")"));
  EXPECT_THAT(next, HasSubstr(R"("depart": "2026-06-16T23:45:00-06:00")"));
  EXPECT_THAT(next, HasSubstr(R"("from": "2026-06-16T06:30:00-06:00")"));
}

TEST(NextMission, day_letters_go_on) {
  EXPECT_EQ(next_day_letter("A"), "B");
  EXPECT_EQ(next_day_letter("Z"), "AA");
  EXPECT_EQ(next_day_letter("AZ"), "BA");
  EXPECT_EQ(next_day_letter("ZZ"), "A");
}

}  // namespace
}  // namespace sweepwright::formats
