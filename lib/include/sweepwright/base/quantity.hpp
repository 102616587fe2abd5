// Quantities that carry their unit in the type: Length, Speed, Area, Angle, Duration.
//
// Problem: most accidents with numbers are accidents with units. A quantity can only be made by
// naming its unit, and only be read by naming one.
//
// Conventions: values are stored in metres, metres per second, square metres and degrees.
//   Durations are std::chrono; use `Duration` for computed times (floating seconds).
// Accuracy: one double; conversion factors are exact by definition (see base/constants.hpp), so a
//   round trip through any unit is right to 2 units in the last place (quantity_test.cpp).
// Source: unit definitions in base/constants.hpp.
#pragma once

#include <chrono>
#include <compare>

#include "sweepwright/base/constants.hpp"

namespace sweepwright {

/// Computed times: floating seconds.
using Duration = std::chrono::duration<double>;

/// Points in time: whole seconds of UTC.
using TimePoint = std::chrono::sys_seconds;
/// A moment on a track, UTC: devices log several times a second.
using Instant = std::chrono::sys_time<std::chrono::milliseconds>;

namespace detail {

/// Arithmetic shared by all quantities of one dimension; `Derived` adds the named units.
template <typename Derived>
class Quantity {
 public:
  constexpr auto operator<=>(const Quantity&) const = default;
  constexpr Derived operator-() const { return make(-value_); }
  friend constexpr Derived operator+(Derived a, Derived b) { return make(a.value_ + b.value_); }
  friend constexpr Derived operator-(Derived a, Derived b) { return make(a.value_ - b.value_); }
  friend constexpr Derived operator*(Derived a, double factor) { return make(a.value_ * factor); }
  friend constexpr Derived operator*(double factor, Derived a) { return make(a.value_ * factor); }
  friend constexpr Derived operator/(Derived a, double divisor) { return make(a.value_ / divisor); }
  friend constexpr double operator/(Derived a, Derived b) { return a.value_ / b.value_; }
  constexpr Derived& operator+=(Derived other) {
    value_ += other.value_;
    return static_cast<Derived&>(*this);
  }

 protected:
  static constexpr Derived make(double value) {
    Derived result;
    result.value_ = value;
    return result;
  }
  double value_ = 0;
};

}  // namespace detail

/// A length or distance. Zero by default.
class Length : public detail::Quantity<Length> {
 public:
  static constexpr Length metres(double v) { return make(v); }
  static constexpr Length kilometres(double v) { return make(v * 1000); }
  static constexpr Length nautical_miles(double v) { return make(v * kMetresPerNauticalMile); }
  static constexpr Length statute_miles(double v) { return make(v * kMetresPerStatuteMile); }
  static constexpr Length feet(double v) { return make(v * kMetresPerFoot); }
  constexpr double metres() const { return value_; }
  constexpr double kilometres() const { return value_ / 1000; }
  constexpr double nautical_miles() const { return value_ / kMetresPerNauticalMile; }
  constexpr double statute_miles() const { return value_ / kMetresPerStatuteMile; }
  constexpr double feet() const { return value_ / kMetresPerFoot; }
};

/// A speed. Zero by default.
class Speed : public detail::Quantity<Speed> {
 public:
  static constexpr Speed metres_per_second(double v) { return make(v); }
  static constexpr Speed knots(double v) { return make(v * kMetresPerNauticalMile / 3600); }
  static constexpr Speed kilometres_per_hour(double v) { return make(v / 3.6); }
  static constexpr Speed statute_miles_per_hour(double v) {
    return make(v * kMetresPerStatuteMile / 3600);
  }
  constexpr double metres_per_second() const { return value_; }
  constexpr double knots() const { return value_ * 3600 / kMetresPerNauticalMile; }
  constexpr double kilometres_per_hour() const { return value_ * 3.6; }
  constexpr double statute_miles_per_hour() const { return value_ * 3600 / kMetresPerStatuteMile; }
};

/// An area. Zero by default.
class Area : public detail::Quantity<Area> {
 public:
  static constexpr Area square_metres(double v) { return make(v); }
  static constexpr Area square_kilometres(double v) { return make(v * 1e6); }
  static constexpr Area square_nautical_miles(double v) {
    return make(v * kMetresPerNauticalMile * kMetresPerNauticalMile);
  }
  constexpr double square_metres() const { return value_; }
  constexpr double square_kilometres() const { return value_ / 1e6; }
  constexpr double square_nautical_miles() const {
    return value_ / (kMetresPerNauticalMile * kMetresPerNauticalMile);
  }
};

/// A plane angle: a latitude, a longitude, a difference of directions. Any finite number of
/// degrees.
class Angle : public detail::Quantity<Angle> {
 public:
  static constexpr Angle degrees(double v) { return make(v); }
  static constexpr Angle minutes(double v) { return make(v / 60); }
  static constexpr Angle radians(double v) { return make(v * kDegreesPerRadian); }
  constexpr double degrees() const { return value_; }
  constexpr double minutes() const { return value_ * 60; }
  constexpr double radians() const { return value_ / kDegreesPerRadian; }
};

constexpr Area operator*(Length a, Length b) {
  return Area::square_metres(a.metres() * b.metres());
}
constexpr Length operator/(Area a, Length b) {
  return Length::metres(a.square_metres() / b.metres());
}
constexpr Length operator*(Speed v, Duration t) {
  return Length::metres(v.metres_per_second() * t.count());
}
constexpr Duration operator/(Length d, Speed v) {
  return Duration(d.metres() / v.metres_per_second());
}
constexpr Speed operator/(Length d, Duration t) {
  return Speed::metres_per_second(d.metres() / t.count());
}

}  // namespace sweepwright
