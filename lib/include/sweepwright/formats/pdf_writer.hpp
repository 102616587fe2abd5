// Writes Drawings as the pages of one PDF document.
//
// Problem: a crew prints its sheet on whatever stands in the hangar, with no network.
// Conventions: each drawing is a page of its own size. Fonts of the machine are embedded, reduced
//   to the characters that are used; texts can be searched and copied. The picture's description
//   does not go in: PDF has no plain place for it.
// Accuracy: 0.001 mm.
// Promises: P1 same drawings and document, same bytes on one machine; P2 nothing is loaded
//   (pdf_writer_test.cpp).
// Source: ISO 32000-1 through the library cairo; text through pango.
#pragma once

#include <span>
#include <string>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

/// What a document says about itself.
struct PdfDocument {
  std::string title;
  std::string creator;  ///< the program and its version
  TimePoint created;
};

/// Throws Error(value) without pages, Error(unwritable) when the library fails.
std::string write_pdf(std::span<const Drawing> pages, const PdfDocument& document);

}  // namespace sweepwright::formats
