#include "sweepwright/magnetic/field.hpp"

#include <fmt/format.h>

#include <GeographicLib/Geocentric.hpp>
#include <array>
#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::magnetic {
namespace {

// The sphere to which the coefficients refer [WMM technical report, section 1.2].
constexpr double kReferenceRadiusMetres = 6371200;
constexpr Length kLowest = Length::kilometres(-1);
constexpr Length kHighest = Length::kilometres(850);

/// A Schmidt semi-normalised Legendre function of the colatitude.
struct Legendre {
  double value = 0;
  double slope = 0;      ///< its derivative by the colatitude
  double over_sine = 0;  ///< value / sine of the colatitude: finite at the poles; unused at order 0
};
using LegendreTable = std::array<Legendre, kCoefficients>;

/// From order m - 1 to m at equal degree and order, then up in degree. Each recursion is also
/// differentiated, and divided by the sine, so that nothing is divided by zero at a pole.
LegendreTable legendre(double cosine, double sine) {
  LegendreTable table;
  table[index(0, 0)] = {1, 0, 0};
  table[index(1, 1)] = {sine, cosine, 1};
  for (int m = 2; m <= kDegree; ++m) {
    const double factor = std::sqrt((2.0 * m - 1) / (2.0 * m));
    const Legendre& last = table[index(m - 1, m - 1)];
    table[index(m, m)] = {factor * sine * last.value,
                          factor * (cosine * last.value + sine * last.slope),
                          factor * sine * last.over_sine};
  }
  for (int n = 1; n <= kDegree; ++n) {
    for (int m = 0; m < n; ++m) {
      const Legendre& one = table[index(n - 1, m)];
      const Legendre two = n - 2 >= m ? table[index(n - 2, m)] : Legendre{};
      const double a = 2 * n - 1;
      const double b = std::sqrt((n - 1) * (n - 1) - m * m);
      const double c = std::sqrt(n * n - m * m);
      table[index(n, m)] = {(a * cosine * one.value - b * two.value) / c,
                            (a * (cosine * one.slope - sine * one.value) - b * two.slope) / c,
                            (a * cosine * one.over_sine - b * two.over_sine) / c};
    }
  }
  return table;
}

void check_domain(Length height, DecimalYear time, const Model& model) {
  if (!(height >= kLowest && height <= kHighest)) {
    throw Error(ErrorCode::value,
                fmt::format("no magnetic field at a height of {} km", height.kilometres()),
                "give a height from 1 km below to 850 km above the ellipsoid");
  }
  const double first = model.valid_from().years() - kFarthestYears;
  const double last = model.valid_until().years() + kFarthestYears;
  if (!(time.years() >= first && time.years() <= last)) {
    throw Error(
        ErrorCode::value,
        fmt::format("{} holds for {:.1f} to {:.1f} and says nothing about {:.1f}", model.name,
                    model.valid_from().years(), model.valid_until().years(), time.years()),
        "check the date, or give the coefficient file of a model for that time");
  }
}

}  // namespace

FluxDensity MagneticField::horizontal() const {
  return FluxDensity::nanotesla(std::hypot(north.nanotesla(), east.nanotesla()));
}

FluxDensity MagneticField::total() const {
  return FluxDensity::nanotesla(std::hypot(north.nanotesla(), east.nanotesla(), down.nanotesla()));
}

Angle MagneticField::inclination() const {
  return Angle::radians(std::atan2(down.nanotesla(), horizontal().nanotesla()));
}

Angle MagneticField::declination() const {
  return Angle::radians(std::atan2(east.nanotesla(), north.nanotesla()));
}

MagneticField field(Position position, Length height, DecimalYear time, const Model& model) {
  check_domain(height, time, model);
  // The place on a sphere: distance from the Earth's axis and from the equator's plane.
  double from_axis = 0;
  double unused = 0;
  double from_equator = 0;
  GeographicLib::Geocentric::WGS84().Forward(position.latitude().degrees(), 0, height.metres(),
                                             from_axis, unused, from_equator);
  const double radius = std::hypot(from_axis, from_equator);
  const LegendreTable table = legendre(from_equator / radius, from_axis / radius);

  double north = 0;
  double east = 0;
  double down = 0;
  const double years = time.years() - model.epoch.years();
  const double ratio = kReferenceRadiusMetres / radius;
  double scale = ratio * ratio;
  for (int n = 1; n <= kDegree; ++n) {
    scale *= ratio;
    for (int m = 0; m <= n; ++m) {
      const Coefficient& coefficient = model.coefficients[index(n, m)];
      const double g = coefficient.g + years * coefficient.g_rate;
      const double h = coefficient.h + years * coefficient.h_rate;
      const double cosine = std::cos(m * position.longitude().radians());
      const double sine = std::sin(m * position.longitude().radians());
      const Legendre& p = table[index(n, m)];
      north += scale * (g * cosine + h * sine) * p.slope;
      east += scale * m * (g * sine - h * cosine) * p.over_sine;
      down -= scale * (n + 1) * (g * cosine + h * sine) * p.value;
    }
  }
  // From the sphere's vertical to the ellipsoid's.
  const double tilt = std::atan2(from_equator, from_axis) - position.latitude().radians();
  return {FluxDensity::nanotesla(north * std::cos(tilt) - down * std::sin(tilt)),
          FluxDensity::nanotesla(east),
          FluxDensity::nanotesla(north * std::sin(tilt) + down * std::cos(tilt))};
}

}  // namespace sweepwright::magnetic
