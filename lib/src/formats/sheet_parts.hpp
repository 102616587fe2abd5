// Parts of a sheet that are made apart; private to the formats room.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/formats/sheet.hpp"

namespace sweepwright::formats {

/// The working of sweep width, coverage, detection and times. Returns its sources, which the steps
/// name by number from [1].
std::vector<std::string> add_working(Sheet& sheet, const plan::Mission& mission,
                                     const plan::Assignment& assignment);

/// The leg table with its notes and totals.
void add_legs(Sheet& sheet, const plan::Mission& mission, const plan::Assignment& assignment);

/// What the checks found: the findings, the profile, and the worst of it among the instructions.
void add_findings(Sheet& sheet, const plan::Plan& plan, const plan::Assignment& assignment);

/// By what a page was made and when, and what its figures stand on, in one line.
std::string origin_line(const Provenance& provenance);
/// From what it was made: command and inputs.
std::vector<std::string> footer_lines(const Provenance& provenance);

/// The style sheet of the HTML page.
std::string_view sheet_style();

}  // namespace sweepwright::formats
