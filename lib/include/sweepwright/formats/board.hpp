// The board: the whole search on one page for the planner.
//
// Problem: the planner must see who has which ground, at what height, from when to when, what it is
//   worth, on which frequencies, and when each crew must be relieved; on a wall, on a screen, or in
//   the hand at a briefing.
// Conventions: a Board is the content as plain values, in the order of reading; it is written as
//   HTML and set on paper, lying, from the same values. Lengths in nautical miles and feet, tracks
//   true, times local with UTC on the timeline. A crew has no bingo when the mission does not state
//   its endurance: the column then says by what the time is limited.
// Domain: any plan. Tables that are too long for a page go on on further pages.
// Accuracy: figures are those of the plan, rounded to the places shown (board_test.cpp).
// Promises: P1 same plan and provenance, same bytes; P2 texts stay texts whatever they hold; P3 the
//   page loads nothing and runs nothing; P4 the cautions are on it; P5 every crew, frequency,
//   finding and remark of the plan is on it (board_test.cpp).
// Source: ICS 220 Air Operations Summary for the kinds of fields (public form); own layout.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/report_table.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/sheet_pages.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

struct Board {
  std::string title;  ///< the incident's name
  std::vector<SheetField> heading;
  std::vector<SheetField> key_figures;
  ReportTable crews;  ///< units, sectors, heights, what they are worth
  Drawing timeline;
  ReportTable times;  ///< when each crew is where, and when it must be relieved
  ReportTable frequencies;
  ReportTable findings;              ///< of the checks; without rows when nothing was found
  std::vector<std::string> hazards;  ///< as the mission states them
  std::vector<std::string> remarks;  ///< what the planner must know
  Drawing map;
  std::vector<std::string> cautions;
  std::string origin;
  std::vector<std::string> footer;
};

Board make_board(const plan::Plan& plan, const Provenance& provenance);

/// One HTML file that loads nothing. Well-formed XML too.
std::string write_board_html(const Board& board);

/// The pages on that paper, lying on its long side.
std::vector<Drawing> set_board(const plan::Plan& plan, const Provenance& provenance,
                               const Paper& paper);

}  // namespace sweepwright::formats
