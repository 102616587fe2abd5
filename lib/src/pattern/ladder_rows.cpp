#include "pattern/ladder_rows.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "pattern/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::pattern {
namespace {

/// Shortest piece of ground that is worth a search leg, in spacings.
constexpr double kShortestLeg = 0.1;
/// With even gaps, a strip of this many spacings is shared out over all gaps in place of a further
/// leg.
constexpr double kSharedOut = 0.25;

/// Where rows lie: distances from the plane's centre along the way of creeping.
struct RowDistances {
  std::vector<Length> at;
  Length spacing;
  Length last_gap;
};

RowDistances row_distances(Span edges, Length asked, Gaps gaps) {
  const Length width = edges.extent();
  const Length counted =
      gaps == Gaps::even ? std::max(width - asked * kSharedOut, Length()) : width;
  const int rows = legs_for_width(counted, asked);
  const bool even = gaps == Gaps::even && width > asked;
  const Length spacing = even ? width / rows : asked;
  if (rows == 1) return {{edges.low + width / 2}, spacing, spacing};

  RowDistances out{{}, spacing, spacing};
  for (int row = 0; row < rows; ++row) out.at.push_back(edges.low + spacing * (row + 0.5));
  const Length pulled_in = edges.high - spacing / 2;
  if (out.at.back() > pulled_in) {
    out.last_gap = spacing - (out.at.back() - pulled_in);
    out.at.back() = pulled_in;
  }
  return out;
}

/// The ground of a row, its ends drawn in by half a spacing where turns are to stay inside.
std::optional<RowPart> row_part(Position low, Position high, Length spacing, TurnRoom turn_room) {
  const GeodesicLine line = geodesic(low, high);
  if (line.length < spacing * kShortestLeg) return std::nullopt;
  if (turn_room == TurnRoom::outside) return RowPart{low, high};
  const Length inset = std::min(spacing / 2, line.length / 4);
  return RowPart{travel(low, line.start_track, inset).position,
                 travel(high, line.end_track, -inset).position};
}

}  // namespace

LadderRows ladder_rows(const LadderFromStart& request) {
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
  LadderRows out{{}, request.spacing, {}};
  for (int i = 0; i < request.legs; ++i) {
    const Arrival middle = travel(first_middle.position, creep, request.spacing * i);
    const TrueDirection along = middle.track - quarter_turn(request.first_turn);
    const Position from = i == 0 ? request.start : travel(middle.position, along, -half).position;
    out.rows.push_back({{from, travel(middle.position, along, half).position}});
  }
  return out;
}

LadderRows ladder_rows(const LadderInRegion& request) {
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
  const RowDistances distances = row_distances(
      {distance_up(heights.low), distance_up(heights.high)}, request.spacing, request.gaps);

  LadderRows out{{}, distances.spacing, {}};
  for (const Length at : distances.at) {
    // Ground that reaches into the strip by a hair does not lengthen the leg.
    const Length half = distances.spacing * (0.5 - kForgivenStrip);
    LadderRow row;
    for (const Span& span : spans_in_strip(ground, {height_of(at - half), height_of(at + half)})) {
      const Length height = height_of(at);
      const std::optional<RowPart> part =
          row_part(plane.to_position({span.low, height}), plane.to_position({span.high, height}),
                   distances.spacing, request.turn_room);
      if (part) row.push_back(*part);
    }
    // With a right turn the first track runs towards -right (creep is 90 degrees right of it).
    if (request.first_turn == Turn::right) {
      std::reverse(row.begin(), row.end());
      for (RowPart& part : row) std::swap(part.from, part.to);
    }
    out.rows.push_back(std::move(row));
  }
  if (distances.last_gap < distances.spacing * (1 - kForgivenStrip)) {
    out.remarks.push_back(
        fmt::format("the last gap is {}, narrower than the track spacing, to stay inside the area",
                    format_length(distances.last_gap, LengthUnit::nautical_mile, 2)));
  }
  return out;
}

std::vector<Leg> joined_rows(const std::vector<LadderRow>& rows) {
  std::vector<Leg> legs;
  bool first_way = true;
  for (LadderRow row : rows) {
    if (!first_way) {
      std::reverse(row.begin(), row.end());
      for (RowPart& part : row) std::swap(part.from, part.to);
    }
    LegKind joint = LegKind::cross;
    for (const RowPart& part : row) {
      if (!legs.empty() && geodesic(legs.back().to, part.from).length > Length::metres(1)) {
        legs.push_back(make_leg(joint, legs.back().to, part.from));
      }
      legs.push_back(make_leg(LegKind::search, legs.empty() ? part.from : legs.back().to, part.to));
      joint = LegKind::transit;
    }
    first_way = !first_way;
  }
  return legs;
}

LadderInRegion ladder_in_region(const Region& region, const RegionPatternOptions& options,
                                TrueDirection along) {
  Entry entry{options.first_track.value_or(along), options.first_turn};
  if (options.commence) entry = entry_at_corner(region, entry.first_track, *options.commence);
  return {region,           entry.first_track, options.spacing,
          entry.first_turn, options.turn_room, options.gaps};
}

}  // namespace sweepwright::pattern
