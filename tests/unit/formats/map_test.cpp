// The maps of a plan.
//
// Checks against the outside: lengths on the paper against geodesic lengths (GeographicLib, through
// the plan) and against the map's own scale bars; contrast by WCAG 2.1, definition of contrast
// ratio and success criterion 1.4.11 (3 to 1); lightness by CIE 15:2004 (L*, L*a*b*); colour-blind
// sight by the matrices for full severity of Machado, Oliveira and Fernandes (2009) [from memory].
#include "sweepwright/formats/map.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>

#include "drawn.hpp"
#include "plan_cases.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

using test::all;
using test::words;

/// The search legs in the order and the direction in which they are flown.
std::vector<pattern::Leg> search_legs(const plan::Assignment& assignment) {
  std::vector<pattern::Leg> legs;
  for (const flight::FlownLeg& leg : assignment.flown.legs) {
    if (leg.searching && leg.leg.kind == pattern::LegKind::search) legs.push_back(leg.leg);
  }
  return legs;
}

/// The lines of search legs: drawn in the crew's colour, heavier than turns and cross legs, from
/// end to end, in the order flown.
std::vector<Line> leg_lines(const Drawing& drawing, const plan::Assignment& assignment,
                            std::size_t crew) {
  std::vector<Line> out;
  for (const Line& line : all<Line>(drawing)) {
    constexpr double kHeavy = 0.3;
    if (line.stroke.colour == crew_style(crew).colour && line.stroke.width_mm > kHeavy) {
      out.push_back(line);
    }
  }
  out.resize(std::min(out.size(), search_legs(assignment).size()));
  return out;
}

double length_mm(const Line& line) {
  return std::hypot(line.points[1].x_mm - line.points[0].x_mm,
                    line.points[1].y_mm - line.points[0].y_mm);
}

/// From the bar's 0 to its label, over the number on the label.
double scale_bar_mm_per_unit(const Drawing& drawing, const std::string& unit) {
  const std::vector<Text> texts = all<Text>(drawing);
  for (std::size_t i = 0; i + 1 < texts.size(); ++i) {
    if (texts[i].text != "0" || texts[i].anchor != TextAnchor::start) continue;
    std::size_t digits = 0;
    const double length = std::stod(texts[i + 1].text, &digits);
    if (texts[i + 1].text.substr(digits) != " " + unit) continue;
    return (texts[i + 1].at.x_mm - texts[i].at.x_mm) / length;
  }
  ADD_FAILURE() << "no scale bar in " << unit;
  return 0;
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
    const std::vector<pattern::Leg> legs = search_legs(assignment);
    ASSERT_EQ(lines.size(), legs.size()) << name;
    const double scale = length_mm(lines[0]) / legs[0].line.length.nautical_miles();
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const double expected = legs[i].line.length.nautical_miles() * scale;
      EXPECT_NEAR(length_mm(lines[i]), expected, 0.001 * expected + 1e-9) << name << " leg " << i;
    }
    EXPECT_NEAR(scale_bar_mm_per_unit(map, "NM"), scale, 0.002 * scale) << name;
    EXPECT_NEAR(scale_bar_mm_per_unit(map, "km"), scale / 1.852, 0.002 * scale) << name;
    // The international mile of 1959 is 1609.344 m.
    EXPECT_NEAR(scale_bar_mm_per_unit(map, "SM"), scale * 1.609344 / 1.852, 0.002 * scale) << name;
  }
}

TEST(Map, TrueNorthIsUpInTheMiddle) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    if (name == "pole") continue;  // north turns too fast there to speak of one direction
    const plan::Plan plan = make_plan(mission);
    const plan::Assignment& assignment = plan.assignments[0];
    const std::vector<Line> lines = leg_lines(draw_sector_map(plan, 0, {117, 110}), assignment, 0);
    const Position centre = middle(assignment.sector);
    const std::vector<pattern::Leg> legs = search_legs(assignment);
    ASSERT_EQ(lines.size(), legs.size()) << name;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const pattern::Leg& leg = legs[i];
      const Arrival half = travel(leg.from, leg.line.start_track, leg.line.length / 2);
      // Meridians turn against each other by the difference of longitude times sin(latitude).
      const double convergence =
          normalized_180(half.position.longitude() - centre.longitude()).degrees() *
          std::sin(centre.latitude().radians());
      const PaperPoint from = lines[i].points[0];
      const PaperPoint to = lines[i].points[1];
      const double drawn = std::atan2(to.x_mm - from.x_mm, from.y_mm - to.y_mm) * kDegreesPerRadian;
      const Angle difference =
          turn_between(half.track - Angle::degrees(convergence), TrueDirection::degrees(drawn));
      EXPECT_NEAR(difference.degrees(), 0, 0.1) << name << " leg " << i;
    }
  }
}

