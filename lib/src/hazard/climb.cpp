#include "sweepwright/hazard/climb.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "hazard/words.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/hazard/leg_name.hpp"

namespace sweepwright::hazard {
namespace {

constexpr Length kNoClimb = Length::feet(1);
/// Ground this near the base is that of the take-off: its crew knows it. Own choice.
constexpr Length kRoundTheBase = Length::nautical_miles(0.5);

std::string miles(Length length) {
  return format_length(length, LengthUnit::nautical_mile, 1);
}

/// A part of the flight at one height, distances from the flight's start.
struct Level {
  std::size_t leg = 0;
  Length from;
  Length to;
  Length altitude;
};

/// Those with a known height, in order.
std::vector<Level> levels(const TerrainCheck& check) {
  std::vector<Level> all;
  Length done;
  for (std::size_t i = 0; i < check.legs.size(); ++i) {
    Length from = done;
    for (const terrain::HeightStep& step : check.legs[i].heights) {
      if (step.altitude) all.push_back({i, from, done + step.to, *step.altitude});
      from = done + step.to;
    }
    done = from;
  }
  return all;
}

class Report {
 public:
  Report(const flight::FlownPattern& flown, const TerrainCheck& check, const CrewName& crew)
      : flown_(flown), check_(check), climb_(check.task.climb.value()), crew_(crew) {}

  Finding& add(Severity severity, std::size_t leg, std::string text, std::string cure) {
    findings_.push_back({severity, Kind::climb, crew_.crew, crew_.sector, static_cast<int>(leg) + 1,
                         std::move(text), std::move(cure), std::nullopt, std::nullopt});
    return findings_.back();
  }

  /// Straight out from the base, at the height that it stands at.
  void from_base(Length base) {
    const LegTerrain& out = check_.legs.front();
    if (!out.heights.front().altitude) return;
    const Length wanted = *out.heights.front().altitude;
    if (wanted - base < kNoClimb) return;
    const std::optional<Length> whole = distance(wanted - base, 0);
    if (!whole) return;
    // A base at the commence search point has no way out to climb on.
    const bool has_way = !flown_.legs.front().searching;
    if (has_way && meets_ground(out, base, wanted, *whole)) return;
    const Length room = has_way ? terrain::length(out.corridor) : Length();
    if (*whole <= room) return;
    add(Severity::caution, 0,
        fmt::format("the way out is {} long, the climb from the base at {} to {} takes {}",
                    miles(room), feet(base), feet(wanted), miles(*whole)),
        fmt::format("climb over the base first: {} are reached {} after take-off", feet(wanted),
                    format_duration((wanted - base) / climb_.rate)));
  }

  /// From part to part.
  void between_levels() {
    const std::vector<Level> all = levels(check_);
    for (std::size_t i = 1; i < all.size(); ++i) {
      const Length rise = all[i].altitude - all[i - 1].altitude;
      if (rise < kNoClimb) continue;
      const std::optional<Length> needed = distance(rise, all[i - 1].leg);
      if (!needed) return;
      const Length room = all[i - 1].to - all[i - 1].from;
      if (*needed <= room) continue;
      const Length begin = all[i - 1].to - *needed;
      if (begin < Length()) {
        add(Severity::must_not_fly, all[i].leg,
            fmt::format("{} at {} cannot be reached: the climb of {} takes {}",
                        leg_name(flown_, all[i].leg), feet(all[i].altitude), feet(rise),
                        miles(*needed)),
            "climb over the base first, or plan one height for all");
        continue;
      }
      add(Severity::caution, all[i].leg,
          fmt::format("{} is {} higher than what comes before it, {} long; the climb takes {}",
                      leg_name(flown_, all[i].leg), feet(rise), miles(room), miles(*needed)),
          fmt::format("begin the climb on {}, or circle to {} before going on",
                      leg_name(flown_, leg_at(all, begin)), feet(all[i].altitude)));
    }
  }

  std::vector<Finding> take() { return std::move(findings_); }

 private:
  /// True, with a finding, where the climb from `base` does not clear the ground in time.
  bool meets_ground(const LegTerrain& out, Length base, Length wanted, Length whole) {
    for (const terrain::CorridorPiece& piece : out.corridor.pieces) {
      const Length height = base + (wanted - base) * (piece.from / whole);
      if (height >= wanted) return false;
      if (!piece.highest || climbs_clear(piece, base, height)) continue;
      const Length safe = terrain::safe_altitude(piece.highest->height, check_.task.minimum);
      add(Severity::caution, 0,
          fmt::format(
              "climbing straight out, only {} is reached {} from the base, where the ground "
              "stands at {}",
              feet(height), miles(piece.from), feet(piece.highest->height)),
          fmt::format("climb to {} before going on; from the base to {} takes {}", feet(safe),
                      feet(wanted), format_duration((wanted - base) / climb_.rate)))
          .where = piece.start;
      return true;
    }
    return false;
  }

  /// The minimum where it has been gained since the base; before, beyond the base's own half mile,
  /// half of what has been gained, above the ground that the line itself crosses.
  bool climbs_clear(const terrain::CorridorPiece& piece, Length base, Length height) const {
    if (height >= base + check_.task.minimum) {
      return height - piece.highest->height >= check_.task.minimum;
    }
    if (piece.from < kRoundTheBase || !piece.below) return true;
    return height - piece.below->height >= (height - base) / 2;
  }

  static std::size_t leg_at(const std::vector<Level>& all, Length distance) {
    std::size_t leg = 0;
    for (const Level& level : all) {
      if (level.from <= distance) leg = level.leg;
    }
    return leg;
  }

  /// None, with a finding, where the climb's airspeed does not make the track good.
  std::optional<Length> distance(Length height, std::size_t leg) {
    try {
      return climb_distance(climb_, height, flown_.legs[leg], check_.task.aircraft);
    } catch (const Error& error) {
      add(Severity::must_not_fly, leg,
          fmt::format("{} cannot be flown at the climb's airspeed: {}", leg_name(flown_, leg),
                      error.message()),
          "climb over the base, or at a greater airspeed");
      return std::nullopt;
    }
  }

  const flight::FlownPattern& flown_;
  const TerrainCheck& check_;
  const ClimbPerformance& climb_;
  const CrewName& crew_;
  std::vector<Finding> findings_;
};

Finding unchecked(const CrewName& crew, std::string text, std::string cure) {
  return {Severity::not_checked, Kind::climb,     crew.crew,    crew.sector, std::nullopt,
          std::move(text),       std::move(cure), std::nullopt, std::nullopt};
}

}  // namespace

std::vector<Finding> climb_findings(const terrain::ElevationModel& model,
                                    const flight::FlownPattern& flown, const TerrainCheck& check,
                                    const CrewName& crew) {
  if (!check.task.climb) {
    return {unchecked(crew, "climbs were not checked: no climb performance is given",
                      "add \"climb\" to the unit: its rate and airspeed at the planned heights")};
  }
  Report report(flown, check, crew);
  const bool from_base = check.task.base.has_value();
  const std::optional<Length> base =
      from_base ? terrain::height(model, *check.task.base) : std::nullopt;
  if (base) report.from_base(*base);
  report.between_levels();
  std::vector<Finding> findings = report.take();
  if (from_base && !base) {
    findings.push_back(unchecked(crew,
                                 "the climb from the base was not checked: the elevation model "
                                 "does not know the base's height",
                                 "add the missing tiles to \"elevation\""));
  }
  return findings;
}

}  // namespace sweepwright::hazard
