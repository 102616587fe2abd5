#include "sector/cuts.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace sweepwright::sector {
namespace {

/// Half-made divisions that are kept after each round.
constexpr std::size_t kBeam = 24;
/// Ways to put a group's units into two that are tried, those nearest to halves first.
constexpr std::size_t kMostSplits = 6;
/// A part smaller than this share of its group is only the roughness of a coast.
constexpr double kLeastPart = 1e-6;
/// What a sector's shape costs, next to ground crossed outside of it: room that it leaves in the
/// rectangle round it (short legs beside long ones), and each time that it is longer than wide.
constexpr double kRoomLeft = 0.1;
constexpr double kDrawnOut = 0.03;
/// Shape is compared in steps of this, so that last digits decide nothing.
constexpr double kShapeStep = 1e-6;

double sum(std::span<const double> shares) {
  return std::accumulate(shares.begin(), shares.end(), 0.0);
}

std::span<const double> shares_of(const Group& group, std::span<const double> shares) {
  return shares.subspan(group.first_unit, group.units);
}

CutOf longer(const PlaneRegion& part) {
  return extent_right(part).extent() > extent_up(part).extent() ? CutOf::right : CutOf::up;
}

bool is_open(const Group& group) {
  return group.units > 1;
}

/// How many units go first: sums near half of the whole first, smaller counts first among equals.
std::vector<std::size_t> splits(std::span<const double> shares) {
  const double half = sum(shares) / 2;
  std::vector<std::pair<double, std::size_t>> ranked;
  double first_sum = 0;
  for (std::size_t count = 1; count < shares.size(); ++count) {
    first_sum += shares[count - 1];
    ranked.emplace_back(std::abs(first_sum - half), count);
  }
  std::sort(ranked.begin(), ranked.end());
  std::vector<std::size_t> counts;
  for (const auto& entry : ranked) counts.push_back(entry.second);
  return counts;
}

/// The cuts worth trying on a group, the usual one first: across the longer extent, into halves.
std::vector<Cut> open_cuts(const Group& group, std::span<const double> shares) {
  const std::span<const double> own = shares_of(group, shares);
  std::vector<std::size_t> counts = splits(own);
  const CutOf usual = longer(group.ground);
  if (is_convex(group.ground)) return {{usual, counts.front(), true}};
  if (counts.size() > kMostSplits) counts.resize(kMostSplits);
  // Where all units are alike, who is on which side makes no difference.
  const bool alike =
      std::all_of(own.begin(), own.end(), [&](double s) { return s == own.front(); });
  std::vector<Cut> cuts;
  for (const CutOf of : {usual, other(usual)}) {
    for (const std::size_t count : counts) {
      cuts.push_back({of, count, true});
      if (!alike) cuts.push_back({of, count, false});
    }
  }
  return cuts;
}

/// The share of the group's ground that lies on the lower side.
double low_share(const Group& group, std::span<const double> shares, const Cut& cut) {
  const std::span<const double> own = shares_of(group, shares);
  const double first = sum(own.first(cut.first_units)) / sum(own);
  return cut.first_is_low ? first : 1 - first;
}

/// Puts two groups in the place of one, cut at `at`.
void apply(Division& division, std::size_t place, const Cut& cut, Length at) {
  const Group group = std::move(division[place]);
  auto [low, high] = split(group.ground, cut.of, at);
  if (!cut.first_is_low) std::swap(low, high);
  division[place] = {std::move(low), group.first_unit, cut.first_units};
  division.insert(
      division.begin() + static_cast<std::ptrdiff_t>(place) + 1,
      {std::move(high), group.first_unit + cut.first_units, group.units - cut.first_units});
}

Fault fault(const Group& group, Area whole, bool legs_up) {
  const Area ground = plane_area(group.ground);
  const auto parts = static_cast<std::size_t>(std::count_if(
      group.ground.polygons.begin(), group.ground.polygons.end(),
      [&](const PlanePolygon& part) { return plane_area({{part}}) > kLeastPart * ground; }));
  const Length wide = extent_right(group.ground).extent();
  const Length high = extent_up(group.ground).extent();
  const CutOf legs = legs_up ? CutOf::up : longer(group.ground);
  Area shape = crossed_outside(group.ground, legs) + kRoomLeft * (wide * high - ground);
  if (is_open(group)) {
    // Cuts to come can heal all but one unit's share of it.
    shape = shape / static_cast<double>(group.units);
  } else {
    shape += kDrawnOut * (std::max(wide, high) / std::min(wide, high) - 1) * ground;
  }
  return {parts > group.units ? parts - group.units : 0, shape / whole};
}

Fault operator+(Fault a, Fault b) {
  return {a.parts_too_many + b.parts_too_many, a.shape + b.shape};
}

Fault operator-(Fault a, Fault b) {
  return {a.parts_too_many - b.parts_too_many, a.shape - b.shape};
}

struct Trial {
  Division division;
  std::vector<Cut> cuts;
  Fault fault;
};

void keep_best(std::vector<Trial>& trials, std::size_t count) {
  std::stable_sort(trials.begin(), trials.end(),
                   [](const Trial& a, const Trial& b) { return a.fault < b.fault; });
  if (trials.size() > count) trials.resize(count);
}

/// The trial with one more cut.
Trial grown(const Trial& trial, std::size_t place, const Cut& cut, std::span<const double> shares,
            Area whole, bool legs_up) {
  Trial out = trial;
  const Group& group = trial.division[place];
  out.cuts.push_back(cut);
  apply(out.division, place, cut, plane_cut(group.ground, cut.of, low_share(group, shares, cut)));
  out.fault = trial.fault - fault(group, whole, legs_up) +
              fault(out.division[place], whole, legs_up) +
              fault(out.division[place + 1], whole, legs_up);
  return out;
}

std::size_t first_open(const Division& division) {
  return static_cast<std::size_t>(std::find_if(division.begin(), division.end(), is_open) -
                                  division.begin());
}

}  // namespace

