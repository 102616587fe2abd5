// sweepwright sweep: sweep width, coverage, probability of detection and track spacing, with the
// working.
#include <fmt/format.h>

#include <memory>
#include <nlohmann/json.hpp>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/sweep_report.hpp"
#include "sweepwright/sweep/detection.hpp"
#include "sweepwright/sweep/search_object.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::cli {
namespace {

struct SweepOptions {
  std::string platform;
  std::string object;
  std::string height;
  std::string visibility;
  std::string wind;
  std::string sea;
  std::string terrain;
  std::string ground_speed;
  std::string weather_table;
  std::string manual_width;
  std::string manual;
  std::string spacing;
  std::string coverage;
  std::string pod;
  std::string law = "exponential";
  bool fatigued = false;
  bool list_objects = false;
  bool json = false;
};

void list_objects() {
  std::string text;
  for (const sweep::SearchObject& object : sweep::search_objects()) {
    text += fmt::format("{:<32} {}\n", object.name, sweep::name(object.surface));
  }
  print(text);
}

sweep::Request request(const SweepOptions& options) {
  for (const auto& [name, text] :
       {std::pair{"--platform", options.platform}, std::pair{"--object", options.object}}) {
    if (text.empty()) {
      throw Error(ErrorCode::usage, fmt::format("{} is missing", name),
                  "see sweepwright sweep --help, and --list-objects for the objects");
    }
  }
  sweep::Request request{
      .platform = option_value("--platform", options.platform, sweep::parse_platform),
      .object = options.object,
      .visibility = optional_value("--visibility", options.visibility, parse_length),
      .height = optional_value("--height", options.height, parse_length),
      .wind = optional_value("--wind", options.wind, parse_speed),
      .sea = optional_value("--sea", options.sea, parse_length),
      .ground_speed = optional_value("--ground-speed", options.ground_speed, parse_speed),
      .terrain = optional_value("--terrain", options.terrain, sweep::parse_terrain),
      .fatigued = options.fatigued};
  if (!options.weather_table.empty()) request.weather_table = options.weather_table;
  request.uncorrected = optional_value("--manual-width", options.manual_width, parse_length);
  request.uncorrected_source = options.manual;
  return request;
}

formats::SweepReport report(const SweepOptions& options) {
  const sweep::DetectionLaw law = option_value("--law", options.law, sweep::parse_detection_law);
  const int wanted = static_cast<int>(!options.spacing.empty()) +
                     static_cast<int>(!options.coverage.empty()) +
                     static_cast<int>(!options.pod.empty());
  if (wanted > 1) {
    throw Error(ErrorCode::usage, "--spacing, --coverage and --pod say the same thing three ways",
                "give one of them");
  }
  const sweep::SweepWidth width = sweep::sweep_width(request(options));
  if (!options.spacing.empty()) {
    return formats::report_for_spacing(
        width, option_value("--spacing", options.spacing, parse_length), law);
  }
  if (!options.coverage.empty()) {
    const double coverage =
        option_value("--coverage", options.coverage,
                     [](const std::string& text) { return parse_number(text, "the coverage"); });
    return formats::report_for_coverage(width, sweep::Coverage(coverage), law);
  }
  if (!options.pod.empty()) {
    const double pod = option_value("--pod", options.pod, [](const std::string& text) {
      return parse_number(text, "the probability of detection");
    });
    return formats::report_for_probability(width, sweep::Probability(pod), law);
  }
  return {.width = width, .law = law, .planned = {}};
}

void run(const SweepOptions& options) {
  if (options.list_objects) return list_objects();
  const formats::SweepReport answer = report(options);
  print(options.json ? formats::sweep_report_json(answer) : formats::sweep_report_text(answer));
}

}  // namespace

void add_sweep_command(CLI::App& app, Context&) {
  CLI::App* command = app.add_subcommand(
      "sweep", "Work out sweep width, track spacing, coverage and probability of detection");
  command->footer(
      "The working is shown line by line, to be checked by hand.\n\n"
      "Example:\n"
      "  sweepwright sweep --platform fixed-wing --object \"Aircraft under 5700 kg\" --height "
      "1000ft \\\n"
      "    --visibility 10NM --terrain hilly --spacing 1NM");
  auto options = std::make_shared<SweepOptions>();
  command->add_option("--platform", options->platform, "What carries the lookouts")
      ->type_name("fixed-wing|helicopter|vessel|small-boat|ground-team");
  command->add_option("--object", options->object, "What is sought, as --list-objects names it")
      ->type_name("NAME");
  command->add_flag("--list-objects", options->list_objects, "List the search objects and stop");
  command->add_option("--height", options->height, "Height above ground or water")
      ->type_name("LENGTH");
  command->add_option("--visibility", options->visibility, "Meteorological visibility")
      ->type_name("LENGTH");
  command->add_option("--wind", options->wind, "Wind speed, over water")->type_name("SPEED");
  command->add_option("--sea", options->sea, "Height of the waves")->type_name("LENGTH");
  command->add_option("--terrain", options->terrain, "Vegetation or terrain, over land")
      ->type_name("open|hilly|mountainous|dense-vegetation");
  command->add_option("--ground-speed", options->ground_speed, "Search speed")->type_name("SPEED");
  command
      ->add_option("--weather-table", options->weather_table,
                   "Which manual's weather factors to use")
      ->type_name("KEY");
  command
      ->add_option("--manual-width", options->manual_width,
                   "Uncorrected sweep width from your own manual, in place of the built-in table")
      ->type_name("LENGTH");
  command->add_option("--manual", options->manual, "Which manual and table that width is from")
      ->type_name("TEXT");
  command->add_flag("--fatigued", options->fatigued, "Crews report excessive fatigue");
  command
      ->add_option("--spacing", options->spacing, "Track spacing: gives coverage and probability")
      ->type_name("LENGTH");
  command->add_option("--coverage", options->coverage, "Coverage wanted: gives track spacing")
      ->type_name("C");
  command
      ->add_option("--pod", options->pod,
                   "Probability of detection wanted, 0 to 1: gives track spacing")
      ->type_name("P");
  command->add_option("--law", options->law, "Detection law; exponential is the cautious one")
      ->type_name("inverse-cube|exponential|definite-range")
      ->capture_default_str();
  command->add_flag("--json", options->json, "Write JSON");
  command->callback([options] { run(*options); });
}

}  // namespace sweepwright::cli
