#include "sweepwright/formats/crew_report_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/local_time.hpp"

namespace sweepwright::formats {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

plan::Incident incident() {
  plan::Incident incident;
  incident.operational_period = {parse_local_time("2026-06-14T06:30:00-06:00").time,
                                 parse_local_time("2026-06-14T11:30:00-06:00").time};
  incident.offset_from_utc = std::chrono::hours(-6);
  return incident;
}

TimePoint at(std::string_view text) {
  return parse_local_time(text).time;
}

constexpr std::string_view kJson = R"({
  "reports": [
    {
      "sector": "A1", "callsign": "Lark 21",
      "on_task": "07:05", "off_task": "2026-06-14T10:40:00-06:00",
      "visibility": "12NM", "height": "900ft", "speed": "88kt", "fatigued": true,
      "pod": 0.6, "estimate": "fair",
      "above_cloud": [{"from": "0910", "to": "0925"}],
      "sightings": [
        {"time": "08:12", "position": "37-31.40N 105-33.10W", "seen": "glint", "done": "orbited"}
      ],
      "remarks": ["north end in shadow"]
    }
  ]
})";

TEST(CrewReportReader, reads_json) {
  const CrewReports read = parse_crew_reports(kJson, incident());
  EXPECT_THAT(read.problems, IsEmpty());
  ASSERT_EQ(read.reports.size(), 1U);
  const debrief::CrewReport& report = read.reports[0];
  EXPECT_EQ(report.on_task, at("2026-06-14T07:05:00-06:00"));
  EXPECT_EQ(report.off_task, at("2026-06-14T10:40:00-06:00"));
  EXPECT_EQ(report.visibility, Length::nautical_miles(12));
  EXPECT_EQ(report.height, Length::feet(900));
  EXPECT_TRUE(report.fatigued);
  EXPECT_EQ(report.own_pod, sweep::Probability(0.6));
  EXPECT_EQ(report.own_estimate, "fair");
  ASSERT_EQ(report.above_cloud.size(), 1U);
  EXPECT_EQ(report.above_cloud[0].to, at("2026-06-14T09:25:00-06:00"));
  ASSERT_EQ(report.sightings.size(), 1U);
  EXPECT_EQ(report.sightings[0].seen, "glint");
  ASSERT_TRUE(report.sightings[0].position);
  EXPECT_NEAR(report.sightings[0].position->latitude().degrees(), 37.5233333, 1e-6);
  EXPECT_THAT(report.remarks, ElementsAre("north end in shadow"));
}

TEST(CrewReportReader, reads_the_same_from_a_table) {
  const CrewReports read = parse_crew_reports(
      "sector;callsign;on_task;off_task;visibility;height;speed;fatigued;pod;estimate;"
      "cloud_from;cloud_to;sighting_time;sighting_position;seen;done;remarks\r\n"
      "A1;Lark 21;07:05;2026-06-14T10:40:00-06:00;12NM;900ft;88kt;yes;0.6;fair;0910;0925;;;;;\r\n"
      "A1;Lark 21;;;;;;;;;;;08:12;37-31.40N 105-33.10W;glint;orbited;north end in shadow\r\n",
      incident());
  EXPECT_THAT(read.problems, IsEmpty());
  const CrewReports json = parse_crew_reports(kJson, incident());
  ASSERT_EQ(read.reports.size(), 1U);
  const debrief::CrewReport& a = read.reports[0];
  const debrief::CrewReport& b = json.reports[0];
  EXPECT_EQ(a.on_task, b.on_task);
  EXPECT_EQ(a.off_task, b.off_task);
  EXPECT_EQ(a.speed, b.speed);
  EXPECT_EQ(a.own_pod, b.own_pod);
  EXPECT_EQ(a.fatigued, b.fatigued);
  ASSERT_EQ(a.above_cloud.size(), 1U);
  EXPECT_EQ(a.above_cloud[0].from, b.above_cloud[0].from);
  ASSERT_EQ(a.sightings.size(), 1U);
  EXPECT_EQ(a.sightings[0].position, b.sightings[0].position);
  EXPECT_EQ(a.sightings[0].time, b.sightings[0].time);
  EXPECT_EQ(a.remarks, b.remarks);
}

TEST(CrewReportReader, P1_what_cannot_be_used_is_named_and_the_rest_is_used) {
  const CrewReports read = parse_crew_reports(R"([
    {"sector": "A1", "visibility": "12", "pod": 60, "sightings": [
      {"position": "nowhere", "seen": "smoke"}]},
    {"visibility": "9NM"},
    {"sector": "A2", "off_task": "07:00", "on_task": "08:00"},
    7
  ])",
                                              incident());
  ASSERT_EQ(read.reports.size(), 2U);
  EXPECT_FALSE(read.reports[0].visibility);
  EXPECT_EQ(read.reports[0].sightings.at(0).seen, "smoke");
  EXPECT_FALSE(read.reports[1].on_task);
  EXPECT_THAT(read.problems,
              ElementsAre(HasSubstr("/visibility"), HasSubstr("60 is not from 0 to 1"),
                          HasSubstr("/sightings/0/position"), HasSubstr("neither a sector"),
                          HasSubstr("off task is not after"), HasSubstr("the number 7")));
}

TEST(CrewReportReader, bad_rows_of_a_table_are_named) {
  const CrewReports read = parse_crew_reports(
      "sector,visibility,fatigued,vsibility\nA1,9NM\nA2,9NM,perhaps,\nA3,9NM,no,1NM\n", incident());
  ASSERT_EQ(read.reports.size(), 1U);
  EXPECT_THAT(read.problems, ElementsAre(HasSubstr("line 2: the line has 2 cells"),
                                         HasSubstr("line 3: 'perhaps' is neither yes nor no"),
                                         HasSubstr("vsibility")));
}

TEST(CrewReportReader, a_clock_time_belongs_to_the_nearest_day) {
  plan::Incident night = incident();
  night.operational_period = {at("2026-06-14T20:00:00-06:00"), at("2026-06-15T06:00:00-06:00")};
  const CrewReports read = parse_crew_reports("sector,on_task,off_task\nA1,21:30,02:15\n", night);
  ASSERT_EQ(read.reports.size(), 1U);
  EXPECT_EQ(read.reports[0].on_task, at("2026-06-14T21:30:00-06:00"));
  EXPECT_EQ(read.reports[0].off_task, at("2026-06-15T02:15:00-06:00"));
  night.operational_period.to = at("2026-06-17T06:00:00-06:00");
  EXPECT_THAT(parse_crew_reports("sector,on_task\nA1,21:30\n", night).problems,
              ElementsAre(HasSubstr("the time has no date")));
}

TEST(CrewReportReader, what_is_no_form_is_refused) {
  for (const std::string_view text : {"", "{", "no,table\n1,2\n", "\x01\x02\x03"}) {
    EXPECT_TRUE([&] {
      try {
        return parse_crew_reports(text, incident()).reports.empty();
      } catch (const Error&) {
        return true;
      }
    }());
  }
}

}  // namespace
}  // namespace sweepwright::formats
