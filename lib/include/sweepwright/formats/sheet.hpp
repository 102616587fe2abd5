// The crew assignment sheet: what one crew carries.
//
// Problem: who, when, where, what is sought, how to search it, and the blanks for the debrief; with
//   every number's working, so that the crew and the planner can check it by hand.
// Conventions: a Sheet is the content as plain values, in the order of reading; it is written as
//   HTML here and set on paper by sheet_pages.hpp. Page 1 has the assignment and the map, page 2
//   the legs, frequencies and working, page 3 the debrief. Fields are named as on the trade's
//   public forms. Directions are true, lengths in nautical miles and feet, positions in degrees and
//   decimal minutes, times local and UTC, durations h:mm:ss or h:mm. An empty value is a blank that
//   is filled in by hand.
// Domain: any plan. The HTML prints on A4 and US letter; long leg tables go on on further pages.
// Accuracy: figures are those of the plan, rounded to the places shown (sheet_test.cpp).
// Promises: P1 same plan and provenance, same bytes; P2 texts stay texts whatever they hold; P3 the
//   page loads nothing and runs nothing; P4 the cautions are on it (sheet_test.cpp).
// Source: fields: ICS 204 Assignment List and ICS 220 Air Operations Summary (public forms, seen).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/terrain_report.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

/// A name and what belongs to it; empty for a blank.
struct SheetField {
  std::string name;
  std::string value;
};

/// Fields, then lines, under one title.
struct SheetBlock {
  std::string title;
  std::vector<SheetField> fields;
  std::vector<std::string> lines;
};

/// One step of a working: `0.60 NM / 0.88 NM` and `0.68`.
struct SheetStep {
  std::string name;
  std::string expression;
  std::string value;
};

/// A leg as flown, the turn at its end included.
struct SheetLeg {
  std::string number;  ///< of the pattern's leg; `out` and `back` to and from the base
  bool search = true;
  std::string track;             ///< `095`, or `095 to 097` when it ends a degree or more otherwise
  std::string magnetic_heading;  ///< empty where a compass is of no use
  std::string ground_speed_kt;
  std::string distance_nm;
  std::string time;
  std::string clock;                  ///< local time at its end
  std::string total_time;             ///< since leaving the base
  std::string total_fuel;             ///< empty when the flow is not known
  std::string end;                    ///< where it ends: the place of the turn
  std::string altitude_ft = {};       ///< planned; the highest of its steps
  std::string safe_altitude_ft = {};  ///< the leg's minimum safe altitude
};

/// Columns that not every leg table has.
struct SheetLegHeads {
  std::string fuel;      ///< `Fuel kg`; empty for no such column
  bool heights = false;  ///< those of altitude and minimum safe altitude
};

/// Blanks side by side, to be filled in by hand.
struct SheetBlankRow {
  std::vector<std::string> names;
  int lines = 1;  ///< height, in lines of handwriting
};

struct Sheet {
  std::string title;  ///< sector and callsign
  std::string sector;
  std::string callsign;
  std::vector<SheetField> heading;
  std::vector<SheetField> key_figures;  ///< what is needed at a glance
  std::vector<SheetBlock> assignment;   ///< beside the map
  Drawing map;
  std::string working_title;
  std::vector<SheetStep> working;
  std::vector<SheetBlock> facts;  ///< conditions, communications
  SheetBlock instructions;
  SheetBlock heights;   ///< to fly, where a leg has more than one; else without lines
  SheetBlock findings;  ///< of the checks, worst first, and the minima
  std::optional<TerrainReport> profile;  ///< of the whole flight, when there is an elevation model
  std::vector<std::string> cautions;
  SheetLegHeads leg_heads;
  std::vector<SheetLeg> legs;
  std::string legs_note;
  std::string leg_totals;
  std::vector<SheetBlankRow> debrief;
  std::string origin;               ///< by what it was made and when, in one line
  std::vector<std::string> footer;  ///< from what it was made: command, inputs, sources
};

/// The content of the sheet of one assignment, by its place in the plan. Throws Error(value) when
/// there is none.
Sheet make_sheet(const plan::Plan& plan, std::size_t assignment, const Provenance& provenance);

/// The sheet as one HTML file that loads nothing, printing on A4 and US letter. Well-formed XML
/// too.
std::string write_sheet_html(const Sheet& sheet);

/// Both in one.
std::string write_sheet(const plan::Plan& plan, std::size_t assignment,
                        const Provenance& provenance);

}  // namespace sweepwright::formats
