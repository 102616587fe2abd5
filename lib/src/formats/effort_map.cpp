#include "sweepwright/formats/effort_map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "formats/map_ground.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/ramp.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::array<double, 6> kClassBounds{0, 0.25, 0.5, 1, 1.5, 2};

/// 0 for no coverage, else the first class whose upper bound is not passed.
std::size_t coverage_class(double coverage) {
  if (coverage <= 0) return 0;
  std::size_t at = 1;
  while (at < kClassBounds.size() && coverage > kClassBounds[at]) ++at;
  return at;
}

std::string class_label(std::size_t at) {
  if (at == 0) return "not searched";
  if (at == 1) return fmt::format("coverage up to {:g}", kClassBounds[1]);
  if (at == kClassBounds.size()) return fmt::format("over {:g}", kClassBounds.back());
  return fmt::format("{:g} to {:g}", kClassBounds[at - 1], kClassBounds[at]);
}

Colour class_colour(std::size_t at) {
  constexpr std::size_t kLast = kClassBounds.size();
  // The darkest fifth of the ramp is left out, so that black text can be read with a halo.
  return at == 0 ? kWhite : ramp_colour(0.8 * static_cast<double>(at - 1) / (kLast - 1));
}

Shape filled(const PaperBox& box, const Stroke& outline, Colour fill) {
  return {{{{box.left_mm, box.top_mm},
            {box.right_mm, box.top_mm},
            {box.right_mm, box.bottom_mm},
            {box.left_mm, box.bottom_mm}}},
          outline,
          fill,
          {}};
}

Stroke cell_stroke() {
  return {style::kFaint, style::kCellLine, {}};
}

std::vector<LegendItem> legend_items(bool plan) {
  std::vector<LegendItem> items;
  for (std::size_t at = plan ? 1 : 0; at <= kClassBounds.size(); ++at) {
    items.push_back({class_label(at), [at](PaperBox box) {
                       return Elements{{filled(grown(box, -0.3), cell_stroke(), class_colour(at))}};
                     }});
  }
  if (plan) items.push_back(legend_line("grid cell", cell_stroke()));
  return items;
}

/// A number in the cell, where there is room for it.
Elements cell_number(const PaperArea& ground, double coverage) {
  const auto box = bounds(ground);
  if (!box || coverage <= 0) return {};
  const Text text{middle(*box),
                  fmt::format("{:.2f}", coverage),
                  style::kSmallText,
                  TextAnchor::middle,
                  false,
                  0,
                  style::kInk,
                  style::kHalo};
  if (!contains(ground, box_round(text.at, label_size(text)))) return {};
  return {{text}};
}

Elements rectangle(const MapView& view, const std::string& callsign, const effort::Assignment& made,
                   LabelPlacer& placer) {
  const PaperArea area = view.to_paper(made.region);
  Elements elements{{Shape{area,
                           Stroke{style::kInk, style::kAreaOutline, {}},
                           class_colour(coverage_class(made.coverage.value())),
                           {}}}};
  const auto at = visible_middle(area, view.frame());
  if (!at) return elements;
  const auto line = [&](const std::string& words, double size, bool bold) {
    return Text{*at, words, size, TextAnchor::middle, bold, 0, style::kInk, style::kHalo};
  };
  const Text name = line(callsign, style::kSymbolName, true);
  const std::vector<Text> lines{
      name, line(fmt::format("C {:.2f}", made.coverage.value()), style::kSmallText, false),
      line("S " + format_length(made.spacing, LengthUnit::nautical_mile, 2), style::kSmallText,
           false),
      line(fmt::format("POS {:.1f} %", 100 * made.pos.value()), style::kSmallText, false)};
  const PaperSize needed = stack_size(lines);
  if (const auto place = placer.place(needed, places_inside(area, view.frame(), needed, *at))) {
    append(elements, stacked_at(lines, *place));
  } else {
    append(elements, placed_anyway(name, {*at}, placer));
  }
  return elements;
}

constexpr double kBarRow = 4.6;     // mm
constexpr double kBarHeight = 2.8;  // mm
constexpr double kBarNames = 32;    // room for callsigns
constexpr double kBarFigures = 48;  // room for the figures
constexpr double kBarsHead = 5;

