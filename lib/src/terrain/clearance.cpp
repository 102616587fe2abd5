#include "sweepwright/terrain/clearance.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::terrain {
namespace {

constexpr double kMarginalShare = 1.5;  // of the minimum
constexpr double kRoundToFeet = 100;
// Heights that are whole hundreds but for rounding are not rounded up to the next.
constexpr double kRoundingFeet = 1e-6;

void check(const Corridor& corridor, const HeightPlan& heights) {
  Length before = Length::metres(-1);
  for (const HeightStep& step : heights) {
    if (!(step.to > before)) {
      throw Error(ErrorCode::value, "the steps of the planned height do not rise in distance");
    }
    before = step.to;
  }
  if (heights.empty() || heights.back().to < length(corridor) * (1 - 1e-9)) {
    throw Error(ErrorCode::value, "the planned height ends before the line does",
                "give a height for all of it");
  }
}

void check_minimum(Length minimum) {
  if (minimum >= Length()) return;
  throw Error(ErrorCode::value, fmt::format("a minimum clearance of {:.0f} ft", minimum.feet()),
              "give how much air must be left above the ground");
}

ClearanceClass class_of(const CorridorPiece& piece, std::optional<Length> altitude,
                        Length minimum) {
  if (piece.highest && altitude) {
    const Length air = *altitude - piece.highest->height;
    if (air < minimum) return ClearanceClass::below_minimum;
    if (piece.known && air < kMarginalShare * minimum) return ClearanceClass::marginal;
  }
  return piece.known && altitude ? ClearanceClass::clear : ClearanceClass::not_checked;
}

/// The lowest planned height over a piece, which may reach over several steps.
std::optional<Length> lowest_over(const CorridorPiece& piece, const HeightPlan& heights) {
  const auto begin =
      std::upper_bound(heights.begin(), heights.end(), piece.from,
                       [](Length distance, const HeightStep& step) { return distance < step.to; });
  std::optional<Length> lowest;
  for (auto step = begin; step != heights.end(); ++step) {
    if (!step->altitude) return std::nullopt;
    lowest = lowest ? std::min(*lowest, *step->altitude) : *step->altitude;
    if (step->to >= piece.to) break;
  }
  if (begin == heights.end()) lowest = heights.back().altitude;
  return lowest;
}

/// A safe height for the pieces `first` to `last`, ends included.
std::optional<Length> safe_over(const Corridor& corridor, std::size_t first, std::size_t last,
                                Length minimum) {
  Length ground =
      corridor.pieces[first].highest ? corridor.pieces[first].highest->height : Length();
  for (std::size_t i = first; i <= last; ++i) {
    const CorridorPiece& piece = corridor.pieces[i];
    if (!piece.known || !piece.highest) return std::nullopt;
    ground = std::max(ground, piece.highest->height);
  }
  return safe_altitude(ground, minimum);
}

/// One past the last piece of the leg that begins with piece `first`.
std::size_t end_of_leg(const Corridor& corridor, std::size_t first) {
  std::size_t end = first + 1;
  while (end < corridor.pieces.size() && corridor.pieces[end].leg == corridor.pieces[first].leg) {
    ++end;
  }
  return end;
}

}  // namespace

std::string_view name(ClearanceClass clearance) {
  switch (clearance) {
    case ClearanceClass::below_minimum:
      return "below minimum";
    case ClearanceClass::not_checked:
      return "not checked";
    case ClearanceClass::marginal:
      return "marginal";
    case ClearanceClass::clear:
      return "clear";
  }
  return "not checked";
}

bool has(const Clearance& clearance, ClearanceClass wanted) {
  return std::find(clearance.pieces.begin(), clearance.pieces.end(), wanted) !=
         clearance.pieces.end();
}

HeightPlan constant_height(const Corridor& corridor, Length altitude) {
  return {{length(corridor), altitude}};
}

Clearance check_clearance(const Corridor& corridor, const HeightPlan& heights, Length minimum) {
  check_minimum(minimum);
  check(corridor, heights);
  Clearance result;
  for (std::size_t i = 0; i < corridor.pieces.size(); ++i) {
    const CorridorPiece& piece = corridor.pieces[i];
    const std::optional<Length> altitude = lowest_over(piece, heights);
    const ClearanceClass here = class_of(piece, altitude, minimum);
    result.pieces.push_back(here);
    if (result.runs.empty() || result.runs.back().clearance != here) {
      result.runs.push_back({here, i, i});
    }
    result.runs.back().last = i;
    if (!piece.highest || !altitude) continue;
    const Length air = *altitude - piece.highest->height;
    if (!result.least || air < result.least->clearance) {
      result.least = LeastClearance{air, *altitude, *piece.highest, i};
    }
  }
  return result;
}

Length safe_altitude(Length ground, Length minimum) {
  check_minimum(minimum);
  const double hundreds = ((ground + minimum).feet() - kRoundingFeet) / kRoundToFeet;
  return Length::feet(std::ceil(hundreds) * kRoundToFeet);
}

std::optional<Length> safe_altitude(const Corridor& corridor, Length minimum) {
  return safe_over(corridor, 0, corridor.pieces.size() - 1, minimum);
}

HeightPlan safe_heights_by_leg(const Corridor& corridor, Length minimum) {
  HeightPlan plan;
  for (std::size_t first = 0; first < corridor.pieces.size();) {
    const std::size_t end = end_of_leg(corridor, first);
    plan.push_back({corridor.pieces[end - 1].to, safe_over(corridor, first, end - 1, minimum)});
    first = end;
  }
  return plan;
}

HeightPlan safe_heights_in_steps(const Corridor& corridor, Length shortest, Length minimum) {
  HeightPlan plan;
  for (std::size_t leg = 0; leg < corridor.pieces.size();) {
    const std::size_t end = end_of_leg(corridor, leg);
    const Length end_of_last = corridor.pieces[end - 1].to;
    std::size_t first = leg;
    for (std::size_t i = leg; i < end; ++i) {
      const Length here = corridor.pieces[i].to;
      const bool long_enough = here - corridor.pieces[first].from >= shortest;
      const bool rest_long_enough = end_of_last - here >= shortest;
      if (i + 1 < end && !(long_enough && rest_long_enough)) continue;
      plan.push_back({here, safe_over(corridor, first, i, minimum)});
      first = i + 1;
    }
    leg = end;
  }
  return plan;
}

}  // namespace sweepwright::terrain
