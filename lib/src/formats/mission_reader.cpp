#include "sweepwright/formats/mission_reader.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <utility>

#include "formats/json_cursor.hpp"
#include "formats/mission_reader_area.hpp"
#include "formats/mission_reader_belief.hpp"
#include "formats/mission_reader_terrain.hpp"
#include "formats/mission_reader_units.hpp"
#include "formats/mission_values.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/elevation_reader.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/sector/sectors.hpp"
#include "sweepwright/sweep/search_object.hpp"

namespace sweepwright::formats {
namespace {

constexpr int kVersion = 1;
constexpr std::size_t kMostChannels = 50;
constexpr std::size_t kMostHazards = 100;
constexpr std::size_t kMostWinds = 200;
constexpr auto kLongestPeriod = std::chrono::days(31);
constexpr double kMostCoverage = 10;

struct LocalPeriod {
  plan::Period period;
  std::chrono::minutes offset_from_utc{0};
};

LocalPeriod operational_period(const JsonCursor& cursor) {
  JsonObject in(cursor);
  const LocalTime from = in.required("from", local_time);
  const LocalTime to = in.required("to", local_time);
  if (in.sound()) {
    if (to.time <= from.time) {
      in.mistake("to", Error(ErrorCode::value, "the period ends before it begins",
                             "write a time after 'from'"));
    } else if (to.time - from.time > kLongestPeriod) {
      in.mistake("to", Error(ErrorCode::value, "the period is longer than 31 days",
                             "check the year and the month"));
    } else if (to.offset_from_utc != from.offset_from_utc) {
      in.mistake("to", Error(ErrorCode::value, "the offset from UTC is not that of 'from'",
                             "write both times with the offset of the clocks at the incident"));
    }
  }
  in.finish();
  return {{from.time, to.time}, from.offset_from_utc};
}

std::string day_letter(const JsonCursor& cursor) {
  return sector::parse_day_letter(
      cursor.text("one or two capital letters in quotes, such as \"A\""));
}

plan::Incident incident(const JsonCursor& cursor) {
  JsonObject in(cursor);
  plan::Incident incident;
  incident.name = in.required("name", short_text);
  incident.number = in.optional("number", short_text).value_or("");
  incident.prepared_by = in.optional("prepared_by", short_text).value_or("");
  const LocalPeriod period = in.required("operational_period", operational_period);
  incident.operational_period = period.period;
  incident.offset_from_utc = period.offset_from_utc;
  incident.day_letter = in.optional("day_letter", day_letter).value_or("A");
  in.finish();
  return incident;
}

std::string search_object_name(const JsonCursor& cursor) {
  return sweep::parse_search_object(cursor.text("the name of a search object in quotes")).name;
}

plan::SearchObject search_object(const JsonCursor& cursor) {
  JsonObject in(cursor);
  plan::SearchObject object;
  object.table_name = in.required("kind", search_object_name);
  object.description = in.required("description", long_text);
  object.persons_on_board = in.optional("persons_on_board", whole_number(0, 10000));
  in.finish();
  return object;
}

struct Wind {
  std::optional<TrueDirection> from;
  Speed speed;
};

Wind wind(const JsonCursor& cursor) {
  JsonObject in(cursor);
  Wind wind;
  wind.from = in.optional("from", true_direction);
  wind.speed = in.required("speed", speed(Least::zero, "200kt"));
  in.finish();
  return wind;
}

/// One level of the forecast.
flight::WindReport wind_aloft(const JsonCursor& cursor) {
  JsonObject in(cursor);
  flight::WindReport report;
  report.height = in.required("height", length(Least::zero, "60000ft"));
  if (const auto time = in.optional("time", local_time)) report.time = time->time;
  report.wind.from = in.required("from", true_direction);
  report.wind.speed = in.required("speed", speed(Least::zero, "250kt"));
  in.finish();
  return report;
}

sweep::Terrain terrain(const JsonCursor& cursor) {
  const auto names = sweep::terrain_names();
  return sweep::parse_terrain(one_of({names.begin(), names.end()}, "a terrain class")(cursor));
}

std::string weather_table(const JsonCursor& cursor) {
  const std::vector<std::string> keys = sweep::weather_table_keys(sweep::built_in_tables());
  return one_of({keys.begin(), keys.end()}, "a weather table")(cursor);
}

plan::Conditions conditions(const JsonCursor& cursor) {
  JsonObject in(cursor);
  plan::Conditions conditions;
  conditions.visibility = in.required("visibility", length(Least::above_zero, "100NM"));
  if (const auto given = in.optional("wind", wind)) {
    conditions.wind_speed = given->speed;
    conditions.wind_from = given->from;
  }
  conditions.winds_aloft = in.list("winds_aloft", kMostWinds, wind_aloft);
  conditions.sea_height = in.optional("sea_height", length(Least::zero, "30m"));
  conditions.terrain = in.optional("terrain", terrain);
  conditions.weather_table = in.optional("weather_table", weather_table)
                                 .value_or(std::string(sweep::kDefaultWeatherTable));
  conditions.weather = in.optional("weather", long_text).value_or("");
  in.finish();
  return conditions;
}

plan::GridChoice grid_choice(const JsonCursor& cursor) {
  JsonObject in(cursor);
  plan::GridChoice choice;
  choice.system = in.required("system", one_of(grid::systems(), "a grid system"));
  choice.level = in.required("level", [&](const JsonCursor& level) {
    std::vector<std::string_view> names;
    // Without a grid there is nothing to compare the level with.
    if (choice.system.empty()) return level.text("a level of the grid in quotes");
    for (const grid::Level& known : grid::grid(choice.system).levels()) names.push_back(known.name);
    return one_of(names, fmt::format("a level of the grid {}", choice.system))(level);
  });
  in.finish();
  return choice;
}

sweep::DetectionLaw detection_law(const JsonCursor& cursor) {
  const auto names = sweep::detection_law_names();
  return sweep::parse_detection_law(
      one_of({names.begin(), names.end()}, "a detection law")(cursor));
}

/// What is wanted of the search: a coverage, or a probability of detection that becomes one.
void read_wanted_coverage(JsonObject& in, plan::Mission& mission) {
  mission.detection_law =
      in.optional("detection_law", detection_law).value_or(mission.detection_law);
  const auto coverage = in.optional("coverage", number(0, kMostCoverage));
  if (coverage) mission.wanted_coverage = sweep::Coverage(*coverage);
  const auto pod = in.optional("pod", [&](const JsonCursor& cursor) {
    const double value = cursor.number("a number without quotes, such as 0.78");
    if (!(value > 0 && value < 1)) {
      throw Error(ErrorCode::value,
                  fmt::format("{} is not above 0 and below 1", printable(cursor.value().text)),
                  "write 78 percent as 0.78");
    }
    const sweep::Coverage needed =
        sweep::coverage_for(mission.detection_law, sweep::Probability(value));
    if (needed.value() > kMostCoverage) {
      throw Error(ErrorCode::value,
                  fmt::format("the detection law {} needs a coverage of {:.1f} for that",
                              sweep::name(mission.detection_law), needed.value()),
                  fmt::format("ask for less: a coverage of {} is the most", kMostCoverage));
    }
    return needed;
  });
  if (pod) mission.wanted_coverage = *pod;
  if (in.has("coverage") && in.has("pod")) {
    in.mistake("pod",
               Error(ErrorCode::input, "coverage and pod are both given", "keep one of them"));
  } else if (!in.has("coverage") && !in.has("pod") && in.has("search_area")) {
    in.mistake("coverage", Error(ErrorCode::input, "neither coverage nor pod is given",
                                 "write the wanted coverage, such as 1.0, or the wanted "
                                 "probability of detection, such as 0.78"));
  }
}

plan::Channel channel(const JsonCursor& cursor) {
  JsonObject in(cursor);
  plan::Channel channel;
  channel.name = in.required("name", short_text);
  channel.frequency = in.required("frequency", short_text);
  in.finish();
  return channel;
}

/// Throws when the version is not ours: another version may have other fields.
void require_version(JsonObject& in) {
  if (!in.has("sweepwright_mission")) {
    throw Error(ErrorCode::input,
                "the file is not a mission: it has no field 'sweepwright_mission'",
                fmt::format("write \"sweepwright_mission\": {} as its first field", kVersion));
  }
  in.required("sweepwright_mission", [](const JsonCursor& cursor) {
    if (cursor.value().kind != JsonKind::number || cursor.value().number != kVersion) {
      throw Error(ErrorCode::input, fmt::format("found {}", shown(cursor.value())),
                  fmt::format("write {}, the only version of mission files that this program reads",
                              kVersion));
    }
    return kVersion;
  });
}

plan::Mission mission(const JsonCursor& cursor, const MissionFiles& files) {
  const FileLoader& load = files.text;
  JsonObject in(cursor);
  plan::Mission mission;
  require_version(in);
  if (!in.sound()) return mission;
  in.optional("$schema", long_text);
  mission.incident = in.required("incident", incident);
  mission.object = in.required("search_object", search_object);
  mission.conditions = in.required("conditions", conditions);
  mission.grid = in.required("grid", grid_choice);
  const auto field = in.optional("belief", [&](const JsonCursor& place) {
    return belief_field(place, load, mission.grid.system);
  });
  if (field) {
    mission.scenarios = field->scenarios;
    mission.earlier_success = field->earlier_success;
    mission.input_remarks = field->remarks;
    mission.inputs = field->inputs;
  }
  // Without an area, the belief says where to search.
  const auto read_area = [&](const JsonCursor& place) { return search_area(place, load); };
  const SearchArea area = in.has("belief")
                              ? in.optional("search_area", read_area).value_or(SearchArea())
                              : in.required("search_area", read_area);
  mission.area = area.region;
  mission.area_name = area.name;
  mission.input_remarks.insert(mission.input_remarks.end(), area.remarks.begin(),
                               area.remarks.end());
  mission.inputs.insert(mission.inputs.end(), area.inputs.begin(), area.inputs.end());
  mission.datum = in.optional("datum", named_place);
  read_wanted_coverage(in, mission);
  mission.leg_direction = in.optional("leg_direction", true_direction);
  read_elevation(in, files.bytes, mission);
  mission.minima = in.optional("minima", minima).value_or(mission.minima);
  mission.units = in.required("search_units", search_units);
  mission.channels = in.list("communications", kMostChannels, channel);
  mission.hazards = in.list("hazards", kMostHazards, long_text);
  in.finish();
  return mission;
}

JsonValue document(const InputText& file) {
  try {
    return parse_json(file.text);
  } catch (const Error& error) {
    throw error.at(file.digest.name);
  }
}

}  // namespace

plan::Mission parse_mission(const InputText& file, const MissionFiles& files) {
  const JsonValue root = document(file);
  Mistakes mistakes;
  std::optional<plan::Mission> read =
      JsonCursor(root, "", mistakes).attempt([&](const JsonCursor& cursor) {
        return mission(cursor, files);
      });
  mistakes.throw_if_any(file.digest.name);
  read->inputs.insert(read->inputs.begin(), {file.digest.name, file.digest.sha256});
  return *read;
}

plan::Mission read_mission(const std::string& path) {
  const InputText file = read_text_file(path, kLargestMissionBytes);
  const std::filesystem::path folder =
      path == "-" ? std::filesystem::path() : std::filesystem::path(path).parent_path();
  // Files go by the names that the mission gives them.
  const auto named = [](auto input, const std::string& name) {
    input.digest.name = name;
    return input;
  };
  return parse_mission(
      file, {[&](const std::string& name) {
               return named(read_text_file((folder / name).string()), name);
             },
             [&](const std::string& name) {
               return named(read_binary_file((folder / name).string(), kLargestElevationBytes),
                            name);
             }});
}

}  // namespace sweepwright::formats