/// A bar for each unit, from `top_mm` down.
Elements bars(const std::vector<effort::Unit>& units, double left_mm, double right_mm,
              double top_mm) {
  const auto text = [](PaperPoint at, std::string words, bool bold) {
    return Element{
        Text{at, std::move(words), style::kSmallText, TextAnchor::start, bold, 0, style::kInk, 0}};
  };
  Elements elements{text({left_mm, top_mm + kBarsHead / 2},
                         "Effort Z = W V T of each unit, and its search time T", true)};
  Area most;
  for (const effort::Unit& unit : units) most = std::max(most, effort::search_effort(unit));
  double y = top_mm + kBarsHead + kBarRow / 2;
  for (const effort::Unit& unit : units) {
    const Area effort = effort::search_effort(unit);
    const double start = left_mm + kBarNames;
    const double length = (right_mm - kBarFigures - start) * (effort / most);
    elements.push_back(
        text({left_mm, y}, fitted(unit.callsign, style::kSmallText, false, kBarNames - 2), false));
    elements.push_back({filled({start, y - kBarHeight / 2, start + length, y + kBarHeight / 2},
                               Stroke{style::kInk, style::kCellLine, {}}, ramp_colour(0.6))});
    elements.push_back(text({start + length + 1.5, y},
                            fmt::format("{:.1f} NM\u00b2, {} h", effort.square_nautical_miles(),
                                        format_duration_minutes(unit.search_time)),
                            false));
    y += kBarRow;
  }
  return elements;
}

std::string title(const EffortReport& report) {
  if (report.plan) {
    return fmt::format("Rectangles to fly: POS {:.1f} %, {:.0f} % of the bound",
                       100 * report.plan->pos.value(), 100 * report.plan->ratio);
  }
  return fmt::format("Coverage of the theoretical optimum: POS {:.1f} % at most",
                     100 * report.allocation.pos.value());
}

std::vector<Position> shown_places(const EffortReport& report) {
  std::vector<Position> shown;
  const auto add = [&](const Region& region) {
    const std::vector<Position> outer = corners(region);
    shown.insert(shown.end(), outer.begin(), outer.end());
  };
  for (const grid::Cell& cell : report.belief.cells) add(grid::outline(cell));
  if (report.plan) {
    for (const effort::Assignment& made : report.plan->assignments) add(made.region);
  }
  return shown;
}

}  // namespace

Drawing draw_effort_map(const EffortReport& report, PaperSize size) {
  const std::size_t cells = report.belief.cells.size();
  if (cells == 0 || cells > kMostCellsOnMap) {
    throw Error(
        ErrorCode::value, fmt::format("a picture of {} cells cannot be read", cells),
        fmt::format("ask for 1 to {} cells: a coarser level or a smaller area", kMostCellsOnMap));
  }
  const std::vector<LegendItem> legend = legend_items(report.plan.has_value());
  GroundMap map = ground_map(shown_places(report), size, legend);
  Elements under = std::move(map.graticule.lines);
  Elements over;
  for (std::size_t i = 0; i < cells; ++i) {
    const PaperArea ground = map.view.to_paper(grid::outline(report.belief.cells[i]));
    const double coverage = report.plan ? 0 : report.allocation.coverages[i];
    under.push_back({Shape{ground, cell_stroke(), class_colour(coverage_class(coverage)), {}}});
    append(over, cell_number(ground, coverage));
  }
  if (report.plan) {
    for (std::size_t i = 0; i < report.units.size(); ++i) {
      append(over, rectangle(map.view, report.units[i].callsign, report.plan->assignments[i],
                             map.placer));
    }
  }
  const PaperBox frame = map.paper.frame;
  Drawing drawing =
      finished(std::move(map), size, title(report), std::move(under), std::move(over), legend);
  append(drawing.elements, bars(report.units, frame.left_mm, frame.right_mm, size.height_mm));
  drawing.size.height_mm +=
      kBarsHead + kBarRow * static_cast<double>(report.units.size()) + kBarRow / 2;
  return drawing;
}

}  // namespace sweepwright::formats
