#include "sweepwright/hazard/terrain_check.hpp"

#include <algorithm>

#include "sweepwright/base/error.hpp"
#include "sweepwright/flight/flown_path.hpp"

namespace sweepwright::hazard {
namespace {

/// Makes a path of a place.
constexpr Length kHair = Length::metres(1);

Path path_of(const flight::FlownLegPath& flown) {
  Path path;
  for (const auto* points : {&flown.straight, &flown.turn}) {
    for (const flight::PathPoint& point : *points) {
      if (path.empty() || !(path.back() == point.position)) path.push_back(point.position);
    }
  }
  if (path.size() == 1) path.push_back(travel(path[0], TrueDirection(), kHair).position);
  return path;
}

terrain::Corridor corridor_of(const terrain::ElevationModel& model,
                              const flight::FlownLegPath& flown, int leg, Length half_width) {
  terrain::Corridor corridor = terrain::make_corridor(model, path_of(flown), {half_width, {}});
  for (terrain::CorridorPiece& piece : corridor.pieces) piece.leg = leg;
  return corridor;
}

/// What search legs keep above the highest ground of their corridor.
Length wanted_clearance(const TerrainTask& task) {
  return std::max(task.minimum, task.search_height.value_or(Length()));
}

/// A height that keeps the wanted clearance over all search legs; none where ground is not known.
std::optional<Length> height_of_pattern(const flight::FlownPattern& flown,
                                        const std::vector<LegTerrain>& legs, Length clearance) {
  std::optional<Length> highest = Length::metres(-kMetresPerNauticalMile);
  for (std::size_t i = 0; i < legs.size(); ++i) {
    if (!flown.legs[i].searching) continue;
    const std::optional<Length> here = terrain::safe_altitude(legs[i].corridor, clearance);
    highest = here ? std::optional(std::max(*highest, *here)) : std::nullopt;
    if (!highest) break;
  }
  return highest;
}

/// Height gained by way over the ground; none where the track cannot be made good while climbing.
std::optional<double> climb_gradient(const ClimbPerformance& climb, const flight::FlownLeg& leg,
                                     const flight::Aircraft& aircraft) {
  try {
    constexpr Length kSome = Length::metres(1000);
    return kSome / climb_distance(climb, kSome, leg, aircraft);
  } catch (const Error&) {
    return std::nullopt;  // climb_findings() says so
  }
}

class Planner {
 public:
  Planner(const flight::FlownPattern& flown, TerrainCheck& check) : flown_(flown), check_(check) {
    if (!check.task.altitude && check.task.heights == HeightsBy::pattern) {
      of_pattern_ = height_of_pattern(flown, check.legs, wanted_clearance(check.task));
    }
  }

  terrain::HeightPlan heights(std::size_t leg) const {
    const TerrainTask& task = check_.task;
    const LegTerrain& ground = check_.legs[leg];
    const auto everywhere = [&](std::optional<Length> altitude) {
      return terrain::HeightPlan{{terrain::length(ground.corridor), altitude}};
    };
    if (task.altitude) return everywhere(*task.altitude);
    if (!flown_.legs[leg].searching) return everywhere(ground.safe);
    const Length clearance = wanted_clearance(task);
    switch (task.heights) {
      case HeightsBy::pattern:
        return everywhere(of_pattern_);
      case HeightsBy::steps:
        return terrain::safe_heights_in_steps(ground.corridor, task.shortest_step, clearance);
      case HeightsBy::leg:
        break;
    }
    return everywhere(terrain::safe_altitude(ground.corridor, clearance));
  }

 private:
  const flight::FlownPattern& flown_;
  const TerrainCheck& check_;
  std::optional<Length> of_pattern_;
};

/// From one search leg to the next a crew does not go down to come up again.
void keep_height_between_search_legs(const flight::FlownPattern& flown, TerrainCheck& check) {
  for (std::size_t i = 1; i + 1 < check.legs.size(); ++i) {
    const flight::FlownLeg& leg = flown.legs[i];
    if (!leg.searching || leg.leg.kind == pattern::LegKind::search) continue;
    if (!flown.legs[i - 1].searching || !flown.legs[i + 1].searching) continue;
    const std::optional<Length> before = check.legs[i - 1].heights.back().altitude;
    const std::optional<Length> after = check.legs[i + 1].heights.front().altitude;
    if (!before || !after) continue;
    for (terrain::HeightStep& step : check.legs[i].heights) {
      if (step.altitude) step.altitude = std::max(*step.altitude, std::min(*before, *after));
    }
  }
}

/// Where a climb must begin to have gained so much when it comes to `after`; rounded up to whole
/// hundreds of feet.
Length begin_of_climb(Length after, Length gained) {
  return terrain::safe_altitude(after - gained, Length());
}

/// From the last leg back to the first.
void raise_for_climbs(const flight::FlownPattern& flown, TerrainCheck& check) {
  if (!check.task.climb) return;
  std::optional<Length> after;
  for (std::size_t i = check.legs.size(); i-- > 0;) {
    const std::optional<double> gradient =
        climb_gradient(*check.task.climb, flown.legs[i], check.task.aircraft);
    terrain::HeightPlan& heights = check.legs[i].heights;
    for (std::size_t step = heights.size(); step-- > 0;) {
      std::optional<Length>& here = heights[step].altitude;
      const Length way = heights[step].to - (step > 0 ? heights[step - 1].to : Length());
      if (here && after && gradient) {
        here = std::max(*here, begin_of_climb(*after, way * *gradient));
      }
      after = here;
    }
  }
}

}  // namespace

TerrainCheck check_terrain(const terrain::ElevationModel& model, const flight::FlownPattern& flown,
                           const TerrainTask& task) {
  TerrainCheck check;
  check.task = task;
  int number = 0;
  for (const flight::FlownLegPath& path : flight::flown_paths(flown)) {
    LegTerrain leg;
    leg.corridor = corridor_of(model, path, number++, task.half_width);
    leg.safe = terrain::safe_altitude(leg.corridor, task.minimum);
    check.legs.push_back(std::move(leg));
  }
  const Planner planner(flown, check);
  for (std::size_t i = 0; i < check.legs.size(); ++i) check.legs[i].heights = planner.heights(i);
  if (!task.altitude) {
    keep_height_between_search_legs(flown, check);
    raise_for_climbs(flown, check);
  }
  for (LegTerrain& leg : check.legs) {
    leg.clearance = terrain::check_clearance(leg.corridor, leg.heights, task.minimum);
  }
  check.safe = height_of_pattern(flown, check.legs, task.minimum);
  return check;
}

std::optional<Length> highest_planned(const LegTerrain& leg) {
  std::optional<Length> highest;
  for (const terrain::HeightStep& step : leg.heights) {
    if (!step.altitude) return std::nullopt;
    highest = highest ? std::max(*highest, *step.altitude) : *step.altitude;
  }
  return highest;
}

}  // namespace sweepwright::hazard
