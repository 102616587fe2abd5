// sweepwright leg: distance, bearings, time and fuel between two places, both ways.
#include <memory>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "common/wind_option.hpp"
#include "sweepwright/formats/leg_report.hpp"
#include "sweepwright/formats/local_time.hpp"

namespace sweepwright::cli {
namespace {

struct LegOptions {
  std::string from;
  std::string to;
  std::string true_airspeed;
  WindOption wind;
  std::string fuel_flow;
  std::string depart;
  bool json = false;
};

void run(const LegOptions& options, const Context& context) {
  const formats::Provenance provenance = context.provenance();
  const Position from = position_option("A", options.from);
  const Position to = position_option("B", options.to);
  const auto depart = optional_value("--depart", options.depart, formats::parse_local_time);
  flight::WayConditions conditions;
  conditions.depart = depart ? depart->time : provenance.stamp;
  conditions.true_airspeed = optional_value("--true-airspeed", options.true_airspeed, parse_speed);
  conditions.height = options.wind.flight_height();
  conditions.wind = options.wind.field(from, conditions.depart);
  const auto fuel_flow = optional_value("--fuel-flow", options.fuel_flow, flight::parse_fuel_flow);
  if (!conditions.true_airspeed && (options.wind.is_given() || fuel_flow)) {
    throw Error(ErrorCode::usage, "wind and fuel say nothing without a speed",
                "add --true-airspeed");
  }
  const formats::LegReport report{flight::there_and_back(from, to, conditions), fuel_flow};
  print(options.json ? formats::leg_report_json(report, provenance)
                     : formats::leg_report_text(report));
}

}  // namespace

void add_leg_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "leg", "Distance and bearings between two places; time and fuel in the wind, out and back");
  command->footer(
      "Planning aid only, not for navigation: check charts, notices, terrain and weather; local "
      "rules\n"
      "apply and the pilot in command decides.\n\n"
      "Example:\n"
      "  sweepwright leg \"38-15.0N 117-02.5W\" \"39-30.0N 115-45.0W\" --true-airspeed 100kt "
      "--wind 250/20kt \\\n"
      "    --fuel-flow 30kg/h");
  auto options = std::make_shared<LegOptions>();
  command->add_option("A", options->from, "From this place")->required()->type_name("POSITION");
  command->add_option("B", options->to, "To this place, and back")
      ->required()
      ->type_name("POSITION");
  command->add_option("--true-airspeed", options->true_airspeed, "Speed through the air")
      ->type_name("SPEED");
  options->wind.add_to(*command);
  command->add_option("--fuel-flow", options->fuel_flow, "Fuel used in an hour: 30kg/h, 8USgal/h")
      ->type_name("AMOUNT/h");
  command
      ->add_option("--depart", options->depart,
                   "When, for the variation and for winds of several times; else the time of the "
                   "run")
      ->type_name("TIME");
  command->add_flag("--json", options->json, "Write JSON in place of text");
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