/// The line from the foot of the arrow of magnetic north to its tip.
std::optional<double> magnetic_arrow_deg(const Drawing& drawing) {
  for (const Line& line : all<Line>(drawing)) {
    if (line.points.size() != 2 || line.stroke.width_mm != 0.35 || !line.stroke.dash_mm.empty() ||
        std::abs(length_mm(line) - 7) > 1e-9) {
      continue;
    }
    return std::atan2(line.points[1].x_mm - line.points[0].x_mm,
                      line.points[0].y_mm - line.points[1].y_mm) *
           kDegreesPerRadian;
  }
  return std::nullopt;
}

// The variation itself is checked against the model's published test values in the magnetic room.
TEST(Map, MagneticNorthIsTurnedByTheVariation) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    const Drawing map = draw_sector_map(plan, 0, {117, 110});
    const auto& variation = plan.assignments[0].flown.variation;
    ASSERT_TRUE(variation.has_value()) << name;
    const auto arrow = magnetic_arrow_deg(map);
    ASSERT_TRUE(arrow.has_value()) << name;
    EXPECT_NEAR(normalized_180(Angle::degrees(*arrow) - variation->angle).degrees(), 0, 1e-6)
        << name;
    const std::string words_of = magnetic::format_variation(*variation);
    const std::string figure = "VAR " + words_of.substr(0, words_of.find(" ("));
    const std::multiset<std::string> text = words(map);
    EXPECT_TRUE(std::any_of(text.begin(), text.end(), [&](const std::string& word) {
      return word.substr(0, figure.size()) == figure;
    })) << name;
  }
}

TEST(Map, SectorMapNamesWhatACrewLooksFor) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  const std::multiset<std::string> text = words(draw_sector_map(plan, 0, {117, 110}));
  for (const char* word :
       {"A1", "CSP", "END", "TRUE N", "MAG N", "B", "C", "D", "commence search point",
        "end of pattern", "turns, cross legs", "next sector", "grid cell", "Dryfork Field"}) {
    EXPECT_EQ(text.count(word), 1U) << word;
  }
  // The corner and the number of the first leg, and both once more in the legend.
  EXPECT_EQ(text.count("A"), 2U);
  EXPECT_EQ(text.count("1"), 2U);
  EXPECT_EQ(text.count("A2 HERON 1") + text.count("A2"), 1U);
  EXPECT_EQ(text.count(plan.assignments[0].cells[0].name), 1U);
}

TEST(Map, OverviewNamesAllCrewsAndCarriesACaution) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  const std::multiset<std::string> text = words(draw_overview_map(plan, {190, 150}));
  for (const char* word : {"A1", "A2", "FALCON 2", "HERON 1", "A1 FALCON 2", "A2 HERON 1",
                           "search area", "TRUE N", "Overdue aircraft, Antler Range"}) {
    EXPECT_EQ(text.count(word), 1U) << word;
  }
  EXPECT_EQ(text.count(std::string(kCautions.front())), 1U);
}

TEST(Map, FarBaseBecomesAnArrowWithTheWayHome) {
  plan::Mission mission = test::mountain_mission();
  for (plan::SearchUnit& unit : mission.units) {
    unit.base = {"Farfield", test::place(40.0, -117.0)};
  }
  const plan::Plan plan = make_plan(mission);
  const Position start = commence_search_point(plan.assignments[0].pattern);
  const GeodesicLine home = geodesic(start, test::place(40.0, -117.0));
  const auto tenths = std::llround(home.length.nautical_miles() * 10);
  const std::string expected =
      std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " NM, ";
  const std::multiset<std::string> text = words(draw_sector_map(plan, 0, {117, 110}));
  EXPECT_TRUE(std::any_of(text.begin(), text.end(), [&](const std::string& word) {
    return word.substr(0, expected.size()) == expected;
  })) << expected;
  EXPECT_EQ(text.count("Farfield"), 1U);
  EXPECT_EQ(text.count("to base from CSP"), 1U);
}

TEST(Map, LongitudesAreWrittenOnBothSidesOfTheAntimeridian) {
  const plan::Plan plan = make_plan(test::missions_everywhere()[1].mission);
  const std::multiset<std::string> text = words(draw_overview_map(plan, {190, 150}));
  EXPECT_EQ(text.count("180°"), 1U);
  EXPECT_EQ(text.count("179°50'E"), 1U);
  EXPECT_EQ(text.count("179°50'W"), 1U);
}

