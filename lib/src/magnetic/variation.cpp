#include "sweepwright/magnetic/variation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace sweepwright::magnetic {
namespace {

Angle declination_uncertainty(FluxDensity horizontal) {
  const double degrees = std::hypot(0.26, 5417 / horizontal.nanotesla());
  return Angle::degrees(std::min(degrees, 180.0));
}

std::string weak_field_warning(FluxDensity horizontal) {
  const bool blackout = horizontal < kBlackoutZone;
  return fmt::format(
      "The horizontal magnetic field is only {:.0f} nT: {} Steer by true north.",
      std::floor(horizontal.nanotesla()),
      blackout ? "a compass is useless here (blackout zone round a magnetic pole, under 2000 nT)."
               : "a compass may be far out here (caution zone round a magnetic pole, under 6000 "
                 "nT).");
}

}  // namespace

Variation variation(Position position, TimePoint date, Length height, const Model& model) {
  const DecimalYear time = to_decimal_year(date);
  const MagneticField found = field(position, height, time, model);
  Variation result{.angle = found.declination(),
                   .uncertainty = declination_uncertainty(found.horizontal()),
                   .model = model.name,
                   .date = date,
                   .warnings = {}};
  if (time < model.valid_from() || time > model.valid_until()) {
    result.warnings.push_back(fmt::format(
        "{} holds for {:.1f} to {:.1f}, not for {:.2f}: the variation may be further out than "
        "usual. Take it from a current chart or give a newer model.",
        model.name, model.valid_from().years(), model.valid_until().years(), time.years()));
  }
  if (found.horizontal() < kCautionZone) {
    result.warnings.push_back(weak_field_warning(found.horizontal()));
  }
  return result;
}

MagneticDirection to_magnetic(TrueDirection direction, const Variation& variation) {
  return MagneticDirection(direction.angle() - variation.angle);
}

TrueDirection to_true(MagneticDirection direction, const Variation& variation) {
  return TrueDirection(direction.angle() + variation.angle);
}

std::string format_variation(const Variation& variation) {
  const std::chrono::year_month_day day(std::chrono::floor<std::chrono::days>(variation.date));
  const double tenths = std::round(variation.angle.degrees() * 10) / 10;
  return fmt::format("{:.1f} {} ({}, {:04}-{:02}-{:02})", std::abs(tenths), tenths < 0 ? 'W' : 'E',
                     variation.model, static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
}

}  // namespace sweepwright::magnetic
