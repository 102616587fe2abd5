// Drawing: a picture on paper, as a plain value that any picture format can be written from.
//
// Problem: a map goes onto a printed sheet, into a web page and into a picture file. It is told
//   once, in what a pen can do, and each format has a writer (svg_writer.hpp).
// Conventions: millimetres on paper, from the top left corner, x to the right and y down. Elements
//   are drawn in order, later ones over earlier ones. Angles on paper are clockwise from straight
//   up, as directions on a map are. Text stands on the paper's font of the moment: its width is
//   reckoned (text_width_mm), a little on the wide side, so that labels keep clear of each other
//   with any common sans-serif font.
// Promises: P1 bounds() holds everything that an element draws, its line width included, and texts
//   as reckoned (svg_writer_test.cpp).
// Source: own work.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sweepwright/formats/colour.hpp"

namespace sweepwright::formats {

struct PaperPoint {
  double x_mm = 0;
  double y_mm = 0;
  bool operator==(const PaperPoint&) const = default;
};

struct PaperSize {
  double width_mm = 0;
  double height_mm = 0;
  bool operator==(const PaperSize&) const = default;
};

struct PaperBox {
  double left_mm = 0;
  double top_mm = 0;
  double right_mm = 0;
  double bottom_mm = 0;
  double width_mm() const { return right_mm - left_mm; }
  double height_mm() const { return bottom_mm - top_mm; }
  bool operator==(const PaperBox&) const = default;
};

using PaperLine = std::vector<PaperPoint>;

inline constexpr Colour kBlack{0, 0, 0};
inline constexpr Colour kWhite{255, 255, 255};

struct Stroke {
  Colour colour;
  double width_mm = 0.25;
  std::vector<double> dash_mm;  ///< lengths of dash and gap in turn; empty for an unbroken line
};

/// Parallel lines that fill a shape: they print in black and white where a tint would not.
struct Hatch {
  Colour colour;
  double width_mm = 0.12;
  double gap_mm = 2;         ///< from line to line
  double direction_deg = 0;  ///< of the lines
};

/// An open line.
struct Line {
  PaperLine points;
  Stroke stroke;
};

/// A closed shape; rings inside rings are holes (even-odd rule). The last point does not repeat the
/// first.
struct Shape {
  std::vector<PaperLine> rings;
  std::optional<Stroke> outline;
  std::optional<Colour> fill;
  std::optional<Hatch> hatch;
};

struct Disc {
  PaperPoint centre;
  double radius_mm = 1;
  std::optional<Stroke> outline;
  std::optional<Colour> fill;
};

enum class TextAnchor { start, middle, end };

/// One line of text.
struct Text {
  PaperPoint at;  ///< where the anchor stands, half way up the capital letters
  std::string text;
  double size_mm = 2.5;  ///< the font's size: capital letters are 0.72 of it
  TextAnchor anchor = TextAnchor::middle;
  bool bold = false;
  double turned_deg = 0;  ///< clockwise, about `at`
  Colour colour = kBlack;
  double halo_mm = 0;  ///< white rim that lifts the text off what lies under it
};

struct Element;

/// Elements that belong together, cut at `clip`.
struct Group {
  std::vector<Element> elements;
  std::optional<PaperBox> clip;
};

struct Element {
  std::variant<Line, Shape, Disc, Text, Group> what;
};

struct Drawing {
  PaperSize size;
  std::string title;        ///< what the picture is, in a few words
  std::string description;  ///< what it shows, for those who cannot see it
  std::vector<Element> elements;
};

/// How wide a line of text is in a common sans-serif font, on the wide side.
double text_width_mm(std::string_view text, double size_mm, bool bold);

/// The box round a text, its halo not counted.
PaperBox bounds(const Text& text);

/// The box round all that an element draws; none when it draws nothing.
std::optional<PaperBox> bounds(const Element& element);

/// The lines of a shape's hatch, cut at its outline.
std::vector<PaperLine> hatch_lines(const std::vector<PaperLine>& rings, const Hatch& hatch);

}  // namespace sweepwright::formats
