#include "sweepwright/sector/divide.hpp"

#include <cmath>
#include <numeric>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::sector {
namespace {

/// Corners this near to a straight side do not bend it: a parallel of latitude counts as straight.
Length straightness(const PlaneRegion& region) {
  return 0.005 * std::max(extent_right(region).extent(), extent_up(region).extent());
}

double square_metres(const PlaneRegion& part, const LocalPlane& plane) {
  return area(to_region(part, plane)).square_metres();
}

using Halves = std::pair<PlaneRegion, PlaneRegion>;

/// Cuts across the longer extent so that the first half holds `share` of the part's ground.
Halves cut(const PlaneRegion& part, double share, const LocalPlane& plane) {
  const Span right = extent_right(part);
  const Span up = extent_up(part);
  const bool across_right = right.extent() > up.extent();
  const auto split = [&](Length at) {
    return across_right ? split_right(part, at) : split_up(part, at);
  };
  const double wanted = share * square_metres(part, plane);
  Length low = across_right ? right.low : up.low;
  Length high = across_right ? right.high : up.high;
  for (int step = 0; step < 60; ++step) {
    const Length middle = (low + high) / 2;
    (square_metres(split(middle).first, plane) < wanted ? low : high) = middle;
  }
  return split((low + high) / 2);
}

/// How many of the units go into the first group: sums as near half as can be.
std::size_t first_group(std::span<const double> shares) {
  const double whole = std::accumulate(shares.begin(), shares.end(), 0.0);
  std::size_t best = 1;
  double best_gap = whole;
  double sum = 0;
  for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
    sum += shares[i];
    const double gap = std::abs(whole / 2 - sum);
    if (gap < best_gap) {
      best_gap = gap;
      best = i + 1;
    }
  }
  return best;
}

void divide_part(const PlaneRegion& part, std::span<const double> shares, const LocalPlane& plane,
                 std::vector<PlaneRegion>& pieces) {
  if (shares.size() == 1) {
    pieces.push_back(part);
    return;
  }
  const std::size_t count = first_group(shares);
  const auto first = shares.first(count);
  const auto rest = shares.subspan(count);
  const double first_sum = std::accumulate(first.begin(), first.end(), 0.0);
  const double rest_sum = std::accumulate(rest.begin(), rest.end(), 0.0);
  const Halves halves = cut(part, first_sum / (first_sum + rest_sum), plane);
  divide_part(halves.first, first, plane, pieces);
  divide_part(halves.second, rest, plane, pieces);
}

}  // namespace

std::vector<Region> divide(const Region& area, std::span<const double> shares,
                           std::optional<TrueDirection> axis) {
  if (shares.empty()) {
    throw Error(ErrorCode::value, "there is no search unit to give ground to", "add a unit");
  }
  for (const double share : shares) {
    if (!(share > 0) || !std::isfinite(share)) {
      throw Error(ErrorCode::value, "a unit can cover no ground",
                  "give it speed, endurance and track spacing above 0");
    }
  }
  const LocalPlane plane = local_plane(area, axis.value_or(long_side(area)));
  std::vector<PlaneRegion> pieces;
  divide_part(to_plane(area, plane), shares, plane, pieces);
  share_corners(pieces);
  std::vector<Region> regions;
  for (const PlaneRegion& piece : pieces) regions.push_back(to_region(piece, plane));
  return regions;
}

TrueDirection long_side(const Region& region) {
  const PlaneRegion laid = to_plane(region, local_plane(region));
  return TrueDirection(long_axis(laid, straightness(laid)));
}

}  // namespace sweepwright::sector
