#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/effort_report.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::formats {
namespace {

constexpr const char* kShareSource = "Joint Pub 3-50 Volume I, paragraph 532.B";
constexpr const char* kOptimumSource =
    "Koopman, Search and Screening, 1946; Stone, Theory of Optimal Search, 1975 (from memory)";

std::string square_miles(Area area) {
  return fmt::format("{:.2f} NM2", area.square_nautical_miles());
}
std::string hours(Duration time) {
  return fmt::format("{:.4f} h", time.count() / 3600);
}
std::string miles(Length length) {
  return fmt::format("{:.3f} NM", length.nautical_miles());
}
std::string knots(Speed speed) {
  return fmt::format("{:.1f} kt", speed.knots());
}

/// How the time on scene came about.
std::string time_away_text(const effort::TimeAway& away) {
  const Duration taken = away.way_out + away.way_back + away.reserve;
  if (taken.count() == 0) return "given by the planner";
  return fmt::format("endurance {} - way out {} - way back {} - reserve {}",
                     format_duration_minutes(away.endurance), format_duration_minutes(away.way_out),
                     format_duration_minutes(away.way_back), format_duration_minutes(away.reserve));
}

void add_unit(const effort::Unit& unit, sweep::Working& working) {
  if (unit.time_away) {
    const Duration on_scene = effort::on_scene_endurance(*unit.time_away);
    working.push_back({fmt::format("{}: hours on scene", unit.callsign),
                       time_away_text(*unit.time_away), hours(on_scene), ""});
    working.push_back(
        {fmt::format("{}: search time T", unit.callsign),
         fmt::format("{} x {}", sweep::kSearchShareOfOnSceneEndurance, hours(on_scene)),
         hours(unit.search_time), kShareSource});
  } else {
    working.push_back(
        {fmt::format("{}: hours on scene", unit.callsign),
         fmt::format("{} / {}", hours(unit.search_time), sweep::kSearchShareOfOnSceneEndurance),
         hours(unit.search_time / sweep::kSearchShareOfOnSceneEndurance), kShareSource});
  }
  working.push_back({fmt::format("{}: effort Z = W V T", unit.callsign),
                     fmt::format("{} x {} x {}", miles(unit.sweep_width), knots(unit.search_speed),
                                 hours(unit.search_time)),
                     square_miles(effort::search_effort(unit)), ""});
}

void add_optimum(const EffortReport& report, sweep::Working& working) {
  Area searched;
  double probable = 0;
  std::size_t cells = 0;
  for (std::size_t i = 0; i < report.belief.area.size(); ++i) {
    if (report.allocation.coverages[i] <= 0) continue;
    searched += report.belief.area[i];
    probable += report.belief.probability[i];
    ++cells;
  }
  const double threshold = report.allocation.threshold_per_m2;
  const Area mile = Area::square_nautical_miles(1);
  working.push_back({"Threshold t",
                     "coverage = ln(p / (a t)) where p / a > t, else 0; sum of a x "
                     "coverage = Z",
                     fmt::format("{:.6f} per NM2", threshold * mile.square_metres()),
                     kOptimumSource});
  working.push_back({"Searched cells", fmt::format("{} of {}", cells, report.belief.area.size()),
                     square_miles(searched), ""});
  working.push_back(
      {"Bound: POS of the optimum", "sum of p - a t over the searched cells",
       fmt::format("{:.4f} - {} x {:.6f} per NM2 = {:.4f}", probable, square_miles(searched),
                   threshold * mile.square_metres(), report.allocation.pos.value()),
       kOptimumSource});
}

void add_plan(const EffortReport& report, sweep::Working& working) {
  const effort::FlyablePlan& plan = *report.plan;
  for (std::size_t i = 0; i < report.units.size(); ++i) {
    const effort::Assignment& made = plan.assignments[i];
    const std::string& callsign = report.units[i].callsign;
    working.push_back({fmt::format("{}: coverage C = Z / A", callsign),
                       fmt::format("{} / {}", square_miles(made.effort), square_miles(made.area)),
                       fmt::format("{:.4f}", made.coverage.value()), ""});
    working.push_back(
        {fmt::format("{}: spacing S = W / C", callsign),
         fmt::format("{} / {:.4f}", miles(report.units[i].sweep_width), made.coverage.value()),
         miles(made.spacing), ""});
    working.push_back(
        {fmt::format("{}: POS = POC x POD", callsign),
         fmt::format("{:.4f} x (1 - exp(-{:.4f}))", made.poc.value(), made.coverage.value()),
         fmt::format("{:.4f}", made.pos.value()), ""});
  }
  working.push_back(
      {"POS of the plan", "sum over the units", fmt::format("{:.4f}", plan.pos.value()), ""});
  working.push_back({"Ratio to the bound",
                     fmt::format("{:.4f} / {:.4f}", plan.pos.value(), plan.bound.value()),
                     fmt::format("{:.4f}", plan.ratio), ""});
}

}  // namespace

sweep::Working effort_working(const EffortReport& report) {
  sweep::Working working;
  if (report.wanted_pos) {
    working.push_back({"Hours worked out",
                       "the least effort whose optimum gives the wanted POS; all units' hours "
                       "stretched alike",
                       fmt::format("POS {}", report.wanted_pos->value()), kOptimumSource});
  }
  for (const effort::Unit& unit : report.units) add_unit(unit, working);
  working.push_back({"Total effort Z", "sum over the units",
                     square_miles(effort::total_effort(report.units)), ""});
  add_optimum(report, working);
  if (report.plan) add_plan(report, working);
  return working;
}

}  // namespace sweepwright::formats
