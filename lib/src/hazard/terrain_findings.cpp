#include "sweepwright/hazard/terrain_findings.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "hazard/words.hpp"
#include "sweepwright/flight/flown_path.hpp"
#include "sweepwright/hazard/leg_name.hpp"
#include "sweepwright/terrain/doubts.hpp"

namespace sweepwright::hazard {
namespace {

using terrain::ClearanceClass;

std::string cure_for(const TerrainCheck& check, const LegTerrain& leg) {
  if (!leg.safe) return "plan other ground for it, or give a model that knows the ground";
  std::string cure = fmt::format("fly this leg at {} or higher", feet(*leg.safe));
  if (check.safe) cure += fmt::format(", the pattern at {}", feet(*check.safe));
  return cure + ", or search other ground";
}

class Report {
 public:
  Report(const terrain::ElevationModel& model, const flight::FlownPattern& flown,
         const TerrainCheck& check, const CrewName& crew)
      : model_(model), flown_(flown), check_(check), crew_(crew) {}

  std::vector<Finding> findings() {
    for (std::size_t i = 0; i < check_.legs.size(); ++i) below_minimum(i);
    not_checked();
    ground_ahead();
    height_above_ground();
    return std::move(findings_);
  }

 private:
  Finding& add(Severity severity, std::string text, std::string cure) {
    findings_.push_back({severity, Kind::terrain, crew_.crew, crew_.sector, std::nullopt,
                         std::move(text), std::move(cure), std::nullopt, std::nullopt});
    return findings_.back();
  }

  void below_minimum(std::size_t index) {
    const LegTerrain& leg = check_.legs[index];
    if (!has(leg.clearance, ClearanceClass::below_minimum)) return;
    const terrain::LeastClearance& least = leg.clearance.least.value();
    const std::string air = least.clearance < Length()
                                ? fmt::format("is {} below the ground", feet(-least.clearance))
                                : fmt::format("clears the ground by {}", feet(least.clearance));
    Finding& finding = add(Severity::must_not_fly,
                           fmt::format("{}: {} {}, the minimum is {}; the ground stands at {}",
                                       leg_name(flown_, index), feet(least.altitude), air,
                                       feet(check_.task.minimum), feet(least.ground.height)),
                           cure_for(check_, leg));
    finding.leg = static_cast<int>(index) + 1;
    finding.where = least.ground.position;
  }

  void not_checked() {
    std::vector<std::string> legs;
    std::optional<Position> where;
    for (std::size_t i = 0; i < check_.legs.size(); ++i) {
      const LegTerrain& leg = check_.legs[i];
      if (terrain::known(leg.corridor)) continue;
      legs.push_back(leg_name(flown_, i));
      if (!where) where = unknown_place(leg);
    }
    if (legs.empty()) return;
    add(Severity::not_checked,
        fmt::format("the elevation model does not know all the ground of {}: no height there is "
                    "known to be safe",
                    listed(legs)),
        "add the missing tiles to \"elevation\", or check these legs on charts")
        .where = where;
  }

  static Position unknown_place(const LegTerrain& leg) {
    const auto& pieces = leg.corridor.pieces;
    return std::find_if(pieces.begin(), pieces.end(),
                        [](const terrain::CorridorPiece& piece) { return !piece.known; })
        ->start;
  }

  /// What a turn that is begun late leads to.
  void ground_ahead() {
    std::vector<std::string> legs;
    std::optional<terrain::HighGround> worst;
    Length worst_over;
    const std::vector<flight::FlownLegPath> paths = flight::flown_paths(flown_);
    for (std::size_t i = 0; i < check_.legs.size(); ++i) {
      const LegTerrain& leg = check_.legs[i];
      if (!flown_.legs[i].searching || !leg.heights.back().altitude) continue;
      const auto ahead = ground_beyond(paths[i], flown_.legs[i].triangle.ground_speed);
      if (!ahead) continue;
      const Length over = ahead->height + check_.task.minimum - *leg.heights.back().altitude;
      if (!(over > Length())) continue;
      legs.push_back(leg_name(flown_, i));
      if (worst && over <= worst_over) continue;
      worst = ahead;
      worst_over = over;
    }
    if (!worst) return;
    add(Severity::caution,
        fmt::format("within a minute straight on beyond the end of {} the ground rises to less "
                    "than the minimum below the planned height: up to {}",
                    listed(legs), feet(worst->height)),
        "begin these turns in good time, or fly higher")
        .where = worst->position;
  }

