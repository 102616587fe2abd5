#include "sweepwright/hazard/separation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>

#include "piece_approach.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::hazard {
namespace {

/// Bases nearer than this are one base.
constexpr Length kSameBase = Length::nautical_miles(1);

/// Longest delay that is proposed.
constexpr std::chrono::minutes kMostDelay{60};

void require(const TrackUncertainty& uncertainty) {
  if (uncertainty.time.count() >= 0 && uncertainty.lateral >= Length() &&
      uncertainty.height >= Length()) {
    return;
  }
  throw Error(ErrorCode::value, "An uncertainty of a track is below 0",
              "state how far a crew may be off its plan, 0 or more");
}

Instant instant(double time_s) {
  return Instant(std::chrono::round<std::chrono::milliseconds>(Duration(time_s)));
}

/// The least difference of two spans of height; none when one is not known.
std::optional<Length> height_difference(const SpacePiece& a, const SpacePiece& b) {
  if (!a.lowest || !b.lowest) return std::nullopt;
  return std::max({*a.lowest - *b.highest, *b.lowest - *a.highest, Length()});
}

Approach approach(const SpacePiece& a, const SpacePiece& b, const PieceApproach& near) {
  return {.distance = Length::metres(near.distance_m),
          .first = position(place_at(a, near.first_s)),
          .second = position(place_at(b, near.second_s)),
          .first_time = instant(near.first_s),
          .second_time = instant(near.second_s),
          .height_difference = height_difference(a, b)};
}

/// No place of one piece is nearer to one of the other.
double least_possible_m(const SpacePiece& a, const SpacePiece& b) {
  const double halves = (distance_m(a.start, a.end) + distance_m(b.start, b.end)) / 2;
  return distance_m(between(a.start, a.end, 0.5), between(b.start, b.end, 0.5)) - halves;
}

/// Calls visit(a, b) for each pair of pieces that can be flown within `shift_s` of each other.
/// Both are in order of time, so that the first partner only moves on.
template <typename Visit>
void visit_pairs(const std::vector<SpacePiece>& first, const std::vector<SpacePiece>& second,
                 double shift_s, Visit visit) {
  std::size_t begin = 0;
  for (const SpacePiece& a : first) {
    while (begin < second.size() && second[begin].to_s < a.from_s - shift_s) ++begin;
    for (std::size_t j = begin; j < second.size() && second[j].from_s <= a.to_s + shift_s; ++j) {
      if (!visit(a, second[j])) return;
    }
  }
}

double shift_s(const TrackUncertainty& uncertainty) {
  return 2 * uncertainty.time.count();
}

/// Bases of both crews.
std::vector<SpacePoint> shared_bases(const CrewTrack& first, const CrewTrack& second) {
  std::vector<SpacePoint> bases;
  if (first.points.empty() || second.points.empty()) return bases;
  for (const TrackPoint& a : {first.points.front(), first.points.back()}) {
    for (const TrackPoint& b : {second.points.front(), second.points.back()}) {
      if (geodesic(a.position, b.position).length <= kSameBase) {
        bases.push_back(space_point(a.position));
      }
    }
  }
  return bases;
}

/// The pieces that are not near one of the bases.
std::vector<SpacePiece> away_from(std::vector<SpacePiece> pieces,
                                  const std::vector<SpacePoint>& bases, Length radius) {
  const auto near = [&](const SpacePoint& point) {
    return std::any_of(bases.begin(), bases.end(), [&](const SpacePoint& base) {
      return distance_m(point, base) <= radius.metres();
    });
  };
  std::erase_if(pieces,
                [&](const SpacePiece& piece) { return near(piece.start) && near(piece.end); });
  return pieces;
}

/// Both tracks as they are checked.
struct Pair {
  std::vector<SpacePiece> first;
  std::vector<SpacePiece> second;
};

Pair checked_pair(const CrewTrack& first, const CrewTrack& second, const SeparationMinima& minima) {
  require(minima.uncertainty);
  const std::vector<SpacePoint> bases = shared_bases(first, second);
  return {away_from(space_track(first), bases, minima.round_shared_base),
          away_from(space_track(second), bases, minima.round_shared_base)};
}

/// Where two pieces are in conflict, the nearest that they come.
std::optional<PieceApproach> conflict(const SpacePiece& a, const SpacePiece& b,
                                      const SeparationMinima& minima) {
  const double reach_m = (minima.lateral + minima.uncertainty.lateral * 2).metres();
  if (least_possible_m(a, b) >= reach_m) return std::nullopt;
  const auto heights = height_difference(a, b);
  if (heights && *heights >= planned_height_difference(minima)) return std::nullopt;
  const auto near = piece_approach(a, b, shift_s(minima.uncertainty));
  if (!near || near->distance_m >= reach_m) return std::nullopt;
  return near;
}

bool apart(const Pair& pair, const SeparationMinima& minima) {
  bool found = false;
  visit_pairs(pair.first, pair.second, shift_s(minima.uncertainty),
              [&](const SpacePiece& a, const SpacePiece& b) {
                found = conflict(a, b, minima).has_value();
                return !found;
              });
  return !found;
}

std::string clock(Instant time) {
  const auto minutes =
      std::chrono::floor<std::chrono::minutes>(time.time_since_epoch()).count() % (24 * 60);
  return fmt::format("{:02}:{:02} UTC", minutes / 60, minutes % 60);
}

std::string cure(const CrewTrack& first, const CrewTrack& second, const SeparationMinima& minima) {
  const std::string heights =
      fmt::format("plan their heights {:.0f} ft apart", planned_height_difference(minima).feet());
  const auto later = delay_that_separates(first, second, minima, kMostDelay);
  if (later)
    return fmt::format("{}, or let {} leave {} min later", heights, second.crew, later->count());
  const auto other = delay_that_separates(second, first, minima, kMostDelay);
  if (other)
    return fmt::format("{}, or let {} leave {} min later", heights, first.crew, other->count());
  return fmt::format("{}; no delay of up to {} min separates them", heights, kMostDelay.count());
}

Finding finding(const CrewTrack& first, const CrewTrack& second, const std::vector<Conflict>& found,
                const SeparationMinima& minima) {
  const Conflict& worst = *std::min_element(
      found.begin(), found.end(),
      [](const Conflict& a, const Conflict& b) { return a.nearest.distance < b.nearest.distance; });
  const Approach& near = worst.nearest;
  Finding finding;
  finding.kind = Kind::separation;
  finding.severity = near.height_difference ? Severity::must_not_fly : Severity::caution;
  finding.crew = first.crew;
  finding.sector = first.sector;
  const std::string heights = near.height_difference ? fmt::format("heights {:.0f} ft apart",
                                                                   near.height_difference->feet())
                                                     : std::string("heights not both known");
  finding.text = fmt::format(
      "{} and {} can come within {:.1f} NM of each other, {} at {} and {} at {}, {}; {} such "
      "stretch{} between {} and {}",
      first.crew, second.crew, near.distance.nautical_miles(), first.crew, clock(near.first_time),
      second.crew, clock(near.second_time), heights, found.size(), found.size() == 1 ? "" : "es",
      clock(found.front().from), clock(found.back().to));
  finding.cure = cure(first, second, minima);
  finding.where = near.first;
  finding.when = std::chrono::floor<std::chrono::seconds>(near.first_time);
  return finding;
}

}  // namespace

