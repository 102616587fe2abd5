#include "grid/sheet_lattice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace sweepwright::grid {
namespace {

int steps(Angle angle) {
  return static_cast<int>(std::lround(angle.degrees() * kStepsPerDegree));
}

}  // namespace

SheetLattice::SheetLattice(const ChartSheet& sheet)
    : code(sheet.code),
      north(steps(sheet.limits.north) + kStepsUp / 2),
      west(steps(sheet.limits.west) + kStepsAround / 2),
      rows(steps(sheet.limits.north - sheet.limits.south) / kChartCell),
      columns(steps(width(sheet.limits)) / kChartCell) {}

std::string SheetLattice::name_at(StepSquare square, int depth) const {
  const int south_of_limit = north - 1 - square.north;
  const int east_of_limit = offset_east(square);
  const int number = south_of_limit / kChartCell * columns + east_of_limit / kChartCell + 1;
  std::string name = fmt::format("{} {}", code, number);
  if (depth == 1) {
    name += static_cast<char>('A' + 2 * (south_of_limit / kChartQuarter % 2) +
                              east_of_limit / kChartQuarter % 2);
  }
  return name;
}

StepSquare SheetLattice::corner_of(int number) const {
  const int row = (number - 1) / columns;
  const int column = (number - 1) % columns;
  return {north - (row + 1) * kChartCell, (west + column * kChartCell) % kStepsAround};
}

std::vector<const SheetLattice*> sheets_at(const std::vector<SheetLattice>& sheets,
                                           StepSquare square) {
  std::vector<const SheetLattice*> found;
  for (const SheetLattice& sheet : sheets) {
    if (sheet.holds(square)) found.push_back(&sheet);
  }
  std::stable_sort(found.begin(), found.end(), [square](const auto* a, const auto* b) {
    return a->offset_east(square) > b->offset_east(square);
  });
  return found;
}

std::optional<StepSquare> chart_square(const std::vector<SheetLattice>& sheets, Position position) {
  const StepSquare owner = east_owning_square(position);
  const StepSquare east = west_owning_square(position);
  const int south =
      kStepsUp - 1 - std::min(to_steps(-position.latitude().degrees(), 90), kStepsUp - 1);
  const std::array<StepSquare, 4> choices{
      owner, {owner.north, east.east}, {south, owner.east}, {south, east.east}};
  for (const StepSquare& square : choices) {
    for (const SheetLattice& sheet : sheets) {
      if (sheet.holds(square)) return square;
    }
  }
  return std::nullopt;
}

}  // namespace sweepwright::grid
