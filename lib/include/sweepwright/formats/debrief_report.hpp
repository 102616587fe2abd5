// The report of a debrief: what was covered, what was not, what to believe, where to look next.
//
// Problem: a planner must be able to defend each probability in the table: from which track, with
//   which sweep width, and what was left out.
// Conventions: lengths in nautical miles and feet, times local. Planned and achieved stand side by
//   side, as do the crew's own estimate and the computed probability.
// Domain: any debrief. Tables that are too long for a page go on on further pages.
// Accuracy: figures are those of the outcome, rounded to the places shown.
// Promises: P1 same outcome and provenance, same bytes; P2 texts stay texts whatever they hold; P3
//   the page loads nothing and runs nothing; P4 the cautions are on it; P5 everything that was
//   dropped or left out is on it (debrief_files_test.cpp).
// Source: own layout; the figures' sources are in debrief/debriefing.hpp.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/formats/debrief_outcome.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/report_table.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/sheet_pages.hpp"

namespace sweepwright::formats {

struct DebriefReport {
  std::string title;
  std::vector<SheetField> heading;
  std::vector<SheetField> key_figures;
  ReportTable sectors;    ///< planned and achieved
  ReportTable flying;     ///< cross-track error, spacing, legs missed
  ReportTable uses;       ///< what the time of each track went on
  ReportTable holes;      ///< ground under the planner's limit
  ReportTable sightings;  ///< may have no rows
  ReportTable belief;     ///< inside, outside, cumulative POS, each sortie's share
  ReportTable proposal;   ///< the next period
  Drawing map;
  Drawing chart;
  std::vector<std::string> remarks;  ///< what the planner must know
  std::vector<std::string> dropped;  ///< of logs and crew reports
  std::vector<std::string> cautions;
  std::string origin;
  std::vector<std::string> footer;
};

DebriefReport make_debrief_report(const DebriefOutcome& outcome, const Provenance& provenance);

/// One HTML file that loads nothing. Well-formed XML too.
std::string write_debrief_html(const DebriefReport& report);

/// The pages on that paper, standing.
std::vector<Drawing> set_debrief(const DebriefReport& report, const DebriefOutcome& outcome,
                                 const Paper& paper);

}  // namespace sweepwright::formats
