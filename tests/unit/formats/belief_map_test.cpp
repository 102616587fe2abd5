// The map of a belief: what must be on it, and that it stays on the paper.
#include "sweepwright/formats/belief_map.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "outside_tools.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/formats/belief_working.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;

std::vector<belief::Scenario> datum_at(Position place) {
  return {{1, "last seen", belief::Datum{place, Length::nautical_miles(5)}}};
}

belief::Belief belief_at(Position place) {
  const grid::Grid& grid = grid::grid("gars");
  return belief::make_belief(datum_at(place), grid, grid.level("15min"));
}

TEST(BeliefMap, P1_stays_on_the_paper_wherever_the_earth_is_awkward) {
  const PaperSize size{180, 140};
  for (const Position place : test::awkward_places()) {
    const Drawing drawing =
        draw_belief_map(belief_at(place), containment_lines(datum_at(place)), size);
    for (const Element& element : drawing.elements) {
      const auto box = bounds(element);
      if (!box) continue;
      EXPECT_GE(box->left_mm, -1e-9);
      EXPECT_GE(box->top_mm, -1e-9);
      EXPECT_LE(box->right_mm, size.width_mm + 1e-9);
      EXPECT_LE(box->bottom_mm, size.height_mm + 1e-9);
    }
  }
}

TEST(BeliefMap, P2_shows_names_shares_legend_and_caution) {
  const Position place = test::at(38.125, -117.125);
  const belief::Belief belief = belief_at(place);
  const auto draw = [&] {
    return write_svg(draw_belief_map(belief, containment_lines(datum_at(place)), {180, 140}));
  };
  const std::string svg = draw();
  EXPECT_EQ(svg, draw());
  for (const std::string text : {"Probability of containment", "or more", "under ", "holds 50 %",
                                 "holds 95 %", "Not for navigation"}) {
    EXPECT_THAT(svg, HasSubstr(text));
  }
  EXPECT_THAT(svg, HasSubstr(belief.cells[belief.cells.size() / 2].name));
}

TEST(BeliefMap, refuses_what_cannot_be_read) {
  EXPECT_THROW(draw_belief_map({}, {}, {180, 140}), Error);
  EXPECT_THROW(draw_belief_map(belief_at(test::at(38, -117)), {}, {20, 20}), Error);
}

// Against the schema of OGC KML 2.2, with xmllint.
TEST(BeliefKml, is_valid_and_shaded) {
  const Position place = test::at(-17.5, 179.9);
  StringSink sink;
  write_belief(sink, belief_at(place), BeliefFormat::kml, {},
               {{}, containment_lines(datum_at(place))});
  EXPECT_THAT(sink.text(), HasSubstr("#step-1"));
  EXPECT_THAT(sink.text(), HasSubstr("Lines of equal containment"));
  EXPECT_THAT(sink.text(), HasSubstr("lies outside the cells"));
  test::expect_valid_xml(sink.text(), test::kKmlSchema);
}

}  // namespace
}  // namespace sweepwright::formats
