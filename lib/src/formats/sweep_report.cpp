#include "sweepwright/formats/sweep_report.hpp"

#include <nlohmann/json.hpp>

#include "formats/sweep_report_working.hpp"
#include "formats/working_json.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

ordered_json sector_search_json(const SweepReport& report) {
  const sweep::SectorSearch& search = *report.sector_search;
  const Length width = report.width.width;
  return {{"radius_m", search.radius.metres()},
          {"sectors", 2 * search.lines},
          {"mid_leg_spacing_m", sweep::mid_leg_track_spacing(search).metres()},
          {"probability_of_detection_mid_leg",
           sweep::mid_leg_probability(report.model.law, width, search).value()},
          {"probability_of_detection",
           sweep::sector_search_probability(report.model.law, width, search).value()}};
}

/// The law's name; a lateral range curve takes its place, and random effort that of both.
std::string_view law_name(const sweep::DetectionModel& model) {
  if (model.layout == sweep::EffortLayout::random) {
    return sweep::name(sweep::DetectionLaw::exponential);
  }
  return model.curve ? "lateral-range" : sweep::name(model.law);
}

}  // namespace

std::string sweep_report_text(const SweepReport& report) {
  std::string text = sweep::format_working(report_working(report));
  text += "\n";
  for (const std::string& caution : report_cautions(report)) text += caution + "\n";
  return text;
}

std::string sweep_report_json(const SweepReport& report, const Provenance& provenance) {
  ordered_json json{{"sweep_width_m", report.width.width.metres()},
                    {"uncorrected_sweep_width_m", report.width.uncorrected.metres()},
                    {"detection_law", law_name(report.model)},
                    {"effort_layout", sweep::name(report.model.layout)}};
  if (report.spacing) {
    const sweep::SpacingPlan& plan = report.spacing->plan;
    json["spacing_m"] = plan.spacing.metres();
    json["coverage"] = plan.coverage.value();
    json["probability_of_detection"] = plan.probability_of_detection.value();
  }
  if (report.ground) {
    const sweep::GroundPlan& plan = report.ground->plan;
    json["area_m2"] = plan.area.square_metres();
    json["search_speed_mps"] = plan.search_speed.metres_per_second();
    json["on_scene_endurance_s"] = plan.on_scene_endurance.count();
    json["search_time_s"] = plan.search_time.count();
    json["effort_m2"] = plan.effort.square_metres();
  }
  if (report.sector_search) json["sector_search"] = sector_search_json(report);
  if (const auto cumulative = cumulative_probability(report)) {
    json["cumulative_probability_of_detection"] = cumulative->value();
  }
  json["working"] = working_json(report_working(report));
  json["cautions"] = report_cautions(report);
  json["provenance"] = ordered_json::parse(provenance_json(provenance).text);
  return json.dump(2) + "\n";
}

}  // namespace sweepwright::formats
