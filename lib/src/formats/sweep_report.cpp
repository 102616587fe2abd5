#include "sweepwright/formats/sweep_report.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "formats/working_json.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"

namespace sweepwright::formats {
namespace {

std::string miles(Length length) {
  return format_length(length, LengthUnit::nautical_mile, 3);
}

/// The sweep width's working, and the lines that lead from it to the probability.
sweep::Working whole_working(const SweepReport& report) {
  sweep::Working working = report.width.working;
  if (!report.planned) return working;
  const PlannedSpacing& planned = *report.planned;
  working.push_back(
      {"Track spacing S",
       fmt::format("{} / {:.4f}", miles(report.width.width), planned.coverage.value()),
       miles(planned.spacing), ""});
  working.push_back({"Coverage C = W / S",
                     fmt::format("{} / {}", miles(report.width.width), miles(planned.spacing)),
                     fmt::format("{:.4f}", planned.coverage.value()), ""});
  working.push_back({"Probability of detection",
                     fmt::format("{}: {}", sweep::name(report.law), sweep::formula(report.law)),
                     fmt::format("{:.4f}", planned.probability_of_detection.value()),
                     "Koopman, Search and Screening, 1946 (from memory)"});
  return working;
}

}  // namespace

SweepReport report_for_spacing(const sweep::SweepWidth& width, Length spacing,
                               sweep::DetectionLaw law) {
  const sweep::Coverage coverage = sweep::coverage(width.width, spacing);
  return {width, law,
          PlannedSpacing{spacing, coverage, sweep::probability_of_detection(law, coverage)}};
}

SweepReport report_for_coverage(const sweep::SweepWidth& width, sweep::Coverage coverage,
                                sweep::DetectionLaw law) {
  return {width, law,
          PlannedSpacing{sweep::track_spacing(width.width, coverage), coverage,
                         sweep::probability_of_detection(law, coverage)}};
}

SweepReport report_for_probability(const sweep::SweepWidth& width, sweep::Probability wanted,
                                   sweep::DetectionLaw law) {
  return report_for_coverage(width, sweep::coverage_for(law, wanted), law);
}

std::string sweep_report_text(const SweepReport& report) {
  std::string text = sweep::format_working(whole_working(report));
  text += "\n";
  for (const std::string& caution : report.width.cautions) text += caution + "\n";
  for (const std::string_view caution : kCautions) text += fmt::format("{}\n", caution);
  return text;
}

std::string sweep_report_json(const SweepReport& report) {
  nlohmann::ordered_json json{{"sweep_width_m", report.width.width.metres()},
                              {"uncorrected_sweep_width_m", report.width.uncorrected.metres()},
                              {"detection_law", sweep::name(report.law)}};
  if (report.planned) {
    json["spacing_m"] = report.planned->spacing.metres();
    json["coverage"] = report.planned->coverage.value();
    json["probability_of_detection"] = report.planned->probability_of_detection.value();
  }
  json["working"] = working_json(whole_working(report));
  nlohmann::ordered_json cautions = report.width.cautions;
  for (const std::string_view caution : kCautions) cautions.push_back(caution);
  json["cautions"] = cautions;
  return json.dump(2) + "\n";
}

}  // namespace sweepwright::formats
