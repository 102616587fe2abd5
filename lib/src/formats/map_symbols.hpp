// The symbols of the maps and the legend that explains them; private to the formats room.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "formats/map_geometry.hpp"

namespace sweepwright::formats {

using Elements = std::vector<Element>;

inline constexpr double kStartRadius = 2.2;
inline constexpr double kEndRadius = 1.5;
inline constexpr double kBaseRadius = 2.2;
inline constexpr double kDatumRadius = 2.0;

/// Commence search point: a triangle in a ring, pointing along the first leg.
Elements start_symbol(PaperPoint at, double first_track_deg);
inline Elements level_start_symbol(PaperPoint at) {
  return start_symbol(at, 90);
}
/// End of the pattern: a square.
Elements end_symbol(PaperPoint at);
/// Base: a hut.
Elements base_symbol(PaperPoint at);
/// Datum: a ring with a cross through it.
Elements datum_symbol(PaperPoint at);
/// A filled arrowhead whose tip is at `tip`.
Element arrowhead(PaperPoint tip, double direction_deg, double size_mm, Colour colour);
/// A line with an arrowhead at its end.
Elements arrow(PaperPoint from, PaperPoint to, Colour colour);

/// Three bars, nautical miles, kilometres and statute miles, with the top left corner of their box
/// at `at`.
Elements scale_bars(PaperPoint at, double mm_per_metre);
inline constexpr PaperSize kScaleBarsSize{32, 13.6};

/// The elements at another size, about a point.
Elements scaled(Elements elements, PaperPoint about, double factor);

struct LegendItem {
  std::string text;
  std::function<Elements(PaperBox)> sample;  ///< drawn in the box
};
/// The height that a legend needs in that width: in as many columns as fit.
double legend_height_mm(const std::vector<LegendItem>& items, double width_mm);
/// Column by column, down each, from the top left corner of the box.
Elements legend(const std::vector<LegendItem>& items, PaperBox box);

void append(Elements& to, Elements more);

}  // namespace sweepwright::formats
