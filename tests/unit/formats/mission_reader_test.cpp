// Reads whole mission files: the good samples field by field, the bad ones for their messages.
//
// The samples are tests/checks/formats/mission/good/*.json and bad/*.json; beside a bad one stands
// its message (`name.txt`). All samples are our own. Times: RFC 3339 section 5.8, and GNU date.
#include "sweepwright/formats/mission_reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <numbers>
#include <span>

#include "support/check_table.hpp"
#include "support/elevation.hpp"
#include "support/files.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/digest.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

fs::path samples() {
  return test::checks() / "formats" / "mission";
}

InputText no_file(const std::string& name) {
  throw Error(ErrorCode::unreadable, "there is no such file", {}, name);
}

plan::Mission good(const std::string& name) {
  return read_mission((samples() / "good" / name).string());
}

plan::Mission parsed(const std::string& text) {
  return parse_mission({text, {"mission.json", sha256(text)}}, {no_file, {}});
}

/// The text of good/minimal.json with one part of it replaced.
std::string minimal_with(const std::string& part, const std::string& replacement) {
  std::string text = test::read_file(samples() / "good" / "minimal.json");
  const std::size_t at = text.find(part);
  if (at == std::string::npos) throw std::runtime_error("minimal.json has no " + part);
  return text.replace(at, part.size(), replacement);
}

std::string message_of(const std::string& text) {
  try {
    parsed(text);
  } catch (const Error& error) {
    return error.what();
  }
  return "no error";
}

TimePoint seconds_since_1970(long long seconds) {
  return TimePoint(std::chrono::seconds(seconds));
}

void expect_place(Position found, double latitude, double longitude) {
  EXPECT_NEAR(found.latitude().degrees(), latitude, 1e-12);
  EXPECT_NEAR(found.longitude().degrees(), longitude, 1e-12);
}

TEST(MissionReader, reads_patterns_with_their_details) {
  const plan::Mission mission = good("pattern_objects.json");
  const plan::SearchUnit& mountain = mission.units.at(0);
  EXPECT_EQ(mountain.pattern, plan::PatternChoice::contour);
  EXPECT_EQ(mountain.pattern_details.height_step, Length::feet(500));
  EXPECT_EQ(mountain.pattern_details.order, pattern::ContourOrder::ascending);
  const plan::SearchUnit& valley = mission.units.at(1);
  EXPECT_EQ(valley.pattern, plan::PatternChoice::square);
  EXPECT_EQ(valley.pattern_details.first_track, TrueDirection::degrees(90));
}

TEST(MissionReader, full_sample_incident) {
  const plan::Mission mission = good("full.json");
  EXPECT_EQ(mission.incident.name, "Overdue light aircraft, Antelope range");
  EXPECT_EQ(mission.incident.number, "T-2026-017");
  EXPECT_EQ(mission.incident.prepared_by, "J. Example, search planner");
  // date -d 2026-07-14T12:30:00-06:00 +%s, and the same for 20:00
  EXPECT_EQ(mission.incident.operational_period.from, seconds_since_1970(1784053800));
  EXPECT_EQ(mission.incident.operational_period.to, seconds_since_1970(1784080800));
  EXPECT_EQ(mission.incident.offset_from_utc, std::chrono::hours(-6));
  EXPECT_EQ(mission.incident.day_letter, "B");
}

TEST(MissionReader, full_sample_object_and_conditions) {
  const plan::Mission mission = good("full.json");
  EXPECT_EQ(mission.object.table_name, "Aircraft under 5700 kg");
  EXPECT_THAT(mission.object.description, HasSubstr("white with a green stripe"));
  EXPECT_EQ(mission.object.persons_on_board, 3);
  EXPECT_EQ(mission.conditions.visibility, Length::nautical_miles(15));
  EXPECT_DOUBLE_EQ(mission.conditions.wind_speed.value().knots(), 12);
  EXPECT_EQ(mission.conditions.wind_from, TrueDirection::degrees(240));
  ASSERT_EQ(mission.conditions.winds_aloft.size(), 2U);
  EXPECT_DOUBLE_EQ(mission.conditions.winds_aloft[1].height.feet(), 9000);
  EXPECT_EQ(mission.conditions.winds_aloft[1].wind.from, TrueDirection::degrees(260));
  EXPECT_DOUBLE_EQ(mission.conditions.winds_aloft[1].wind.speed.knots(), 25);
  EXPECT_EQ(mission.conditions.sea_height, Length::metres(0));
  EXPECT_EQ(mission.conditions.terrain, sweep::Terrain::mountainous);
  EXPECT_THAT(mission.conditions.weather, HasSubstr("cumulus over the ridges"));
}

