#include "sweepwright/terrain/isolines.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <span>
#include <tuple>
#include <unordered_map>

#include "sweepwright/position/plotting.hpp"
#include "terrain/layer.hpp"

namespace sweepwright::terrain {
namespace {

/// The side of a cell that a line crosses, named by its north or west post.
struct Side {
  long row = 0;
  long column = 0;
  bool southwards = false;  ///< from that post to the south; else to the east
  auto operator<=>(const Side&) const = default;
};

struct SideHash {
  std::size_t operator()(const Side& side) const {
    const auto row = static_cast<std::uint64_t>(side.row);
    const auto column = static_cast<std::uint64_t>(side.column);
    return static_cast<std::size_t>((row * 0x9E3779B97F4A7C15ULL) ^ (column << 1U) ^
                                    static_cast<std::uint64_t>(side.southwards));
  }
};

/// A piece of a line through one cell, the higher ground on its left.
struct Piece {
  Side from;
  Side to;
  LatticePoint start;
  LatticePoint end;
};

enum CellSide : int { kNorth, kEast, kSouth, kWest };

struct Crossing {
  CellSide from;
  CellSide to;
};

/// The heights of a cell's posts.
struct CellPosts {
  double nw, ne, sw, se;
};

/// One or two pieces, by which corners are higher.
std::span<const Crossing> crossings(const CellPosts& h, double level) {
  // Index: 8 nw + 4 ne + 2 se + 1 sw. The two saddles stand twice: corners joined over the middle,
  // or parted by it.
  static constexpr std::array<std::array<Crossing, 1>, 16> kSingle = {{
      {{{kNorth, kNorth}}},
      {{{kSouth, kWest}}},
      {{{kEast, kSouth}}},
      {{{kEast, kWest}}},
      {{{kNorth, kEast}}},
      {{{kNorth, kNorth}}},
      {{{kNorth, kSouth}}},
      {{{kNorth, kWest}}},
      {{{kWest, kNorth}}},
      {{{kSouth, kNorth}}},
      {{{kNorth, kNorth}}},
      {{{kEast, kNorth}}},
      {{{kWest, kEast}}},
      {{{kSouth, kEast}}},
      {{{kWest, kSouth}}},
      {{{kNorth, kNorth}}},
  }};
  static constexpr std::array<Crossing, 2> kLowCornersNwSe{{{kNorth, kWest}, {kSouth, kEast}}};
  static constexpr std::array<Crossing, 2> kHighCornersNeSw{{{kNorth, kEast}, {kSouth, kWest}}};
  static constexpr std::array<Crossing, 2> kLowCornersNeSw{{{kEast, kNorth}, {kWest, kSouth}}};
  static constexpr std::array<Crossing, 2> kHighCornersNwSe{{{kWest, kNorth}, {kEast, kSouth}}};

  const unsigned corners = (h.nw >= level ? 8U : 0U) | (h.ne >= level ? 4U : 0U) |
                           (h.se >= level ? 2U : 0U) | (h.sw >= level ? 1U : 0U);
  if (corners == 0 || corners == 15) return {};
  if (corners != 5 && corners != 10) return kSingle.at(corners);
  const double saddle = (h.nw * h.se - h.ne * h.sw) / (h.nw + h.se - h.ne - h.sw);
  const bool joined = saddle >= level;
  if (corners == 5) {
    if (joined) return kLowCornersNwSe;
    return kHighCornersNeSw;
  }
  if (joined) return kLowCornersNeSw;
  return kHighCornersNwSe;
}

/// Where on the side from a post of height `a` to one of height `b` the level is met.
double share(double a, double b, double level) {
  return (level - a) / (b - a);
}

class Tracer {
 public:
  Tracer(std::span<const Layer> finer, const Layer& layer, double level)
      : finer_(finer), layer_(layer), level_(level) {}

  std::vector<Isoline> trace(const std::optional<LatticeBox>& box) {
    collect(box);
    std::vector<Isoline> lines;
    for (const bool open : {true, false}) {
      for (std::size_t i = 0; i < pieces_.size(); ++i) {
        if (used_[i] || (open && arriving_.count(pieces_[i].from) != 0)) continue;
        Isoline line = follow(i);
        // A summit that just reaches the height is a point and no line.
        if (line.points.size() > 1) lines.push_back(std::move(line));
      }
    }
    return lines;
  }

 private:
  /// The cells whose north-west posts lie in these rows and columns, ends included.
  Extent cells_of(const std::optional<LatticeBox>& box) const {
    Extent cells = extent(layer_);
    cells.last_row -= 1;
    // Round the Earth, the last column's neighbour is the first.
    cells.last_column -= layer_.columns_round == 0 ? 1 : 0;
    if (layer_.columns_round != 0) {
      cells.last_column =
          std::min(cells.last_column, cells.first_column + layer_.columns_round - 1);
    }
    if (!box) return cells;
    cells.first_row = std::max(cells.first_row, static_cast<long>(std::floor(box->v_least)));
    cells.last_row = std::min(cells.last_row, static_cast<long>(std::floor(box->v_most)));
    const long west = static_cast<long>(std::floor(box->u_least));
    const long east = static_cast<long>(std::floor(box->u_most));
    if (layer_.columns_round == 0) {
      cells.first_column = std::max(cells.first_column, west);
      cells.last_column = std::min(cells.last_column, east);
    } else if (east - west + 1 < layer_.columns_round) {
      cells.first_column = west;
      cells.last_column = east;
    }
    return cells;
  }

