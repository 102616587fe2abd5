// Writes a Drawing as SVG.
//
// Conventions: the user unit is a millimetre on paper. Everything is inside the text: no style
//   sheet, font, picture or script is loaded, and there are no ids, so that any number of drawings
//   can stand in one page.
// Accuracy: 0.01 mm.
// Promises: P1 same drawing, same bytes; P2 well-formed XML whatever the texts hold; P3 nothing is
//   loaded (svg_writer_test.cpp).
// Source: W3C, Scalable Vector Graphics (SVG) 2, sections 8.2, 9.3, 11.5, 13.8 [from memory].
#pragma once

#include <string>

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

enum class SvgForm {
  file,    ///< a file of its own: with its name space and its size on paper
  inlined  ///< an element of an HTML page, which gives it its size
};

/// Throws Error(value) for a number that is not finite.
std::string write_svg(const Drawing& drawing, SvgForm form = SvgForm::file);

}  // namespace sweepwright::formats
