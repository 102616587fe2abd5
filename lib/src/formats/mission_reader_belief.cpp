#include "formats/mission_reader_belief.hpp"

#include <fmt/format.h>

#include <array>

#include "formats/mission_values.hpp"
#include "sweepwright/formats/belief_reader.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kMostScenarios = 100;
constexpr std::size_t kMostRoutePoints = 1000;
constexpr std::size_t kMostBands = 50;
constexpr std::size_t kMostRegions = 100;
constexpr std::size_t kMostVotes = 50;
constexpr double kMostWeight = 1e6;
constexpr std::string_view kLargestError = "300km";

/// The kinds of source; a scenario names one.
constexpr std::array<std::string_view, 7> kSources{"datum", "ellipse", "line", "bands",
                                                   "area",  "regions", "file"};

/// Reads areas, and keeps what their files were.
class AreaSource {
 public:
  AreaSource(const FileLoader& load, BeliefField& field) : load_(load), field_(field) {}

  Region operator()(const JsonCursor& cursor) const {
    const SearchArea area = search_area(cursor, load_);
    field_.remarks.insert(field_.remarks.end(), area.remarks.begin(), area.remarks.end());
    field_.inputs.insert(field_.inputs.end(), area.inputs.begin(), area.inputs.end());
    return area.region;
  }

 private:
  const FileLoader& load_;
  BeliefField& field_;
};

double share(const JsonCursor& cursor) {
  const double value = cursor.number("a number from 0 to 1 without quotes, such as 0.4");
  if (!(value >= 0 && value <= 1)) {
    throw Error(ErrorCode::value, fmt::format("{} is not from 0 to 1", value),
                "write 40 percent as 0.4");
  }
  return value;
}

/// E as stated, or from its parts.
belief::Datum datum(const JsonCursor& cursor) {
  JsonObject in(cursor);
  belief::Datum datum;
  datum.position = in.required("position", position);
  const auto error = in.optional("error", length(Least::above_zero, kLargestError));
  belief::ProbableErrors parts;
  bool any_part = false;
  for (const auto& [name, part] : {std::pair{"drift_error", &parts.drift},
                                   {"position_error", &parts.initial_position},
                                   {"craft_error", &parts.search_craft}}) {
    if (const auto given = in.optional(name, length(Least::zero, kLargestError))) {
      *part = *given;
      any_part = true;
    }
  }
  datum.error = error ? *error : belief::total_probable_error(parts);
  if (in.has("error") == any_part) {
    in.mistake("error",
               Error(ErrorCode::input,
                     any_part ? "error and its parts are both given" : "the error is missing",
                     "write the total probable error (error), or its parts: drift_error, "
                     "position_error, craft_error"));
  } else if (in.sound() && datum.error < belief::kLeastError) {
    in.mistake("error", Error(ErrorCode::value, "the total probable error is under 1 m",
                              "write the radius that holds half"));
  }
  in.finish();
  return datum;
}

belief::ErrorEllipse ellipse(const JsonCursor& cursor) {
  JsonObject in(cursor);
  belief::ErrorEllipse ellipse;
  ellipse.centre = in.required("position", position);
  ellipse.semi_major = in.required("semi_major", length(Least::above_zero, kLargestError));
  ellipse.semi_minor = in.required("semi_minor", length(Least::above_zero, kLargestError));
  ellipse.major_axis = in.required("major_axis", true_direction);
  in.finish();
  return ellipse;
}

Path route(const JsonCursor& cursor) {
  return cursor.list(2, kMostRoutePoints, position);
}

belief::DatumLine line(const JsonCursor& cursor) {
  JsonObject in(cursor);
  belief::DatumLine line;
  line.route = in.required("route", route);
  line.spread = in.required("spread", length(Least::above_zero, kLargestError));
  line.leg_weights = in.list("leg_weights", kMostRoutePoints, number(0, kMostWeight));
  if (in.sound() && !line.leg_weights.empty() && line.leg_weights.size() + 1 != line.route.size()) {
    in.mistake("leg_weights", Error(ErrorCode::value,
                                    fmt::format("there are {} weights for {} legs",
                                                line.leg_weights.size(), line.route.size() - 1),
                                    "write one weight for each leg of the route"));
  }
  in.finish();
  return line;
}

