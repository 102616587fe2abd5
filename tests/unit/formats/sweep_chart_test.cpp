#include "sweepwright/formats/sweep_chart.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using testing::Not;

SweepReport with_curve() {
  const std::vector<sweep::LateralRangePoint> points{{Length(), sweep::Probability(1)},
                                                     {Length::metres(400), sweep::Probability(0)}};
  SweepReport report{.width = sweep::given_sweep_width(Length::metres(400), "test"),
                     .model = {.curve = sweep::LateralRangeCurve(points, sweep::Sides::alike)}};
  report.spacing =
      SpacingAnswer{sweep::plan_for_spacing(report.model, report.width.width, Length::metres(400)),
                    SpacingAnswer::Given::spacing};
  return report;
}

/// Every curve's line, as long lists of points.
std::vector<Line> long_lines(const Drawing& drawing) {
  std::vector<Line> lines;
  for (const Element& element : drawing.elements) {
    const auto* line = std::get_if<Line>(&element.what);
    if (line != nullptr && line->points.size() > 20) lines.push_back(*line);
  }
  return lines;
}

void expect_all_on_paper(const Drawing& drawing) {
  for (const Element& element : drawing.elements) {
    const auto box = bounds(element);
    ASSERT_TRUE(box.has_value());
    EXPECT_GE(box->left_mm, 0);
    EXPECT_GE(box->top_mm, 0);
    EXPECT_LE(box->right_mm, drawing.size.width_mm);
    EXPECT_LE(box->bottom_mm, drawing.size.height_mm);
  }
}

TEST(SweepChart, LawsRiseFromTheCornerAndStayOnPaper) {
  const Drawing drawing = draw_law_chart();
  expect_all_on_paper(drawing);
  const std::vector<Line> curves = long_lines(drawing);
  ASSERT_EQ(curves.size(), 3u);
  for (const Line& curve : curves) {
    EXPECT_EQ(curve.points.front(), curves.front().points.front());
    for (std::size_t i = 1; i < curve.points.size(); ++i) {
      EXPECT_LE(curve.points[i].y_mm, curve.points[i - 1].y_mm + 1e-9);  // y runs down
    }
  }
  for (const std::string_view law : sweep::detection_law_names()) {
    EXPECT_THAT(write_svg(drawing), HasSubstr(std::string(law)));
  }
}

TEST(SweepChart, MarksTheSearchAndDrawsThePlannersCurve) {
  const Drawing drawing = draw_sweep_chart(with_curve());
  expect_all_on_paper(drawing);
  EXPECT_EQ(long_lines(drawing).size(), 4u);
  // 1 - 1/6 for cones that reach from leg to leg.
  EXPECT_THAT(write_svg(drawing), HasSubstr("C 1.00, probability 0.83"));
  EXPECT_THAT(write_svg(drawing), HasSubstr("W = 400 m"));
  EXPECT_GT(drawing.size.height_mm, draw_law_chart().size.height_mm);
  EXPECT_THAT(write_svg(draw_law_chart()), Not(HasSubstr("this search")));
}

TEST(SweepChart, StaysOnPaperBeyondItsScale) {
  SweepReport report = with_curve();
  report.model.curve.reset();
  report.spacing->plan = sweep::plan_for_coverage({}, report.width.width, sweep::Coverage(9));
  const Drawing drawing = draw_sweep_chart(report);
  expect_all_on_paper(drawing);
  EXPECT_THAT(write_svg(drawing), HasSubstr("C 9.00 (beyond the chart)"));
}

TEST(SweepChart, CarriesTheCaution) {
  EXPECT_THAT(write_svg(draw_law_chart()), HasSubstr("Not for navigation."));
}

}  // namespace
}  // namespace sweepwright::formats
