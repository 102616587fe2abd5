#include "sweepwright/formats/terrain_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using terrain::ClearanceClass;

terrain::HeightPlan planned_heights(const terrain::Corridor& corridor,
                                    const TerrainQuestion& question) {
  if (question.altitude) return terrain::constant_height(corridor, *question.altitude);
  switch (question.steps) {
    case HeightSteps::leg:
      return terrain::safe_heights_by_leg(corridor, question.minimum);
    case HeightSteps::length:
      return terrain::safe_heights_in_steps(corridor, question.shortest_step, question.minimum);
    case HeightSteps::line:
      break;
  }
  return {{terrain::length(corridor), terrain::safe_altitude(corridor, question.minimum)}};
}

std::string both_units(Length height) {
  return fmt::format("{} ({})", format_length(height, LengthUnit::foot, 0),
                     format_length(height, LengthUnit::metre, 0));
}

std::string miles(Length length) {
  return fmt::format("{:.2f}", length.nautical_miles());
}

std::string line_of(std::string_view what, const std::string& text) {
  return fmt::format("{:<18} {}\n", what, text);
}

std::string height_or_none(std::optional<Length> height) {
  return height ? both_units(*height) : "none: the ground is not known everywhere";
}

std::string planned_text(const TerrainReport& report) {
  if (report.question.altitude) return both_units(*report.question.altitude);
  if (report.heights.size() == 1) {
    return height_or_none(report.heights[0].altitude) + ", the least that keeps the minimum";
  }
  return fmt::format("{} steps, each the least that keeps the minimum", report.heights.size());
}

/// `not checked` in capitals: it must not be overlooked.
std::string class_text(ClearanceClass clearance) {
  switch (clearance) {
    case ClearanceClass::below_minimum:
      return "BELOW MINIMUM";
    case ClearanceClass::not_checked:
      return "NOT CHECKED";
    default:
      return std::string(terrain::name(clearance));
  }
}

std::string least_text(const TerrainReport& report) {
  const terrain::LeastClearance& least = *report.clearance.least;
  const terrain::CorridorPiece& piece = report.corridor.pieces[least.piece];
  return fmt::format("{} at {} NM of leg {}, over {} at {}", both_units(least.clearance),
                     miles(piece.from), piece.leg + 1, both_units(least.ground.height),
                     format_position(least.ground.position));
}

std::string steps_table(const terrain::HeightPlan& plan, std::string_view what) {
  std::string text = fmt::format("\n{:<8} {:>8} {:>8}  {}\n", what, "from NM", "to NM", "height");
  Length from;
  for (std::size_t i = 0; i < plan.size(); ++i) {
    text += fmt::format("{:<8} {:>8} {:>8}  {}\n", i + 1, miles(from), miles(plan[i].to),
                        height_or_none(plan[i].altitude));
    from = plan[i].to;
  }
  return text;
}

std::string runs_table(const TerrainReport& report) {
  std::string text = fmt::format("\n{:>8} {:>8}  {}\n", "from NM", "to NM", "clearance");
  for (const terrain::ClearanceRun& run : report.clearance.runs) {
    text += fmt::format("{:>8} {:>8}  {}\n", miles(report.corridor.pieces[run.first].from),
                        miles(report.corridor.pieces[run.last].to), class_text(run.clearance));
  }
  return text;
}

}  // namespace

TerrainReport make_terrain_report(const terrain::ElevationModel& model,
                                  const TerrainQuestion& question,
                                  std::vector<std::string> remarks) {
  TerrainReport report;
  report.question = question;
  report.corridor = terrain::make_corridor(model, question.path, {question.half_width, Length()});
  report.heights = planned_heights(report.corridor, question);
  report.safe_legs = terrain::safe_heights_by_leg(report.corridor, question.minimum);
  report.clearance = terrain::check_clearance(report.corridor, report.heights, question.minimum);
  for (const terrain::ElevationTile& tile : model.tiles()) {
    report.models.push_back(fmt::format("{}: heights above {}", tile.source,
                                        tile.vertical_reference.empty()
                                            ? "mean sea level, as the file does not say"
                                            : tile.vertical_reference));
  }
  report.remarks = std::move(remarks);
  return report;
}

ClearanceClass verdict(const TerrainReport& report) {
  for (const ClearanceClass worst :
       {ClearanceClass::below_minimum, ClearanceClass::not_checked, ClearanceClass::marginal}) {
    if (terrain::has(report.clearance, worst)) return worst;
  }
  return ClearanceClass::clear;
}

std::string terrain_report_text(const TerrainReport& report) {
  const auto top = terrain::highest(report.corridor);
  std::string text = line_of("Verdict", class_text(verdict(report)));
  text += line_of(
      "Line", fmt::format("{} NM in {} leg{}, corridor {} to each side",
                          miles(terrain::length(report.corridor)), report.question.path.size() - 1,
                          report.question.path.size() == 2 ? "" : "s",
                          format_length(report.corridor.half_width, LengthUnit::nautical_mile, 2)));
  text += line_of("Planned height", planned_text(report));
  text += line_of("Minimum clearance", both_units(report.question.minimum));
  text += line_of("Highest ground", top ? fmt::format("{} at {}", both_units(top->height),
                                                      format_position(top->position))
                                        : "not known");
  text += line_of("Least clearance", report.clearance.least ? least_text(report) : "not known");
  text += line_of("Safe height",
                  height_or_none(terrain::safe_altitude(report.corridor, report.question.minimum)));
  text += runs_table(report);
  const bool in_steps = !report.question.altitude && report.question.steps == HeightSteps::length;
  text += in_steps ? steps_table(report.heights, "step") : steps_table(report.safe_legs, "leg");
  text += "\n";
  for (const std::string& model : report.models) text += model + "\n";
  for (const std::string& remark : report.remarks) text += "Caution: " + remark + "\n";
  text += fmt::format("{}\n", kTerrainCaution);
  for (const std::string_view caution : kCautions) text += fmt::format("{}\n", caution);
  return text;
}

}  // namespace sweepwright::formats
