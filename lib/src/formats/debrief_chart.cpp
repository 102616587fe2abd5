#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "formats/chart_axes.hpp"
#include "formats/map_style.hpp"
#include "formats/sheet_figures.hpp"
#include "sweepwright/formats/debrief_map.hpp"
#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kHeight = 72;  // mm
constexpr double kLeft = 20;
constexpr double kRight = 26;  // room for callsigns
constexpr double kTop = 8;
constexpr double kFoot = 14;
constexpr double kLineWidth = 0.6;

/// Effort swept by one sortie, in square nautical miles, by hours since the first of all.
struct Curve {
  std::size_t assignment = 0;
  std::string name;
  std::vector<std::pair<double, double>> points;
};

double hours(Instant from, Instant to) {
  return std::chrono::duration<double, std::ratio<3600>>(to - from).count();
}

std::optional<Instant> first_time(const debrief::Debriefing& found) {
  std::optional<Instant> first;
  for (const debrief::SortieResult& result : found.sorties) {
    const auto& begin = result.sortie.on_scene;
    if (begin && (!first || *begin < *first)) first = begin;
  }
  return first;
}

Curve curve(const debrief::Sortie& sortie, const std::string& name, Instant first) {
  Curve curve{sortie.input.assignment, name, {}};
  double swept = 0;
  for (const debrief::FlownPiece& piece : sortie.pieces) {
    if (!piece.from || !piece.to || piece.swept.sweep_width <= Length()) continue;
    if (curve.points.empty()) curve.points.emplace_back(hours(first, *piece.from), 0.0);
    // Through time that does not count the curve is level.
    curve.points.emplace_back(hours(first, *piece.from), swept);
    swept += debrief::effort(piece.swept).square_nautical_miles();
    curve.points.emplace_back(hours(first, *piece.to), swept);
  }
  return curve;
}

/// Points nearer than a hair to the line between their neighbours need not be drawn.
PaperLine thinned(const Axes& axes, const Curve& curve) {
  PaperLine line;
  for (std::size_t i = 0; i < curve.points.size(); ++i) {
    const PaperPoint at = axes.at(curve.points[i].first, curve.points[i].second);
    const bool last = i + 1 == curve.points.size();
    if (!line.empty() && !last &&
        std::hypot(at.x_mm - line.back().x_mm, at.y_mm - line.back().y_mm) < 0.3) {
      continue;
    }
    line.push_back(at);
  }
  return line;
}

double rounded_up(double value, double step) {
  return step * std::max(1.0, std::ceil(value / step - 1e-9));
}

}  // namespace

Drawing draw_debrief_chart(const DebriefOutcome& outcome, double width_mm) {
  Drawing drawing;
  drawing.size = {width_mm, kHeight};
  drawing.title = "Effort swept as time went on";
  drawing.description = drawing.title;
  const std::optional<Instant> first = first_time(outcome.debriefing);
  if (!first) {
    drawing.elements.push_back(
        {Text{{width_mm / 2, kHeight / 2}, "The logs have no times: no chart over time"}});
    return drawing;
  }
  std::vector<Curve> curves;
  double latest = 0;
  double most = 0;
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const plan::Assignment& assignment = outcome.plan.assignments[result.sortie.input.assignment];
    curves.push_back(curve(result.sortie, assignment.unit.callsign, *first));
    if (curves.back().points.empty()) continue;
    latest = std::max(latest, curves.back().points.back().first);
    most = std::max(most, curves.back().points.back().second);
  }
  const double hour_step = tick_step(std::max(latest, 0.5));
  const double effort_step = tick_step(std::max(most, 1.0));
  const auto decimals = [](double step) { return step < 1 ? 1 : 0; };
  const Axes axes(
      {kLeft, kTop, width_mm - kRight, kHeight - kFoot},
      {fmt::format("Hours since {} local",
                   clock_text(std::chrono::floor<std::chrono::seconds>(*first),
                              outcome.plan.mission.incident.offset_from_utc)),
       0, rounded_up(latest, hour_step), hour_step, decimals(hour_step)},
      {"Effort, NM\u00b2", 0, rounded_up(most, effort_step), effort_step, decimals(effort_step)});
  drawing.elements = axes.elements();
  drawing.elements.push_back({Text{{kLeft, kTop / 2},
                                   drawing.title + ": length of track x sweep width",
                                   style::kNeighbourName,
                                   TextAnchor::start,
                                   true}});
  std::vector<double> taken;
  for (const Curve& one : curves) {
    if (one.points.empty()) continue;
    const CrewStyle crew = crew_style(one.assignment);
    PaperLine line = thinned(axes, one);
    const PaperPoint end = line.back();
    drawing.elements.push_back(
        {Line{std::move(line), Stroke{crew.colour, kLineWidth, crew.dash_mm}}});
    double y = end.y_mm;
    const auto is_taken = [&] {
      return std::any_of(taken.begin(), taken.end(),
                         [&](double other) { return std::abs(other - y) < 3.2; });
    };
    while (is_taken()) y += 1;
    taken.push_back(y);
    Text name{{end.x_mm + 1.2, y}, one.name, style::kSmallText, TextAnchor::start, true};
    name.colour = crew.colour;
    name.halo_mm = style::kHalo;
    drawing.elements.push_back({name});
  }
  return drawing;
}

}  // namespace sweepwright::formats
