#include "sweepwright/formats/belief_map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "formats/map_ground.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/ramp.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kLargestText = 3.1;  // mm
constexpr double kTextStep = 0.2;
constexpr double kTextHalo = 0.4;     // lifts ink off dark cells and rings
constexpr double kLineHeight = 1.25;  // of the text's size
constexpr Colour kRim{255, 255, 255, 190};

LegendItem swatch(const RampClass& step) {
  return {step.label, [colour = step.colour](PaperBox box) {
            const PaperBox inner = grown(box, -0.3);
            return Elements{{Shape{{{{inner.left_mm, inner.top_mm},
                                     {inner.right_mm, inner.top_mm},
                                     {inner.right_mm, inner.bottom_mm},
                                     {inner.left_mm, inner.bottom_mm}}},
                                   Stroke{style::kFaint, style::kCellLine, {}},
                                   colour,
                                   {}}}};
          }};
}

Stroke ring_stroke(double containment) {
  if (containment <= 0.5) return {style::kInk, style::kSearchLeg, {}};
  return {style::kInk, style::kSearchLeg,
          containment <= 0.9 ? std::vector<double>{2.4, 1.2} : std::vector<double>{0.6, 1.1}};
}

std::vector<LegendItem> legend_items(const std::vector<RampClass>& classes,
                                     const std::vector<ContainmentLine>& lines) {
  std::vector<LegendItem> items;
  for (const RampClass& step : classes) items.push_back(swatch(step));
  std::vector<double> shares;
  for (const ContainmentLine& line : lines) {
    if (std::find(shares.begin(), shares.end(), line.containment) != shares.end()) continue;
    shares.push_back(line.containment);
    items.push_back(legend_line(fmt::format("holds {:g} %", 100 * line.containment),
                                ring_stroke(line.containment)));
  }
  return items;
}

bool is_boundary(char before, char after) {
  return is_ascii_digit(before) != is_ascii_digit(after) || before == '/' || before == ' ';
}

/// The name in two parts, cut where letters and digits meet, as near the middle as can be.
std::vector<std::string> halves(const std::string& name) {
  std::size_t best = 0;
  for (std::size_t i = 1; i < name.size(); ++i) {
    const auto off = [&](std::size_t at) {
      return std::max(2 * at, name.size()) - std::min(2 * at, name.size());
    };
    if (is_boundary(name[i - 1], name[i]) && (best == 0 || off(i) <= off(best))) best = i;
  }
  if (best == 0) return {name};
  return {name.substr(0, best), name.substr(best)};
}

/// Lines of text under each other in the middle of a cell, the last one plain; nothing when they do
/// not fit.
Elements lines_in(const PaperArea& ground, const std::vector<std::string>& lines) {
  const auto box = bounds(ground);
  if (!box) return {};
  const PaperPoint centre = middle(*box);
  for (double size = kLargestText; size >= style::kSmallText; size -= kTextStep) {
    PaperSize needed{0, kLineHeight * size * static_cast<double>(lines.size())};
    for (const std::string& line : lines) {
      needed.width_mm = std::max(needed.width_mm, text_width_mm(line, size, true));
    }
    if (!contains(ground, box_round(centre, needed))) continue;
    Elements out;
    double y_mm = centre.y_mm - (needed.height_mm - kLineHeight * size) / 2;
    for (std::size_t i = 0; i < lines.size(); ++i, y_mm += kLineHeight * size) {
      out.push_back({Text{{centre.x_mm, y_mm},
                          lines[i],
                          size,
                          TextAnchor::middle,
                          i + 1 < lines.size(),
                          0,
                          style::kInk,
                          kTextHalo}});
    }
    return out;
  }
  return {};
}

/// Name over probability; in a narrow cell the name takes two lines, in a small one it is left out.
Elements cell_text(const std::string& name, double probability, const PaperArea& ground) {
  const std::string percent =
      fmt::format("{:.{}f} %", 100 * probability, probability < 0.01 ? 2 : 1);
  std::vector<std::string> parts = halves(name);
  parts.push_back(percent);
  for (const auto& lines : {std::vector{name, percent}, parts, std::vector{percent}}) {
    if (Elements text = lines_in(ground, lines); !text.empty()) return text;
  }
  return {};
}

/// Dark, with a light rim that lifts it off dark cells.
Elements ring(const MapView& view, const ContainmentLine& line) {
  const auto* region = std::get_if<Region>(&line.ground);
  if (region == nullptr) return {};
  const Stroke stroke = ring_stroke(line.containment);
  return {{Shape{view.to_paper(*region), Stroke{kRim, stroke.width_mm * 2, {}}, {}, {}}},
          {Shape{view.to_paper(*region), stroke, {}, {}}}};
}

}  // namespace

Drawing draw_belief_map(const belief::Belief& belief, const std::vector<ContainmentLine>& lines,
                        PaperSize size) {
  if (belief.cells.empty() || belief.cells.size() > kMostCellsOnMap) {
    throw Error(
        ErrorCode::value, fmt::format("a picture of {} cells cannot be read", belief.cells.size()),
        fmt::format("ask for 1 to {} cells: a coarser level or a smaller area", kMostCellsOnMap));
  }
  const std::vector<RampClass> classes = ramp_classes(std::ranges::max(belief.probability));
  const std::vector<LegendItem> legend = legend_items(classes, lines);
  std::vector<Position> shown;
  for (const grid::Cell& cell : belief.cells) {
    const std::vector<Position> outer = corners(grid::outline(cell));
    shown.insert(shown.end(), outer.begin(), outer.end());
  }
  GroundMap map = ground_map(shown, size, legend);
  Elements under = std::move(map.graticule.lines);
  Elements over;
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    const PaperArea ground = map.view.to_paper(grid::outline(belief.cells[i]));
    const RampClass& step = classes[class_of(belief.probability[i], classes)];
    under.push_back({Shape{ground, Stroke{style::kFaint, style::kCellLine, {}}, step.colour, {}}});
    append(over, cell_text(belief.cells[i].name, belief.probability[i], ground));
  }
  for (const ContainmentLine& line : lines) append(under, ring(map.view, line));
  const std::string title = fmt::format("Probability of containment, {} {}; {:.1f} % lies outside",
                                        belief.cells.front().system,
                                        belief.cells.front().level.name, 100 * belief.outside);
  return finished(std::move(map), size, title, std::move(under), std::move(over), legend);
}

}  // namespace sweepwright::formats
