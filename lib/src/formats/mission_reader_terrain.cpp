#include "formats/mission_reader_terrain.hpp"

#include <fmt/format.h>

#include <array>

#include "formats/mission_values.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/elevation_reader.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kMostFiles = 200;

HeightUnit height_unit(const JsonCursor& cursor) {
  return parse_height_unit(cursor.text("the unit of all heights in quotes: m, ft or us-ft"));
}

UtmZone utm_zone(const JsonCursor& cursor) {
  return parse_utm_zone(cursor.text("a UTM zone in quotes, such as \"13N\""));
}

struct ElevationField {
  std::vector<std::string> files;
  ElevationOptions options;
};

ElevationField elevation_field(const JsonCursor& cursor) {
  JsonObject in(cursor);
  ElevationField field;
  field.files = in.required("files", [](const JsonCursor& list) {
    return list.list(1, kMostFiles, [](const JsonCursor& item) {
      std::string name = short_text(item);
      if (name == "-") {
        throw Error(ErrorCode::value, "standard input cannot be a mission's elevation model",
                    "name a file");
      }
      return name;
    });
  });
  field.options.unit = in.optional("heights_in", height_unit);
  field.options.zone = in.optional("zone", utm_zone);
  in.finish();
  return field;
}

/// `500ft/min`, or any speed.
Speed parse_rate_of_climb(const std::string& text) {
  constexpr std::string_view kAMinute = "/min";
  if (!to_lower_ascii(text).ends_with(kAMinute)) return parse_speed(text);
  return parse_length(text.substr(0, text.size() - kAMinute.size())) / std::chrono::minutes(1);
}

Speed rate_of_climb(const JsonCursor& cursor) {
  const std::string wanted = "write a rate of climb above 0, up to 10000ft/min, such as 500ft/min";
  const std::string& text = cursor.text(wanted);
  try {
    const Speed rate = parse_rate_of_climb(text);
    if (rate > Speed() && rate <= Length::feet(10000) / std::chrono::minutes(1)) return rate;
  } catch (const Error& error) {
    throw Error(error.code(), error.message(), wanted);
  }
  throw Error(ErrorCode::value, fmt::format("'{}' cannot be used", printable(text)), wanted);
}

hazard::ClimbPerformance climb(const JsonCursor& cursor) {
  JsonObject in(cursor);
  hazard::ClimbPerformance climb;
  climb.rate = in.required("rate", rate_of_climb);
  climb.airspeed = in.required("airspeed", speed(Least::above_zero, "1000kt"));
  in.finish();
  return climb;
}

hazard::HeightsBy heights_by(const JsonCursor& cursor) {
  constexpr std::array<std::string_view, 3> kNames{"pattern", "leg", "steps"};
  const std::string name =
      one_of({kNames.begin(), kNames.end()}, "a way of planning heights")(cursor);
  if (name == kNames[0]) return hazard::HeightsBy::pattern;
  return name == kNames[1] ? hazard::HeightsBy::leg : hazard::HeightsBy::steps;
}

}  // namespace

void read_elevation(JsonObject& in, const BytesLoader& load, plan::Mission& mission) {
  const auto files = in.optional("elevation", [&](const JsonCursor& cursor) {
    const std::size_t mistakes_before = cursor.mistakes().count();
    const ElevationField field = elevation_field(cursor);
    if (cursor.mistakes().count() != mistakes_before) return ElevationFiles();
    if (!load) throw Error(ErrorCode::input, "elevation models cannot be read from here");
    return load_elevation_files(field.files, field.options, load);
  });
  if (!files) return;
  mission.elevation = plan::Elevation{files->model, files->remarks};
  for (const InputDigest& digest : files->digests) {
    mission.inputs.push_back({digest.name, digest.sha256});
  }
}

hazard::Minima minima(const JsonCursor& cursor) {
  JsonObject in(cursor);
  hazard::Minima minima;
  if (const auto given = in.optional("clearance", length(Least::zero, "10000ft"))) {
    minima.clearance = *given;
    minima.source = "as the planner states it";
  }
  minima.corridor = in.optional("corridor", length(Least::zero, "20NM"));
  if (const auto source = in.optional("source", long_text)) minima.source = *source;
  if (in.has("source") && !in.has("clearance")) {
    in.mistake("source", Error(ErrorCode::input, "a source is given without a clearance",
                               "write the clearance that it asks for"));
  }
  in.finish();
  return minima;
}

void read_heights(JsonObject& in, plan::SearchUnit& unit) {
  unit.search_altitude = in.optional("search_altitude", length(Least::zero, "60000ft"));
  const auto heights = in.optional("heights", heights_by);
  if (heights) unit.heights = *heights;
  if (const auto step = in.optional("height_step", length(Least::above_zero, "100NM"))) {
    unit.shortest_step = *step;
  }
  if (in.has("search_altitude") && in.has("heights")) {
    in.mistake(
        "heights",
        Error(ErrorCode::input, "search_altitude and heights are both given",
              "keep search_altitude for one stated height, or heights to have them planned"));
  }
  if (in.has("height_step") && heights != hazard::HeightsBy::steps) {
    in.mistake("height_step", Error(ErrorCode::input, "a step is given without steps",
                                    "write \"heights\": \"steps\", or leave the step out"));
  }
  unit.climb = in.optional("climb", climb);
  unit.minima = in.optional("minima", minima);
  if (sweep::flies(unit.platform)) return;
  for (const std::string_view field : {"heights", "height_step", "climb", "minima"}) {
    if (!in.has(field)) continue;
    in.mistake(field, Error(ErrorCode::value, "only aircraft are checked against the ground",
                            "leave the field out"));
  }
}

}  // namespace sweepwright::formats
