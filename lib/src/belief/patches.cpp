#include "sweepwright/belief/patches.hpp"

#include <fmt/format.h>

#include <cmath>

#include "belief/measure.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::belief {
namespace {

constexpr std::size_t kMostBands = 20;
constexpr Length kWidestBand = Length::kilometres(500);
constexpr Length kLongestBandPiece = Length::kilometres(100);

void check_bands(const RouteBands& bands) {
  if (bands.route.size() < 2) {
    throw Error(ErrorCode::value, "a route has at least two places");
  }
  if (bands.bands.empty() || bands.bands.size() > kMostBands) {
    throw Error(ErrorCode::value,
                fmt::format("a route has {} bands, not 1 to {}", bands.bands.size(), kMostBands));
  }
  Length inner;
  std::vector<double> shares;
  for (const Band& band : bands.bands) {
    if (!(band.within > inner && band.within <= kWidestBand)) {
      throw Error(ErrorCode::value,
                  fmt::format("a band ends {} km from the track, after one that ends at {} km",
                              band.within.kilometres(), inner.kilometres()),
                  "list the bands from the track outward, up to 500 km");
    }
    inner = band.within;
    shares.push_back(band.probability);
  }
  check_shares(shares, "the bands");
}

/// The ground between two distances from a piece of the track, to the right of it; negative
/// distances lie to the left.
Region beside(Position from, TrueDirection track, Length length, Length near, Length far) {
  const Arrival end = travel(from, track, length);
  const auto aside = [](Arrival place, Length distance) {
    return travel(place.position, place.track + Angle::degrees(90), distance).position;
  };
  const Arrival start{from, track};
  return make_region(
      {Polygon{{aside(start, near), aside(start, far), aside(end, far), aside(end, near)}, {}}});
}

void add_leg(Patches& found, const std::vector<Band>& bands, Position from, Position to,
             double leg_share) {
  const GeodesicLine leg = geodesic(from, to);
  const double count = std::max(1.0, std::ceil(leg.length / kLongestBandPiece));
  const Length piece = leg.length / count;
  for (double i = 0; i < count; ++i) {
    const Arrival start = travel(from, leg.start_track, piece * i);
    Length inner;
    for (const Band& band : bands) {
      const double share = leg_share / count * band.probability;
      if (inner == Length()) {
        found.patches.push_back(
            {beside(start.position, start.track, piece, -band.within, band.within), share});
      } else {
        found.patches.push_back(
            {beside(start.position, start.track, piece, inner, band.within), share / 2});
        found.patches.push_back(
            {beside(start.position, start.track, piece, -band.within, -inner), share / 2});
      }
      inner = band.within;
    }
  }
}

}  // namespace

void check_shares(const std::vector<double>& shares, std::string_view what) {
  double total = 0;
  for (const double share : shares) {
    if (!(share >= 0 && share <= 1)) {
      throw Error(ErrorCode::value,
                  fmt::format("{} have a probability of {}, not from 0 to 1", what, share),
                  "write 25 percent as 0.25");
    }
    total += share;
  }
  if (total > 1 + kSumTolerance) {
    throw Error(ErrorCode::value, fmt::format("{} sum to {:.7g}, more than 1", what, total),
                "divide each by their sum, or leave some for what lies outside");
  }
}

Patches equal_chances(Region area) {
  return {{{std::move(area), 1.0}}};
}

Patches consensus(const std::vector<Region>& regions, const std::vector<Vote>& votes) {
  if (votes.empty()) throw Error(ErrorCode::value, "there are no votes on the regions");
  std::vector<double> shares(regions.size(), 0.0);
  for (const Vote& vote : votes) {
    if (vote.shares.size() != regions.size()) {
      throw Error(ErrorCode::value,
                  fmt::format("the vote of '{}' has {} shares for {} regions",
                              printable(vote.planner), vote.shares.size(), regions.size()),
                  "give one share for each region; what is left lies outside all of them");
    }
    check_shares(vote.shares, fmt::format("the shares of '{}'", printable(vote.planner)));
    for (std::size_t i = 0; i < regions.size(); ++i) {
      shares[i] += vote.shares[i] / static_cast<double>(votes.size());
    }
  }
  Patches found;
  for (std::size_t i = 0; i < regions.size(); ++i) found.patches.push_back({regions[i], shares[i]});
  return found;
}

Patches stated(const std::vector<std::pair<grid::Cell, double>>& cells) {
  Patches found;
  std::vector<double> shares;
  for (const auto& [cell, probability] : cells) {
    shares.push_back(probability);
    if (cell.box) {
      found.patches.push_back({*cell.box, probability});
    } else {
      found.patches.push_back({cell.region, probability});
    }
  }
  check_shares(shares, "the cells");
  return found;
}

Patches patches(const RouteBands& bands) {
  check_bands(bands);
  const Length whole = length(bands.route);
  if (!(whole > Length())) throw Error(ErrorCode::value, "the route has no length");
  Patches found;
  for (std::size_t i = 1; i < bands.route.size(); ++i) {
    const Length leg = geodesic(bands.route[i - 1], bands.route[i]).length;
    if (leg > Length()) {
      add_leg(found, bands.bands, bands.route[i - 1], bands.route[i], leg / whole);
    }
  }
  return found;
}

}  // namespace sweepwright::belief