belief::Band band(const JsonCursor& cursor) {
  JsonObject in(cursor);
  belief::Band band;
  band.within = in.required("within", length(Least::above_zero, kLargestError));
  band.probability = in.required("probability", share);
  in.finish();
  return band;
}

belief::RouteBands bands(const JsonCursor& cursor) {
  JsonObject in(cursor);
  belief::RouteBands bands;
  bands.route = in.required("route", route);
  bands.bands =
      in.required("bands", [](const JsonCursor& list) { return list.list(1, kMostBands, band); });
  in.finish();
  return bands;
}

belief::Vote vote(const JsonCursor& cursor) {
  JsonObject in(cursor);
  belief::Vote vote;
  vote.planner = in.optional("planner", short_text).value_or("");
  vote.shares = in.required(
      "shares", [](const JsonCursor& list) { return list.list(1, kMostRegions, share); });
  in.finish();
  return vote;
}

belief::Patches regions(const JsonCursor& cursor, const AreaSource& area) {
  JsonObject in(cursor);
  const auto ground = in.required(
      "areas", [&](const JsonCursor& list) { return list.list(1, kMostRegions, area); });
  const auto votes =
      in.required("votes", [](const JsonCursor& list) { return list.list(1, kMostVotes, vote); });
  const bool sound = in.sound();
  in.finish();
  return sound ? belief::consensus(ground, votes) : belief::Patches();
}

/// A file of cells with their probabilities, and what it says of earlier searches.
class CellsSource {
 public:
  CellsSource(const FileLoader& load, std::string_view system, BeliefField& field)
      : load_(load), system_(system), field_(field) {}

  belief::Patches operator()(const JsonCursor& cursor) const {
    const std::string name = short_text(cursor);
    if (name == "-") {
      throw Error(ErrorCode::value, "standard input cannot be the belief of a mission",
                  "name a file of cells, as the command belief writes it");
    }
    const InputText file = load_(name);
    try {
      StatedProbabilities stated = parse_stated_probabilities(file.text, system_);
      field_.inputs.push_back({name, file.digest.sha256});
      field_.earlier_success = stated.cumulative_success;
      return std::move(stated.patches);
    } catch (const Error& error) {
      throw error.at(name);
    }
  }

 private:
  const FileLoader& load_;
  std::string_view system_;
  BeliefField& field_;
};

belief::Scenario scenario(const JsonCursor& cursor, const AreaSource& area,
                          const CellsSource& cells) {
  JsonObject in(cursor);
  belief::Scenario scenario;
  scenario.name = in.optional("name", short_text).value_or("");
  scenario.weight = in.optional("weight", number(0, kMostWeight)).value_or(1);
  int sources = 0;
  for (const std::string_view source : kSources) sources += in.has(source) ? 1 : 0;
  if (const auto given = in.optional("datum", datum)) scenario.source = *given;
  if (const auto given = in.optional("ellipse", ellipse)) scenario.source = *given;
  if (const auto given = in.optional("line", line)) scenario.source = *given;
  if (const auto given = in.optional("bands", bands)) scenario.source = *given;
  if (const auto given = in.optional("area", area)) scenario.source = belief::equal_chances(*given);
  if (const auto given =
          in.optional("regions", [&](const JsonCursor& place) { return regions(place, area); })) {
    scenario.source = *given;
  }
  if (const auto given = in.optional("file", cells)) scenario.source = *given;
  if (sources != 1) {
    throw Error(ErrorCode::input,
                sources == 0 ? "the scenario names no source" : "the scenario names two sources",
                "write one of datum, ellipse, line, bands, area, regions and file");
  }
  in.finish();
  return scenario;
}

}  // namespace

BeliefField belief_field(const JsonCursor& cursor, const FileLoader& load,
                         std::string_view system) {
  BeliefField field;
  const AreaSource area(load, field);
  const CellsSource cells(load, system, field);
  field.scenarios = cursor.list(
      1, kMostScenarios, [&](const JsonCursor& item) { return scenario(item, area, cells); });
  // Scenarios beside it were not in the searches that the file counts.
  if (field.scenarios.size() > 1) field.earlier_success = 0;
  return field;
}

}  // namespace sweepwright::formats
