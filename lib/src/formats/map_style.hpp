// Line weights, text sizes and greys of all maps, in one place; docs/style-guide.md shows them.
// Private to the formats room.
#pragma once

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats::style {

// Greys: dark enough to survive a copier, light enough to stay behind the crew's own lines.
inline constexpr Colour kInk{26, 26, 26};
inline constexpr Colour kQuiet{96, 96, 96};     // neighbours' names, way to the base
inline constexpr Colour kFaint{130, 130, 130};  // neighbours' outlines, cell lines
inline constexpr Colour kCellName{112, 112, 112};
inline constexpr Colour kGraticule{170, 170, 170};

// Line widths, mm.
inline constexpr double kSectorOutline = 0.7;
inline constexpr double kAreaOutline = 0.6;
inline constexpr double kSearchLeg = 0.45;
inline constexpr double kCrossLeg = 0.35;
inline constexpr double kNeighbourOutline = 0.3;
inline constexpr double kCellLine = 0.18;
inline constexpr double kGraticuleLine = 0.12;
inline constexpr double kFrameLine = 0.3;
inline constexpr double kHalo = 0.45;

// Text sizes, mm: 1 mm is 2.83 points. Nothing is smaller than kSmallText.
inline constexpr double kSectorName = 4.6;
inline constexpr double kSymbolName = 3.0;
inline constexpr double kLegNumber = 2.5;
inline constexpr double kNeighbourName = 2.8;
inline constexpr double kSmallText = 2.3;  // legend, graticule, scales

}  // namespace sweepwright::formats::style
