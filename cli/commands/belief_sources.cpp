#include "commands/belief_sources.hpp"

#include <fmt/format.h>

#include <array>

#include "common/output.hpp"
#include "common/route_file.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/belief_reader.hpp"
#include "sweepwright/formats/input_file.hpp"

namespace sweepwright::cli {
namespace {

constexpr std::array kSources{"--datum", "--route", "--area", "--probabilities"};

std::string same(const std::string& text) {
  return text;
}

belief::Source datum(OptionTexts& options) {
  const Position position = options.position("--datum", "a datum");
  const Length error = options.needed("--error", "a datum", parse_length);
  const auto minor = options.optional("--minor-error", parse_length);
  if (!minor) return belief::Datum{position, error};
  return belief::ErrorEllipse{position, error, *minor,
                              options.needed("--axis", "an error ellipse", parse_true_direction)};
}

belief::Source route(OptionTexts& options, GivenSource& given) {
  Path route = read_route(options.needed("--route", "a route", same), given.inputs);
  return belief::DatumLine{
      std::move(route), options.needed("--spread", "a route", parse_length), {}};
}

belief::Source area(OptionTexts& options, GivenSource& given) {
  const std::string path = options.needed("--area", "an area", same);
  const formats::AreaFile file = formats::read_area_file(path);
  for (const std::string& remark : file.reading.remarks) tell(fmt::format("{}: {}", path, remark));
  given.inputs.push_back(file.digest);
  return belief::equal_chances(file.reading.region);
}

belief::Source stated(OptionTexts& options, const std::string& system, GivenSource& given) {
  const std::string path = options.needed("--probabilities", "a belief", same);
  const formats::InputText file = formats::read_text_file(path);
  given.inputs.push_back(file.digest);
  try {
    return formats::parse_stated_probabilities(file.text, system).patches;
  } catch (const Error& error) {
    throw error.at(path);
  }
}

}  // namespace

void add_source_options(CLI::App& command, OptionTexts& options) {
  options.add(command, "--datum", "Datum: the most probable position", "POSITION");
  options.add(command, "--error",
              "Total probable error: half of all lies within it of the datum (the larger half axis "
              "of an ellipse)",
              "LENGTH");
  options.add(command, "--minor-error", "Error ellipse: its smaller half axis, at 50 %", "LENGTH");
  options.add(command, "--axis", "Error ellipse: true direction of its larger axis", "DEGREES");
  options.add(command, "--route", "Route flown or sailed: GPX, GeoJSON, KML, or a position a line",
              "FILE");
  options.add(command, "--spread", "Half of all lies within it of the track, both sides together",
              "LENGTH");
  options.add(command, "--area", "Equal chances in this GeoJSON or KML area", "FILE");
  options.add(command, "--probabilities",
              "Probabilities from elsewhere: CSV cell,probability or an Esri ASCII grid in degrees",
              "FILE");
}

GivenSource given_source(OptionTexts& options, const std::string& system) {
  GivenSource given;
  int count = 0;
  for (const char* source : kSources) count += static_cast<int>(options.has(source));
  if (count > 1) {
    throw Error(ErrorCode::usage, "more than one source is given",
                "give one of --datum, --route, --area and --probabilities, or mix them by weight "
                "in a mission file");
  }
  belief::Scenario scenario;
  if (options.has("--datum")) {
    scenario.source = datum(options);
  } else if (options.has("--route")) {
    scenario.source = route(options, given);
  } else if (options.has("--area")) {
    scenario.source = area(options, given);
  } else if (options.has("--probabilities")) {
    scenario.source = stated(options, system, given);
  } else {
    return given;
  }
  given.scenarios.push_back(std::move(scenario));
  return given;
}

}  // namespace sweepwright::cli
