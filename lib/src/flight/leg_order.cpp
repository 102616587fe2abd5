#include "flight/leg_order.hpp"

#include <algorithm>
#include <cmath>

namespace sweepwright::flight {
namespace {

using pattern::Leg;
using pattern::LegKind;

/// Rows flown the other way than the one before: within this of a full turn back.
constexpr double kOppositeDegrees = 30;

bool joins_opposite_rows(const std::vector<Leg>& legs, std::size_t i) {
  if (legs[i].kind != LegKind::cross || i == 0 || i + 1 >= legs.size()) return false;
  const double turn =
      turn_between(legs[i - 1].line.end_track, legs[i + 1].line.start_track).degrees();
  return std::abs(turn) > 180 - kOppositeDegrees;
}

Leg reversed(const Leg& leg) {
  return {leg.kind,
          leg.to,
          leg.from,
          {leg.line.length, leg.line.end_track.reversed(), leg.line.start_track.reversed()}};
}

}  // namespace

std::vector<LegToFly> legs_as_drawn(const pattern::Pattern& pattern) {
  std::vector<LegToFly> legs;
  legs.reserve(pattern.legs.size());
  for (std::size_t i = 0; i < pattern.legs.size(); ++i) {
    const int number = static_cast<int>(i) + 1;
    if (joins_opposite_rows(pattern.legs, i)) {
      legs.push_back({pattern.legs[i + 1], number + 1, pattern.legs[i], number});
      ++i;
    } else {
      legs.push_back({pattern.legs[i], number, std::nullopt, std::nullopt});
    }
  }
  return legs;
}

int row_count(const std::vector<LegToFly>& legs) {
  return 1 + static_cast<int>(std::count_if(legs.begin(), legs.end(), [](const LegToFly& leg) {
           return leg.gap.has_value();
         }));
}

std::vector<int> skip_and_fill(int rows, int skip) {
  std::vector<int> order;
  for (int start = 0; start < rows;) {
    const int block = std::min(2 * skip, rows - start);
    const int half = (block + 1) / 2;
    for (int i = 0; i < half; ++i) {
      order.push_back(start + i);
      if (half + i < block) order.push_back(start + half + i);
    }
    start += block;
  }
  return order;
}

std::vector<LegToFly> legs_in_order(const std::vector<LegToFly>& drawn,
                                    const std::vector<int>& rows) {
  std::vector<std::vector<LegToFly>> parts;
  for (const LegToFly& leg : drawn) {
    if (parts.empty() || leg.gap) parts.emplace_back();
    parts.back().push_back(leg);
  }
  std::vector<LegToFly> legs;
  for (std::size_t turn = 0; turn < rows.size(); ++turn) {
    const auto row = static_cast<std::size_t>(rows[turn]);
    std::vector<LegToFly> part = parts.at(row);
    if ((row + turn) % 2 == 1) {
      std::reverse(part.begin(), part.end());
      for (LegToFly& leg : part) leg.leg = reversed(leg.leg);
    }
    for (LegToFly& leg : part) {
      leg.gap.reset();
      leg.gap_drawn.reset();
    }
    if (!legs.empty()) {
      part.front().gap =
          pattern::make_leg(LegKind::cross, legs.back().leg.to, part.front().leg.from);
    }
    legs.insert(legs.end(), part.begin(), part.end());
  }
  return legs;
}

}  // namespace sweepwright::flight
