// Turns at a bank or at a rate: radius, time, and the way over the ground that wind makes of
// them.
//
// Problem: a turn is a circle in the air; the wind carries the circle along while it is flown, so
//   that over the ground it is a trochoid.
// Conventions: a turned angle is positive to the right. A bank is that of a level, coordinated
//   turn. Vessels and teams turn at a rate.
// Domain: true airspeed above 0; a bank above 0 and under 90 degrees; a rate above 0.
// Accuracy: the trochoid is a closed form; a numerical integration of 10,000 steps agrees to 1e-7
//   of the radius. Its length is summed by Gauss-Legendre: within 1e-6 for winds up to 0.6 of the
//   airspeed, 3e-5 up to 0.9 (turn_test.cpp).
// Source: rate = g tan(bank) / V, radius = V^2 / (g tan(bank)): FAA Pilot's Handbook of
//   Aeronautical Knowledge, ch. Aerodynamics of Flight (from memory, checked by its example,
//   tests/checks/flight/turns.csv). Standard rate 3 degrees a second: the same (from memory).
#pragma once

#include <variant>

#include "sweepwright/flight/offset.hpp"

namespace sweepwright::flight {

/// How fast a heading changes. Zero by default.
class RateOfTurn : public detail::Quantity<RateOfTurn> {
 public:
  static constexpr RateOfTurn degrees_per_second(double v) { return make(v); }
  constexpr double degrees_per_second() const { return value_; }
};

inline constexpr RateOfTurn kStandardRate = RateOfTurn::degrees_per_second(3);

struct Bank {
  Angle angle;
};

/// How a crew turns: at a bank, or at a rate.
using Turning = std::variant<RateOfTurn, Bank>;

/// Throws Error(value) for a bank, rate or airspeed outside the domain.
RateOfTurn rate_of_turn(const Turning& turning, Speed true_airspeed);
/// The bank of a level turn.
Angle bank(RateOfTurn rate, Speed true_airspeed);
/// Of the circle in the air.
Length turn_radius(RateOfTurn rate, Speed true_airspeed);
/// `turned` to either side.
Duration turn_time(RateOfTurn rate, Angle turned);

/// What a turn is flown with and in.
struct TurningFlight {
  Speed true_airspeed;
  RateOfTurn rate;
  Velocity wind;
};

/// An arc in the air: from a heading through an angle.
struct Arc {
  TrueDirection heading;  ///< at its start
  Angle turned;           ///< positive to the right
  TrueDirection end_heading() const { return heading + turned; }
  Duration time(RateOfTurn rate) const { return turn_time(rate, turned); }
};

/// From where the arc starts to where it ends, over the ground.
Offset way_over_ground(const Arc& arc, const TurningFlight& flight);
/// The length of the arc's way over the ground.
Length length_over_ground(const Arc& arc, const TurningFlight& flight);

}  // namespace sweepwright::flight
