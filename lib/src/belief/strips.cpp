#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "belief/measure.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::belief {
namespace {

/// Of a standard normal: three quarters lie below it, so half within it on both sides.
constexpr double kQuartile = 0.67448975019608171;
constexpr double kMostAxisRatio = 1000;
constexpr std::size_t kMostPlaces = 1000;
constexpr Length kLongestPiece = Length::kilometres(200);

void require_error(Length error, std::string_view what) {
  if (error >= kLeastError && error <= kLargestError) return;
  throw Error(ErrorCode::value,
              fmt::format("{} is {} km, not from {} m to {} km", what, error.kilometres(),
                          kLeastError.metres(), kLargestError.kilometres()),
              "half of all lies within it");
}

void require_weights(const DatumLine& line) {
  const std::size_t legs = line.route.size() - 1;
  if (!line.leg_weights.empty() && line.leg_weights.size() != legs) {
    throw Error(ErrorCode::value,
                fmt::format("{} legs have {} weights", legs, line.leg_weights.size()),
                "give one weight for each leg, or none");
  }
  for (const double weight : line.leg_weights) {
    if (weight >= 0 && std::isfinite(weight)) continue;
    throw Error(ErrorCode::value, fmt::format("the weight {} of a leg is not 0 or more", weight));
  }
}

/// The pieces of one leg, which weigh `share` together.
void add_leg(std::vector<WeightedStrip>& found, Position from, Position to, double share,
             Length spread) {
  const GeodesicLine leg = geodesic(from, to);
  const double count = std::max(1.0, std::ceil(leg.length / kLongestPiece));
  const Length half = leg.length / (2 * count);
  for (double i = 0; i < count; ++i) {
    const Arrival middle = travel(from, leg.start_track, half * (2 * i + 1));
    found.push_back({share / count, {middle.position, middle.track, half, spread, spread}});
  }
}

}  // namespace

Length total_probable_error(const ProbableErrors& parts) {
  const double d = parts.drift.metres();
  const double x = parts.initial_position.metres();
  const double y = parts.search_craft.metres();
  if (!(d >= 0 && x >= 0 && y >= 0)) {
    throw Error(ErrorCode::value, "a part of the total probable error is negative",
                "each part is a radius that holds half");
  }
  return Length::metres(std::hypot(d, x, y));
}

Length deviation(Length error) {
  return error / std::sqrt(2 * std::numbers::ln2);
}

Length cross_track_deviation(Length spread) {
  return spread / kQuartile;
}

std::vector<WeightedStrip> strips(const Datum& datum) {
  require_error(datum.error, "the total probable error");
  const Length s = deviation(datum.error);
  return {{1, {datum.position, {}, {}, s, s}}};
}

std::vector<WeightedStrip> strips(const ErrorEllipse& ellipse) {
  require_error(ellipse.semi_major, "the semi-major axis");
  require_error(ellipse.semi_minor, "the semi-minor axis");
  const double ratio = ellipse.semi_major / ellipse.semi_minor;
  if (ratio > kMostAxisRatio || ratio < 1 / kMostAxisRatio) {
    throw Error(ErrorCode::value, "the axes of the ellipse differ by more than 1000 to 1",
                "use a datum line");
  }
  return {{1,
           {ellipse.centre,
            ellipse.major_axis,
            {},
            deviation(ellipse.semi_major),
            deviation(ellipse.semi_minor)}}};
}

std::vector<WeightedStrip> strips(const DatumLine& line) {
  if (line.route.size() < 2 || line.route.size() > kMostPlaces) {
    throw Error(ErrorCode::value, fmt::format("a route of {} places", line.route.size()),
                fmt::format("a route has 2 to {} places", kMostPlaces));
  }
  require_error(line.spread, "the spread across the track");
  require_weights(line);
  std::vector<double> weights = line.leg_weights;
  if (weights.empty()) {
    for (std::size_t i = 1; i < line.route.size(); ++i) {
      weights.push_back(geodesic(line.route[i - 1], line.route[i]).length.metres());
    }
  }
  double total = 0;
  for (const double weight : weights) total += weight;
  if (!(total > 0)) {
    throw Error(ErrorCode::value, "the weights of the route's legs sum to 0",
                "a route has length; a place alone is a datum");
  }
  std::vector<WeightedStrip> found;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    if (weights[i] == 0) continue;
    add_leg(found, line.route[i], line.route[i + 1], weights[i] / total,
            cross_track_deviation(line.spread));
  }
  return found;
}

}  // namespace sweepwright::belief
