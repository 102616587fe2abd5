#include "sweepwright/formats/sweep_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "formats/chart_axes.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/sweep/parallel_sweeps.hpp"

namespace sweepwright::formats {
namespace {

using sweep::Coverage;
using sweep::DetectionLaw;

constexpr double kMostCoverage = 3;
constexpr double kCoverageStep = 0.02;
constexpr PaperBox kLawBox{18, 14, 172, 96};
constexpr double kPanelHeight = 112;
constexpr PaperBox kCurveBox{18, 12 + kPanelHeight, 172, 60 + kPanelHeight};
constexpr double kCurvePanelHeight = 76;
constexpr double kCautionHeight = 7;
constexpr double kWidth = 180;

/// Colours that colour-blind readers tell apart, and dashes for those who print in black [Okabe and
/// Ito, Color Universal Design, 2008, from memory].
struct CurveStyle {
  DetectionLaw law;
  Stroke stroke;
};
const std::array<CurveStyle, 3> kStyles{
    {{DetectionLaw::definite_range, {{0, 0, 0}, 0.45, {}}},
     {DetectionLaw::inverse_cube, {{0, 114, 178}, 0.6, {}}},
     {DetectionLaw::exponential, {{213, 94, 0}, 0.6, {2.5, 1.2}}}}};
const Stroke kOwnCurve{{0, 158, 115}, 0.7, {4, 1, 0.8, 1}};

Text label(PaperPoint at, std::string text, Colour colour, TextAnchor anchor) {
  Text result{at, std::move(text), 3.2, anchor};
  result.colour = colour;
  result.halo_mm = 0.5;
  return result;
}

/// A row of the key in the lower right of the chart: a piece of the curve's line and its name.
void add_key(const Axes& axes, int row, const Stroke& stroke, std::string text,
             std::vector<Element>& all) {
  const double probability = 0.42 - 0.07 * row;
  all.push_back({Line{{axes.at(1.3, probability), axes.at(1.48, probability)}, stroke}});
  all.push_back(
      {label(axes.at(1.54, probability), std::move(text), stroke.colour, TextAnchor::start)});
}

Axes law_axes() {
  return Axes(kLawBox, {"Coverage C = W / S", 0, kMostCoverage, 0.5, 1},
              {"Probability of detection", 0, 1, 0.2, 1});
}

void add_law_curves(const Axes& axes, std::vector<Element>& all) {
  for (const CurveStyle& style : kStyles) {
    Line line{{}, style.stroke};
    for (double c = 0; c <= kMostCoverage + 1e-9; c += kCoverageStep) {
      line.points.push_back(
          axes.at(c, sweep::probability_of_detection(style.law, Coverage(c)).value()));
    }
    all.push_back({line});
  }
  int row = 0;
  for (const CurveStyle& style : kStyles) {
    add_key(axes, row++, style.stroke,
            fmt::format("{}: {}", sweep::name(style.law), sweep::formula(style.law)), all);
  }
}

/// What parallel sweeps find under the planner's own curve.
void add_own_curve(const Axes& axes, const sweep::LateralRangeCurve& curve,
                   std::vector<Element>& all) {
  const Length width = sweep::area_under(curve);
  const Length reach = curve.points().back().offset - curve.points().front().offset;
  Line line{{axes.at(0, 0)}, kOwnCurve};
  for (double c = kCoverageStep; c <= kMostCoverage + 1e-9; c += kCoverageStep) {
    const Length spacing = width / c;
    if (spacing < sweep::kLeastSpacingOfReach * reach) break;
    line.points.push_back(axes.at(c, sweep::parallel_sweeps_probability(curve, spacing).value()));
  }
  all.push_back({line});
  add_key(axes, static_cast<int>(kStyles.size()), kOwnCurve,
          "your lateral range curve, parallel sweeps", all);
}

void add_planned(const Axes& axes, const SweepReport& report, std::vector<Element>& all) {
  const sweep::SpacingPlan& plan = report.spacing->plan;
  const double coverage = std::min(plan.coverage.value(), kMostCoverage);
  const PaperPoint point = axes.at(coverage, plan.probability_of_detection.value());
  const Stroke guide{kBlack, 0.25, {1, 1}};
  all.push_back({Line{{axes.at(coverage, 0), point}, guide}});
  all.push_back({Line{{axes.at(0, plan.probability_of_detection.value()), point}, guide}});
  all.push_back({Disc{point, 1.3, Stroke{kWhite, 0.4, {}}, kBlack}});
  Text text = label({0, axes.at(0, 0.05).y_mm},
                    fmt::format("this search: S {}, C {:.2f}{}, probability {:.2f}",
                                sweep::working_length(plan.spacing), plan.coverage.value(),
                                plan.coverage.value() > kMostCoverage ? " (beyond the chart)" : "",
                                plan.probability_of_detection.value()),
                    kBlack, TextAnchor::end);
  text.at.x_mm = axes.box().right_mm - 2;
  text.bold = true;
  all.push_back({text});
}

/// The curve itself, and the box of the same area that the sweep width is.
void add_lateral_range(const sweep::LateralRangeCurve& curve, std::vector<Element>& all) {
  const Length width = sweep::area_under(curve);
  const double far = std::max(std::abs(curve.points().front().offset.metres()),
                              std::abs(curve.points().back().offset.metres()));
  const double most = std::max(far, width.metres() / 2) * 1.08;
  const Axes axes(
      kCurveBox,
      {"Distance from the track line, m (left below 0)", -most, most, tick_step(2 * most), 0},
      {"Chance in one pass", 0, 1, 0.2, 1});
  for (Element& element : axes.elements()) all.push_back(std::move(element));
  const double half = width.metres() / 2;
  all.push_back({Shape{{{axes.at(-half, 0), axes.at(-half, 1), axes.at(half, 1), axes.at(half, 0)}},
                       Stroke{kBlack, 0.4, {2, 1}},
                       std::nullopt,
                       Hatch{{150, 150, 150}, 0.12, 2.5, 45}}});
  Line line{{axes.at(curve.points().front().offset.metres(), 0)}, kOwnCurve};
  line.stroke.dash_mm.clear();
  for (const sweep::LateralRangePoint& point : curve.points()) {
    line.points.push_back(axes.at(point.offset.metres(), point.probability.value()));
  }
  line.points.push_back(axes.at(curve.points().back().offset.metres(), 0));
  all.push_back({line});
  all.push_back(
      {label({axes.box().right_mm, axes.box().top_mm - 5},
             fmt::format("W = {:.0f} m: the dashed box has the curve's area", width.metres()),
             kBlack, TextAnchor::end)});
}

Text heading(double top, std::string text) {
  Text result{{kLawBox.left_mm, top + 7}, std::move(text), 4.2, TextAnchor::start};
  result.bold = true;
  return result;
}

/// Panels from the top, then the caution.
Drawing finished(std::vector<Element> all, double panels_mm, std::string description) {
  std::string caution = fmt::format("{} {}", kCautions[0], kCautions[2]);
  all.push_back({Text{{kLawBox.left_mm, panels_mm + kCautionHeight / 2 - 1},
                      std::move(caution),
                      2.8,
                      TextAnchor::start}});
  return {{kWidth, panels_mm + kCautionHeight},
          "Probability of detection against coverage",
          std::move(description),
          std::move(all)};
}

std::vector<Element> law_panel(const Axes& axes) {
  std::vector<Element> all{{heading(0, "Probability of detection against coverage")}};
  for (Element& element : axes.elements()) all.push_back(std::move(element));
  add_law_curves(axes, all);
  return all;
}

}  // namespace

Drawing draw_law_chart() {
  return finished(
      law_panel(law_axes()), kPanelHeight,
      "Three curves that rise from 0: definite range as a straight line to 1 at coverage "
      "1, inverse cube below it, exponential lowest.");
}

Drawing draw_sweep_chart(const SweepReport& report) {
  const Axes axes = law_axes();
  std::vector<Element> all = law_panel(axes);
  double height = kPanelHeight;
  if (report.model.curve) add_own_curve(axes, *report.model.curve, all);
  if (report.spacing) add_planned(axes, report, all);
  if (report.model.curve) {
    all.push_back({heading(kPanelHeight, "Lateral range curve")});
    add_lateral_range(*report.model.curve, all);
    height += kCurvePanelHeight;
  }
  return finished(std::move(all), height,
                  "The curves of the detection laws, with the coverage and probability of this "
                  "search marked.");
}

}  // namespace sweepwright::formats
