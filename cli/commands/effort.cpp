// sweepwright effort: where the hours are worth most, cell by cell or as rectangles that the units
// can fly.
#include <fmt/format.h>

#include <memory>

#include "commands/effort_units.hpp"
#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/belief_reader.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/effort_map.hpp"
#include "sweepwright/formats/effort_report.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::cli {
namespace {

struct EffortOptions {
  std::string belief;
  UnitOptions units;
  std::string wanted_pos;
  bool rectangles = false;
  std::string direction;
  OutputOptions output;
};

sweep::Probability parse_wanted_pos(const std::string& text) {
  return sweep::Probability(parse_number(text, "the wanted probability of success"));
}

formats::EffortReport make_report(const EffortOptions& options, const belief::Belief& belief) {
  formats::EffortReport report;
  report.wanted_pos = optional_value("--wanted-pos", options.wanted_pos, parse_wanted_pos);
  report.units = options.units.units(report.wanted_pos.has_value());
  report.belief = belief;
  const effort::Cells cells = effort::cells_of(report.belief);
  if (report.wanted_pos) {
    const Area needed = effort::effort_for(cells, *report.wanted_pos);
    report.units = effort::with_hours_for(report.units, needed);
  }
  report.allocation = effort::optimal_allocation(cells, effort::total_effort(report.units));
  if (!options.rectangles) return report;
  std::vector<effort::Searcher> searchers;
  for (const effort::Unit& unit : report.units) searchers.push_back({unit, options.units.limits()});
  report.plan =
      effort::assign(effort::ground_of(report.belief), searchers,
                     optional_value("--direction", options.direction, parse_true_direction));
  return report;
}

formats::EffortFormat effort_format(const std::string& name) {
  if (name == "csv") return formats::EffortFormat::csv;
  if (name == "json") return formats::EffortFormat::json;
  return formats::EffortFormat::geojson;
}

void tell_result(const formats::EffortReport& report) {
  if (report.plan) {
    tell(fmt::format(
        "the rectangles have a probability of success of {:.4f}, {:.1f} percent of "
        "the theoretical {:.4f}",
        report.plan->pos.value(), 100 * report.plan->ratio, report.plan->bound.value()));
  } else {
    tell(
        fmt::format("theoretical probability of success {:.4f}; rectangles that can be flown find "
                    "less (--rectangles)",
                    report.allocation.pos.value()));
  }
}

void run(const EffortOptions& options, const Context& context) {
  const std::string format = options.output.format();
  const formats::BeliefFile file = formats::read_belief_file_and_digest(options.belief);
  formats::Provenance provenance = context.provenance();
  provenance.inputs = {file.digest};
  const formats::EffortReport report = make_report(options, file.belief);
  options.output.write([&](formats::Sink& sink) {
    if (format == kPicture) {
      sink.write(formats::write_svg(formats::draw_effort_map(report, kPictureSize)));
      return;
    }
    const auto write =
        options.rectangles ? formats::write_effort_rectangles : formats::write_effort_cells;
    write(sink, report, effort_format(format), provenance);
  });
  tell_result(report);
}

std::string footer() {
  std::string text =
      "BELIEF is a file of cells with probabilities, as `sweepwright belief` writes it; - is "
      "standard input.\n"
      "Without --rectangles each cell gets the coverage of the theoretical optimum (exponential "
      "detection),\n"
      "which is a bound for every plan. With --rectangles each unit gets one rectangle that it can "
      "fly at one\n"
      "track spacing.\n\n"
      "Examples:\n"
      "  sweepwright effort belief.geojson --sweep-width 1NM --speed 90kt --hours 3h\n"
      "  sweepwright effort belief.geojson --sweep-width 1NM --speed 90kt --wanted-pos 0.6 -f "
      "json\n"
      "  sweepwright effort belief.geojson --rectangles --least-leg 5NM --least-spacing 0.5NM \\\n"
      "    --unit \"Lark 1,1NM,90kt,5h,60NM/110kt,60NM/80kt,45min\" --unit \"Heron "
      "2,0.6NM,60kt,2h\"\n\n";
  for (const std::string_view caution : formats::kCautions) text += fmt::format("{}\n", caution);
  return text;
}

}  // namespace

void add_effort_command(CLI::App& app, Context& context) {
  CLI::App* command =
      app.add_subcommand("effort", "Divide the hours over a belief: where they are worth most");
  command->footer(footer());
  auto options = std::make_shared<EffortOptions>();
  command->add_option("belief", options->belief, "Cells with their probabilities")
      ->required()
      ->type_name("BELIEF");
  options->units.add_to(*command);
  command
      ->add_option("--wanted-pos", options->wanted_pos,
                   "Work out the least hours for this probability of success, 0 to 1")
      ->type_name("P");
  command->add_flag("--rectangles", options->rectangles,
                    "One rectangle for each unit, to be flown at one track spacing");
  command
      ->add_option("--direction", options->direction,
                   "Rectangles: direction of the legs, or across it; else chosen")
      ->type_name("DIRECTION");
  options->output.add_to(*command, {"geojson", "csv", "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
