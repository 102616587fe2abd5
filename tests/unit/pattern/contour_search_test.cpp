#include "sweepwright/pattern/contour_search.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "pattern_distance.hpp"
#include "support/check_table.hpp"
#include "support/command.hpp"
#include "support/elevation.hpp"
#include "support/files.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;
using testing::HasSubstr;

const Position kSummit = at(38, -117);

/// A model of 0.4 by 0.4 degrees round a place.
template <typename Height>
terrain::ElevationModel model_round(Position middle, const Height& height_m) {
  const double step = 1.0 / 600;
  return terrain::ElevationModel(
      {test::make_tile(test::degrees_lattice(middle.latitude().degrees() + 0.2,
                                             middle.longitude().degrees() - 0.2, step),
                       241, 241, height_m)});
}

Region square_round(Position middle, Length side) {
  return test::rectangle(middle, TrueDirection(), side, side);
}

ContourSearch search_of(const Region& region, Length spacing = Length::metres(1000)) {
  return {.region = region, .spacing = spacing, .clearance = Length::feet(500)};
}

std::string remarks_of(const Pattern& pattern) {
  std::string all;
  for (const std::string& remark : pattern.remarks) all += remark + "\n";
  return all;
}

class ContourCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(ContourCheck, LevelsOfAConeLieAsFarApartAsTheRuleSays) {
  const test::CheckRow& row = GetParam();
  const test::Cone cone{kSummit, 6000, row.number("rise")};
  const Length spacing = Length::metres(row.number("spacing_m"));
  const Pattern pattern =
      make_contour_search(search_of(square_round(kSummit, Length::kilometres(12)), spacing),
                          model_round(kSummit, cone));
  EXPECT_THAT(remarks_of(pattern), HasSubstr("levels are " + row.text("step_ft") + " ft apart"));
  // Rings by hand: a leg's end is as far from the summit as the cone says for its height.
  const double step_m = row.number("step_ft") * 0.3048;
  const double lowest = cone(
      travel(kSummit, TrueDirection::degrees(45), Length::metres(6000) * std::sqrt(2)).position);
  double first_level = 0;
  for (const Leg& leg : search_legs(pattern)) {
    const double height = cone(leg.to);
    if (first_level == 0) first_level = height;
    if (height < lowest + step_m) continue;  // the corners may have a level of their own
    const double steps = (first_level - height) / step_m;
    EXPECT_NEAR(steps, std::round(steps), 0.05);
  }
  // The strips meet along the slope: no ground round the summit farther than half a spacing, and
  // a twentieth for the thinned lines, from a leg.
  const FlatGround flat(kSummit);
  for (double track_deg = 0; track_deg < 360; track_deg += 15) {
    for (double away_m = 0; away_m < 5500; away_m += 110) {
      const Position place =
          travel(kSummit, TrueDirection::degrees(track_deg), Length::metres(away_m)).position;
      double nearest = 1e9;
      for (const Leg& leg : search_legs(pattern)) {
        const double level_away =
            boost::geometry::distance(flat.flat(place), flat.flat(Path{leg.from, leg.to}));
        nearest = std::min(nearest, std::hypot(level_away, cone(place) - cone(leg.to)));
      }
      EXPECT_LE(nearest, 0.55 * spacing.metres()) << track_deg << " " << away_m;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Cone, ContourCheck,
                         testing::ValuesIn(test::check_rows("pattern/contour_search.csv",
                                                            {"rise", "spacing_m", "step_ft"})),
                         test::RowName());

// P2 on closed rings: the summit lies abeam of each leg, on the side of the first turn.
TEST(ContourSearch, KeepsHighGroundOnItsSide) {
  const test::Cone cone{kSummit, 3000, 0.3};
  const terrain::ElevationModel model = model_round(kSummit, cone);
  for (const Turn turn : {Turn::left, Turn::right}) {
    ContourSearch search = search_of(square_round(kSummit, Length::kilometres(10)));
    search.first_turn = turn;
    int closed = 0;
    for (const Leg& leg : search_legs(make_contour_search(search, model))) {
      const Arrival half = travel(leg.from, leg.line.start_track, leg.line.length / 2);
      const GeodesicLine home = geodesic(half.position, kSummit);
      if (home.length > Length::kilometres(4.5)) continue;  // rings that the area cuts
      const double abeam = home.start_track.degrees() - half.track.degrees();
      EXPECT_NEAR(std::remainder(abeam - (turn == Turn::right ? 90 : -90), 360), 0, 12);
      ++closed;
    }
    EXPECT_GT(closed, 20);
  }
}

// Legs keep their level on ground with hills, hollows and saddles, to the thinning: a twentieth of
// the spacing along the slope, and what the model's straight pieces leave out.
TEST(ContourSearch, KeepsItsLevels) {
  const Position middle = at(38.2, -117);
  const terrain::ElevationModel model = model_round(middle, test::rolling_ground);
  ContourSearch search = search_of(square_round(middle, Length::kilometres(15)));
  search.height_step = Length::metres(100);
  const Pattern pattern = make_contour_search(search, model);
  for (const Leg& leg : search_legs(pattern)) {
    EXPECT_NEAR(test::rolling_ground(leg.from), test::rolling_ground(leg.to), 3);
  }
}

// GDAL (Debian package gdal-bin): the lines of gdal_contour at each level told in the remarks run
// through all ends of that level's legs. Both draw straight pieces between the crossings with the
// model's cells: 1 m covers their different ends at the area's edge.
TEST(ContourSearch, FollowsTheLinesOfGdalContour) {
  const test::TemporaryFolder folder;
  const Position middle = at(38.2, -117);
  const terrain::ElevationTile tile =
      test::make_tile(test::degrees_lattice(38.3, -117.1, 0.002), 101, 101, test::rolling_ground);
  test::write_ascii_grid(folder.path() / "ground.asc", tile);
  ContourSearch search = search_of(square_round(middle, Length::kilometres(12)));
  search.height_step = Length::feet(500);
  const Pattern pattern = make_contour_search(search, terrain::ElevationModel({tile}));
  int levels = 0;
  for (const std::string& remark : pattern.remarks) {
    std::size_t first = 0;
    std::size_t last = 0;
    int ground_ft = 0;
    if (std::sscanf(remark.c_str(), "legs %zu to %zu: ground at %d ft", &first, &last,
                    &ground_ft) != 3) {
      continue;
    }
    const test::CommandResult drawn = test::run_command(
        "rm -f lines.json; gdal_contour -q -f GeoJSON -lco COORDINATE_PRECISION=12 -fl " +
            std::to_string(ground_ft * 0.3048) + " ground.asc lines.json",
        folder.path(), {{"PATH", "/usr/bin:/bin"}});
    ASSERT_EQ(drawn.status, 0) << drawn.standard_error << "(Debian package gdal-bin)";
    const FlatGround flat(middle);
    std::vector<FlatGround::Line> lines;
    const auto document = nlohmann::json::parse(test::read_file(folder.path() / "lines.json"));
    for (const auto& feature : document.at("features")) {
      Path line;
      for (const auto& point : feature.at("geometry").at("coordinates")) {
        line.push_back(at(point.at(1), point.at(0)));
      }
      lines.push_back(flat.flat(line));
    }
    for (std::size_t i = first - 1; i < last; ++i) {
      if (pattern.legs[i].kind != LegKind::search) continue;
      double nearest = 1e9;
      for (const FlatGround::Line& line : lines) {
        nearest = std::min(nearest, boost::geometry::distance(flat.flat(pattern.legs[i].to), line));
      }
      EXPECT_LE(nearest, 1) << remark << " leg " << i + 1;
    }
    ++levels;
  }
  EXPECT_GE(levels, 3);
}

// P3 with two summits of different height: the lesser one between two levels gets its own line.
TEST(ContourSearch, RingsEachSummit) {
  const Position lesser = at(38, -116.955);
  const test::Cone high{kSummit, 3000, 0.3};
  for (const double top_m : {2700.0, 2760.0, 2830.0, 2900.0}) {
    const test::Cone low{lesser, top_m, 0.3};
    const terrain::ElevationModel model =
        model_round(kSummit, [&](Position place) { return std::max(high(place), low(place)); });
    const Pattern pattern =
        make_contour_search(search_of(square_round(kSummit, Length::kilometres(14))), model);
    double nearest = 1e9;
    for (const Leg& leg : search_legs(pattern)) {
      const double level_away = boost::geometry::distance(
          FlatGround(lesser).flat(lesser), FlatGround(lesser).flat(Path{leg.from, leg.to}));
      nearest = std::min(nearest, std::hypot(level_away, low(lesser) - low(leg.to)));
    }
    EXPECT_LE(nearest, 550) << top_m;
  }
}

// P3 on a plane that rises to the north: level lines run east and west, and with a slope of 0.3
// (16.70 degrees) lines 900 ft apart in height lie 900 ft / sin 16.70 = 954.6 m apart on the slope.
TEST(ContourSearch, CoversAPlaneFromEdgeToEdge) {
  const auto plane = [](Position place) {
    return 2000 + 0.3 * 110990 * (place.latitude().degrees() - 38);
  };
  const Length side = Length::kilometres(10);
  const Pattern pattern =
      make_contour_search(search_of(square_round(kSummit, side)), model_round(kSummit, plane));
  std::vector<double> ups;  // metres north of the middle
  for (const Leg& leg : search_legs(pattern)) {
    EXPECT_NEAR(std::remainder(leg.line.start_track.degrees() - 90, 180), 0, 0.5);
    ups.push_back((leg.from.latitude().degrees() - 38) * 110990);
  }
  std::sort(ups.begin(), ups.end());
  ASSERT_GE(ups.size(), 10u);
  const double slant = std::hypot(1, 0.3);
  EXPECT_LE((ups.front() + 5000) * slant, 520);
  EXPECT_LE((5000 - ups.back()) * slant, 520);
  for (std::size_t i = 1; i < ups.size(); ++i) EXPECT_LE((ups[i] - ups[i - 1]) * slant, 957);
}

TEST(ContourSearch, P1StaysInTheArea) {
  const Position middle = at(38.2, -117);
  const terrain::ElevationModel model = model_round(middle, test::rolling_ground);
  // A letter L.
  const Region region = make_region({{{at(38.1, -117.1), at(38.1, -116.9), at(38.18, -116.9),
                                       at(38.18, -117.0), at(38.3, -117.0), at(38.3, -117.1)},
                                      {}}});
  const Pattern pattern = make_contour_search(search_of(region), model);
  for (const Leg& leg : pattern.legs) {
    EXPECT_TRUE(contains(region, leg.from));
    EXPECT_TRUE(contains(region, leg.to));
  }
  for (std::size_t i = 1; i < pattern.legs.size(); ++i) {
    EXPECT_EQ(pattern.legs[i - 1].to, pattern.legs[i].from);
  }
}

TEST(ContourSearch, RunsDownFromTheSummitOrUpToIt) {
  const test::Cone cone{kSummit, 3000, 0.3};
  const terrain::ElevationModel model = model_round(kSummit, cone);
  ContourSearch search = search_of(square_round(kSummit, Length::kilometres(10)));
  const Pattern down = make_contour_search(search, model);
  search.order = ContourOrder::ascending;
  const Pattern up = make_contour_search(search, model);
  EXPECT_GT(cone(commence_search_point(down)), cone(down.legs.back().to) + 500);
  EXPECT_LT(cone(commence_search_point(up)), cone(up.legs.back().to) - 500);
}

// 300 ft over a line at 8,000 ft is 8,300 ft, and every level says its legs.
TEST(ContourSearch, SaysWhichHeightToFly) {
  const test::Cone cone{kSummit, 3000, 0.3};
  ContourSearch search = search_of(square_round(kSummit, Length::kilometres(10)));
  search.height_step = Length::feet(1000);
  search.clearance = Length::feet(300);
  const Pattern pattern = make_contour_search(search, model_round(kSummit, cone));
  std::size_t next_leg = 1;
  int levels = 0;
  for (const std::string& remark : pattern.remarks) {
    if (remark.find("ground at") == std::string::npos) continue;
    std::size_t first = 0;
    std::size_t last = 0;
    int ground = 0;
    int fly = 0;
    ASSERT_EQ(std::sscanf(remark.c_str(), "legs %zu to %zu: ground at %d ft, fly at %d ft", &first,
                          &last, &ground, &fly),
              4)
        << remark;
    EXPECT_EQ(first, next_leg);
    EXPECT_EQ(fly, ground + 300);
    EXPECT_NEAR(cone(pattern.legs[last - 1].to) / 0.3048, ground, 15);
    next_leg = last + 1;
    ++levels;
  }
  EXPECT_EQ(next_leg, pattern.legs.size() + 1);
  EXPECT_GE(levels, 3);
}

TEST(ContourSearch, LeavesGapsOfTheModelOut) {
  const test::Cone cone{kSummit, 3000, 0.3};
  const Position hole = at(38.03, -116.97);
  const terrain::ElevationModel model = model_round(kSummit, [&](Position place) {
    return geodesic(hole, place).length < Length::kilometres(1.5) ? std::nan("") : cone(place);
  });
  const Pattern pattern =
      make_contour_search(search_of(square_round(kSummit, Length::kilometres(12))), model);
  EXPECT_THAT(remarks_of(pattern), HasSubstr("the model knows no height on"));
  EXPECT_THAT(remarks_of(pattern), HasSubstr("over ground whose height the model does not know"));
  for (const Leg& leg : search_legs(pattern)) {
    const Position half = travel(leg.from, leg.line.start_track, leg.line.length / 2).position;
    EXPECT_GT(geodesic(hole, half).length.kilometres(), 1.3);
  }
}

TEST(ContourSearch, WorksAcrossTheAntimeridian) {
  const Position summit = at(-17, -180);
  const test::Cone cone{summit, 2500, 0.3};
  const double step = 1.0 / 600;
  const terrain::ElevationModel model(
      {test::make_tile(test::degrees_lattice(-16.8, 179.8, step), 241, 241, cone)});
  const Pattern here =
      make_contour_search(search_of(square_round(summit, Length::kilometres(10))), model);
  const test::Cone same{at(-17, 20), 2500, 0.3};
  const terrain::ElevationModel other(
      {test::make_tile(test::degrees_lattice(-16.8, 19.8, step), 241, 241, same)});
  const Pattern there =
      make_contour_search(search_of(square_round(at(-17, 20), Length::kilometres(10))), other);
  EXPECT_NEAR(search_distance(here) / search_distance(there), 1, 0.001);
}

TEST(ContourSearch, RefusesWhatCannotBeFlown) {
  const Region region = square_round(kSummit, Length::kilometres(10));
  const test::Cone cone{kSummit, 3000, 0.3};
  const terrain::ElevationModel model = model_round(kSummit, cone);
  const auto refuse = [&](const ContourSearch& search, const terrain::ElevationModel& ground,
                          const std::string& why) {
    try {
      make_contour_search(search, ground);
      ADD_FAILURE() << "drawn: " << why;
    } catch (const Error& error) {
      EXPECT_THAT(error.what(), HasSubstr(why));
    }
  };
  ContourSearch search = search_of(region, Length());
  refuse(search, model, "track spacing is 0");
  search = search_of(region);
  search.clearance = Length();
  refuse(search, model, "clearance is 0");
  search = search_of(region);
  search.height_step = Length();
  refuse(search, model, "height step is 0");
  search.height_step = Length::feet(1);
  refuse(search, model, "levels between");
  refuse(search_of(square_round(kSummit, Length::kilometres(100))), model, "no height at");
  refuse(search_of(region), terrain::ElevationModel(), "on the edge of the area");
  refuse(search_of(region), model_round(kSummit, test::Cone{kSummit, 500, 0.01}),
         "only 0 % of the area is steeper");
  refuse(search_of(region, Length::kilometres(80)), model, "no search leg fits");
}

}  // namespace
}  // namespace sweepwright::pattern
