// The planner's board.
//
// Checks against the outside: the page is read back with pugixml, an XML parser, the PDF with
// poppler's pdftotext; POS is worked out again from POC and POD as shown.
#include "sweepwright/formats/board.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <pugixml.hpp>
#include <sstream>

#include "outside_tools.hpp"
#include "plan_cases.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/pdf_writer.hpp"

namespace sweepwright::formats {
namespace {

Provenance provenance() {
  return {"0.1.0",
          "sweepwright plan mission.json -o out",
          std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(11),
          {{"mission.json", std::string(64, 'a')}}};
}

std::string pdf_of(const plan::Plan& plan, const Paper& paper) {
  return write_pdf(set_board(plan, provenance(), paper),
                   {"Board", "Sweepwright 0.1.0", provenance().stamp});
}

/// The text without blanks: readers of PDF see or miss narrow ones as they like.
std::string without_blanks(const std::string& text) {
  std::istringstream in(text);
  std::string joined;
  for (std::string word; in >> word;) joined += word;
  return joined;
}

/// All that a reader of the board sees, without blanks.
std::string text_of(const pugi::xml_node& node) {
  std::string text;
  for (const pugi::xml_node& child : node.children()) {
    if (child.type() == pugi::node_pcdata) text += without_blanks(child.value());
    text += text_of(child);
  }
  return text;
}

std::string page_text(const std::string& html) {
  pugi::xml_document document;
  const pugi::xml_parse_result result = document.load_string(html.c_str());
  EXPECT_TRUE(result) << result.description() << " at " << result.offset;
  return text_of(document.document_element().child("body"));
}

std::vector<std::string> everything(const Board& board) {
  std::vector<std::string> texts(board.cautions);
  for (const ReportTable* table : {&board.crews, &board.times, &board.frequencies}) {
    for (const auto& row : table->rows) texts.insert(texts.end(), row.begin(), row.end());
  }
  for (const auto* fields : {&board.heading, &board.key_figures}) {
    for (const SheetField& field : *fields) texts.push_back(field.value);
  }
  texts.insert(texts.end(), board.hazards.begin(), board.hazards.end());
  texts.insert(texts.end(), board.remarks.begin(), board.remarks.end());
  return texts;
}

TEST(Board, PageAndPaperHoldEverything) {  // P4, P5
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const Board board = make_board(plan, provenance());
    const std::string page = page_text(write_board_html(board));
    for (const std::string& text : everything(board)) {
      EXPECT_NE(page.find(without_blanks(text)), std::string::npos) << name << ": " << text;
    }
    for (const Paper& paper : papers().first(2)) {
      const std::string printed = without_blanks(test::pdftotext(pdf_of(plan, paper), "-raw"));
      // A cell may take two lines with the next cell's first line between them.
      for (const std::string& text : everything(board)) {
        std::istringstream in(text);
        for (std::string word; in >> word;) {
          EXPECT_NE(printed.find(word), std::string::npos) << name << ": " << word;
        }
      }
    }
  }
}

TEST(Board, EveryCrewAndFrequencyOfThePlanIsOnIt) {  // P5
  const plan::Plan plan = make_plan(test::mountain_mission());
  const Board board = make_board(plan, provenance());
  ASSERT_EQ(board.crews.rows.size(), plan.assignments.size());
  ASSERT_EQ(board.times.rows.size(), plan.assignments.size());
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    EXPECT_EQ(board.crews.rows[i][0], plan.assignments[i].sector_name);
    EXPECT_EQ(board.crews.rows[i][1], plan.assignments[i].unit.callsign);
    EXPECT_EQ(board.times.rows[i][1], plan.assignments[i].unit.callsign);
  }
  ASSERT_EQ(board.frequencies.rows.size(), 2U);
  EXPECT_EQ(board.frequencies.rows[0][1], "122.850 MHz");
  EXPECT_EQ(board.hazards, plan.mission.hazards);
}

double seconds_of_day(const std::string& clock) {
  return 3600 * std::stod(clock.substr(0, 2)) + 60 * std::stod(clock.substr(3));
}

TEST(Board, TimesFollowEachOther) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const Board board = make_board(plan, provenance());
    for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
      const auto& row = board.times.rows[i];
      const flight::FlownPattern& flown = plan.assignments[i].flown;
      const double leaves = seconds_of_day(row[2]);
      constexpr double kRounding = 61;  // two times, each to the minute
      EXPECT_NEAR(seconds_of_day(row[3]) - leaves, flown.arrival.count(), kRounding) << name;
      EXPECT_NEAR(seconds_of_day(row[4]) - leaves, flown.search_end.count(), kRounding) << name;
      EXPECT_NEAR(seconds_of_day(row[5]) - leaves, flown.total_time.count(), kRounding) << name;
    }
  }
}

TEST(Board, BingoIsToldOnlyWhereTheEnduranceIsStated) {
  plan::Mission mission = test::mountain_mission();
  const Board stated = make_board(make_plan(mission), provenance());
  EXPECT_EQ(stated.times.rows[0][7], "on-scene endurance");
  EXPECT_EQ(stated.times.rows[0][8], "–");
  mission.units[0].on_scene_endurance.reset();
  mission.units[0].time_away = plan::TimeAway{std::chrono::hours(5), std::chrono::minutes(45)};
  const Board known = make_board(make_plan(mission), provenance());
  EXPECT_EQ(known.times.rows[0][7], "bingo: reserve on landing");
  EXPECT_NE(known.times.rows[0][8], "–");
}

TEST(Board, TextsStayTexts) {  // P2
  plan::Mission mission = test::mountain_mission();
  mission.incident.name = "<script>alert(1)</script>";
  mission.units[0].callsign = "<b>&\"'";
  mission.channels[0].name = "]]><img src='x'/>";
  const std::string html = write_board_html(make_board(make_plan(mission), provenance()));
  EXPECT_EQ(html.find("<script"), std::string::npos);
  EXPECT_EQ(html.find("<img"), std::string::npos);
  EXPECT_NE(page_text(html).find("<b>&\"'"), std::string::npos);
}

TEST(Board, LoadsNothingAndIsTheSameEachTime) {  // P1, P3
  const plan::Plan plan = make_plan(test::mountain_mission());
  const std::string html = write_board_html(make_board(plan, provenance()));
  for (const char* word : {"http:", "https:", "src=", "href=", "url(", "@import", "<script"}) {
    EXPECT_EQ(html.find(word), std::string::npos) << word;
  }
  EXPECT_EQ(html, write_board_html(make_board(plan, provenance())));
  EXPECT_EQ(pdf_of(plan, papers()[0]), pdf_of(plan, papers()[0]));
}

TEST(Board, ManyCrewsGoOnOnFurtherPagesWithHeadsAgain) {
  plan::Mission mission = test::mountain_mission();
  const plan::SearchUnit unit = mission.units[0];
  for (int i = 3; i <= 20; ++i) {
    mission.units.push_back(unit);
    mission.units.back().callsign = "FALCON " + std::to_string(i);
  }
  const plan::Plan plan = make_plan(mission);
  const std::string text = test::pdftotext(pdf_of(plan, papers()[0]), "-raw");
  for (const plan::Assignment& assignment : plan.assignments) {
    EXPECT_GE(test::occurrences(text, assignment.unit.callsign), 3U) << assignment.unit.callsign;
  }
  EXPECT_EQ(test::occurrences(text, "Planning aid only"),
            test::occurrences(text, "\f") + 1);  // on each page, and on the map
}

}  // namespace
}  // namespace sweepwright::formats
