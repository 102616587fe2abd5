#include <algorithm>
#include <cmath>

#include "formats/sheet_parts.hpp"

// Reckons heights from the style sheet (sheet_style.cpp): both must change together. The page
// itself stretches the map to what is really left; this only makes the drawing's shape fit that.

namespace sweepwright::formats {
namespace {

constexpr double kPageHeight = 263;  // mm: US letter less its margins
constexpr double kMapWidth = 117;    // mm
constexpr double kLeastMapHeight = 75;
constexpr double kMostMapHeight = 150;
constexpr double kFixedParts = 84;  // mm: heading, key figures, debrief, cautions, footer, gaps
constexpr double kTextLine = 3.25;  // mm
constexpr double kTextSize = 2.55;  // mm
constexpr double kTitle = 4;        // mm: of a block, with its gap
constexpr double kLegRow = 3;       // mm
constexpr double kLegHead = 14;     // mm: title, heads, notes

double lines(std::string_view text, double width_mm) {
  double total = 0;
  while (true) {
    const std::size_t end = text.find('\n');
    const double width = text_width_mm(text.substr(0, end), kTextSize, false);
    total += std::ceil(std::max(1.0, width / width_mm));
    if (end == std::string_view::npos) return total;
    text.remove_prefix(end + 1);
  }
}

double height(const std::vector<SheetBlock>& blocks, double width_mm) {
  constexpr double kNames = 20;  // mm
  double total = 0;
  for (const SheetBlock& block : blocks) {
    total += kTitle;
    for (const SheetField& field : block.fields) {
      total += kTextLine * lines(field.value, width_mm - kNames);
    }
    for (const std::string& line : block.lines) total += kTextLine * lines(line, width_mm);
  }
  return total;
}

double working_height(const Sheet& sheet) {
  constexpr double kExpressions = 43;  // mm
  double total = kTitle;
  for (const SheetStep& step : sheet.working) {
    total += kTextLine * lines(step.expression, kExpressions);
  }
  return total;
}

double legs_height(const Sheet& sheet) {
  if (sheet.legs.size() > kMostLegsOnFirstPage) return kLegHead;
  return kLegHead + kLegRow * std::ceil(static_cast<double>(sheet.legs.size()) / 2);
}

}  // namespace

PaperSize sheet_map_size(const Sheet& sheet) {
  const double under =
      std::max({working_height(sheet), height(sheet.facts, 42), height({sheet.instructions}, 59)});
  const double left = kPageHeight - kFixedParts - legs_height(sheet) - under;
  const double beside = height(sheet.assignment, 75);
  return {kMapWidth, std::clamp(std::max(left, beside), kLeastMapHeight, kMostMapHeight)};
}

}  // namespace sweepwright::formats
