// The crew assignment sheet as pages of paper, for PDF and pictures.
//
// Problem: the sheet is printed before take-off, or opened on a tablet, with no network and no
//   browser. Page 1 has the assignment and the map, the next the leg table and frequencies, the
//   last the debrief to be filled in.
// Conventions: what the sheet says is Sheet (sheet.hpp), the same for each paper; here it is set on
//   paper. Every page names sector, callsign and page, and carries the cautions and where it came
//   from.
// Domain: any plan. Texts and tables that are too long for a page go on on further pages.
// Promises: P1 same plan, provenance and paper, same pages on one machine; P2 nothing lies outside
//   the margins; P3 every field, leg and caution of the Sheet is on the pages
//   (sheet_pages_test.cpp).
// Source: fields as in sheet.hpp; sizes of paper: ISO 216 (A4, A5), ANSI/ASME Y14.1 (letter).
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "sweepwright/formats/sheet.hpp"

namespace sweepwright::formats {

/// A size of paper that sheets are set for.
struct Paper {
  std::string_view name;   ///< as in file names: `a4`
  std::string_view title;  ///< in words
  PaperSize size;
};

/// A4, US letter, and A5 for the kneeboard.
std::span<const Paper> papers();

/// The pages of one assignment's sheet. Throws Error(value) when there is no such assignment.
std::vector<Drawing> set_sheet(const plan::Plan& plan, std::size_t assignment,
                               const Provenance& provenance, const Paper& paper);

}  // namespace sweepwright::formats