TEST(Map, LabelsKeepClearOfEachOther) {
  for (const auto& [name, mission] : test::missions_everywhere()) {
    const plan::Plan plan = make_plan(mission);
    for (const Drawing& map : all_maps(plan, {150, 130})) {
      const std::vector<Text> texts = all<Text>(map);
      for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t j = i + 1; j < texts.size(); ++j) {
          EXPECT_TRUE(test::are_apart(texts[i], texts[j]))
              << name << ", " << map.title << ": '" << texts[i].text << "' and '" << texts[j].text
              << "'";
        }
      }
    }
  }
}

TEST(Map, RefusesAMissingAssignmentAndPaperTooSmall) {
  const plan::Plan plan = make_plan(test::mountain_mission());
  EXPECT_THROW(draw_sector_map(plan, 2, {117, 110}), Error);
  EXPECT_THROW(draw_sector_map(plan, 0, {79, 110}), Error);
  EXPECT_THROW(draw_overview_map(plan, {190, 69}), Error);
}

TEST(CrewStyle, NeighboursDifferInColourAndInLinePattern) {  // P3
  for (std::size_t crew = 0; crew < 40; ++crew) {
    EXPECT_FALSE(crew_style(crew).colour == crew_style(crew + 1).colour) << crew;
    EXPECT_NE(crew_style(crew).dash_mm, crew_style(crew + 1).dash_mm) << crew;
  }
}

TEST(CrewStyle, SixtyFourCrewsHaveStylesOfTheirOwn) {
  std::set<std::pair<std::string, std::vector<double>>> styles;
  for (std::size_t crew = 0; crew < kCrewColours * kCrewColours; ++crew) {
    styles.emplace(crew_style(crew).colour_name, crew_style(crew).dash_mm);
  }
  EXPECT_EQ(styles.size(), kCrewColours * kCrewColours);
}

using Linear = std::array<double, 3>;

double linear(std::uint8_t value) {  // IEC 61966-2-1
  const double v = value / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

Linear linear(Colour colour) {
  return {linear(colour.red), linear(colour.green), linear(colour.blue)};
}

double luminance(const Linear& c) {
  return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
}

/// CIE L*a*b*, white D65.
Linear lab(const Linear& c) {
  const auto f = [](double t) {
    return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  };
  const double x = f((0.4124564 * c[0] + 0.3575761 * c[1] + 0.1804375 * c[2]) / 0.95047);
  const double y = f(0.2126729 * c[0] + 0.7151522 * c[1] + 0.0721750 * c[2]);
  const double z = f((0.0193339 * c[0] + 0.1191920 * c[1] + 0.9503041 * c[2]) / 1.08883);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

/// Normal sight, then without red, green and blue cones.
const std::array<std::array<Linear, 3>, 4> kSights{{{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
                                                    {{{0.152286, 1.052583, -0.204868},
                                                      {0.114503, 0.786281, 0.099216},
                                                      {-0.003882, -0.048116, 1.051998}}},
                                                    {{{0.367322, 0.860646, -0.227968},
                                                      {0.280085, 0.672501, 0.047413},
                                                      {-0.011820, 0.042940, 0.968881}}},
                                                    {{{1.255528, -0.076749, -0.178779},
                                                      {-0.078411, 0.930809, 0.147602},
                                                      {0.004733, 0.691367, 0.303900}}}}};

Linear seen(const std::array<Linear, 3>& sight, const Linear& c) {
  Linear out{};
  for (std::size_t i = 0; i < 3; ++i) {
    out[i] = std::clamp(sight[i][0] * c[0] + sight[i][1] * c[1] + sight[i][2] * c[2], 0.0, 1.0);
  }
  return out;
}

TEST(CrewStyle, ColoursStandOutOnPaperAndFromEachOtherInGrey) {
  std::vector<double> lightness;
  for (std::size_t crew = 0; crew < kCrewColours; ++crew) {
    const Linear colour = linear(crew_style(crew).colour);
    EXPECT_GE(1.05 / (luminance(colour) + 0.05), 3) << crew_style(crew).colour_name;
    lightness.push_back(lab(colour)[0]);
  }
  std::sort(lightness.begin(), lightness.end());
  for (std::size_t i = 0; i + 1 < lightness.size(); ++i) {
    EXPECT_GE(lightness[i + 1] - lightness[i], 6);
  }
}

TEST(CrewStyle, ColoursDifferToColourBlindEyes) {
  for (const auto& sight : kSights) {
    for (std::size_t i = 0; i < kCrewColours; ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const Linear a = lab(seen(sight, linear(crew_style(i).colour)));
        const Linear b = lab(seen(sight, linear(crew_style(j).colour)));
        EXPECT_GE(std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]), 26)
            << crew_style(i).colour_name << " and " << crew_style(j).colour_name;
      }
    }
  }
}

}  // namespace
}  // namespace sweepwright::formats
