#include "sweepwright/hazard/turning_room.hpp"

#include <fmt/format.h>

#include <optional>

#include "hazard/air.hpp"
#include "hazard/words.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/flight/flown_path.hpp"
#include "sweepwright/flight/turn.hpp"
#include "sweepwright/hazard/leg_name.hpp"

namespace sweepwright::hazard {
namespace {

struct Narrow {
  std::size_t leg = 0;
  Position place;
  Length room;
  Length needed;
};

std::string miles(Length length) {
  return format_length(length, LengthUnit::nautical_mile, 2);
}

/// How far it is to a wall in a direction; none when there is none within `reach`.
std::optional<Length> wall(const terrain::ElevationModel& model, Position place,
                           TrueDirection direction, Length reach, Length top) {
  const Position end = travel(place, direction, reach).position;
  const terrain::Corridor look =
      terrain::make_corridor(model, {place, end}, {kRoomWidth, kRoomWidth});
  for (const terrain::CorridorPiece& piece : look.pieces) {
    if (piece.highest && piece.highest->height > top) return piece.from;
  }
  return std::nullopt;
}

/// The height planned at a distance along a leg; the lower one where a step ends.
std::optional<Length> planned_at(const LegTerrain& leg, Length distance) {
  std::optional<Length> lowest;
  for (const terrain::HeightStep& step : leg.heights) {
    if (step.to < distance) continue;
    if (!step.altitude) return std::nullopt;
    lowest = lowest ? std::min(*lowest, *step.altitude) : *step.altitude;
    if (step.to > distance) break;
  }
  return lowest;
}

class Surveyor {
 public:
  Surveyor(const terrain::ElevationModel& model, const TerrainCheck& check)
      : model_(model), check_(check) {}

  void look_along(std::size_t leg, const flight::FlownLegPath& path, Length needed) {
    const Position from = path.straight.front().position;
    const Position to = path.straight.back().position;
    if (from == to) return;
    const LegTerrain& ground = check_.legs[leg];
    const terrain::Corridor wide = terrain::make_corridor(model_, {from, to}, {needed, kRoomStep});
    if (!terrain::known(wide)) unknown_.push_back(leg);
    for (const terrain::CorridorPiece& piece : wide.pieces) {
      const std::optional<Length> planned = planned_at(ground, piece.from);
      if (!planned || !piece.highest) continue;
      const Length top = *planned - check_.task.minimum;
      if (piece.highest->height <= top) continue;
      look_across(leg, piece, needed, top);
    }
  }

  const std::vector<std::size_t>& narrow_legs() const { return narrow_; }
  const std::vector<std::size_t>& unknown_legs() const { return unknown_; }
  const std::optional<Narrow>& worst() const { return worst_; }

 private:
  void look_across(std::size_t leg, const terrain::CorridorPiece& piece, Length needed,
                   Length top) {
    const TrueDirection track = geodesic(piece.start, piece.end).start_track;
    const auto right = wall(model_, piece.start, track + Angle::degrees(90), needed, top);
    if (!right) return;
    const auto left = wall(model_, piece.start, track - Angle::degrees(90), needed, top);
    if (!left || *left + *right >= needed) return;
    if (narrow_.empty() || narrow_.back() != leg) narrow_.push_back(leg);
    const Narrow here{leg, piece.start, *left + *right, needed};
    if (!worst_ || here.room - here.needed < worst_->room - worst_->needed) worst_ = here;
  }

  const terrain::ElevationModel& model_;
  const TerrainCheck& check_;
  std::vector<std::size_t> narrow_;
  std::vector<std::size_t> unknown_;
  std::optional<Narrow> worst_;
};

std::string legs_text(const flight::FlownPattern& flown, const std::vector<std::size_t>& legs) {
  std::vector<std::string> names;
  for (const std::size_t leg : legs) names.push_back(leg_name(flown, leg));
  return listed(names);
}

}  // namespace

Length turn_width(const flight::FlownLeg& leg, const flight::Aircraft& aircraft) {
  const Speed airspeed = true_airspeed(leg, aircraft);
  const flight::RateOfTurn rate = flight::rate_of_turn(aircraft.turning, airspeed);
  const Duration half = flight::turn_time(rate, Angle::degrees(180));
  return 2 * flight::turn_radius(rate, airspeed) + wind_of(leg, aircraft).speed * half;
}

std::vector<Finding> turning_room_findings(const terrain::ElevationModel& model,
                                           const flight::FlownPattern& flown,
                                           const TerrainCheck& check, const CrewName& crew) {
  Surveyor surveyor(model, check);
  const std::vector<flight::FlownLegPath> paths = flight::flown_paths(flown);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    if (terrain::has(check.legs[i].clearance, terrain::ClearanceClass::below_minimum)) continue;
    surveyor.look_along(i, paths[i], turn_width(flown.legs[i], check.task.aircraft));
  }
  std::vector<Finding> findings;
  const auto add = [&](Severity severity, std::string text, std::string cure) -> Finding& {
    findings.push_back({severity, Kind::turning_room, crew.crew, crew.sector, std::nullopt,
                        std::move(text), std::move(cure), std::nullopt, std::nullopt});
    return findings.back();
  };
  if (const std::optional<Narrow>& worst = surveyor.worst()) {
    Finding& finding =
        add(Severity::caution,
            fmt::format("no room to turn back at the planned height on {}: on {} the valley is {} "
                        "wide, a turn takes {}",
                        legs_text(flown, surveyor.narrow_legs()), leg_name(flown, worst->leg),
                        miles(worst->room), miles(worst->needed)),
            "fly higher there, slower, or down the valley only");
    finding.leg = static_cast<int>(worst->leg) + 1;
    finding.where = worst->place;
  }
  if (!surveyor.unknown_legs().empty()) {
    add(Severity::not_checked,
        fmt::format("turning room was not checked everywhere on {}: the elevation model ends or "
                    "has gaps within reach of a turn",
                    legs_text(flown, surveyor.unknown_legs())),
        "add the missing tiles to \"elevation\"");
  }
  return findings;
}

}  // namespace sweepwright::hazard
