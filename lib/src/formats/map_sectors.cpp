// The map of sectors: who has which piece of ground, and how the legs lie.
#include <fmt/format.h>

#include "formats/map_ground.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

/// The mark for the legs' direction is this long at the most.
constexpr double kMostLegMark = 14;  // mm

LegendItem sector_item(const sector::Sector& sector, const CrewStyle& crew) {
  return {sector.name + " " + sector.unit, [crew](PaperBox box) {
            const double y = middle(box).y_mm;
            return Elements{{Shape{{{{box.left_mm, y - 1.3},
                                     {box.right_mm, y - 1.3},
                                     {box.right_mm, y + 1.3},
                                     {box.left_mm, y + 1.3}}},
                                   Stroke{style::kInk, style::kNeighbourOutline, {}},
                                   {},
                                   sector_hatch(crew)}}};
          }};
}

Elements leg_mark(PaperPoint centre, double length_mm, double direction, Colour colour) {
  const PaperPoint half = 0.5 * length_mm * unit_vector(direction);
  Elements out{{Line{{centre - half, centre + half}, Stroke{colour, style::kSearchLeg, {}}}}};
  out.push_back(arrowhead(centre + half, direction, 2, colour));
  out.push_back(arrowhead(centre - half, direction + 180, 2, colour));
  return out;
}

/// A mark along the legs, beside the sector's name.
Elements legs_of(const MapView& view, const sector::Sector& sector, const CrewStyle& crew,
                 LabelPlacer& placer) {
  const PaperArea area = view.to_paper(sector.region);
  const auto at = visible_middle(area, view.frame());
  if (!at) return {};
  const Position ground = view.to_position(*at);
  const PaperPoint ahead =
      view.to_paper(travel(ground, sector.legs, Length::nautical_miles(1)).position);
  const double direction = direction_deg(*at, ahead);
  const double length = std::min(kMostLegMark, 1.4 * distance_to_edge_mm(area, *at));
  const PaperPoint reach = length * unit_vector(direction);
  const PaperSize size{std::abs(reach.x_mm) + 2, std::abs(reach.y_mm) + 2};
  const auto place = placer.place(size, places_inside(area, view.frame(), size, *at));
  return place ? leg_mark(*place, length, direction, crew.colour) : Elements{};
}

}  // namespace

Drawing draw_sectors_map(const std::vector<sector::Sector>& sectors, PaperSize size) {
  if (sectors.empty()) throw Error(ErrorCode::value, "there is no sector to draw");
  std::vector<LegendItem> legend;
  std::vector<Position> shown;
  for (std::size_t i = 0; i < sectors.size(); ++i) {
    legend.push_back(sector_item(sectors[i], crew_style(i)));
    const std::vector<Position> outer = corners(sectors[i].region);
    shown.insert(shown.end(), outer.begin(), outer.end());
  }
  legend.push_back({"search legs", [](PaperBox box) {
                      return leg_mark(middle(box), box.width_mm(), 90, style::kInk);
                    }});
  GroundMap map = ground_map(shown, size, legend);
  Elements under = map.graticule.lines;
  Elements over;
  for (std::size_t i = 0; i < sectors.size(); ++i) {
    under.push_back({Shape{map.view.to_paper(sectors[i].region),
                           Stroke{style::kInk, style::kAreaOutline, {}},
                           {},
                           sector_hatch(crew_style(i))}});
  }
  for (const sector::Sector& sector : sectors) {
    append(over, sector_label(map.view, sector.region, sector.name, sector.unit, map.placer));
  }
  for (std::size_t i = 0; i < sectors.size(); ++i) {
    append(over, legs_of(map.view, sectors[i], crew_style(i), map.placer));
  }
  const std::string title =
      fmt::format("{} sector{}", sectors.size(), sectors.size() == 1 ? "" : "s");
  return finished(std::move(map), size, title, std::move(under), std::move(over), legend);
}

}  // namespace sweepwright::formats
