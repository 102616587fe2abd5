// The maps of a plan: one for each crew, and the overview of all.
//
// Problem: a crew with ten minutes before take-off must see its ground, where and which way to
//   begin, how the legs run, whose ground is next door, and where home is; and must be able to see
//   it on a black-and-white print, or with eyes that tell no red from green.
// Conventions: a flat view about the middle of the sector (of the area, on the overview) with true
//   north up there (position/local_plane.hpp), so that legs and sector edges are straight and the
//   map works at any latitude. No pictures of the ground lie underneath: charts are for that.
//   docs/style-guide.md has the symbols, weights, sizes and colours.
// Domain: any plan, across the antimeridian and round the poles included. Paper of at least
//   kLeastMapSize.
// Accuracy: lengths on the paper are in scale to 0.1 % as far as 200 km from the middle; the scale
//   bars hold for the middle (map_test.cpp).
// Promises: P1 all that is drawn lies on the paper; P2 same plan, same drawing; P3 crews next to
//   each other in the plan differ in colour and in line pattern (map_test.cpp).
// Source: own design; the palette's measures are in docs/style-guide.md.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/flown_pattern_writer.hpp"
#include "sweepwright/plan/plan.hpp"
#include "sweepwright/sector/sectors.hpp"

namespace sweepwright::formats {

inline constexpr PaperSize kLeastMapSize{80, 70};

/// How one crew's lines are told from another's: by colour, by line pattern, by hatch.
struct CrewStyle {
  std::string_view colour_name;
  Colour colour;
  std::vector<double> dash_mm;     ///< empty for an unbroken line
  double hatch_direction_deg = 0;  ///< of the lines that fill the sector on the overview
};

/// Number of different colours, and of different line patterns.
inline constexpr std::size_t kCrewColours = 8;

/// The style of the crew at that place in the plan. Colours come again after kCrewColours, then
/// with other line patterns.
CrewStyle crew_style(std::size_t crew);

/// The map for one crew: `assignment` is its place in the plan. Throws Error(value) when there is
/// no such assignment or the paper is too small.
Drawing draw_sector_map(const plan::Plan& plan, std::size_t assignment, PaperSize size);

/// The whole area with all sectors, patterns and bases. Throws Error(value) when the paper is too
/// small.
Drawing draw_overview_map(const plan::Plan& plan, PaperSize size);

/// More cells than a picture can show.
inline constexpr std::size_t kMostCellsOnMap = 5000;

/// Cells of a grid with their names and, when given, the area that they were asked for. Throws
/// Error(value) when there is no cell or the paper is too small.
Drawing draw_cells_map(const std::vector<grid::Cell>& cells, const std::optional<Region>& area,
                       PaperSize size);

/// Sectors with their names, crews and the direction of their legs. Throws Error(value) when there
/// is none or the paper is too small.
Drawing draw_sectors_map(const std::vector<sector::Sector>& sectors, PaperSize size);

/// One pattern with leg numbers and, when given, the area that it covers. Throws Error(value) when
/// the paper is too small.
Drawing draw_pattern_map(const pattern::Pattern& pattern, const std::optional<Region>& area,
                         PaperSize size);

/// A pattern as flown: the path over the ground with its turns, and the legs as drawn under it.
Drawing draw_flown_map(const FlownReport& report, const std::optional<Region>& area,
                       PaperSize size);

}  // namespace sweepwright::formats
