#include "sweepwright/pattern/ladder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::pattern {
namespace {

/// Shortest piece of ground that is worth a search leg, in spacings.
constexpr double kShortestLeg = 0.1;
/// With even gaps, a strip of this many spacings is shared out over all gaps in place of a further
/// leg.
constexpr double kSharedOut = 0.25;

void require_above_zero(Length length, std::string_view what) {
  if (!(length.metres() > 0) || !std::isfinite(length.metres())) {
    throw Error(
        ErrorCode::value,
        fmt::format("the {} is {}", what, format_length(length, LengthUnit::nautical_mile, 3)),
        fmt::format("give a {} above 0", what));
  }
}

void require_leg_count(int legs) {
  if (legs < 1 || legs > kMostLegs) {
    throw Error(ErrorCode::value, fmt::format("a pattern cannot have {} search legs", legs),
                fmt::format("give 1 to {} legs, or another track spacing", kMostLegs));
  }
}

/// Joins `search` legs into a pattern: a cross leg between rows, a transit leg within a row.
class LegChain {
 public:
  void add_search(Position from, Position to, LegKind joint) {
    if (!legs_.empty() && geodesic(legs_.back().to, from).length > Length::metres(1)) {
      legs_.push_back(make_leg(joint, legs_.back().to, from));
    }
    legs_.push_back(make_leg(LegKind::search, legs_.empty() ? from : legs_.back().to, to));
  }
  std::vector<Leg> take() { return std::move(legs_); }

 private:
  std::vector<Leg> legs_;
};

}  // namespace

std::string_view name(TurnRoom room) {
  return room == TurnRoom::inside ? "inside" : "outside";
}

TurnRoom parse_turn_room(std::string_view name) {
  const std::string lower = to_lower_ascii(name);
  if (lower == "inside") return TurnRoom::inside;
  if (lower == "outside") return TurnRoom::outside;
  throw Error(
      ErrorCode::value, fmt::format("turns cannot be made '{}'", printable(name)),
      "write inside (legs end half a spacing inside the sector) or outside (legs run to its edge)");
}

int legs_for_width(Length width, Length spacing) {
  const double spacings = width / spacing;
  const double legs = std::max(1.0, std::ceil(spacings - kForgivenStrip));
  if (!(legs <= kMostLegs)) {
    throw Error(ErrorCode::value,
                fmt::format("a width of {} at a track spacing of {} needs over {} legs",
                            format_length(width, LengthUnit::nautical_mile, 1),
                            format_length(spacing, LengthUnit::nautical_mile, 4), kMostLegs),
                "give a wider track spacing or a smaller area");
  }
  return static_cast<int>(legs);
}

Pattern make_ladder(Kind kind, const LadderFromStart& request) {
  require_above_zero(request.spacing, "track spacing");
  require_above_zero(request.leg_length, "leg length");
  require_leg_count(request.legs);
  const Length half = request.leg_length / 2;
  if (half > kLocalPlaneReach || request.spacing * request.legs > kLocalPlaneReach * 2) {
    throw Error(
        ErrorCode::value,
        fmt::format("the pattern would be {} long and {} wide",
                    format_length(request.leg_length, LengthUnit::nautical_mile, 0),
                    format_length(request.spacing * request.legs, LengthUnit::nautical_mile, 0)),
        fmt::format("keep it under {:.0f} NM each way", kLocalPlaneReach.nautical_miles() * 2));
  }

  // The base line runs through the middle of the first leg, at right angles to it.
  const Arrival first_middle = travel(request.start, request.first_track, half);
  const TrueDirection creep = first_middle.track + quarter_turn(request.first_turn);
  LegChain chain;
  for (int i = 0; i < request.legs; ++i) {
    const Arrival middle = travel(first_middle.position, creep, request.spacing * i);
    // Odd legs run back.
    const TrueDirection along =
        (middle.track - quarter_turn(request.first_turn)) + Angle::degrees(i % 2 == 0 ? 0 : 180);
    const Position from = travel(middle.position, along, -half).position;
    chain.add_search(i == 0 ? request.start : from, travel(middle.position, along, half).position,
                     LegKind::cross);
  }
  return {kind, request.spacing, request.first_turn, chain.take(), {}};
}

