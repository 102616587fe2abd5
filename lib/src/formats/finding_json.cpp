#include "formats/finding_json.hpp"

#include "sweepwright/formats/time_text.hpp"
#include "sweepwright/hazard/leg_name.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

ordered_json place(Position position) {
  return {position.longitude().degrees(), position.latitude().degrees()};
}

ordered_json metres(const std::optional<Length>& length) {
  return length ? ordered_json(length->metres()) : ordered_json();
}

ordered_json leg_value(const flight::FlownPattern& flown, std::size_t index,
                       const hazard::LegTerrain& leg) {
  ordered_json json{{"row", index + 1},
                    {"name", hazard::leg_name(flown, index)},
                    {"planned_m", metres(hazard::highest_planned(leg))},
                    {"safe_altitude_m", metres(leg.safe)},
                    {"known", terrain::known(leg.corridor)},
                    {"least_clearance_m", nullptr}};
  if (const auto top = terrain::highest(leg.corridor)) {
    json["highest_m"] = top->height.metres();
    json["highest_at"] = place(top->position);
  }
  if (leg.clearance.least) {
    json["least_clearance_m"] = leg.clearance.least->clearance.metres();
    json["least_clearance_at"] = place(leg.clearance.least->ground.position);
  }
  return json;
}

}  // namespace

ordered_json findings_value(const std::vector<hazard::Finding>& findings) {
  ordered_json list = ordered_json::array();
  for (const hazard::Finding& finding : findings) {
    ordered_json json{{"severity", hazard::name(finding.severity)},
                      {"kind", hazard::name(finding.kind)},
                      {"callsign", finding.crew},
                      {"sector", finding.sector},
                      {"text", finding.text},
                      {"cure", finding.cure}};
    if (finding.leg) json["row"] = *finding.leg;
    if (finding.where) json["position"] = place(*finding.where);
    if (finding.when) json["time"] = format_utc(*finding.when);
    list.push_back(std::move(json));
  }
  return list;
}

ordered_json terrain_value(const plan::Mission& mission, const plan::Assignment& assignment) {
  if (!assignment.terrain) return nullptr;
  const hazard::TerrainCheck& check = *assignment.terrain;
  ordered_json json{{"minimum_clearance_m", check.task.minimum.metres()},
                    {"minimum_source", assignment.unit.minima.value_or(mission.minima).source},
                    {"corridor_half_width_m", check.task.half_width.metres()},
                    {"safe_altitude_m", metres(check.safe)},
                    {"legs", ordered_json::array()}};
  for (std::size_t i = 0; i < check.legs.size(); ++i) {
    json["legs"].push_back(leg_value(assignment.flown, i, check.legs[i]));
  }
  return json;
}

}  // namespace sweepwright::formats
