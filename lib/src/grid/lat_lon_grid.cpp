#include "grid/lat_lon_grid.hpp"

#include <fmt/format.h>

#include "grid/cover.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {

LatLonGrid::LatLonGrid(std::string_view system, OwnedSide owned,
                       std::initializer_list<LevelSize> levels)
    : system_(system), owned_(owned) {
  for (const LevelSize& level : levels) {
    const Angle size = Angle::degrees(static_cast<double>(level.steps) / kStepsPerDegree);
    levels_.push_back({level.name, static_cast<int>(levels_.size()), size});
    steps_.push_back(level.steps);
  }
}

bool LatLonGrid::exists(StepSquare) const {
  return true;
}

std::string LatLonGrid::name_of(Position position, const Level& level) const {
  return name_at(square_of(position), level.depth);
}

Cell LatLonGrid::make_cell(Place place) const {
  return {system_, levels_[static_cast<std::size_t>(place.depth)],
          name_at(place.corner, place.depth), box_of(place.corner, steps(place.depth)), Region{}};
}

Cell LatLonGrid::cell(std::string_view name) const {
  return make_cell(place_of(to_upper_ascii(trimmed(name))));
}

void LatLonGrid::hand_over(int row, const std::vector<Span>& spans, int depth,
                           const CellSink& sink) const {
  const int size = steps(depth);
  for (const Span& span : spans) {
    for (int column = span.first; column <= span.last; ++column) {
      const StepSquare corner{row * size, column * size % kStepsAround};
      if (exists(corner)) sink(make_cell({depth, corner}));
    }
  }
}

void LatLonGrid::visit(const Region& area, const Level& level, Selection selection,
                       const CellSink& sink) const {
  cover(degree_sides(flat(area)), steps(level.depth) * kTicksPerStep, selection,
        [&](int row, const std::vector<Span>& spans) { hand_over(row, spans, level.depth, sink); });
}

void LatLonGrid::visit(const LatLonBox& area, const Level& level, Selection selection,
                       const CellSink& sink) const {
  check(area);
  cover(area, steps(level.depth), selection,
        [&](int row, const std::vector<Span>& spans) { hand_over(row, spans, level.depth, sink); });
}

std::optional<Cell> LatLonGrid::parent(const Cell& cell) const {
  const Place place = place_of(cell.name);
  if (place.depth == 0) return std::nullopt;
  const int size = steps(place.depth - 1);
  return make_cell(
      {place.depth - 1, {place.corner.north / size * size, place.corner.east / size * size}});
}

std::vector<Cell> LatLonGrid::children(const Cell& cell) const {
  std::vector<Cell> cells;
  const Place place = place_of(cell.name);
  if (place.depth + 1 == static_cast<int>(levels_.size())) return cells;
  const int size = steps(place.depth);
  const int part = steps(place.depth + 1);
  for (int north = size - part; north >= 0; north -= part) {
    for (int east = 0; east < size; east += part) {
      cells.push_back(
          make_cell({place.depth + 1, {place.corner.north + north, place.corner.east + east}}));
    }
  }
  return cells;
}

std::vector<Cell> LatLonGrid::neighbours(const Cell& cell) const {
  struct Move {
    int north;
    int east;
  };
  constexpr Move kClockwise[] = {{1, 0},  {1, 1},   {0, 1},  {-1, 1},
                                 {-1, 0}, {-1, -1}, {0, -1}, {1, -1}};
  std::vector<Cell> cells;
  const Place place = place_of(cell.name);
  const int size = steps(place.depth);
  for (const Move& move : kClockwise) {
    const StepSquare corner{place.corner.north + move.north * size,
                            (place.corner.east + move.east * size + kStepsAround) % kStepsAround};
    if (corner.north < 0 || corner.north >= kStepsUp || !exists(corner)) continue;
    cells.push_back(make_cell({place.depth, corner}));
  }
  return cells;
}

}  // namespace sweepwright::grid