TEST(MissionReader, full_sample_area_and_wishes) {
  const plan::Mission mission = good("full.json");
  EXPECT_EQ(mission.area_name, "Antelope range north");
  ASSERT_EQ(mission.area.polygons.size(), 1U);
  // Counterclockwise, whatever way round the file lists them.
  const Ring& ring = mission.area.polygons[0].outer;
  ASSERT_EQ(ring.size(), 4U);
  expect_place(ring[0], 38.25, -117.33333);
  expect_place(ring[1], 38.25, -117);
  expect_place(ring[2], 38.5, -117);
  expect_place(ring[3], 38.5, -117 - 20 / 60.0);
  ASSERT_TRUE(mission.datum.has_value());
  EXPECT_EQ(mission.datum->name, "Last radar position");
  expect_place(mission.datum->position, 38 + 22.5 / 60, -(117 + 10.25 / 60));
  EXPECT_EQ(mission.grid.system, "quarter");
  EXPECT_EQ(mission.grid.level, "7.5min");
  EXPECT_EQ(mission.wanted_coverage, sweep::Coverage(1.25));
  EXPECT_EQ(mission.detection_law, sweep::DetectionLaw::inverse_cube);
  EXPECT_EQ(mission.leg_direction, TrueDirection::degrees(35));
  EXPECT_THAT(mission.input_remarks, IsEmpty());
}

TEST(MissionReader, full_sample_units) {
  const plan::Mission mission = good("full.json");
  ASSERT_EQ(mission.units.size(), 2U);
  const plan::SearchUnit& lark = mission.units[0];
  EXPECT_EQ(lark.callsign, "Lark 1");
  EXPECT_EQ(lark.platform, sweep::Platform::fixed_wing);
  EXPECT_EQ(lark.type, "Single-engine, high wing");
  EXPECT_EQ(lark.leader, "A. Example");
  EXPECT_EQ(lark.crew, 3);
  EXPECT_DOUBLE_EQ(lark.search_speed.knots(), 90);
  EXPECT_EQ(lark.search_height, Length::feet(1000));
  EXPECT_EQ(lark.on_scene_endurance, std::chrono::minutes(150));
  EXPECT_EQ(lark.base.name, "Cold Spring strip");
  expect_place(lark.base.position, 38 + 20.5 / 60, -117.5);
  EXPECT_EQ(lark.pattern, plan::PatternChoice::parallel);
  EXPECT_EQ(lark.sweep_width, std::nullopt);
  EXPECT_THAT(lark.remarks,
              ElementsAre("Radio check every 30 minutes", "Stay east of the ridge after 1700"));

  const plan::SearchUnit& heron = mission.units[1];
  EXPECT_EQ(heron.platform, sweep::Platform::helicopter);
  EXPECT_EQ(heron.crew, std::nullopt);
  EXPECT_DOUBLE_EQ(heron.search_speed.kilometres_per_hour(), 110);
  EXPECT_EQ(heron.search_height, Length::metres(150));
  EXPECT_EQ(heron.on_scene_endurance, std::nullopt);
  ASSERT_TRUE(heron.time_away.has_value());
  EXPECT_EQ(heron.time_away->endurance, std::chrono::minutes(165));
  EXPECT_EQ(heron.time_away->reserve, std::chrono::minutes(30));
  EXPECT_DOUBLE_EQ(heron.transit_speed.value().kilometres_per_hour(), 200);
  EXPECT_EQ(std::get<flight::Bank>(heron.turning).angle, Angle::degrees(20));
  EXPECT_EQ(heron.fuel_flow.value().unit, flight::FuelUnit::kilogram);
  EXPECT_DOUBLE_EQ(heron.fuel_flow.value().per_hour, 150);
  EXPECT_EQ(heron.depart, seconds_since_1970(1784055600));  // date -d 2026-07-14T13:00:00-06:00 +%s
  EXPECT_DOUBLE_EQ(heron.search_altitude.value().metres(), 2600);
  EXPECT_TRUE(heron.searches_at_night);
  EXPECT_FALSE(lark.searches_at_night);
  EXPECT_EQ(heron.pattern, plan::PatternChoice::automatic);
  EXPECT_EQ(heron.sweep_width, Length::nautical_miles(0.8));
  EXPECT_EQ(heron.sweep_width_source, "Planner's own trial over open sage, May 2026");
  EXPECT_THAT(heron.remarks, IsEmpty());
}

