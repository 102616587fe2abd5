#include <cmath>
#include <optional>

#include "terrain/layer.hpp"

namespace sweepwright::terrain {
namespace {

// A place that should lie on a post misses it by rounding: 0.1 mm at 3 arc-seconds.
constexpr double kOnPost = 1e-6;

struct Split {
  long whole;
  double part;
};

Split split(double value) {
  const double nearest = std::round(value);
  if (std::abs(value - nearest) < kOnPost) return {static_cast<long>(nearest), 0};
  const double whole = std::floor(value);
  return {static_cast<long>(whole), value - whole};
}

std::optional<double> bilinear(const Layer& layer, LatticePoint at) {
  const Split u = split(at.u);
  const Split v = split(at.v);
  double sum = 0;
  for (const int down : {0, 1}) {
    for (const int right : {0, 1}) {
      const double weight = (right == 1 ? u.part : 1 - u.part) * (down == 1 ? v.part : 1 - v.part);
      if (weight == 0) continue;  // posts that do not count may be missing
      sum += weight * static_cast<double>(post_height(layer, v.whole + down, u.whole + right));
    }
  }
  if (std::isnan(sum)) return std::nullopt;
  return sum;
}

}  // namespace

std::optional<Length> surface_height(const Layer& layer, Position position) {
  const std::optional<LatticePoint> at = layer.frame.to_lattice(position);
  if (!at) return std::nullopt;
  if (const std::optional<double> surface = bilinear(layer, *at)) return Length::metres(*surface);
  if (layer.posts == PostKind::point) return std::nullopt;
  const float nearest = post_height(layer, std::lround(at->v), std::lround(at->u));
  if (std::isnan(nearest)) return std::nullopt;
  return Length::metres(nearest);
}

}  // namespace sweepwright::terrain
