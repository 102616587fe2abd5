#include "sweep/interpolation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sweepwright::sweep {
namespace {

constexpr double kEdgeTolerance = 0.02;
// Far below what anyone writes, far above what converting units rounds.
constexpr double kSamePlace = 1e-9;

}  // namespace

Interpolated interpolate(Node low, Node high, double at) {
  if (low.at == high.at) return {low.value, format_value(low.value)};
  const double value = low.value + (high.value - low.value) * (at - low.at) / (high.at - low.at);
  return {value, fmt::format("{0} + ({1} - {0}) x ({2} - {3}) / ({4} - {3})",
                             format_value(low.value), format_value(high.value), format_value(at),
                             format_value(low.at), format_value(high.at))};
}

std::optional<Bracket> bracket(std::span<const double> places, double at) {
  const double least = places.front();
  const double most = places.back();
  if (!(at >= least * (1 - kEdgeTolerance) && at <= most * (1 + kEdgeTolerance))) {
    return std::nullopt;
  }
  at = std::clamp(at, least, most);
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (std::abs(at - places[i]) <= kSamePlace * places[i]) return Bracket{i, i, places[i]};
    if (at < places[i]) return Bracket{i - 1, i, at};
  }
  return std::nullopt;  // not reached: `at` is at most the last place
}

std::string format_value(double value) {
  std::string text = fmt::format("{:.4f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace sweepwright::sweep
