#include "sweepwright/effort/rectangle.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "effort/climb.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::effort {
namespace {

constexpr double kFirstStep = 0.5;
constexpr double kLeastStep = 1e-6;

/// E is the radius that holds half of a circular normal: 1 - exp(-E^2 / (2 s^2)) = 1/2.
Length deviation(const Datum& datum) {
  return datum.error / std::sqrt(2 * std::numbers::ln2);
}

/// x P(x) + p(x) of the standard normal, less x / 2, which cancels in differences of four.
double normal_integral(double x) {
  constexpr double kRootHalf = 1 / std::numbers::sqrt2;
  const double density = std::exp(-x * x / 2) * std::numbers::inv_sqrtpi * kRootHalf;
  return x * std::erf(x * kRootHalf) / 2 + density;
}

/// The standard normal from `low` to `high`.
double normal_between(double low, double high) {
  constexpr double kRootHalf = 1 / std::numbers::sqrt2;
  return (std::erf(high * kRootHalf) - std::erf(low * kRootHalf)) / 2;
}

/// The chance of lying between two places on the axis.
double along(const Datum& datum, const Rectangle& rectangle) {
  const Length s = deviation(datum);
  const double stretch = (datum.to - datum.from) / s;
  // Under this, the stretch is a place: the closed form of a stretch would lose digits.
  constexpr double kPlace = 1e-4;
  const Length centre = (datum.from + datum.to) / 2;
  if (stretch < kPlace) {
    return normal_between((rectangle.low - centre) / s, (rectangle.high - centre) / s);
  }
  const auto end = [&](Length at) {
    return normal_integral((at - datum.from) / s) - normal_integral((at - datum.to) / s);
  };
  return (end(rectangle.high) - end(rectangle.low)) / stretch;
}

double across(const Datum& datum, const Rectangle& rectangle) {
  return std::erf(rectangle.half_width / deviation(datum) / std::numbers::sqrt2);
}

double chance_inside(const Rectangle& rectangle, std::span<const Datum> datums) {
  double inside = 0;
  double all = 0;
  for (const Datum& datum : datums) {
    inside += datum.weight * along(datum, rectangle) * across(datum, rectangle);
    all += datum.weight;
  }
  return std::clamp(inside / all, 0.0, 1.0);
}

void check(const Rectangle& rectangle) {
  if (rectangle.low <= rectangle.high && rectangle.half_width >= Length()) return;
  throw Error(
      ErrorCode::value,
      fmt::format("the rectangle reaches from {} m to {} m and {} m to either side",
                  rectangle.low.metres(), rectangle.high.metres(), rectangle.half_width.metres()),
      "its low end comes first, and its width is 0 or more");
}

void check(std::span<const Datum> datums) {
  double weights = 0;
  for (const Datum& datum : datums) {
    if (!(datum.error > Length()) || !std::isfinite(datum.error.metres())) {
      throw Error(ErrorCode::value,
                  fmt::format("the total probable error is {} m, expected more than 0",
                              datum.error.metres()));
    }
    if (!(datum.from <= datum.to) || !std::isfinite((datum.to - datum.from).metres())) {
      throw Error(ErrorCode::value,
                  fmt::format("the datum reaches from {} m to {} m, expected the low end first",
                              datum.from.metres(), datum.to.metres()));
    }
    if (!(datum.weight >= 0) || !std::isfinite(datum.weight)) {
      throw Error(ErrorCode::value,
                  fmt::format("the weight of a datum is {}, expected 0 or more", datum.weight));
    }
    weights += datum.weight;
  }
  if (weights <= 0) {
    throw Error(ErrorCode::value,
                datums.empty() ? "there is no datum" : "the weights of the datums add up to 0");
  }
}

void check(Area effort) {
  if (effort > Area() && std::isfinite(effort.square_metres())) return;
  throw Error(ErrorCode::value, fmt::format("the search effort is {} square metres, expected more "
                                            "than 0",
                                            effort.square_metres()));
}

/// Where the climb begins, and the size of its steps.
Rectangle surround(std::span<const Datum> datums) {
  Rectangle round{datums[0].from, datums[0].to, {}};
  Length error;
  for (const Datum& datum : datums) {
    round.low = std::min(round.low, datum.from);
    round.high = std::max(round.high, datum.to);
    error = std::max(error, datum.error);
  }
  return {round.low - error, round.high + error, error};
}

/// A rectangle as the climber sees it: place of the middle in half widths of the start, logarithms
/// of its shape (length / width) and of its area against the start's. With the area on an axis of
/// its own, the kink of the definite range law (all found at coverage 1) does not stop the climb.
class Climbing {
 public:
  explicit Climbing(const Rectangle& start) : start_(start) {}
  static constexpr std::size_t kAxes = 3;

