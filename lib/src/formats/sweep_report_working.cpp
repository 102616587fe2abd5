#include "formats/sweep_report_working.hpp"

#include <fmt/format.h>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"

namespace sweepwright::formats {
namespace {

using Given = SpacingAnswer::Given;
using Found = GroundAnswer::Found;

constexpr std::string_view kGiven = "given by the planner";
constexpr std::string_view kKoopman = "Koopman, Search and Screening, 1946 (from memory)";
constexpr std::string_view kEnduranceRule = "Joint Pub 3-50 Volume I, paragraph 532.B";

/// Ground teams sweep metres and walk kilometres; miles are too coarse for them.
bool is_on_foot(const SweepReport& report) {
  return report.width.width < Length::nautical_miles(0.2);
}

std::string area_text(const SweepReport& report, Area area) {
  return is_on_foot(report) ? fmt::format("{:.3f} sq km", area.square_kilometres())
                            : fmt::format("{:.2f} sq NM", area.square_nautical_miles());
}

std::string speed_text(const SweepReport& report, Speed speed) {
  return format_speed(speed, is_on_foot(report) ? SpeedUnit::kilometre_per_hour : SpeedUnit::knot,
                      1);
}

std::string hours(Duration time) {
  return fmt::format("{:.4f} h", time.count() / 3600);
}

std::string share(double value) {
  return fmt::format("{:.4f}", value);
}

void add(sweep::Working& working, std::string label, std::string expression, std::string value,
         std::string_view source = {}) {
  working.push_back(
      {std::move(label), std::move(expression), std::move(value), std::string(source)});
}

/// "Search time T = 0.85 x 4 h", and the effort that it makes.
void add_effort(const SweepReport& report, sweep::Working& working) {
  const sweep::GroundPlan& plan = report.ground->plan;
  add(working, "Search time T",
      fmt::format("{} x {} on scene", sweep::kSearchShareOfOnSceneEndurance,
                  hours(plan.on_scene_endurance)),
      hours(plan.search_time), kEnduranceRule);
  add(working, "Effort Z = W V T",
      fmt::format("{} x {} x {}", sweep::working_length(report.width.width),
                  speed_text(report, plan.search_speed), hours(plan.search_time)),
      area_text(report, plan.effort));
}

void add_spacing(const SweepReport& report, sweep::Working& working) {
  const auto& [plan, given] = *report.spacing;
  const std::string width = sweep::working_length(report.width.width);
  const std::string coverage = share(plan.coverage.value());
  if (given == Given::effort) {
    add_effort(report, working);
    add(working, "Coverage C = Z / A",
        fmt::format("{} / {}", area_text(report, report.ground->plan.effort),
                    area_text(report, report.ground->plan.area)),
        coverage);
  } else if (given == Given::coverage) {
    add(working, "Coverage C", std::string(kGiven), coverage);
  }
  const bool from_coverage = given == Given::effort || given == Given::coverage;
  add(working, from_coverage ? "Track spacing S = W / C" : "Track spacing S",
      from_coverage             ? fmt::format("{} / {}", width, coverage)
      : given == Given::spacing ? std::string(kGiven)
                                : fmt::format("the widest that gives a probability of {}",
                                              share(plan.probability_of_detection.value())),
      sweep::working_length(plan.spacing));
  if (!from_coverage) {
    add(working, "Coverage C = W / S",
        fmt::format("{} / {}", width, sweep::working_length(plan.spacing)), coverage);
  }
  if (report.model.layout == sweep::EffortLayout::random) {
    add(working, "Effort at random", "no even spacing: S is the area for each length of track", "");
  }
  add(working, "Probability of detection", sweep::description(report.model),
      share(plan.probability_of_detection.value()), kKoopman);
}

void add_ground(const SweepReport& report, sweep::Working& working) {
  const auto& [plan, found] = *report.ground;
  const std::string coverage = share(report.spacing->plan.coverage.value());
  if (found == Found::area) {
    add_effort(report, working);
    add(working, "Area reached A = Z / C",
        fmt::format("{} / {}", area_text(report, plan.effort), coverage),
        area_text(report, plan.area));
  } else if (found == Found::hours) {
    add(working, "Effort needed Z = C A",
        fmt::format("{} x {}", coverage, area_text(report, plan.area)),
        area_text(report, plan.effort));
    add(working, "Search time T = Z / (W V)",
        fmt::format("{} / ({} x {})", area_text(report, plan.effort),
                    sweep::working_length(report.width.width),
                    speed_text(report, plan.search_speed)),
        hours(plan.search_time));
    add(working, "On-scene endurance needed",
        fmt::format("{} / {}", hours(plan.search_time), sweep::kSearchShareOfOnSceneEndurance),
        hours(plan.on_scene_endurance), kEnduranceRule);
  }
}

void add_sector_search(const SweepReport& report, sweep::Working& working) {
  const sweep::SectorSearch& search = *report.sector_search;
  const Length width = report.width.width;
  const Length spacing = sweep::mid_leg_track_spacing(search);
  add(working, "Mid-leg track spacing S",
      fmt::format("{} x sin(90 deg / {}), {} sectors", sweep::working_length(search.radius),
                  search.lines, 2 * search.lines),
      sweep::working_length(spacing), "Joint Pub 3-50 Volume I, paragraph 552.F");
  add(working, "Mid-leg coverage C = W / S",
      fmt::format("{} / {}", sweep::working_length(width), sweep::working_length(spacing)),
      share(sweep::coverage(width, spacing).value()));
  add(working, "Probability by that spacing", sweep::description(report.model),
      share(sweep::mid_leg_probability(report.model.law, width, search).value()), kKoopman);
  add(working, "Probability over the disc", "mean of the same at the spacing of each place",
      share(sweep::sector_search_probability(report.model.law, width, search).value()));
}

void add_cumulative(const SweepReport& report, sweep::Working& working) {
  std::string missed;
  for (const sweep::Probability each : report.earlier_searches) {
    missed += fmt::format("{}(1 - {:.4g})", missed.empty() ? "" : " x ", each.value());
  }
  missed += fmt::format(" x (1 - {:.4f})", this_probability(report)->value());
  add(working, "Cumulative probability", "1 - " + missed,
      share(cumulative_probability(report)->value()));
}

}  // namespace

std::optional<sweep::Probability> this_probability(const SweepReport& report) {
  if (report.sector_search) {
    return sweep::sector_search_probability(report.model.law, report.width.width,
                                            *report.sector_search);
  }
  if (report.spacing) return report.spacing->plan.probability_of_detection;
  return std::nullopt;
}

std::optional<sweep::Probability> cumulative_probability(const SweepReport& report) {
  const std::optional<sweep::Probability> now = this_probability(report);
  if (!now || report.earlier_searches.empty()) return std::nullopt;
  std::vector<sweep::Probability> all = report.earlier_searches;
  all.push_back(*now);
  return sweep::cumulative_probability_of_detection(all);
}

sweep::Working report_working(const SweepReport& report) {
  sweep::Working working = report.width.working;
  if (report.spacing) add_spacing(report, working);
  if (report.ground) add_ground(report, working);
  if (report.sector_search) add_sector_search(report, working);
  if (cumulative_probability(report)) add_cumulative(report, working);
  return working;
}

std::vector<std::string> report_cautions(const SweepReport& report) {
  std::vector<std::string> cautions = report.width.cautions;
  if (this_probability(report)) {
    cautions.emplace_back(
        "A probability of detection counts only for an object that is in the area, searched as "
        "planned");
  }
  if (cumulative_probability(report)) {
    cautions.emplace_back(
        "Cumulative probability takes the searches for independent: what hid the object from one "
        "must not hide it from the next; the same crew, legs and light find less");
  }
  cautions.insert(cautions.end(), kCautions.begin(), kCautions.end());
  return cautions;
}

}  // namespace sweepwright::formats