bool operator<(const Fault& a, const Fault& b) {
  if (a.parts_too_many != b.parts_too_many) return a.parts_too_many < b.parts_too_many;
  return std::round(a.shape / kShapeStep) < std::round(b.shape / kShapeStep);
}

Fault fault(const Division& division, Area whole, bool legs_up) {
  Fault all;
  for (const Group& group : division) all = all + fault(group, whole, legs_up);
  return all;
}

std::vector<std::vector<Cut>> choose_cuts(const PlaneRegion& area, std::span<const double> shares,
                                          bool legs_up) {
  const Area whole = plane_area(area);
  const Division uncut{{area, 0, shares.size()}};
  std::vector<Trial> beam{{uncut, {}, fault(uncut, whole, legs_up)}};
  for (std::size_t round = 1; round < shares.size(); ++round) {
    std::vector<Trial> next;
    for (const Trial& trial : beam) {
      const std::size_t place = first_open(trial.division);
      for (const Cut& cut : open_cuts(trial.division[place], shares)) {
        next.push_back(grown(trial, place, cut, shares, whole, legs_up));
      }
    }
    keep_best(next, kBeam);
    beam = std::move(next);
  }
  keep_best(beam, kMostChoices);
  std::vector<std::vector<Cut>> choices;
  for (Trial& trial : beam) choices.push_back(std::move(trial.cuts));
  return choices;
}

Division make_cuts(const PlaneRegion& area, std::span<const double> shares,
                   std::span<const Cut> cuts, const LocalPlane& plane) {
  Division division{{area, 0, shares.size()}};
  for (const Cut& cut : cuts) {
    const std::size_t place = first_open(division);
    const Group& group = division[place];
    apply(division, place, cut,
          ground_cut(group.ground, cut.of, low_share(group, shares, cut), plane));
  }
  return division;
}

}  // namespace sweepwright::sector