  void collect(const std::optional<LatticeBox>& box) {
    const Extent cells = cells_of(box);
    if (cells.last_row < cells.first_row || cells.last_column < cells.first_column) return;
    const auto width = static_cast<std::size_t>(cells.last_column - cells.first_column + 2);
    std::vector<float> north(width);
    std::vector<float> south(width);
    read_row(layer_, cells.first_row, cells.first_column, south);
    for (long row = cells.first_row; row <= cells.last_row; ++row) {
      std::swap(north, south);
      read_row(layer_, row + 1, cells.first_column, south);
      for (std::size_t i = 0; i + 1 < width; ++i) {
        add_cell(row, cells.first_column + static_cast<long>(i),
                 {static_cast<double>(north[i]), static_cast<double>(north[i + 1]),
                  static_cast<double>(south[i]), static_cast<double>(south[i + 1])});
      }
    }
    used_.assign(pieces_.size(), false);
  }

  void add_cell(long row, long column, const CellPosts& heights) {
    if (std::isnan(heights.nw + heights.ne + heights.sw + heights.se)) return;
    const std::span<const Crossing> found = crossings(heights, level_);
    if (found.empty() || finer_knows(row, column)) return;
    for (const Crossing& crossing : found) {
      Piece piece;
      std::tie(piece.from, piece.start) = side(row, column, crossing.from, heights);
      std::tie(piece.to, piece.end) = side(row, column, crossing.to, heights);
      leaving_.emplace(piece.from, pieces_.size());
      arriving_.emplace(piece.to, pieces_.size());
      pieces_.push_back(piece);
    }
  }

  bool finer_knows(long row, long column) const {
    const Position middle = layer_.frame.to_position(
        {static_cast<double>(column) + 0.5, static_cast<double>(row) + 0.5});
    return std::any_of(finer_.begin(), finer_.end(), [&](const Layer& finer) {
      return surface_height(finer, middle).has_value();
    });
  }

  std::pair<Side, LatticePoint> side(long row, long column, CellSide which,
                                     const CellPosts& h) const {
    const auto u = static_cast<double>(column);
    const auto v = static_cast<double>(row);
    switch (which) {
      case kNorth:
        return {{row, name(column), false}, {u + share(h.nw, h.ne, level_), v}};
      case kSouth:
        return {{row + 1, name(column), false}, {u + share(h.sw, h.se, level_), v + 1}};
      case kWest:
        return {{row, name(column), true}, {u, v + share(h.nw, h.sw, level_)}};
      case kEast:
        break;
    }
    return {{row, name(column + 1), true}, {u + 1, v + share(h.ne, h.se, level_)}};
  }

  /// Round the Earth each column has one name.
  long name(long column) const {
    if (layer_.columns_round == 0) return column;
    const long rest = column % layer_.columns_round;
    return rest < 0 ? rest + layer_.columns_round : rest;
  }

  Isoline follow(std::size_t first) {
    Isoline line;
    std::size_t at = first;
    append(line.points, pieces_[at].start);
    while (true) {
      used_[at] = true;
      append(line.points, pieces_[at].end);
      const auto next = leaving_.find(pieces_[at].to);
      if (next == leaving_.end()) break;
      if (next->second == first) {
        line.closed = true;
        line.points.back() = line.points.front();
        break;
      }
      at = next->second;
    }
    return line;
  }

  void append(Path& path, LatticePoint point) const {
    const Position position = layer_.frame.to_position(point);
    if (path.empty() || path.back() != position) path.push_back(position);
  }

  std::span<const Layer> finer_;
  const Layer& layer_;
  double level_;
  std::vector<Piece> pieces_;
  std::vector<bool> used_;
  std::unordered_map<Side, std::size_t, SideHash> leaving_;
  std::unordered_map<Side, std::size_t, SideHash> arriving_;
};

struct Circle {
  Position centre;
  Length radius;
};

Circle circle_round(const Region& region) {
  Circle circle{middle(region), Length()};
  for (const PlotPolygon& polygon : plotted(region)) {
    for (const PlotPoint& point : polygon.outer) {
      const Position corner = Position::at(point.latitude, point.longitude);
      circle.radius = std::max(circle.radius, geodesic(circle.centre, corner).length);
    }
  }
  circle.radius += kPlottingTolerance;
  return circle;
}

std::vector<Isoline> trace_all(const ElevationModel& model, Length height,
                               const std::optional<Circle>& circle) {
  std::vector<Isoline> lines;
  const std::vector<Layer>& layers = model.layers();
  for (std::size_t i = 0; i < layers.size(); ++i) {
    std::optional<LatticeBox> box;
    if (circle) {
      box = layers[i].frame.box_round(circle->centre, circle->radius);
      if (!box) continue;
    }
    Tracer tracer(std::span<const Layer>(layers).first(i), layers[i], height.metres());
    for (Isoline& line : tracer.trace(box)) lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace

std::vector<Isoline> isolines(const ElevationModel& model, Length height) {
  return trace_all(model, height, std::nullopt);
}

std::vector<Isoline> isolines(const ElevationModel& model, Length height, const Region& region) {
  return trace_all(model, height, circle_round(region));
}

}  // namespace sweepwright::terrain
