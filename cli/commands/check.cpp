// sweepwright check: what must be known of a mission's flights before anyone flies.
#include <fmt/format.h>

#include <memory>

#include "common/command.hpp"
#include "common/output.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/findings.hpp"
#include "sweepwright/formats/mission_reader.hpp"
#include "sweepwright/formats/terrain_report.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::cli {
namespace {

constexpr int kAnswerIsNo = 3;

struct CheckOptions {
  std::string mission;
  bool json = false;
};

plan::Plan checked_plan(const plan::Mission& mission, const std::string& path) {
  try {
    return plan::make_plan(mission);
  } catch (const Error& error) {
    throw error.at(path);
  }
}

void run(const CheckOptions& options, Context& context) {
  const plan::Mission mission = formats::read_mission(options.mission);
  const plan::Plan plan = checked_plan(mission, options.mission);
  if (hazard::forbids_flight(plan.findings)) context.exit_status = kAnswerIsNo;
  if (options.json) {
    formats::Provenance provenance = context.provenance();
    for (const plan::InputFile& input : mission.inputs) {
      provenance.inputs.push_back({input.name, input.digest});
    }
    print(formats::findings_json(plan, provenance));
    return;
  }
  std::string text = formats::findings_text(plan.findings);
  const std::string minima = formats::minima_text(plan);
  if (!minima.empty()) text += fmt::format("\n{}{}\n", minima, formats::kTerrainCaution);
  print(text + "\n" + caution_lines());
}

}  // namespace

void add_check_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "check", "Check a mission's flights before anyone flies them: one line for each finding");
  command->footer(fmt::format(
      "Each leg is checked as it is flown, turns and ways out and back included, against the\n"
      "mission's elevation model. Worst findings come first. What could not be checked is said.\n"
      "Exit status: 3 when something must not be flown, 0 otherwise; 0 does not mean safe.\n"
      "{}\n"
      "Planning aid only, not for navigation: check charts, notices, obstacles and weather; local\n"
      "rules apply and the pilot in command decides.\n\n"
      "Example:\n  sweepwright check mission.json --json",
      formats::kTerrainCaution));
  auto options = std::make_shared<CheckOptions>();
  command->add_option("mission", options->mission, "The mission file")
      ->required()
      ->type_name("MISSION.json");
  command->add_flag("--json", options->json, "Write JSON");
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