  std::optional<terrain::HighGround> ground_beyond(const flight::FlownLegPath& path,
                                                   Speed ground_speed) const {
    const Position end = path.straight.back().position;
    const Position before = path.straight[path.straight.size() - 2].position;
    const GeodesicLine line = geodesic(before, end);
    if (!(line.length > Length())) return std::nullopt;
    const Position ahead = travel(end, line.end_track, ground_speed * kLookAhead).position;
    if (ahead == end) return std::nullopt;
    return terrain::highest(
        terrain::make_corridor(model_, {end, ahead}, {check_.task.half_width, {}}));
  }

  void height_above_ground() {
    if (!check_.task.search_height) return;
    const Length wanted = *check_.task.search_height;
    if (!check_.task.altitude && wanted < check_.task.minimum) {
      add(Severity::caution,
          fmt::format("the search height of {} is under the minimum clearance: legs are planned "
                      "at the minimum of {}, and the sweep width is that of the search height",
                      feet(wanted), feet(check_.task.minimum)),
          "raise the search height, or state the minimum that your rules allow");
    }
    std::vector<std::string> legs;
    Length most;
    for (std::size_t i = 0; i < check_.legs.size(); ++i) {
      if (flown_.legs[i].leg.kind != pattern::LegKind::search || !flown_.legs[i].searching)
        continue;
      const Length height = height_over_most(check_.legs[i]);
      if (!(height > wanted * kHighAboveGround)) continue;
      legs.push_back(leg_name(flown_, i));
      most = std::max(most, height);
    }
    if (legs.empty()) return;
    add(Severity::note,
        fmt::format("half or more of {} is flown at more than {:.0f} times the search height above "
                    "the ground, up to {}: less is seen there than planned",
                    listed(legs), kHighAboveGround, feet(most)),
        "plan heights by leg or in steps, or legs along the slope");
  }

  /// The height above the ground under the line that half of the leg has or exceeds.
  static Length height_over_most(const LegTerrain& leg) {
    std::vector<std::pair<Length, Length>> heights;  // above ground, and over what distance
    Length whole;
    auto step = leg.heights.begin();
    for (const terrain::CorridorPiece& piece : leg.corridor.pieces) {
      while (step + 1 != leg.heights.end() && step->to <= piece.from) ++step;
      if (!piece.below || !step->altitude) continue;
      heights.emplace_back(*step->altitude - piece.below->height, piece.to - piece.from);
      whole += piece.to - piece.from;
    }
    std::sort(heights.begin(), heights.end());
    Length passed;
    for (const auto& [height, distance] : heights) {
      passed += distance;
      if (passed * 2 >= whole) return height;
    }
    return {};
  }

  const terrain::ElevationModel& model_;
  const flight::FlownPattern& flown_;
  const TerrainCheck& check_;
  const CrewName& crew_;
  std::vector<Finding> findings_;
};

}  // namespace

std::vector<Finding> terrain_findings(const terrain::ElevationModel& model,
                                      const flight::FlownPattern& flown, const TerrainCheck& check,
                                      const CrewName& crew) {
  return Report(model, flown, check, crew).findings();
}

std::vector<Finding> model_findings(const terrain::ElevationModel& model) {
  std::vector<Finding> findings;
  for (const std::string& doubt : terrain::doubts(model)) {
    Finding finding;
    finding.severity = Severity::caution;
    finding.text = "elevation model " + doubt;
    finding.cure = "check the file, its unit and its gaps before relying on any clearance";
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace sweepwright::hazard
