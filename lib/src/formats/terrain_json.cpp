#include <cmath>
#include <nlohmann/json.hpp>

#include "sweepwright/formats/terrain_report.hpp"

namespace sweepwright::formats {
namespace {

using Json = nlohmann::ordered_json;

/// Centimetres: further digits mean nothing here.
double metres(Length length) {
  return std::round(length.metres() * 100) / 100;
}

Json metres(std::optional<Length> length) {
  return length ? Json(metres(*length)) : Json();
}

Json height_of(const std::optional<terrain::HighGround>& ground) {
  return ground ? Json(metres(ground->height)) : Json();
}

Json place(Position position) {
  const auto rounded = [](Angle angle) { return std::round(angle.degrees() * 1e7) / 1e7; };
  return {rounded(position.longitude()), rounded(position.latitude())};
}

Json steps_json(const terrain::HeightPlan& plan) {
  Json steps = Json::array();
  Length from;
  for (const terrain::HeightStep& step : plan) {
    steps.push_back({{"from_m", metres(from)},
                     {"to_m", metres(step.to)},
                     {"altitude_m", metres(step.altitude)}});
    from = step.to;
  }
  return steps;
}

Json runs_json(const TerrainReport& report) {
  Json runs = Json::array();
  for (const terrain::ClearanceRun& run : report.clearance.runs) {
    runs.push_back({{"from_m", metres(report.corridor.pieces[run.first].from)},
                    {"to_m", metres(report.corridor.pieces[run.last].to)},
                    {"class", terrain::name(run.clearance)}});
  }
  return runs;
}

Json profile_json(const TerrainReport& report) {
  Json profile = Json::array();
  for (std::size_t i = 0; i < report.corridor.pieces.size(); ++i) {
    const terrain::CorridorPiece& piece = report.corridor.pieces[i];
    profile.push_back({{"leg", piece.leg + 1},
                       {"from_m", metres(piece.from)},
                       {"to_m", metres(piece.to)},
                       {"start", place(piece.start)},
                       {"ground_m", height_of(piece.below)},
                       {"highest_m", height_of(piece.highest)},
                       {"known", piece.known},
                       {"class", terrain::name(report.clearance.pieces[i])}});
  }
  return profile;
}

void add_least(Json& json, const TerrainReport& report) {
  if (!report.clearance.least) {
    json["least_clearance_m"] = nullptr;
    return;
  }
  const terrain::LeastClearance& least = *report.clearance.least;
  json["least_clearance_m"] = metres(least.clearance);
  json["least_clearance_at"] = place(least.ground.position);
  json["least_clearance_leg"] = report.corridor.pieces[least.piece].leg + 1;
  json["least_clearance_distance_m"] = metres(report.corridor.pieces[least.piece].from);
}

}  // namespace

std::string terrain_report_json(const TerrainReport& report, const Provenance& provenance) {
  const auto top = terrain::highest(report.corridor);
  Json json{{"verdict", terrain::name(verdict(report))},
            {"length_m", metres(terrain::length(report.corridor))},
            {"corridor_half_width_m", metres(report.corridor.half_width)},
            {"altitude_m", metres(report.question.altitude)},
            {"minimum_clearance_m", metres(report.question.minimum)},
            {"highest_m", height_of(top)}};
  if (top) json["highest_at"] = place(top->position);
  add_least(json, report);
  json["safe_altitude_m"] =
      metres(terrain::safe_altitude(report.corridor, report.question.minimum));
  json["heights"] = steps_json(report.heights);
  json["safe_altitude_by_leg"] = steps_json(report.safe_legs);
  json["clearance"] = runs_json(report);
  json["profile"] = profile_json(report);
  json["models"] = report.models;
  json["remarks"] = report.remarks;
  json["provenance"] = Json::parse(provenance_json(provenance).text);
  json["caution"] = kTerrainCaution;
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace sweepwright::formats
