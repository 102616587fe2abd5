#include "sweepwright/debrief/against_plan.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::debrief {
namespace {

/// A place or a direction on the flat map, in metres.
struct Flat {
  double x = 0;
  double y = 0;
  friend Flat operator-(Flat a, Flat b) { return {a.x - b.x, a.y - b.y}; }
  friend Flat operator+(Flat a, Flat b) { return {a.x + b.x, a.y + b.y}; }
  friend Flat operator*(Flat a, double k) { return {a.x * k, a.y * k}; }
};

double dot(Flat a, Flat b) {
  return a.x * b.x + a.y * b.y;
}

double size(Flat a) {
  return std::hypot(a.x, a.y);
}

Flat to_flat(const LocalPlane& plane, Position position) {
  const PlanePoint point = plane.to_plane(position);
  return {point.right.metres(), point.up.metres()};
}

/// A planned leg on the map, and the stretches that belong to it.
struct Lane {
  int number = 0;
  Flat from;
  Flat along;  ///< of length 1
  Flat right;  ///< of length 1
  double length = 0;
  std::vector<std::pair<double, double>> flown;  ///< stretches of it
  double weight = 0;
  double offsets = 0;  ///< times weight
  double errors = 0;   ///< times weight
  double largest = 0;

  double along_of(Flat place) const { return dot(place - from, along); }
  double offset_of(Flat place) const { return dot(place - from, right); }
  double mean_offset() const { return weight > 0 ? offsets / weight : 0; }
  double share() const;
};

double Lane::share() const {
  std::vector<std::pair<double, double>> sorted = flown;
  std::sort(sorted.begin(), sorted.end());
  double covered = 0;
  double end = 0;
  for (const auto& [low, high] : sorted) {
    covered += std::max(0.0, high - std::max(low, end));
    end = std::max(end, high);
  }
  return std::min(1.0, covered / length);
}

std::vector<Lane> lanes(const plan::Assignment& assignment, const LocalPlane& plane) {
  std::vector<Lane> all;
  int number = 0;
  for (const pattern::Leg& leg : assignment.pattern.legs) {
    ++number;
    if (leg.kind != pattern::LegKind::search) continue;
    Lane lane;
    lane.number = number;
    lane.from = to_flat(plane, leg.from);
    const Flat way = to_flat(plane, leg.to) - lane.from;
    lane.length = size(way);
    if (lane.length <= 0) continue;
    lane.along = way * (1 / lane.length);
    lane.right = {lane.along.y, -lane.along.x};
    all.push_back(lane);
  }
  return all;
}

/// A stretch as flown, on the map.
struct Stretch {
  Flat from;
  Flat to;
  double length() const { return size(to - from); }
};

/// The lane that a stretch belongs to, none when there is none.
Lane* lane_of(std::vector<Lane>& all, const Stretch& stretch, double reach) {
  const Flat middle = (stretch.from + stretch.to) * 0.5;
  const Flat way = stretch.to - stretch.from;
  const double length = size(way);
  if (length <= 0) return nullptr;
  const double least_along = std::cos(kMostAskew.radians());
  Lane* best = nullptr;
  for (Lane& lane : all) {
    if (std::abs(dot(way, lane.along)) < least_along * length) continue;
    const double along = lane.along_of(middle);
    if (along < 0 || along > lane.length) continue;
    const double offset = std::abs(lane.offset_of(middle));
    if (offset > reach) continue;
    if (best == nullptr || offset < std::abs(best->offset_of(middle))) best = &lane;
  }
  return best;
}

void add(Lane& lane, const Stretch& stretch) {
  const auto [low, high] = std::minmax({lane.along_of(stretch.from), lane.along_of(stretch.to)});
  lane.flown.emplace_back(std::max(0.0, low), std::min(lane.length, high));
  const double offset = lane.offset_of((stretch.from + stretch.to) * 0.5);
  const double weight = stretch.length();
  lane.weight += weight;
  lane.offsets += weight * offset;
  lane.errors += weight * std::abs(offset);
  lane.largest = std::max(lane.largest, std::abs(offset));
}

/// Legs of a ladder: side by side, running together or against each other.
bool side_by_side(const Lane& lane, const Lane& next) {
  const double along = lane.along_of(next.from + next.along * (next.length / 2));
  return std::abs(dot(lane.along, next.along)) > 0.99 && along > 0 && along < lane.length;
}

Length spacing_between(const Lane& lane, const Lane& next) {
  const Flat middle = next.from + next.along * (next.length / 2);
  const double facing = dot(lane.right, next.right) > 0 ? 1 : -1;
  return Length::metres(
      std::abs(lane.offset_of(middle) + facing * next.mean_offset() - lane.mean_offset()));
}

LegAsFlown leg_of(const Lane& lane) {
  LegAsFlown leg;
  leg.number = lane.number;
  leg.length = Length::metres(lane.length);
  leg.flown_share = lane.share();
  leg.mean_offset = Length::metres(lane.mean_offset());
  leg.mean_error = Length::metres(lane.weight > 0 ? lane.errors / lane.weight : 0);
  leg.largest_error = Length::metres(lane.largest);
  return leg;
}

void summarize(AgainstPlan& found, const std::vector<Lane>& all) {
  double length = 0;
  double flown = 0;
  double weight = 0;
  double errors = 0;
  for (const Lane& lane : all) {
    const double share = lane.share();
    length += lane.length;
    flown += share * lane.length;
    weight += lane.weight;
    errors += lane.errors;
    found.largest_error = std::max(found.largest_error, Length::metres(lane.largest));
    if (share < kMissedBelow) {
      ++found.missed;
    } else if (share < kFlownFrom) {
      ++found.partly;
    }
  }
  if (length > 0) found.flown_share = flown / length;
  if (weight > 0) found.mean_error = Length::metres(errors / weight);
}

void add_spacings(AgainstPlan& found, const std::vector<Lane>& all) {
  Length sum;
  int count = 0;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    const bool both = all[i].share() >= kMissedBelow && all[i + 1].share() >= kMissedBelow;
    if (!both || !side_by_side(all[i], all[i + 1])) continue;
    const Length spacing = spacing_between(all[i], all[i + 1]);
    found.legs[i].spacing_to_next = spacing;
    found.widest_spacing = std::max(found.widest_spacing.value_or(spacing), spacing);
    sum += spacing;
    ++count;
  }
  if (count > 0) found.mean_spacing = sum / count;
}

}  // namespace

AgainstPlan against_plan(const plan::Assignment& assignment, std::span<const FlownPiece> pieces) {
  const LocalPlane plane = local_plane(assignment.sector);
  const Position centre = plane.centre();
  std::vector<Lane> all = lanes(assignment, plane);
  AgainstPlan found;
  found.planned_spacing = assignment.spacing;
  // A pattern without a spacing is followed within what its crew sees.
  const Length reach =
      (assignment.spacing > Length() ? assignment.spacing : assignment.sweep_width.width) / 2;
  for (const FlownPiece& piece : pieces) {
    if (piece.use == Use::off_task || piece.use == Use::above_cloud) continue;
    if (geodesic(centre, piece.swept.from).length > kLocalPlaneReach / 2) continue;
    const Stretch stretch{to_flat(plane, piece.swept.from), to_flat(plane, piece.swept.to)};
    if (Lane* const lane = lane_of(all, stretch, reach.metres())) add(*lane, stretch);
  }
  for (const Lane& lane : all) found.legs.push_back(leg_of(lane));
  summarize(found, all);
  add_spacings(found, all);
  return found;
}

}  // namespace sweepwright::debrief