TEST(MissionReader, elevation_sample) {
  const plan::Mission mission = good("elevation.json");
  ASSERT_TRUE(mission.elevation.has_value());
  // A post of ground.asc: 5600 ft in the last row but one, second column.
  const terrain::UtmLattice lattice{11,
                                    terrain::Hemisphere::north,
                                    Length::metres(4'240'000),
                                    Length::metres(460'000),
                                    Length::metres(2500),
                                    Length::metres(2500)};
  const Position post = test::post_position(lattice, 19, 1);
  EXPECT_NEAR(terrain::height(mission.elevation->model, post).value().feet(), 5600, 1);
  EXPECT_EQ(mission.minima.clearance, Length::feet(2000));
  EXPECT_EQ(mission.minima.corridor, Length::nautical_miles(1));
  EXPECT_EQ(mission.minima.source, "Search order 3, para 5");
  ASSERT_EQ(mission.inputs.size(), 2U);
  EXPECT_EQ(mission.inputs[1].name, "ground.asc");
  EXPECT_EQ(mission.inputs[1].digest, sha256(test::read_file(samples() / "good" / "ground.asc")));

  const plan::SearchUnit& lark = mission.units.at(0);
  EXPECT_EQ(lark.heights, hazard::HeightsBy::steps);
  EXPECT_EQ(lark.shortest_step, Length::nautical_miles(3));
  EXPECT_NEAR(lark.climb.value().rate.metres_per_second(), 400 * 0.3048 / 60, 1e-12);
  EXPECT_EQ(lark.climb->airspeed, Speed::knots(75));
  EXPECT_FALSE(lark.minima.has_value());
  const plan::SearchUnit& heron = mission.units.at(1);
  EXPECT_EQ(heron.heights, hazard::HeightsBy::leg);
  EXPECT_EQ(heron.climb.value().rate, Speed::metres_per_second(2));
  EXPECT_EQ(heron.minima.value().clearance, Length::feet(500));
}

TEST(MissionReader, without_minima_the_published_default_holds) {
  const plan::Mission mission = good("minimal.json");
  EXPECT_FALSE(mission.elevation.has_value());
  EXPECT_EQ(mission.minima.clearance, Length::feet(1000));
  EXPECT_THAT(mission.minima.source, HasSubstr("ICAO Annex 2"));
}

TEST(MissionReader, belief_sample) {
  const plan::Mission mission = good("belief.json");
  EXPECT_TRUE(mission.area.polygons.empty());
  ASSERT_EQ(mission.scenarios.size(), 8U);
  EXPECT_EQ(mission.scenarios[0].name, "Came down near the last radar position");
  EXPECT_EQ(mission.scenarios[0].weight, 3);
  EXPECT_EQ(std::get<belief::Datum>(mission.scenarios[0].source).error, Length::nautical_miles(4));
  // E = sqrt(D^2 + X^2 + Y^2)
  EXPECT_NEAR(std::get<belief::Datum>(mission.scenarios[1].source).error.nautical_miles(),
              std::sqrt(0.25 + 9 + 0.01), 1e-12);
  const auto& ellipse = std::get<belief::ErrorEllipse>(mission.scenarios[2].source);
  EXPECT_EQ(ellipse.semi_major, Length::nautical_miles(6));
  EXPECT_EQ(ellipse.major_axis, TrueDirection::degrees(35));
  const auto& line = std::get<belief::DatumLine>(mission.scenarios[3].source);
  EXPECT_EQ(line.route.size(), 3U);
  EXPECT_THAT(line.leg_weights, ElementsAre(1, 2));
  const auto& bands = std::get<belief::RouteBands>(mission.scenarios[4].source);
  ASSERT_EQ(bands.bands.size(), 2U);
  EXPECT_EQ(bands.bands[1].probability, 0.3);
  EXPECT_EQ(std::get<belief::Patches>(mission.scenarios[5].source).patches.size(), 1U);
  const auto& votes = std::get<belief::Patches>(mission.scenarios[7].source).patches;
  ASSERT_EQ(votes.size(), 3U);
  EXPECT_NEAR(votes[0].share, 0.35, 1e-12);  // the mean of 0.5 and 0.2
  EXPECT_EQ(mission.inputs.size(), 3U);      // the mission, and a drawn file twice
}

TEST(MissionReader, belief_of_a_file_of_cells) {
  const plan::Mission mission = good("belief_after_search.json");
  ASSERT_EQ(mission.scenarios.size(), 1U);
  const auto& cells = std::get<belief::Patches>(mission.scenarios[0].source).patches;
  ASSERT_EQ(cells.size(), 2U);
  EXPECT_EQ(cells[0].share, 0.5);
  EXPECT_EQ(cells[1].share, 0.25);  // its grid is that of the mission
  EXPECT_EQ(mission.earlier_success, 0.4);
  ASSERT_EQ(mission.inputs.size(), 2U);
  EXPECT_EQ(mission.inputs[1].name, "belief_after_search.geojson");
}

TEST(MissionReader, full_sample_channels_hazards_and_inputs) {
  const plan::Mission mission = good("full.json");
  ASSERT_EQ(mission.channels.size(), 2U);
  EXPECT_EQ(mission.channels[0].name, "Air to ground");
  EXPECT_EQ(mission.channels[0].frequency, "123.100 MHz");
  ASSERT_EQ(mission.hazards.size(), 2U);
  EXPECT_THAT(mission.hazards[1], HasSubstr("lee side"));
  ASSERT_EQ(mission.inputs.size(), 1U);
  EXPECT_EQ(mission.inputs[0].digest, sha256(test::read_file(samples() / "good" / "full.json")));
}

TEST(MissionReader, what_is_left_out_has_the_documented_default) {
  const plan::Mission mission = good("minimal.json");
  EXPECT_EQ(mission.incident.number, "");
  EXPECT_EQ(mission.incident.prepared_by, "");
  EXPECT_EQ(mission.incident.day_letter, "A");
  EXPECT_EQ(mission.object.persons_on_board, std::nullopt);
  EXPECT_EQ(mission.conditions.wind_speed, std::nullopt);
  EXPECT_EQ(mission.conditions.wind_from, std::nullopt);
  EXPECT_EQ(mission.conditions.sea_height, std::nullopt);
  EXPECT_EQ(mission.conditions.terrain, std::nullopt);
  EXPECT_EQ(mission.conditions.weather, "");
  EXPECT_EQ(mission.area_name, "");
  EXPECT_FALSE(mission.datum.has_value());
  EXPECT_EQ(mission.detection_law, sweep::DetectionLaw::exponential);
  EXPECT_EQ(mission.leg_direction, std::nullopt);
  EXPECT_EQ(mission.units.at(0).pattern, plan::PatternChoice::automatic);
  EXPECT_EQ(mission.units.at(0).type, "");
  EXPECT_EQ(mission.units.at(0).leader, "");
  EXPECT_THAT(mission.channels, IsEmpty());
  EXPECT_THAT(mission.hazards, IsEmpty());
}

TEST(MissionReader, area_comes_from_a_file_beside_the_mission) {
  const plan::Mission mission = good("drawn_area.json");
  EXPECT_EQ(mission.area_name, "Glacier basin");
  ASSERT_EQ(mission.area.polygons.size(), 1U);
  // 0.6 by 0.1 degrees of GeoJSON at 78 N: a spherical zone of the mean radius, to 1 percent.
  const double zone = 6371.0 * 6371.0 *
                      (std::sin(78.4 / kDegreesPerRadian) - std::sin(78.3 / kDegreesPerRadian)) *
                      0.6 / kDegreesPerRadian;
  EXPECT_NEAR(area(mission.area).square_kilometres(), zone, 0.01 * zone);
  ASSERT_EQ(mission.inputs.size(), 2U);
  EXPECT_EQ(mission.inputs[1].name, "drawn_area.geojson");
  EXPECT_EQ(mission.inputs[1].digest,
            sha256(test::read_file(samples() / "good" / "drawn_area.geojson")));
  // Exponential law: C = -ln(1 - 0.78).
  EXPECT_NEAR(mission.wanted_coverage.value(), 1.514127732629776, 1e-12);
  EXPECT_EQ(mission.incident.day_letter, "AA");
  EXPECT_EQ(mission.incident.offset_from_utc, std::chrono::hours(2));
  EXPECT_EQ(mission.units.at(0).on_scene_endurance, std::chrono::minutes(75));
  EXPECT_EQ(mission.units.at(0).search_height, Length());
  EXPECT_EQ(mission.conditions.wind_speed, Speed());
}

TEST(MissionReader, vessels_have_no_height_and_areas_cross_the_antimeridian) {
  const plan::Mission mission = good("antimeridian_vessel.json");
  EXPECT_EQ(mission.units.at(0).platform, sweep::Platform::vessel);
  EXPECT_EQ(mission.units.at(0).search_height, std::nullopt);
  EXPECT_EQ(mission.units.at(0).pattern, plan::PatternChoice::square);
  EXPECT_DOUBLE_EQ(mission.units.at(1).search_speed.statute_miles_per_hour(), 20);
  EXPECT_TRUE(contains(mission.area, Position::at(Angle::degrees(-16.25), Angle::degrees(180))));
  EXPECT_FALSE(contains(mission.area, Position::at(Angle::degrees(-16.25), Angle::degrees(0))));
  // Definite range: C = POD.
  EXPECT_NEAR(mission.wanted_coverage.value(), 0.5, 1e-12);
  EXPECT_EQ(mission.object.table_name, "Boat 7 m (23 ft)");
  EXPECT_EQ(mission.conditions.sea_height, Length::feet(4));
  EXPECT_EQ(mission.conditions.wind_speed, Speed::metres_per_second(9));
  EXPECT_EQ(mission.incident.offset_from_utc, std::chrono::minutes(0));
  EXPECT_EQ(mission.conditions.weather_table, "us-1991");
  EXPECT_TRUE(mission.units.at(0).sweep_width_is_corrected);
  EXPECT_FALSE(mission.units.at(0).fatigued);
  const plan::SearchUnit& tern = mission.units.at(2);
  EXPECT_EQ(tern.platform, sweep::Platform::small_boat);
  EXPECT_EQ(tern.sweep_width, Length::nautical_miles(1.6));
  EXPECT_FALSE(tern.sweep_width_is_corrected);
  EXPECT_TRUE(tern.fatigued);
}

TEST(MissionReader, inverse_cube_coverage_for_a_probability) {
  // erf(sqrt(pi)/2) = 0.78998...: the curve's value at coverage 1, from the C++ library's erf.
  const double pod = std::erf(std::sqrt(std::numbers::pi) / 2);
  const plan::Mission mission =
      parsed(minimal_with("\"coverage\": 1", "\"detection_law\": \"inverse-cube\", \"pod\": " +
                                                 testing::PrintToString(pod)));
  EXPECT_NEAR(mission.wanted_coverage.value(), 1, 1e-4);
}

/// The examples of RFC 3339 section 5.8 and what that section says they mean.
struct TimeExample {
  const char* text;
  long long utc_seconds;  // date -u -d ... +%s of the UTC time that the section gives
  int offset_minutes;
};

TEST(MissionReader, times_of_rfc_3339) {
  for (const TimeExample& example :
       {TimeExample{"1985-04-12T23:20:50.52Z", 482196050, 0},
        TimeExample{"1996-12-19T16:39:57-08:00", 851042397, -480},
        TimeExample{"1937-01-01T12:00:27.87+00:20", -1041337173, 20}}) {
    const std::string from = example.text;
    // The same time a day later: all three examples lie before the 31st.
    std::string to = from;
    to[9] = static_cast<char>(to[9] == '9' ? '9' : to[9] + 1);
    if (to == from) to.replace(8, 2, "20");
    std::string text = minimal_with("2026-07-14T06:00:00-06:00", from);
    text.replace(text.find("2026-07-14T18:00:00-06:00"), 25, to);
    const plan::Mission mission = parsed(text);
    EXPECT_EQ(mission.incident.operational_period.from, seconds_since_1970(example.utc_seconds))
        << from;
    EXPECT_EQ(mission.incident.offset_from_utc, std::chrono::minutes(example.offset_minutes));
    EXPECT_EQ(mission.incident.operational_period.to - mission.incident.operational_period.from,
              std::chrono::hours(24));
  }
}

using nlohmann::json;

json names(std::span<const std::string_view> list) {
  return json(std::vector<std::string>(list.begin(), list.end()));
}

TEST(MissionReader, the_schema_lists_what_the_rooms_know) {
  const json schema =
      json::parse(test::read_file(test::repository() / "lib/data/mission.schema.json"));
  const json& fields = schema["properties"];
  const json& unit = schema["definitions"]["search_unit"]["properties"];
  EXPECT_EQ(unit["kind"]["enum"], names(sweep::platform_names()));
  EXPECT_EQ(fields["conditions"]["properties"]["terrain"]["enum"], names(sweep::terrain_names()));
  EXPECT_EQ(fields["conditions"]["properties"]["weather_table"]["enum"],
            json(sweep::weather_table_keys(sweep::built_in_tables())));
  EXPECT_EQ(fields["detection_law"]["enum"], names(sweep::detection_law_names()));
  for (const json& example : fields["grid"]["properties"]["system"]["examples"]) {
    EXPECT_NO_THROW(grid::grid(example.get<std::string>())) << example;
  }
}

TEST(MissionReader, the_page_names_all_spellings) {
  const std::string page = test::read_file(test::repository() / "docs/reference/mission-file.md");
  const auto expect_named = [&](std::string_view name) {
    EXPECT_THAT(page, HasSubstr("`" + std::string(name) + "`"));
  };
  for (const std::string_view name : sweep::platform_names()) expect_named(name);
  for (const std::string_view name : sweep::terrain_names()) expect_named(name);
  for (const std::string_view name : sweep::detection_law_names()) expect_named(name);
  for (const std::string_view system : {"quarter", "gars"}) {
    for (const grid::Level& level : grid::grid(system).levels()) expect_named(level.name);
  }
}

TEST(MissionReader, blanks_round_a_text_are_dropped) {
  EXPECT_EQ(parsed(minimal_with("\"Lark 1\"", "\"  Lark 1 \"")).units.at(0).callsign, "Lark 1");
}

TEST(MissionReader, other_scripts_are_kept) {
  const std::string name = "Überfällig 遭難 Поиск";
  EXPECT_EQ(parsed(minimal_with("Two walkers overdue", name)).incident.name, name);
  EXPECT_EQ(parsed(minimal_with("Two walkers overdue", "\\u906d\\u96e3")).incident.name, "遭難");
}

TEST(MissionReader, limits_themselves_are_allowed) {
  EXPECT_DOUBLE_EQ(parsed(minimal_with("\"90kt\"", "\"1000kt\"")).units.at(0).search_speed.knots(),
                   1000);
  EXPECT_EQ(parsed(minimal_with("\"10NM\"", "\"100NM\"")).conditions.visibility,
            Length::nautical_miles(100));
  EXPECT_EQ(parsed(minimal_with("\"coverage\": 1", "\"coverage\": 10")).wanted_coverage,
            sweep::Coverage(10));
  EXPECT_EQ(parsed(minimal_with("Two walkers overdue", std::string(120, 'x'))).incident.name.size(),
            120U);
  EXPECT_THAT(message_of(minimal_with("Two walkers overdue", std::string(121, 'x'))),
              HasSubstr("the text has 121 characters"));
}

TEST(MissionReader, a_file_that_ends_early_is_never_a_mission) {
  const std::string text = test::read_file(samples() / "good" / "full.json");
  const std::size_t end = text.rfind('}') + 1;
  for (std::size_t size = 0; size < end; ++size) {
    EXPECT_THROW(parsed(text.substr(0, size)), Error) << size;
  }
  EXPECT_NO_THROW(parsed(text.substr(0, end)));
}

TEST(MissionReader, one_wrong_byte_is_an_error_or_another_mission_never_more) {
  const std::string text = test::read_file(samples() / "good" / "minimal.json");
  for (std::size_t i = 0; i < text.size(); ++i) {
    for (const char wrong : {'\0', '\n', '"', '}', ',', '9', 'x', '\x80'}) {
      std::string bad = text;
      bad[i] = wrong;
      try {
        parsed(bad);
      } catch (const Error& error) {
        EXPECT_THAT(error.where(), testing::StartsWith("mission.json")) << i << " " << wrong;
      }
    }
  }
}

TEST(MissionReader, a_huge_file_is_refused_before_it_is_read) {
  const test::TemporaryFolder folder;
  const fs::path file = folder.path() / "huge.json";
  test::write_file(file, "{");
  fs::resize_file(file, std::uintmax_t{1024} * 1024 * 1024);  // a hole: takes no room on the disk
  try {
    read_mission(file.string());
    FAIL() << "a file of a gigabyte was read";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::input);
    EXPECT_THAT(error.message(), HasSubstr("too large"));
  }
}

