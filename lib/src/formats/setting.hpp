// Sets texts, fields and tables on paper, as strips that are stacked down a page; private to the
// formats room.
//
// Conventions: a strip is drawn from its own top left corner and is never cut: what does not fit on
//   a page goes to the next, strip by strip. Texts are measured with the fonts that they will be
//   painted with (cairo_painter.hpp).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

/// A piece of a page across some width.
struct Strip {
  double height_mm = 0;
  std::vector<Element> elements;
  bool with_next = false;  ///< a title: stays on the page of the strip that follows
};
using Strips = std::vector<Strip>;

double height_mm(const Strips& strips);

/// The element moved on the paper.
void shift(Element& element, PaperPoint by);

struct TextLook {
  double size_mm = 2.7;
  bool bold = false;
  TextAnchor anchor = TextAnchor::start;
};

/// How wide one line really is in the font that is painted.
double measured_width_mm(std::string_view text, const TextLook& look);

/// The text in lines of at most `width_mm`: broken at blanks, within a word only where it is longer
/// than a line; line feeds begin a new line.
std::vector<std::string> broken_lines(std::string_view text, double width_mm, const TextLook& look);

/// A text, one strip for each line.
Strips set_text(std::string_view text, double width_mm, const TextLook& look);

/// A grey bar with a title.
Strip set_title(std::string_view title, double width_mm, double size_mm);

/// A name, and what belongs to it beside it; an empty value is a line to write on.
Strips set_field(std::string_view name, std::string_view value, double width_mm, double name_mm,
                 const TextLook& look);

/// A text behind a mark.
Strips set_item(std::string_view text, double width_mm, const TextLook& look);

/// Blanks side by side with their names, to be filled in by hand.
Strip set_blanks(const std::vector<std::string>& names, double height_mm, double width_mm,
                 double size_mm);

struct Column {
  std::string head;
  double width_mm = 0;
  TextAnchor anchor = TextAnchor::end;
};
struct Row {
  std::vector<std::string> cells;  ///< one for each column
  bool bold = false;
};

/// The line of column heads.
Strip set_heads(const std::vector<Column>& columns, double size_mm);
/// The rows, cells broken into lines where they are too long, each row with a hair line under it.
Strips set_rows(const std::vector<Column>& columns, const std::vector<Row>& rows, double size_mm);

}  // namespace sweepwright::formats