Pattern make_ladder(Kind kind, const LadderInRegion& request) {
  require_above_zero(request.spacing, "track spacing");
  // `up` is the way the pattern creeps, so that legs lie along `right`.
  const TrueDirection creep = request.first_track + quarter_turn(request.first_turn);
  const LocalPlane plane = local_plane(request.region, creep);
  const PlaneRegion ground = to_plane(request.region, plane);

  // Plane heights are stretched; distances along the base line are true.
  const auto distance_up = [&](Length up) {
    const Position at = plane.to_position({Length{}, up});
    return geodesic(plane.centre(), at).length * (up < Length{} ? -1 : 1);
  };
  const auto height_of = [&](Length distance) {
    return plane.to_plane(travel(plane.centre(), creep, distance).position).up;
  };
  const Span heights = extent_up(ground);
  const Length near_edge = distance_up(heights.low);
  const Length far_edge = distance_up(heights.high);
  const Length width = far_edge - near_edge;
  const int rows = request.gaps == Gaps::even
                       ? legs_for_width(std::max(width - request.spacing * kSharedOut, Length()),
                                        request.spacing)
                       : legs_for_width(width, request.spacing);
  const bool even = request.gaps == Gaps::even && width > request.spacing;
  const Length spacing = even ? width / rows : request.spacing;

  Pattern pattern{kind, spacing, request.first_turn, {}, {}};
  LegChain chain;
  Length last_gap = spacing;
  for (int row = 0; row < rows; ++row) {
    Length at = near_edge + spacing * (row + 0.5);
    if (rows == 1) {
      at = near_edge + width / 2;
    } else if (row == rows - 1 && at > far_edge - spacing / 2) {
      const Length pulled_in = far_edge - spacing / 2;
      last_gap = spacing - (at - pulled_in);
      at = pulled_in;
    }
    const Length height = height_of(at);
    std::vector<Span> spans =
        spans_in_strip(ground, {height_of(at - spacing / 2), height_of(at + spacing / 2)});
    // With a right turn the first leg runs towards -right (creep is 90 degrees right of the track).
    const bool towards_right = (request.first_turn == Turn::left) == (row % 2 == 0);
    if (!towards_right) std::reverse(spans.begin(), spans.end());
    LegKind joint = LegKind::cross;
    for (const Span& span : spans) {
      const Position low = plane.to_position({span.low, height});
      const Position high = plane.to_position({span.high, height});
      const GeodesicLine line = geodesic(low, high);
      if (line.length < spacing * kShortestLeg) continue;
      const Length inset = request.turn_room == TurnRoom::outside
                               ? Length{}
                               : std::min(spacing / 2, line.length / 4);
      const Position inner_low = travel(low, line.start_track, inset).position;
      const Position inner_high = travel(high, line.end_track, -inset).position;
      chain.add_search(towards_right ? inner_low : inner_high,
                       towards_right ? inner_high : inner_low, joint);
      joint = LegKind::transit;
    }
  }
  pattern.legs = chain.take();
  if (pattern.legs.empty()) {
    throw Error(ErrorCode::impossible,
                fmt::format("no search leg fits into the area at a track spacing of {}",
                            format_length(spacing, LengthUnit::nautical_mile, 2)),
                "give a closer track spacing or a larger area");
  }
  if (last_gap < spacing * (1 - kForgivenStrip)) {
    pattern.remarks.push_back(
        fmt::format("the last gap is {}, narrower than the track spacing, to stay inside the area",
                    format_length(last_gap, LengthUnit::nautical_mile, 2)));
  }
  return pattern;
}

}  // namespace sweepwright::pattern
