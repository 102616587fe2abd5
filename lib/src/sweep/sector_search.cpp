#include "sweepwright/sweep/sector_search.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sweep/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::sweep {
namespace {

using std::numbers::inv_sqrtpi;
using std::numbers::pi;

void check(const SectorSearch& search) {
  require_above_zero(search.radius, "radius of the sector search");
  if (search.lines < 1 || search.lines > kMostSectorLines) {
    throw Error(ErrorCode::value, fmt::format("the sector search has {} lines through the datum, "
                                              "expected 1 to {}",
                                              search.lines, kMostSectorLines));
  }
}

double inverse_cube_mean(double z) {
  const double u = z / (2 * inv_sqrtpi);
  return std::erf(u) + 2 * u * inv_sqrtpi * std::exp(-u * u) - 2 * u * u * std::erfc(u);
}

double exponential_mean(double z) {
  // E1(z) = -Ei(-z) [Abramowitz and Stegun, 1964, 5.1.7]; below that z it and all else is 0.
  const double e1 = z < 700 ? -std::expint(-z) : 0;
  return 1 - (1 - z) * std::exp(-z) - z * z * e1;
}

double definite_range_mean(double z) {
  return z < 1 ? z * (2 - z) : 1;
}

}  // namespace

int parse_sectors(std::string_view text) {
  const int sectors =
      parse_whole_number(text, 2, 2 * kMostSectorLines, "the number of sectors of a search");
  if (sectors % 2 != 0) {
    throw Error(ErrorCode::value,
                fmt::format("{} sectors: the lines through the datum make an even number", sectors),
                "give 6 or 4, or 12 for both passes of six");
  }
  return sectors / 2;
}

Length greatest_track_spacing(const SectorSearch& search) {
  check(search);
  return 2 * search.radius * std::sin(pi / (2 * search.lines));
}

Length mid_leg_track_spacing(const SectorSearch& search) {
  return greatest_track_spacing(search) / 2;
}

Probability mid_leg_probability(DetectionLaw law, Length sweep_width, const SectorSearch& search) {
  return probability_of_detection(law, coverage(sweep_width, mid_leg_track_spacing(search)));
}

Probability sector_search_probability(DetectionLaw law, Length sweep_width,
                                      const SectorSearch& search) {
  check(search);
  require_above_zero(sweep_width, "sweep width");
  const double z = search.lines * (sweep_width / search.radius) / pi;
  const auto mean = [&] {
    switch (law) {
      case DetectionLaw::inverse_cube:
        return inverse_cube_mean(z);
      case DetectionLaw::exponential:
        return exponential_mean(z);
      case DetectionLaw::definite_range:
        return definite_range_mean(z);
    }
    throw Error(ErrorCode::value, "the detection law is not known");
  }();
  return Probability(std::clamp(mean, 0.0, 1.0));
}

}  // namespace sweepwright::sweep