Length planned_height_difference(const SeparationMinima& minima) {
  return minima.vertical + minima.uncertainty.height * 2;
}

std::optional<Approach> nearest_approach(const CrewTrack& first, const CrewTrack& second,
                                         const TrackUncertainty& uncertainty) {
  require(uncertainty);
  std::optional<Approach> best;
  visit_pairs(space_track(first), space_track(second), shift_s(uncertainty),
              [&](const SpacePiece& a, const SpacePiece& b) {
                if (best && least_possible_m(a, b) >= best->distance.metres()) return true;
                const auto near = piece_approach(a, b, shift_s(uncertainty));
                if (near && (!best || near->distance_m < best->distance.metres())) {
                  best = approach(a, b, *near);
                }
                return true;
              });
  return best;
}

std::vector<Conflict> conflicts(const CrewTrack& first, const CrewTrack& second,
                                const SeparationMinima& minima) {
  const Pair pair = checked_pair(first, second, minima);
  std::vector<Conflict> found;
  visit_pairs(pair.first, pair.second, shift_s(minima.uncertainty),
              [&](const SpacePiece& a, const SpacePiece& b) {
                const auto near = conflict(a, b, minima);
                if (!near) return true;
                const Approach here = approach(a, b, *near);
                // Pieces of the first crew come in order: a new stretch begins after a free one.
                if (found.empty() || found.back().to < instant(a.from_s)) {
                  found.push_back({instant(a.from_s), instant(a.to_s), here});
                } else {
                  found.back().to = std::max(found.back().to, instant(a.to_s));
                  if (here.distance < found.back().nearest.distance) found.back().nearest = here;
                }
                return true;
              });
  return found;
}

std::optional<std::chrono::minutes> delay_that_separates(const CrewTrack& first,
                                                         const CrewTrack& second,
                                                         const SeparationMinima& minima,
                                                         std::chrono::minutes most) {
  Pair pair = checked_pair(first, second, minima);
  for (std::chrono::minutes delay{1}; delay <= most; ++delay) {
    for (SpacePiece& piece : pair.second) {
      piece.from_s += 60;
      piece.to_s += 60;
    }
    if (apart(pair, minima)) return delay;
  }
  return std::nullopt;
}

std::vector<Finding> check_separation(const std::vector<CrewTrack>& crews,
                                      const SeparationMinima& minima) {
  std::vector<Finding> findings;
  for (std::size_t i = 0; i < crews.size(); ++i) {
    for (std::size_t j = i + 1; j < crews.size(); ++j) {
      const std::vector<Conflict> found = conflicts(crews[i], crews[j], minima);
      if (!found.empty()) findings.push_back(finding(crews[i], crews[j], found, minima));
    }
  }
  return findings;
}

}  // namespace sweepwright::hazard
