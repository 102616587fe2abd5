#include "commands/sweep_width_source.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "common/option_value.hpp"
#include "sweepwright/formats/lateral_range_reader.hpp"
#include "sweepwright/sweep/sensor.hpp"

namespace sweepwright::cli {
namespace {

enum class Source { tables, own_width, lateral_range, detection_range, range_of_detection };

Error usage(std::string message, std::string hint) {
  return Error(ErrorCode::usage, std::move(message), std::move(hint));
}

/// An option's text and the places that it is for.
struct OptionUse {
  std::string_view name;
  bool given;
  std::vector<Source> used_by;
};

std::vector<OptionUse> option_uses(const SweepRequest& request) {
  using enum Source;
  return {{"--object", !request.object.empty(), {tables}},
          {"--height", !request.height.empty(), {tables, detection_range}},
          {"--visibility", !request.visibility.empty(), {tables}},
          {"--wind", !request.wind.empty(), {tables}},
          {"--sea", !request.sea.empty(), {tables}},
          {"--terrain", !request.terrain.empty(), {tables}},
          {"--weather-table", !request.weather_table.empty(), {tables}},
          {"--manual-width", !request.manual_width.empty(), {tables}},
          {"--manual", !request.manual.empty(), {tables, own_width}},
          {"--fatigued", request.fatigued, {tables}},
          {"--table", !request.tables.empty(), {tables}},
          {"--range-kind", !request.range_kind.empty(), {detection_range}},
          {"--beacon-height", !request.beacon_height.empty(), {detection_range}},
          {"--contrast", !request.contrast.empty(), {range_of_detection}}};
}

Source source_of(const SweepRequest& request) {
  const std::array<std::pair<std::string_view, bool>, 4> places{
      {{"--sweep-width", !request.sweep_width.empty()},
       {"--lateral-range", !request.lateral_range.empty()},
       {"--detection-range", !request.detection_range.empty()},
       {"--range-of-detection", !request.range_of_detection.empty()}}};
  Source source = Source::tables;
  std::string_view chosen;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i].second) continue;
    if (!chosen.empty()) {
      throw usage(fmt::format("{} and {} both give the sweep width", chosen, places[i].first),
                  "give one of them");
    }
    chosen = places[i].first;
    source = static_cast<Source>(i + 1);
  }
  for (const OptionUse& option : option_uses(request)) {
    const bool used = std::count(option.used_by.begin(), option.used_by.end(), source) > 0;
    if (!option.given || used) continue;
    throw chosen.empty()
        ? usage(fmt::format("{} does not go with the sweep width tables", option.name),
                "see sweepwright sweep --help for what it goes with")
        : usage(fmt::format("{} does not go with {}: no factor is applied to that "
                            "width",
                            option.name, chosen),
                "leave one of them out");
  }
  return source;
}

sweep::SweepWidth from_tables(const SweepRequest& request, formats::Provenance& provenance) {
  for (const auto& [name, text] :
       {std::pair{"--platform", request.platform}, std::pair{"--object", request.object}}) {
    if (text.empty()) {
      throw usage(fmt::format("{} is missing", name),
                  "see sweepwright sweep --help, and --list-objects for the objects");
    }
  }
  sweep::Request asked{
      .platform = option_value("--platform", request.platform, sweep::parse_platform),
      .object = request.object,
      .visibility = optional_value("--visibility", request.visibility, parse_length),
      .height = optional_value("--height", request.height, parse_length),
      .wind = optional_value("--wind", request.wind, parse_speed),
      .sea = optional_value("--sea", request.sea, parse_length),
      .ground_speed = optional_value("--speed", request.speed, parse_speed),
      .terrain = optional_value("--terrain", request.terrain, sweep::parse_terrain),
      .fatigued = request.fatigued,
      .uncorrected = optional_value("--manual-width", request.manual_width, parse_length),
      .uncorrected_source = request.manual};
  if (!request.weather_table.empty()) asked.weather_table = request.weather_table;
  return sweep::sweep_width(asked, requested_tables(request, provenance));
}

/// The range as given, or that of the radio horizon from the aerial heights.
sweep::SweepWidth from_detection_range(const SweepRequest& request) {
  const bool horizon = request.detection_range == "horizon";
  if (!horizon && request.range_kind.empty()) {
    throw usage("--range-kind is missing",
                "say whether the detection range is the minimum, average or maximum one");
  }
  if (!horizon && !(request.height.empty() && request.beacon_height.empty())) {
    throw usage("--height and --beacon-height are for --detection-range horizon",
                "leave them out, or let them give the range");
  }
  const sweep::RangeKind kind =
      request.range_kind.empty()
          ? sweep::RangeKind::horizon
          : option_value("--range-kind", request.range_kind, sweep::parse_range_kind);
  if (!horizon) {
    return sweep::electronic_sweep_width(
        option_value("--detection-range", request.detection_range, parse_length), kind);
  }
  if (kind != sweep::RangeKind::horizon) {
    throw usage("the horizon is neither minimum, average nor maximum detection range",
                "leave --range-kind out");
  }
  if (request.height.empty()) throw usage("--height is missing", "the horizon follows from it");
  return sweep::horizon_sweep_width(
      {option_value("--height", request.height, parse_length),
       optional_value("--beacon-height", request.beacon_height, parse_length).value_or(Length())});
}

sweep::SweepWidth from_range_of_detection(const SweepRequest& request) {
  const auto contrast = optional_value("--contrast", request.contrast, sweep::parse_contrast);
  return sweep::ground_team_sweep_width(
      option_value("--range-of-detection", request.range_of_detection, parse_length),
      contrast.value_or(sweep::Contrast::any));
}

}  // namespace

SourcedWidth make_sourced_width(const SweepRequest& request, formats::Provenance& provenance) {
  const Source source = source_of(request);
  // Elsewhere the platform changes nothing; it may be named all the same.
  optional_value("--platform", request.platform, sweep::parse_platform);
  switch (source) {
    case Source::tables:
      return {from_tables(request, provenance), std::nullopt};
    case Source::own_width:
      return {sweep::given_sweep_width(
                  option_value("--sweep-width", request.sweep_width, parse_length), request.manual),
              std::nullopt};
    case Source::lateral_range: {
      const formats::LateralRangeFile file =
          formats::read_lateral_range_file(request.lateral_range);
      provenance.inputs.push_back(file.digest);
      return {sweep::measured_sweep_width(file.table), file.table.curve};
    }
    case Source::detection_range:
      return {from_detection_range(request), std::nullopt};
    case Source::range_of_detection:
      break;
  }
  return {from_range_of_detection(request), std::nullopt};
}

}  // namespace sweepwright::cli
