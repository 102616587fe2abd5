#include "sweepwright/sector/divide.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "sector/cuts.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sector {
namespace {

/// Corners this near to a straight side do not bend it: a parallel of latitude counts as straight.
Length straightness(const PlaneRegion& region) {
  return 0.005 * std::max(extent_right(region).extent(), extent_up(region).extent());
}

/// A smaller share of the area is no ground to search.
constexpr double kLeastShare = 1e-6;

void require_shares(std::span<const double> shares) {
  if (shares.empty()) {
    throw Error(ErrorCode::value, "there is no search unit to give ground to", "add a unit");
  }
  for (const double share : shares) {
    if (!(share > 0) || !std::isfinite(share)) {
      throw Error(ErrorCode::value, "a unit can cover no ground",
                  "give it speed, endurance and track spacing above 0");
    }
  }
  const double whole = std::accumulate(shares.begin(), shares.end(), 0.0);
  for (const double share : shares) {
    if (share >= kLeastShare * whole) continue;
    throw Error(ErrorCode::value,
                fmt::format("a unit's share of {} is less than a millionth of all", share),
                "give all shares in the same unit of measure");
  }
}

}  // namespace

std::vector<Region> divide(const Region& area, std::span<const double> shares,
                           std::optional<TrueDirection> axis) {
  require_shares(shares);
  const LocalPlane plane = local_plane(area, axis.value_or(long_side(area)));
  const PlaneRegion whole = to_plane(area, plane);
  const bool legs_up = axis.has_value();

  // Cuts were chosen on the plane: where two choices are close, the exact cuts decide.
  Division best;
  Fault least;
  for (const std::vector<Cut>& cuts : choose_cuts(whole, shares, legs_up)) {
    Division division = make_cuts(whole, shares, cuts, plane);
    const Fault found = fault(division, plane_area(whole), legs_up);
    if (!best.empty() && !(found < least)) continue;
    best = std::move(division);
    least = found;
  }

  std::vector<PlaneRegion> pieces;
  for (Group& group : best) pieces.push_back(std::move(group.ground));
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
