#include "sweepwright/flight/turn.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::flight {
namespace {

double radians_per_second(RateOfTurn rate) {
  return Angle::degrees(rate.degrees_per_second()).radians();
}

void require_airspeed(Speed true_airspeed) {
  if (true_airspeed > Speed() && std::isfinite(true_airspeed.metres_per_second())) return;
  throw Error(
      ErrorCode::value,
      fmt::format("the true airspeed is {}", format_speed(true_airspeed, SpeedUnit::knot, 1)),
      "give a true airspeed above 0, such as 90kt");
}

RateOfTurn checked(RateOfTurn rate) {
  if (rate > RateOfTurn() && std::isfinite(rate.degrees_per_second())) return rate;
  throw Error(ErrorCode::value,
              fmt::format("the rate of turn is {} degrees a second", rate.degrees_per_second()),
              "give a rate above 0; the standard rate is 3 degrees a second");
}

RateOfTurn rate_at(Bank bank, Speed true_airspeed) {
  if (!(bank.angle > Angle() && bank.angle < Angle::degrees(90))) {
    throw Error(ErrorCode::value,
                fmt::format("a bank of {} degrees cannot be flown", bank.angle.degrees()),
                "give a bank above 0 and under 90 degrees, such as 20");
  }
  return RateOfTurn::degrees_per_second(
      Angle::radians(kStandardGravityMetresPerSecondSquared * std::tan(bank.angle.radians()) /
                     true_airspeed.metres_per_second())
          .degrees());
}

/// Nodes and weights of the Gauss-Legendre rule of eight points on [-1, 1], positive half
/// [Abramowitz and Stegun, table 25.4].
struct Node {
  double at;
  double weight;
};
constexpr std::array<Node, 4> kNodes{{{0.183434642495650, 0.362683783378362},
                                      {0.525532409916329, 0.313706645877887},
                                      {0.796666477413627, 0.222381034453374},
                                      {0.960289856497536, 0.101228536290376}}};

}  // namespace

RateOfTurn rate_of_turn(const Turning& turning, Speed true_airspeed) {
  require_airspeed(true_airspeed);
  if (const auto* bank = std::get_if<Bank>(&turning)) return rate_at(*bank, true_airspeed);
  return checked(std::get<RateOfTurn>(turning));
}

Angle bank(RateOfTurn rate, Speed true_airspeed) {
  require_airspeed(true_airspeed);
  return Angle::radians(
      std::atan(radians_per_second(checked(rate)) * true_airspeed.metres_per_second() /
                kStandardGravityMetresPerSecondSquared));
}

Length turn_radius(RateOfTurn rate, Speed true_airspeed) {
  return Length::metres(true_airspeed.metres_per_second() / radians_per_second(rate));
}

Duration turn_time(RateOfTurn rate, Angle turned) {
  return Duration(std::abs(turned.degrees()) / rate.degrees_per_second());
}

Offset way_over_ground(const Arc& arc, const TurningFlight& flight) {
  // The heading runs from a to b; the air motion V (sin, cos) is summed over it.
  const double a = arc.heading.angle().radians();
  const double b = a + arc.turned.radians();
  const Length radius = turn_radius(flight.rate, flight.true_airspeed);
  const double side = arc.turned < Angle() ? -1 : 1;
  const Offset in_air{radius * (side * (std::cos(a) - std::cos(b))),
                      radius * (side * (std::sin(b) - std::sin(a)))};
  return in_air + flight.wind * arc.time(flight.rate);
}

Length length_over_ground(const Arc& arc, const TurningFlight& flight) {
  const Speed wind = speed(flight.wind);
  if (wind == Speed()) return flight.true_airspeed * arc.time(flight.rate);
  // The ground speed depends on the angle between heading and wind alone.
  const double v = flight.true_airspeed.metres_per_second();
  const double w = wind.metres_per_second();
  const double start = arc.heading.angle().radians() - direction(flight.wind).angle().radians();
  const auto ground_speed = [&](double angle) {
    return std::sqrt(std::max(0.0, v * v + w * w + 2 * v * w * std::cos(angle)));
  };
  const int pieces = 1 + static_cast<int>(std::abs(arc.turned.degrees()) / 60);
  const double half = arc.turned.radians() / pieces / 2;
  double sum = 0;
  for (int piece = 0; piece < pieces; ++piece) {
    const double middle = start + half * (2 * piece + 1);
    for (const Node& node : kNodes) {
      sum += node.weight *
             (ground_speed(middle + half * node.at) + ground_speed(middle - half * node.at));
    }
  }
  return Length::metres(sum * std::abs(half) / radians_per_second(flight.rate));
}

}  // namespace sweepwright::flight
