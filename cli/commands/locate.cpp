// sweepwright locate: how a position was read, and what it is called everywhere.
#include <fmt/format.h>

#include <memory>
#include <nlohmann/json.hpp>

#include "common/command.hpp"
#include "common/output.hpp"
#include "sweepwright/locate/notations.hpp"
#include "sweepwright/position/position_text.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::cli {
namespace {

using nlohmann::ordered_json;

struct LocateOptions {
  std::string text;
  bool json = false;
  bool strict = false;
};

std::string shown(Position position) {
  return format_position(position, Notation::degrees_minutes);
}

std::string as_json(const locate::Reading& reading) {
  ordered_json others = ordered_json::array();
  for (const locate::OtherReading& other : reading.other_readings) {
    others.push_back({{"latitude", other.position.latitude().degrees()},
                      {"longitude", other.position.longitude().degrees()},
                      {"read_as", other.read_as}});
  }
  ordered_json notations = ordered_json::object();
  for (const locate::Written& entry : locate::notations(reading.position)) {
    notations[std::string(entry.key)] = entry.text;
  }
  const ordered_json json{{"latitude", reading.position.latitude().degrees()},
                          {"longitude", reading.position.longitude().degrees()},
                          {"read_as", reading.read_as},
                          {"other_readings", others},
                          {"notations", notations}};
  return json.dump(2) + "\n";
}

std::string as_text(const locate::Reading& reading) {
  std::string text = fmt::format("{}\nread as {}\n", shown(reading.position), reading.read_as);
  for (const locate::OtherReading& other : reading.other_readings) {
    text += fmt::format("could also be {}, read as {}\n", shown(other.position), other.read_as);
  }
  text += "\n";
  for (const locate::Written& entry : locate::notations(reading.position)) {
    text += fmt::format("{:<10} {}\n", entry.key, entry.text);
  }
  return text;
}

void run(const LocateOptions& options) {
  try {
    locate::Options reading_options;
    reading_options.strict = options.strict;
    const locate::Reading reading = locate::read_position(options.text, reading_options);
    print(options.json ? as_json(reading) : as_text(reading));
  } catch (const Error& error) {
    const std::string caret = locate::caret_lines(options.text, error);
    if (!caret.empty()) tell(caret);
    throw;
  }
}

}  // namespace

void add_locate_command(CLI::App& app, Context&) {
  CLI::App* command =
      app.add_subcommand("locate", "Say how a position is read, and write it in every notation");
  command->footer(
      "Latitude comes first unless hemisphere letters say otherwise.\n\n"
      "Example:\n  sweepwright locate \"38-15.0N 117-02.5W\"");
  auto options = std::make_shared<LocateOptions>();
  command->add_option("text", options->text, "The position as written or spoken")
      ->required()
      ->type_name("TEXT");
  command->add_flag("--json", options->json, "Write JSON");
  command->add_flag("--strict", options->strict, "Refuse a text that can be read in two ways");
  command->callback([options] { run(*options); });
}

}  // namespace sweepwright::cli
