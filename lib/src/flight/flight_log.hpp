// FlightLog: flies legs one after the other and keeps the running totals; private to the flight
// room.
#pragma once

#include <span>

#include "flight/leg_order.hpp"
#include "flight/leg_timing.hpp"
#include "sweepwright/flight/flown_pattern.hpp"

namespace sweepwright::flight {

class FlightLog {
 public:
  /// `bend`: corners up to it that leave no room to lead the turn are followed along the legs.
  FlightLog(const Aircraft& aircraft, const WindField& wind, const FlyOptions& options, Angle bend);

  /// From the base to the pattern, and the turn onto its first leg.
  void fly_out(Position base, const pattern::Leg& first);
  void fly_pattern(std::span<const LegToFly> legs);
  /// From the end of the pattern straight to the base, after a turn towards it.
  void fly_home(Position base);
  FlownPattern take();

 private:
  struct Frame {
    Velocity air;     ///< over the ground
    Velocity object;  ///< what the leg is flown relative to, over the ground
    Velocity wind() const { return air - object; }
  };
  struct Onward {
    const pattern::Leg* leg = nullptr;  ///< none: the flight ends
    const LegToFly* to_fly = nullptr;   ///< none: a transit
  };
  void fly_leg(const LegToFly& leg, bool searching, Onward onward);
  void add(FlownLeg leg);
  void turn_onto(FlownLeg leg, const WindTriangle& end, Onward onward, const Frame& frame);
  void join_onto(TrueDirection from, TrueDirection to, Onward onward, const Frame& frame);
  void take_back_last();
  Frame frame_at(Duration time, bool searching) const;
  WindTriangle over_ground(const WindTriangle& relative, const Frame& frame) const;
  FlownTurn make_turn(TurnForm form, std::span<const Arc> arcs, const Frame& frame) const;

  const Aircraft& aircraft_;
  const WindField& wind_;
  const FlyOptions& options_;
  RateOfTurn rate_;
  Angle bend_;
  FlownPattern flown_;
  Length lead_in_;  ///< of the next leg
};

}  // namespace sweepwright::flight
