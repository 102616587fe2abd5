#include "sweepwright/grid/local.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "grid/cover.hpp"
#include "grid/name_error.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::grid {
namespace {

constexpr int kColumns = 26 + 26 * 26;
constexpr int kRows = 999;

/// Row and column from 0; the row counts downward.
struct Place {
  int row;
  int column;
};

Ticks micrometres(Length length) {
  return std::llround(length.metres() * kMicrometresPerMetre);
}

bool on_grid(Place place) {
  return place.row >= 0 && place.row < kRows && place.column >= 0 && place.column < kColumns;
}

std::string name_at(Place place) {
  std::string letters;
  if (place.column >= 26) letters += static_cast<char>('A' + place.column / 26 - 1);
  letters += static_cast<char>('A' + place.column % 26);
  return fmt::format("{}{}", letters, place.row + 1);
}

Place place_of(std::string_view name) {
  const auto wrong = [name](std::size_t at, std::string_view expected) {
    return name_error("a cell of a local grid", name, at, expected, "A1, C7 or AB12");
  };
  std::size_t at = 0;
  int column = 0;
  while (at < name.size() && is_ascii_letter(name[at])) {
    if (at == 2) throw wrong(2, "the number of a row");
    column = 26 * column + (name[at++] - 'A' + 1);
  }
  if (at == 0) throw wrong(0, "the letters of a column, A to ZZ,");
  int row = 0;
  const char* const end = name.data() + name.size();
  const auto [stop, fault] = std::from_chars(name.data() + at, end, row);
  if (at == name.size() || !is_ascii_digit(name[at]) || row < 1 || row > kRows ||
      fault != std::errc()) {
    throw wrong(at, "the number of a row, 1 to 999,");
  }
  if (stop != end) throw wrong(static_cast<std::size_t>(stop - name.data()), "the end of the name");
  return {row - 1, column - 1};
}

FlatRegion flat(const PlaneRegion& region) {
  const auto ring = [](const PlaneRing& plane_ring) {
    FlatRing out;
    for (const PlanePoint& p : plane_ring) out.push_back({p.right.metres(), p.up.metres()});
    return out;
  };
  FlatRegion out;
  for (const PlanePolygon& polygon : region.polygons) {
    FlatPolygon laid{ring(polygon.outer), {}};
    for (const PlaneRing& hole : polygon.holes) laid.holes.push_back(ring(hole));
    out.push_back(laid);
  }
  return out;
}

class LocalMetricGrid final : public Grid {
 public:
  explicit LocalMetricGrid(const LocalGrid& form)
      : plane_(form.origin, form.up), side_(form.cell), levels_{{"cell", 0, form.cell}} {}

  std::string_view system() const override { return "local"; }
  const std::vector<Level>& levels() const override { return levels_; }

  bool covers(Position position) const override {
    if (geodesic(plane_.centre(), position).length >= kLocalPlaneReach) return false;
    return on_grid(place_at(position));
  }

  std::string name_of(Position position, const Level&) const override {
    if (!covers(position)) {
      throw Error(ErrorCode::value,
                  fmt::format("the local grid does not reach {:.5f}, {:.5f}",
                              position.latitude().degrees(), position.longitude().degrees()),
                  "it begins at its origin and runs right and down");
    }
    return name_at(place_at(position));
  }

  Cell cell(std::string_view name) const override {
    return make_cell(place_of(to_upper_ascii(trimmed(name))));
  }

  void visit(const Region& area, const Level&, Selection selection,
             const CellSink& sink) const override {
    cover(metre_sides(flat(to_plane(area, plane_))), micrometres(side_), selection,
          [&](int row, const std::vector<Span>& spans) {
            for (const Span& span : spans) {
              for (int column = span.first; column <= span.last; ++column) {
                const Place place{-1 - row, column};
                if (on_grid(place)) sink(make_cell(place));
              }
            }
          });
  }
  void visit(const LatLonBox& area, const Level& level, Selection selection,
             const CellSink& sink) const override {
    check(area);
    visit(outline(area), level, selection, sink);
  }

  std::optional<Cell> parent(const Cell&) const override { return std::nullopt; }
  std::vector<Cell> children(const Cell&) const override { return {}; }

  std::vector<Cell> neighbours(const Cell& cell) const override {
    constexpr Place kClockwise[] = {{-1, 0}, {-1, 1}, {0, 1},  {1, 1},
                                    {1, 0},  {1, -1}, {0, -1}, {-1, -1}};
    const Place place = place_of(cell.name);
    std::vector<Cell> cells;
    for (const Place& move : kClockwise) {
      const Place beside{place.row + move.row, place.column + move.column};
      if (on_grid(beside)) cells.push_back(make_cell(beside));
    }
    return cells;
  }

 private:
  Place place_at(Position position) const {
    const PlanePoint p = plane_.to_plane(position);
    const Ticks side = micrometres(side_);
    return {static_cast<int>(floor_div(-micrometres(p.up), side)),
            static_cast<int>(floor_div(micrometres(p.right), side))};
  }

  Cell make_cell(Place place) const {
    const auto corner = [&](int right, int down) {
      return plane_.to_position({side_ * (place.column + right), side_ * -(place.row + down)});
    };
    const Ring ring{corner(0, 1), corner(1, 1), corner(1, 0), corner(0, 0)};
    return {system(), levels_[0], name_at(place), std::nullopt, Region{{{ring, {}}}}};
  }

  LocalPlane plane_;
  Length side_;
  std::vector<Level> levels_;
};

}  // namespace

std::unique_ptr<Grid> make_local_grid(const LocalGrid& form) {
  const double side = form.cell.metres();
  if (!(side >= 1 && side <= 100'000)) {
    throw Error(ErrorCode::value,
                fmt::format("cells of {} m, expected a side from 1 m to 100 km", side),
                "ground teams use cells of 100 m to 1 km");
  }
  return std::make_unique<LocalMetricGrid>(form);
}

LocalGrid local_grid_over(const Region& area, TrueDirection up, Length cell) {
  const LocalPlane plane = local_plane(area, up);
  const PlaneRegion laid = to_plane(area, plane);
  const PlanePoint corner{extent_right(laid).low, extent_up(laid).high};
  const Position origin = plane.to_position(corner);
  // "Up" at the corner is not quite "up" at the middle: the corner's own direction to a point above
  // it keeps the grid along the same lines.
  const Position above = plane.to_position({corner.right, corner.up + cell});
  return {origin, geodesic(origin, above).start_track, cell};
}

}  // namespace sweepwright::grid
