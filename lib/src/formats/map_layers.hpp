// What maps show of a plan, layer by layer; private to the formats room.
#pragma once

#include <string>
#include <vector>

#include "formats/map_labels.hpp"
#include "formats/map_north.hpp"
#include "formats/map_symbols.hpp"
#include "formats/map_view.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

/// Outlines of grid cells; cells too small to see are left out.
Elements cell_lines(const MapView& view, const std::vector<grid::Cell>& cells);
/// Names of grid cells, large and grey, to be drawn under the legs; each in its cell, where that
/// can be on `ground`, and where no other label is. Cells too small for a name have none.
Elements cell_names(const MapView& view, const std::vector<grid::Cell>& cells,
                    const PaperArea& ground, LabelPlacer& placer);

/// How the legs of one crew are drawn.
struct LegPen {
  Colour colour;
  double width_mm = 0.4;
  std::vector<double> dash_mm;  ///< of search legs
  bool arrows = true;
};
Elements legs(const MapView& view, const pattern::Pattern& pattern, const LegPen& pen);
/// The search legs the way they are flown, joined by the turns and ways between them as flown.
Elements flown_legs(const MapView& view, const plan::Assignment& assignment, const LegPen& pen);

/// Lines that the pattern goes by, long-dashed and grey, an arrow on each; and what the legend says
/// of them.
Elements guide_lines(const MapView& view, const pattern::Pattern& pattern);
std::vector<LegendItem> guide_legend(const pattern::Pattern& pattern);

/// Numbers near the start of each search leg, and on other legs where there is room.
Elements leg_numbers(const MapView& view, const pattern::Pattern& pattern, LabelPlacer& placer);

/// True track on the paper at the start of the pattern.
double first_track_on_paper_deg(const MapView& view, const pattern::Pattern& pattern);

/// A text at the best of the places; nothing when all are taken.
Elements placed(Text text, const std::vector<PaperPoint>& places, LabelPlacer& placer);
/// The same, shown in any case.
Elements placed_anyway(Text text, const std::vector<PaperPoint>& places, LabelPlacer& placer);
/// Lines of text under each other: the box they need, and the lines at their place.
PaperSize stack_size(const std::vector<Text>& lines);
Elements stacked_at(const std::vector<Text>& lines, PaperPoint centre);
/// A symbol's name beside it, shown in any case.
Elements named_beside(PaperPoint symbol, double radius_mm, const std::string& name, bool bold,
                      LabelPlacer& placer);

/// How the ground of one crew is filled on a map of all sectors.
Hatch sector_hatch(const CrewStyle& crew);
/// A sector's name and, where it fits, that of its crew under it.
Elements sector_label(const MapView& view, const Region& sector, const std::string& name,
                      const std::string& crew, LabelPlacer& placer);

/// The base: its symbol and name or, when it lies off the map, an arrow towards it from `seen_from`
/// with the way back home.
Elements base(const MapView& view, const plan::NamedPlace& base, Position seen_from,
              LabelPlacer& placer);

/// The paper of a map, shared out: the frame, and the strip below it for scale bars and legend.
struct MapPaper {
  PaperBox frame;
  PaperBox scales;
  PaperBox legend;
};
/// Room for any of the legends: what a map shows is only known when it is laid out. Throws
/// Error(value) when the paper is smaller than kLeastMapSize.
/// `head_mm`: height kept free above the frame, for a title.
MapPaper map_paper(PaperSize size, const std::vector<std::vector<LegendItem>>& legends,
                   double head_mm);

/// Frame, north arrows, graticule labels, scale bars, legend.
Elements furniture(const MapView& view, const MapPaper& paper, const NorthArrows& norths,
                   Elements graticule_labels, const std::vector<LegendItem>& items);

/// Legend items that several maps share.
LegendItem legend_line(std::string text, Stroke stroke);
LegendItem legend_way_to_base(std::string text);
LegendItem legend_symbol(std::string text, std::function<Elements(PaperPoint)> symbol);

}  // namespace sweepwright::formats
