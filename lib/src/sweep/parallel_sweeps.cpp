#include "sweepwright/sweep/parallel_sweeps.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "sweep/require.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

/// Nodes and weights of Gauss-Legendre quadrature on -1 to 1, ten points, one half of each: exact
/// for polynomials to degree 19 [Abramowitz and Stegun, Handbook of Mathematical Functions, 1964,
/// Table 25.4, n = 10].
struct GaussPoint {
  double node;
  double weight;
};
constexpr std::array<GaussPoint, 5> kGauss{
    {{0.148874338981631210884826001130, 0.295524224714752870173815619189},
     {0.433395394129247190799265943166, 0.269266719309996355091226921569},
     {0.679409568299024406234327365115, 0.219086362515982043995534934228},
     {0.865063366688984510732096688423, 0.149451349150580593145863396958},
     {0.973906528517171720077964012084, 0.066671344308688137593568809893}}};

template <typename Function>
double integral(double from, double to, const Function& function) {
  const double middle = (from + to) / 2;
  const double half = (to - from) / 2;
  double sum = 0;
  for (const GaussPoint& point : kGauss) {
    sum += point.weight *
           (function(middle - half * point.node) + function(middle + half * point.node));
  }
  return sum * half;
}

/// Endless legs at whole multiples of the spacing, over the two gaps after which all repeats: the
/// even legs are travelled one way, the odd ones the other.
class Legs {
 public:
  Legs(const LateralRangeCurve& curve, double spacing) : curve_(curve), spacing_(spacing) {
    const double left = curve.points().front().offset.metres();
    const double right = curve.points().back().offset.metres();
    const double reach = std::max(std::abs(left), std::abs(right));
    first_ = static_cast<int>(std::floor(-reach / spacing));
    last_ = static_cast<int>(std::ceil(reach / spacing)) + 2;
  }

  /// Where some leg's curve bends or ends, rising, from 0 to two spacings.
  std::vector<double> bends() const {
    std::vector<double> places{0, 2 * spacing_};
    for (int leg = first_; leg <= last_; ++leg) {
      for (const LateralRangePoint& point : curve_.points()) {
        const double place = leg * spacing_ + direction(leg) * point.offset.metres();
        if (place > 0 && place < 2 * spacing_) places.push_back(place);
      }
    }
    std::sort(places.begin(), places.end());
    return places;
  }

  /// The chance that no leg sees an object at `place`.
  double missed(double place) const {
    double result = 1;
    for (int leg = first_; leg <= last_; ++leg) {
      const double offset = direction(leg) * (place - leg * spacing_);
      result *= 1 - curve_.at(Length::metres(offset)).value();
    }
    return result;
  }

 private:
  static double direction(int leg) { return leg % 2 == 0 ? 1 : -1; }

  const LateralRangeCurve& curve_;
  double spacing_;
  int first_;
  int last_;
};

Length reach(const LateralRangeCurve& curve) {
  return curve.points().back().offset - curve.points().front().offset;
}

}  // namespace

Probability parallel_sweeps_probability(const LateralRangeCurve& curve, Length spacing) {
  require_above_zero(spacing, "track spacing");
  if (spacing < kLeastSpacingOfReach * reach(curve)) {
    throw Error(ErrorCode::value,
                fmt::format("the track spacing of {} m is under a hundredth of the lateral range "
                            "curve's reach of {} m",
                            spacing.metres(), reach(curve).metres()),
                "check the units of both");
  }
  const Legs legs(curve, spacing.metres());
  const std::vector<double> places = legs.bends();
  double missed = 0;
  for (std::size_t i = 1; i < places.size(); ++i) {
    missed += integral(places[i - 1], places[i], [&](double at) { return legs.missed(at); });
  }
  return Probability(std::clamp(1 - missed / (2 * spacing.metres()), 0.0, 1.0));
}

Length widest_spacing(const LateralRangeCurve& curve, Probability wanted) {
  constexpr double kStep = 0.995;
  constexpr double kMostCoverage = 10;
  constexpr int kHalvings = 40;
  // Certainty is reached but for the rounding of the quadrature.
  constexpr double kRounding = 1e-12;
  if (wanted == Probability()) {
    throw Error(ErrorCode::value, "the wanted probability of detection is 0, expected more than 0");
  }
  const auto finds = [&](Length spacing) {
    return parallel_sweeps_probability(curve, spacing).value() >= wanted.value() - kRounding;
  };
  const Length width = area_under(curve);
  // No spacing finds more than W / S.
  Length too_wide = width / wanted.value();
  Length spacing = too_wide;
  const Length least = std::max(width / kMostCoverage, kLeastSpacingOfReach * reach(curve));
  for (; spacing < least || !finds(spacing); spacing = spacing * kStep) {
    if (spacing < least) {
      throw Error(ErrorCode::impossible,
                  fmt::format("no track spacing down to {:.3f} NM gives a probability of detection "
                              "of {} with this lateral range curve",
                              least.nautical_miles(), wanted.value()),
                  "ask for less");
    }
    too_wide = spacing;
  }
  for (int i = 0; i < kHalvings; ++i) {
    const Length between = 0.5 * (spacing + too_wide);
    (finds(between) ? spacing : too_wide) = between;
  }
  return spacing;
}

}  // namespace sweepwright::sweep
