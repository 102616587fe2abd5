#include "terrain/cover.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace sweepwright::terrain {
namespace {

// Sides that only touch do not overlap: 0.1 mm at 3 arc-seconds.
constexpr double kTouch = 1e-6;

std::optional<LatticeBox> lattice_box(const Layer& layer, const GroundBox& box) {
  std::optional<LatticeBox> all;
  std::optional<LatticePoint> first;
  for (const double latitude : {box.south, box.north}) {
    for (const double longitude : {box.west, (box.west + box.east) / 2, box.east}) {
      const auto at = layer.frame.to_lattice(Position::at(
          Angle::degrees(std::clamp(latitude, -90.0, 90.0)), Angle::degrees(longitude)));
      if (!at) return std::nullopt;
      if (!first) first = at;
      const LatticePoint point = layer.frame.unrolled(*at, *first);
      if (!all) all = LatticeBox{point.u, point.u, point.v, point.v};
      all->u_least = std::min(all->u_least, point.u);
      all->u_most = std::max(all->u_most, point.u);
      all->v_least = std::min(all->v_least, point.v);
      all->v_most = std::max(all->v_most, point.v);
    }
  }
  return all;
}

LatticeBox common(const LatticeBox& a, const LatticeBox& b) {
  return {std::max(a.u_least, b.u_least), std::min(a.u_most, b.u_most),
          std::max(a.v_least, b.v_least), std::min(a.v_most, b.v_most)};
}

}  // namespace

LatticeBox ground_of_post(const Layer& layer, long row, long column) {
  const double reach = layer.posts == PostKind::point ? 1 : 0.5;
  const auto u = static_cast<double>(column);
  const auto v = static_cast<double>(row);
  return {u - reach, u + reach, v - reach, v + reach};
}

GroundBox ground_box(const Layer& layer, const LatticeBox& box) {
  GroundBox ground{90, -90, 0, 0};
  std::optional<double> first;
  for (const double v : {box.v_least, box.v_most}) {
    for (const double u : {box.u_least, (box.u_least + box.u_most) / 2, box.u_most}) {
      const Position corner = layer.frame.to_position({u, v});
      const double latitude = corner.latitude().degrees();
      double longitude = corner.longitude().degrees();
      if (!first) {
        first = longitude;
        ground.west = ground.east = longitude;
      }
      longitude = *first + std::remainder(longitude - *first, 360.0);
      ground.south = std::min(ground.south, latitude);
      ground.north = std::max(ground.north, latitude);
      ground.west = std::min(ground.west, longitude);
      ground.east = std::max(ground.east, longitude);
    }
  }
  return ground;
}

bool all_known(std::span<const Layer* const> layers, const GroundBox& box) {
  if (layers.empty()) return false;
  const Layer& layer = *layers.front();
  const std::span<const Layer* const> others = layers.subspan(1);
  const std::optional<LatticeBox> here = lattice_box(layer, box);
  if (!here) return all_known(others, box);
  const bool points = layer.posts == PostKind::point;
  const auto first = [&](double value) {
    return std::lround(points ? std::floor(value + kTouch) : std::round(value + kTouch));
  };
  const auto last = [&](double value) {
    return std::lround(points ? std::ceil(value - kTouch) : std::round(value - kTouch));
  };
  const long west = first(here->u_least);
  const long east = std::max(west, last(here->u_most));
  const long south = std::max(first(here->v_least), last(here->v_most));
  std::vector<float> heights(static_cast<std::size_t>(east - west + 1));
  for (long row = first(here->v_least); row <= south; ++row) {
    read_row(layer, row, west, heights);
    for (long column = west; column <= east; ++column) {
      if (!std::isnan(heights[static_cast<std::size_t>(column - west)])) continue;
      const LatticeBox missing = common(ground_of_post(layer, row, column), *here);
      if (!all_known(others, ground_box(layer, missing))) return false;
    }
  }
  return true;
}

}  // namespace sweepwright::terrain
