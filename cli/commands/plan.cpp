// sweepwright plan: from a mission file to overlays and crew sheets.
#include "sweepwright/plan/plan.hpp"

#include <fmt/format.h>

#include <memory>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/mission_reader.hpp"
#include "sweepwright/formats/plan_folder.hpp"
#include "sweepwright/formats/plan_json.hpp"
#include "sweepwright/formats/plan_summary.hpp"

namespace sweepwright::cli {
namespace {

struct PlanOptions {
  std::string mission;
  std::string folder;
  bool json = false;
};

void run(const PlanOptions& options, const Context& context) {
  const plan::Mission mission = formats::read_mission(options.mission);
  for (const std::string& remark : mission.input_remarks) {
    tell(fmt::format("search area: {}", remark));
  }
  const plan::Plan plan = [&] {
    try {
      return plan::make_plan(mission);
    } catch (const Error& error) {
      throw error.at(options.mission);
    }
  }();
  formats::Provenance provenance = context.provenance();
  for (const plan::InputFile& input : mission.inputs) {
    provenance.inputs.push_back({input.name, input.digest});
  }
  const auto files = formats::write_plan_folder(plan, options.folder, provenance);
  if (options.json) {
    print(formats::plan_json(plan, provenance));
    return;
  }
  std::string text = formats::plan_summary(plan);
  text += fmt::format("\nWritten to {}:\n", options.folder);
  for (const auto& file : files) text += fmt::format("  {}\n", file.generic_string());
  text += "\n";
  for (const std::string_view caution : formats::kCautions) text += fmt::format("{}\n", caution);
  print(text);
}

}  // namespace

void add_plan_command(CLI::App& app, Context& context) {
  CLI::App* command =
      app.add_subcommand("plan", "Plan a search: sectors, patterns, overlays and crew sheets");
  command->footer(
      "Files in the folder that this command wrote before are replaced one by one, each as a "
      "whole;\n"
      "other files are not touched.\n\n"
      "Example:\n  sweepwright plan mission.json -o plan-folder");
  auto options = std::make_shared<PlanOptions>();
  command->add_option("mission", options->mission, "The mission file")
      ->required()
      ->type_name("MISSION.json");
  command->add_option("-o,--output", options->folder, "Folder to write the plan to")
      ->required()
      ->type_name("DIR");
  command->add_flag("--json", options->json, "Print the plan as JSON in place of the table");
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