TEST(MissionReader, a_missing_file_is_named) {
  const test::TemporaryFolder folder;
  const std::string path = (folder.path() / "none.json").string();
  try {
    read_mission(path);
    FAIL() << "a missing file was read";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::unreadable);
    EXPECT_THAT(error.where(), HasSubstr("none.json"));
  }
}

TEST(MissionReader, very_many_values_are_refused) {
  std::string list = "[0";
  for (int i = 0; i < 300'000; ++i) list += ",0";
  EXPECT_THAT(message_of(minimal_with("\"coverage\": 1", "\"coverage\": " + list + "]")),
              HasSubstr("more than 200000 values"));
}

class BadMission : public testing::TestWithParam<std::string> {
 protected:
  // Messages then name the file as it is written here, wherever the tests lie.
  void SetUp() override { fs::current_path(samples() / "bad"); }
  void TearDown() override { fs::current_path(before_); }

 private:
  fs::path before_ = fs::current_path();
};

std::vector<std::string> bad_samples() {
  std::vector<std::string> names;
  for (const fs::directory_entry& entry : fs::directory_iterator(samples() / "bad")) {
    if (entry.path().extension() == ".json") names.push_back(entry.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

TEST_P(BadMission, has_its_message) {
  const std::string expected = test::read_file(GetParam() + ".txt");
  try {
    read_mission(GetParam() + ".json");
    FAIL() << "no error; expected: " << expected;
  } catch (const Error& error) {
    EXPECT_EQ(error.what() + std::string("\n"), expected);
  }
}

INSTANTIATE_TEST_SUITE_P(samples, BadMission, testing::ValuesIn(bad_samples()),
                         [](const auto& sample) { return sample.param; });

TEST(MissionReader, there_are_bad_samples) {
  EXPECT_GE(bad_samples().size(), 40U);
}

}  // namespace
}  // namespace sweepwright::formats
