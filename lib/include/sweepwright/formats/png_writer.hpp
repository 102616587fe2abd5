// Writes a Drawing as a PNG picture, on white.
//
// Accuracy: sizes are rounded to whole pixels.
// Promises: P1 same drawing and resolution, same bytes on one machine (pdf_writer_test.cpp).
// Source: ISO/IEC 15948 through the library cairo.
#pragma once

#include <string>

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

/// `pixels_per_mm`: 4 (102 dpi) for a screen, 12 (305 dpi) for print; above 0, up to 50. Throws
/// Error(value) for another, Error(unwritable) when the library fails.
std::string write_png(const Drawing& drawing, double pixels_per_mm);

}  // namespace sweepwright::formats
