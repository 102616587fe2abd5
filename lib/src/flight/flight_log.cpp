#include "flight/flight_log.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/flight/corner.hpp"

namespace sweepwright::flight {
namespace {

using pattern::Leg;
using pattern::LegKind;

/// A straight part of a join that is shorter than this is rounding.
constexpr Duration kNoStraight{1e-3};
/// A base this near is where the search begins or ends.
constexpr Length kNoTransit = Length::metres(1);

}  // namespace

FlightLog::FlightLog(const Aircraft& aircraft, const WindField& wind, const FlyOptions& options,
                     Angle bend)
    : aircraft_(aircraft),
      wind_(wind),
      options_(options),
      rate_(rate_of_turn(aircraft.turning, aircraft.true_airspeed)),
      bend_(bend) {
  flown_.depart = options.depart;
  flown_.drift = options.drift;
}

FlightLog::Frame FlightLog::frame_at(Duration time, bool searching) const {
  Frame frame;
  frame.air = wind_.at(options_.height, options_.depart, time);
  if (searching && options_.drift) frame.object = velocity(*options_.drift);
  return frame;
}

WindTriangle FlightLog::over_ground(const WindTriangle& relative, const Frame& frame) const {
  if (frame.object == Velocity()) return relative;
  const Velocity ground = make_velocity(relative.track, relative.ground_speed) + frame.object;
  const TrueDirection track = direction(ground);
  return {track, relative.heading, turn_between(track, relative.heading), speed(ground)};
}

FlownTurn FlightLog::make_turn(TurnForm form, std::span<const Arc> arcs, const Frame& frame) const {
  const TurningFlight over_ground{aircraft_.true_airspeed, rate_, frame.air};
  FlownTurn turn;
  turn.form = form;
  turn.flight = {aircraft_.true_airspeed, rate_, frame.wind()};
  turn.radius = turn_radius(rate_, aircraft_.true_airspeed);
  std::copy(arcs.begin(), arcs.end(), turn.arcs.begin());
  for (const Arc& arc : arcs) {
    turn.distance += length_over_ground(arc, over_ground);
    turn.time += arc.time(rate_);
  }
  return turn;
}

/// The last leg, which had no turn yet, is to be added again with one.
void FlightLog::take_back_last() {
  const FlownLeg& last = flown_.legs.back();
  flown_.total_time = last.start;
  flown_.total_distance = flown_.total_distance - last.distance;
  flown_.legs.pop_back();
}

void FlightLog::add(FlownLeg leg) {
  leg.start = flown_.total_time;
  leg.end = leg.start + leg.time;
  flown_.total_distance += leg.distance;
  if (leg.turn) {
    leg.end += leg.turn->time;
    flown_.total_distance += leg.turn->distance;
  }
  leg.running_distance = flown_.total_distance;
  flown_.total_time = leg.end;
  flown_.legs.push_back(leg);
}

/// Ends `leg`, whose time and distance are still those of the whole of it, with the turn onto the
/// next one.
void FlightLog::turn_onto(FlownLeg leg, const WindTriangle& end, Onward onward,
                          const Frame& frame) {
  const Length length = leg.leg.line.length;
  const auto add_without_leads = [&] {
    const double share = length > Length() ? (length - leg.lead_in - leg.lead_out) / length : 0;
    leg.time *= share;
    leg.distance = leg.distance * share;
    add(leg);
  };
  if (onward.leg == nullptr) return add_without_leads();
  const Leg* gap = onward.to_fly != nullptr && onward.to_fly->gap ? &*onward.to_fly->gap : nullptr;
  // The next track, told at this leg's end: the meridians between them meet.
  const Angle meridians =
      gap == nullptr ? Angle() : turn_between(gap->line.start_track, gap->line.end_track);
  const WindTriangle next = triangle_for_track(onward.leg->line.start_track - meridians,
                                               aircraft_.true_airspeed, to_wind(frame.wind()));
  if (gap == nullptr) {
    const double turn = std::abs(turn_between(end.track, next.track).degrees());
    if (turn < kNoTurn.degrees()) return add_without_leads();
    const std::optional<Corner> led =
        corner(end, next, {aircraft_.true_airspeed, rate_, frame.wind()});
    if (led && led->lead_out <= length / 2 && led->lead_in <= onward.leg->line.length / 2) {
      leg.lead_out = led->lead_out;
      lead_in_ = led->lead_in;
      leg.turn = make_turn(TurnForm::led, std::array{led->arc}, frame);
      return add_without_leads();
    }
    if (turn <= bend_.degrees()) return add_without_leads();
  }
  add_without_leads();
  join_onto(end.heading, next.heading, onward, frame);
}

/// Gives the last leg its turn, and adds the straight part of the join as a leg of its own.
void FlightLog::join_onto(TrueDirection from, TrueDirection to, Onward onward, const Frame& frame) {
  FlownLeg leg = flown_.legs.back();
  const bool has_gap = onward.to_fly != nullptr && onward.to_fly->gap;
  FlownLeg straight;
  straight.joined = true;
  straight.searching = leg.searching;
  straight.leg = {LegKind::cross, leg.leg.to, leg.leg.to, GeodesicLine()};
  if (has_gap) {
    straight.leg = *onward.to_fly->gap;
    straight.drawn = onward.to_fly->gap_drawn;
  }
  const Offset way = make_offset(straight.leg.line.start_track, straight.leg.line.length);
  const Join found = join({from, to, way}, {aircraft_.true_airspeed, rate_, frame.wind()});
  take_back_last();
  if (found.straight.time < kNoStraight) {
    leg.turn = make_turn(found.form, found.arcs, frame);
    return add(leg);
  }
  straight.triangle = over_ground(
      {found.straight.track, found.straight.heading,
       turn_between(found.straight.track, found.straight.heading), found.straight.ground_speed},
      frame);
  straight.time = found.straight.time;
  straight.distance = straight.triangle.ground_speed * straight.time;
  leg.turn = make_turn(found.form, std::array{found.arcs[0]}, frame);
  straight.turn = make_turn(found.form, std::array{found.arcs[1]}, frame);
  add(leg);
  add(straight);
}

void FlightLog::fly_leg(const LegToFly& to_fly, bool searching, Onward onward) {
  const Leg& line = to_fly.leg;
  const Speed airspeed = searching ? aircraft_.true_airspeed
                                   : aircraft_.transit_airspeed.value_or(aircraft_.true_airspeed);
  Frame frame = frame_at(flown_.total_time, searching);
  LegTiming timing = leg_timing(line.from, line.line, airspeed, to_wind(frame.wind()));
  if (wind_.varies_in_time()) {
    frame = frame_at(flown_.total_time + timing.time / 2, searching);
    timing = leg_timing(line.from, line.line, airspeed, to_wind(frame.wind()));
  }
  FlownLeg leg;
  leg.leg = line;
  leg.drawn = to_fly.drawn;
  leg.searching = searching;
  leg.triangle = over_ground(timing.start, frame);
  leg.lead_in = lead_in_;
  leg.time = timing.time;
  leg.distance =
      frame.object == Velocity() ? line.line.length : leg.triangle.ground_speed * timing.time;
  lead_in_ = Length();
  turn_onto(leg, timing.end, onward, frame);
}

void FlightLog::fly_out(Position base, const Leg& first) {
  const Leg out = pattern::make_leg(LegKind::transit, base, first.from);
  if (out.line.length < kNoTransit) return;
  try {
    fly_leg({out, std::nullopt, std::nullopt, std::nullopt}, false, {&first, nullptr});
  } catch (const Error& error) {
    throw error.at("transit from the base");
  }
}

void FlightLog::fly_pattern(std::span<const LegToFly> legs) {
  flown_.legs.reserve(flown_.legs.size() + 2 * legs.size() + 1);
  flown_.arrival = flown_.total_time;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const bool last = i + 1 == legs.size();
    try {
      fly_leg(legs[i], true, last ? Onward{} : Onward{&legs[i + 1].leg, &legs[i + 1]});
    } catch (const Error& error) {
      throw error.at(fmt::format("{} leg {}", pattern::name(legs[i].leg.kind),
                                 legs[i].drawn.value_or(static_cast<int>(i) + 1)));
    }
  }
  flown_.search_end = flown_.total_time;
}