  std::vector<double> start() const { return std::vector<double>(kAxes, 0.0); }
  Rectangle rectangle(std::span<const double> at) const {
    const Length centre = (start_.low + start_.high) / 2 + start_.half_width * at[0];
    const double grown = std::exp(at[2] / 2);
    const double stretched = std::exp(at[1] / 2);
    const Length half_length = start_.length() / 2 * (grown * stretched);
    return {centre - half_length, centre + half_length, start_.half_width * (grown / stretched)};
  }

 private:
  Rectangle start_;
};

double pos_of(const Rectangle& rectangle, std::span<const Datum> datums, Area effort,
              sweep::DetectionLaw law) {
  const sweep::Coverage coverage = sweep::coverage_of_effort(effort, rectangle.area());
  return chance_inside(rectangle, datums) * sweep::probability_of_detection(law, coverage).value();
}

Rectangle climbed_from(const Rectangle& start, std::span<const Datum> datums, Area effort,
                       sweep::DetectionLaw law) {
  const Climbing climbing(start);
  const Summit summit =
      climb(climbing.start(), kFirstStep, kLeastStep, [&](std::span<const double> at) {
        return pos_of(climbing.rectangle(at), datums, effort, law);
      });
  return climbing.rectangle(summit.at);
}

}  // namespace

sweep::Probability containment(const Rectangle& rectangle, std::span<const Datum> datums) {
  check(datums);
  check(rectangle);
  return sweep::Probability(chance_inside(rectangle, datums));
}

RectangleSearch search_rectangle(const Rectangle& rectangle, std::span<const Datum> datums,
                                 Area effort, sweep::DetectionLaw law) {
  check(effort);
  const sweep::Probability poc = containment(rectangle, datums);
  const sweep::Coverage coverage = sweep::coverage_of_effort(effort, rectangle.area());
  const sweep::Probability pod = sweep::probability_of_detection(law, coverage);
  return {rectangle, effort, coverage, poc, pod, sweep::Probability(poc.value() * pod.value())};
}

RectangleSearch best_rectangle(std::span<const Datum> datums, Area effort,
                               sweep::DetectionLaw law) {
  check(datums);
  check(effort);
  RectangleSearch best =
      search_rectangle(climbed_from(surround(datums), datums, effort, law), datums, effort, law);
  if (datums.size() == 1) return best;
  for (std::size_t i = 0; i < datums.size(); ++i) {
    const Rectangle start = surround(datums.subspan(i, 1));
    const RectangleSearch found =
        search_rectangle(climbed_from(start, datums, effort, law), datums, effort, law);
    if (found.pos > best.pos) best = found;
  }
  return best;
}

std::vector<RectangleSearch> best_rectangles(const Datum& first, const Datum& second, Area effort,
                                             sweep::DetectionLaw law) {
  const Datum datums[] = {first, second};
  const RectangleSearch one = best_rectangle(datums, effort, law);

  // Two rectangles, each from the best one for half the effort on its own datum. The last axis is
  // the first one's share of the effort, as the logarithm of its odds.
  const Climbing climbing[] = {
      Climbing(climbed_from(surround({&first, 1}), {&first, 1}, effort / 2, law)),
      Climbing(climbed_from(surround({&second, 1}), {&second, 1}, effort / 2, law))};
  const auto rectangles = [&](std::span<const double> at) {
    return std::pair{climbing[0].rectangle(at.subspan(0, Climbing::kAxes)),
                     climbing[1].rectangle(at.subspan(Climbing::kAxes, Climbing::kAxes))};
  };
  const auto share = [](std::span<const double> at) { return 1 / (1 + std::exp(-at.back())); };
  const auto pos = [&](std::span<const double> at) {
    const auto [a, b] = rectangles(at);
    if (std::max(a.low, b.low) < std::min(a.high, b.high)) return -1.0;  // they overlap
    const double part = share(at);
    return pos_of(a, datums, effort * part, law) + pos_of(b, datums, effort * (1 - part), law);
  };
  const Summit two =
      climb(std::vector<double>(2 * Climbing::kAxes + 1, 0.0), kFirstStep, kLeastStep, pos);
  if (two.height <= one.pos.value()) return {one};
  const auto [a, b] = rectangles(two.at);
  const double part = share(two.at);
  return {search_rectangle(a, datums, effort * part, law),
          search_rectangle(b, datums, effort * (1 - part), law)};
}

Region to_region(const Rectangle& rectangle, Position origin, TrueDirection axis) {
  check(rectangle);
  const auto corner = [&](Length along_axis, Length to_the_right) {
    const Arrival on_axis = travel(origin, axis, along_axis);
    return travel(on_axis.position, on_axis.track + Angle::degrees(90), to_the_right).position;
  };
  const Length half = rectangle.half_width;
  return make_region({{{corner(rectangle.low, half), corner(rectangle.high, half),
                        corner(rectangle.high, -half), corner(rectangle.low, -half)},
                       {}}});
}

}  // namespace sweepwright::effort
