#include "pattern/ground_lattice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "pattern/plane_line.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::pattern {
namespace {

constexpr int kFewestNodes = 40;
constexpr int kMostNodes = 120;
/// Over this distance slopes are measured: more than the steps of usual models.
constexpr Length kSlopeBase = Length::metres(100);

int nodes_along(Length extent, Length spacing) {
  const double wanted = std::ceil(extent / spacing * 6);
  return static_cast<int>(std::clamp<double>(wanted, kFewestNodes, kMostNodes));
}

void require_height(Position place, const terrain::ElevationModel& model) {
  if (terrain::height(model, place)) return;
  throw Error(ErrorCode::value,
              fmt::format("the elevation model knows no height at {} on the edge of the area",
                          format_position(place)),
              "give the elevation files round the whole area, or a smaller area");
}

/// Corners, and places between them as far apart as nodes are.
void require_heights_at_edge(const SearchedGround& ground, Length step) {
  for (const Polygon& polygon : ground.region.polygons) {
    for (std::size_t i = 0; i < polygon.outer.size(); ++i) {
      const Position from = polygon.outer[i];
      const GeodesicLine edge = geodesic(from, polygon.outer[(i + 1) % polygon.outer.size()]);
      const int parts = std::max(1, static_cast<int>(std::ceil(edge.length / step)));
      for (int k = 0; k < parts; ++k) {
        require_height(travel(from, edge.start_track, edge.length * k / parts).position,
                       ground.model);
      }
    }
  }
}

std::optional<Angle> slope_at(PlanePoint at, const SearchedGround& ground) {
  const auto height_at = [&](PlanePoint place) {
    return terrain::height(ground.model, ground.plane.to_position(place));
  };
  const Length half = kSlopeBase / 2;
  const auto left = height_at({at.right - half, at.up});
  const auto right = height_at({at.right + half, at.up});
  const auto below = height_at({at.right, at.up - half});
  const auto above = height_at({at.right, at.up + half});
  if (!left || !right || !below || !above) return std::nullopt;
  return Angle::radians(
      std::atan(std::hypot((*right - *left) / kSlopeBase, (*above - *below) / kSlopeBase)));
}

bool beyond(Length height, Length level, Extreme extreme) {
  return extreme == Extreme::summit ? height > level : height < level;
}

/// Marks the part of the nodes beyond `level` that `seed` belongs to; returns its nodes.
std::vector<std::size_t> part_round(const GroundLattice& lattice, std::size_t seed, Length level,
                                    Extreme extreme, std::vector<bool>& seen) {
  std::vector<std::size_t> part{seed};
  seen[seed] = true;
  for (std::size_t next = 0; next < part.size(); ++next) {
    const int row = static_cast<int>(part[next]) / lattice.columns;
    const int column = static_cast<int>(part[next]) % lattice.columns;
    for (int r = std::max(row - 1, 0); r <= std::min(row + 1, lattice.rows - 1); ++r) {
      for (int c = std::max(column - 1, 0); c <= std::min(column + 1, lattice.columns - 1); ++c) {
        const std::size_t at = lattice.index(r, c);
        const auto& height = lattice.nodes[at].height;
        if (seen[at] || !height || !beyond(*height, level, extreme)) continue;
        seen[at] = true;
        part.push_back(at);
      }
    }
  }
  return part;
}

}  // namespace

std::size_t GroundLattice::nearest(PlanePoint place) const {
  const auto along = [](Length at, Length first, Length last, int count) {
    const double share = (at - first) / (last - first);
    return static_cast<int>(std::clamp(std::round(share * (count - 1)), 0.0, count - 1.0));
  };
  const PlanePoint first = nodes.front().place;
  const PlanePoint last = nodes.back().place;
  return index(along(place.up, first.up, last.up, rows),
               along(place.right, first.right, last.right, columns));
}

GroundLattice make_ground_lattice(const SearchedGround& ground, Length spacing) {
  const Span right = extent_right(ground.flat);
  const Span up = extent_up(ground.flat);
  GroundLattice lattice;
  lattice.rows = nodes_along(up.extent(), spacing);
  lattice.columns = nodes_along(right.extent(), spacing);
  lattice.step = std::max(up.extent() / lattice.rows, right.extent() / lattice.columns);
  require_heights_at_edge(ground, lattice.step);
  bool known = false;
  for (int row = 0; row < lattice.rows; ++row) {
    for (int column = 0; column < lattice.columns; ++column) {
      GroundNode node;
      node.place = {right.low + right.extent() * ((column + 0.5) / lattice.columns),
                    up.low + up.extent() * ((row + 0.5) / lattice.rows)};
      node.inside = is_inside(node.place, ground.flat);
      if (node.inside) {
        const auto slope = slope_at(node.place, ground);
        if (slope)
          node.height = terrain::height(ground.model, ground.plane.to_position(node.place));
        if (node.height) node.slope = *slope;
        known = known || node.height;
      }
      lattice.nodes.push_back(node);
    }
  }
  if (!known) {
    throw Error(ErrorCode::value, "the elevation model knows no height inside the area",
                "give the elevation files round the whole area");
  }
  return lattice;
}

Length extreme_height(const SearchedGround& ground, const GroundLattice& lattice, std::size_t node,
                      Extreme extreme) {
  constexpr Length kFinest = Length::metres(1);
  PlanePoint at = lattice.nodes[node].place;
  Length best = lattice.nodes[node].height.value();
  for (Length step = lattice.step; step > kFinest;) {
    bool moved = false;
    const PlanePoint from = at;
    for (int right = -1; right <= 1; ++right) {
      for (int up = -1; up <= 1; ++up) {
        const PlanePoint to{from.right + step * right, from.up + step * up};
        if (!is_inside(to, ground.flat)) continue;
        const auto height = terrain::height(ground.model, ground.plane.to_position(to));
        if (!height || !beyond(*height, best, extreme)) continue;
        best = *height;
        at = to;
        moved = true;
      }
    }
    if (!moved) step = step / 2;
  }
  return best;
}

std::vector<StandingOut> standing_out(const SearchedGround& ground, const GroundLattice& lattice,
                                      Length level, std::optional<Length> next, Extreme extreme) {
  std::vector<StandingOut> found;
  std::vector<bool> seen(lattice.nodes.size(), false);
  for (std::size_t seed = 0; seed < lattice.nodes.size(); ++seed) {
    const auto& height = lattice.nodes[seed].height;
    if (seen[seed] || !height || !beyond(*height, level, extreme)) continue;
    const std::vector<std::size_t> part = part_round(lattice, seed, level, extreme, seen);
    const std::size_t most =
        *std::max_element(part.begin(), part.end(), [&](std::size_t a, std::size_t b) {
          return beyond(*lattice.nodes[b].height, *lattice.nodes[a].height, extreme);
        });
    const Length reached = extreme_height(ground, lattice, most, extreme);
    if (next && beyond(reached, *next, extreme)) continue;
    StandingOut out{reached, std::vector<bool>(lattice.nodes.size(), false)};
    for (const std::size_t at : part) out.ground[at] = true;
    found.push_back(std::move(out));
  }
  return found;
}

}  // namespace sweepwright::pattern
