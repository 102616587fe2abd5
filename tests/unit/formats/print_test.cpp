// A print in black and white: maps and charts painted in grey by poppler, as a plain printer would.
//
// Contrast as WCAG 2.1 defines it (relative luminance, contrast ratio); its success criteria 1.4.3
// ask 4.5 to 1 of text and 1.4.11 ask 3 to 1 of graphics. Arm's length: 0.7 m; a letter that is
// read with ease is at least 5 minutes of arc high for sharp eyes and twice that for tired ones
// (common practice, no source), which is 2.0 mm of type size at 0.7 of capital height.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "drawn.hpp"
#include "outside_tools.hpp"
#include "plan_cases.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/pdf_writer.hpp"
#include "sweepwright/formats/timeline.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kDotsPerMillimetre = 300 / 25.4;

class Print {
 public:
  explicit Print(const Drawing& drawing)
      : page_(test::printed_grey(write_pdf(std::vector<Drawing>{drawing}, {"Print", "test", {}}),
                                 300)) {}

  /// Against white paper, at one place.
  double contrast(PaperPoint at) const {
    const double value = page_.value(static_cast<int>(at.x_mm * kDotsPerMillimetre),
                                     static_cast<int>(at.y_mm * kDotsPerMillimetre)) /
                         255.0;
    const double linear = value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
    return 1.05 / (linear + 0.05);
  }
  /// The share of a box's dots that stand out by that much at least, and at most.
  double share(const PaperBox& box, double least, double most) const {
    int count = 0;
    int hits = 0;
    for (double y = box.top_mm; y < box.bottom_mm; y += 1 / kDotsPerMillimetre) {
      for (double x = box.left_mm; x < box.right_mm; x += 1 / kDotsPerMillimetre) {
        const double found = contrast({x, y});
        ++count;
        if (found >= least && found <= most) ++hits;
      }
    }
    return count == 0 ? 0 : static_cast<double>(hits) / count;
  }
  /// The darkest dot within a millimetre's fraction of a place.
  double darkest(PaperPoint at) const {
    double most = 1;
    for (const double dx : {-0.1, 0.0, 0.1}) {
      for (const double dy : {-0.1, 0.0, 0.1}) {
        most = std::max(most, contrast({at.x_mm + dx, at.y_mm + dy}));
      }
    }
    return most;
  }

 private:
  test::GreyPage page_;
};

std::vector<Drawing> pictures(const plan::Plan& plan) {
  return {draw_sector_map(plan, 0, {117, 130}), draw_sector_map(plan, 1, {117, 130}),
          draw_overview_map(plan, {277, 190}), draw_timeline(plan, 277)};
}

constexpr double kTextContrast = 4.5;
constexpr double kLineContrast = 3;

TEST(BlackAndWhitePrint, TextsStandOut) {
  for (const Drawing& drawing : pictures(make_plan(test::mountain_mission()))) {
    const Print print(drawing);
    for (const Text& text : test::all<Text>(drawing)) {
      const PaperBox box = bounds(text);
      // Thin signs such as ':' cover little; the narrowest text here covers a twentieth.
      const double ink =
          text.colour == kWhite ? print.share(box, 1, 1.2) : print.share(box, kTextContrast, 21);
      EXPECT_GE(ink, 0.03) << drawing.title << ": " << text.text;
    }
  }
}

TEST(BlackAndWhitePrint, TextsAreLargeEnoughForArmsLength) {
  constexpr double kLeast = 2.0;  // mm
  for (const Drawing& drawing : pictures(make_plan(test::mountain_mission()))) {
    for (const Text& text : test::all<Text>(drawing)) {
      EXPECT_GE(text.size_mm, kLeast) << drawing.title << ": " << text.text;
    }
  }
}

TEST(BlackAndWhitePrint, LegsOfEachCrewStandOut) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  for (std::size_t crew = 0; crew < plan.assignments.size(); ++crew) {
    const Drawing map = draw_sector_map(plan, crew, {117, 130});
    const Print print(map);
    int legs = 0;
    for (const Line& line : test::all<Line>(map)) {
      if (!(line.stroke.colour == crew_style(crew).colour) || line.points.size() != 2) continue;
      ++legs;
      const PaperPoint a = line.points[0];
      const PaperPoint b = line.points[1];
      // A leg number with its white rim may lie over one of the places.
      int seen = 0;
      for (const double share : {0.25, 0.45, 0.7}) {
        const PaperPoint at{a.x_mm + share * (b.x_mm - a.x_mm), a.y_mm + share * (b.y_mm - a.y_mm)};
        if (print.darkest(at) >= kLineContrast) ++seen;
      }
      EXPECT_GE(seen, 2) << "leg " << legs;
    }
    EXPECT_GT(legs, 4);
  }
}

TEST(BlackAndWhitePrint, EachCrewsColourStandsOut) {
  Drawing drawing;
  drawing.size = {100, 20};
  for (std::size_t crew = 0; crew < kCrewColours; ++crew) {
    const double x = 5 + 10 * static_cast<double>(crew);
    drawing.elements.push_back(
        {Line{{{x, 2}, {x, 18}}, Stroke{crew_style(crew).colour, 0.45, {}}}});
  }
  const Print print(drawing);
  for (std::size_t crew = 0; crew < kCrewColours; ++crew) {
    EXPECT_GE(print.darkest({5 + 10 * static_cast<double>(crew), 10}), kLineContrast)
        << crew_style(crew).colour_name;
  }
}

}  // namespace
}  // namespace sweepwright::formats