void FlightLog::fly_home(Position base) {
  FlownLeg last = flown_.legs.back();
  const Position end = flight::over_ground(flown_, last.leg.to, flown_.total_time);
  const GeodesicLine direct = geodesic(end, base);
  if (direct.length < kNoTransit) return;
  const Frame frame = frame_at(flown_.total_time, true);
  try {
    const WindTriangle from =
        triangle_for_track(last.leg.line.end_track, aircraft_.true_airspeed, to_wind(frame.wind()));
    const WindTriangle to =
        triangle_for_track(direct.start_track, aircraft_.true_airspeed, to_wind(frame.air));
    const Arc arc = arc_between(from, to);
    last.turn = make_turn(TurnForm::plain, std::array{arc}, frame);
    const Offset way = way_over_ground(arc, {aircraft_.true_airspeed, rate_, frame.air});
    take_back_last();
    add(last);
    const Position turned = travel(end, direction(way), length(way)).position;
    fly_leg({pattern::make_leg(LegKind::transit, turned, base), std::nullopt, std::nullopt,
             std::nullopt},
            false, {});
  } catch (const Error& error) {
    throw error.at("transit back to the base");
  }
}

FlownPattern FlightLog::take() {
  return std::move(flown_);
}

}  // namespace sweepwright::flight
