// sweepwright sweep: sweep width, track spacing, coverage, probability of detection, hours and
// ground, with the working.
#include <fmt/format.h>

#include <memory>

#include "commands/sweep_request.hpp"
#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/formats/sweep_chart.hpp"
#include "sweepwright/sweep/search_object.hpp"

namespace sweepwright::cli {
namespace {

constexpr std::string_view kText = "text";

struct SweepOptions {
  SweepRequest request;
  bool list_objects = false;
  bool laws = false;
  bool json = false;
  OutputOptions output;
};

void list_objects(const sweep::Tables& tables) {
  std::string text;
  for (const sweep::SearchObject& object : sweep::search_objects(tables)) {
    text += fmt::format("{:<32} {}\n", object.name, sweep::name(object.surface));
  }
  print(text);
}

void write_text(const OutputOptions& output, const std::string& text) {
  output.write([&](formats::Sink& sink) { sink.write(text); });
}

void run(const SweepOptions& options, const Context& context) {
  formats::Provenance provenance = context.provenance();
  if (options.list_objects) {
    return list_objects(requested_tables(options.request, provenance));
  }
  if (options.laws)
    return write_text(options.output, formats::write_svg(formats::draw_law_chart()));
  const std::string format = options.output.format();
  const formats::SweepReport report = make_sweep_report(options.request, provenance);
  if (format == kPicture) {
    write_text(options.output, formats::write_svg(formats::draw_sweep_chart(report)));
  } else if (options.json || format == "json") {
    write_text(options.output, formats::sweep_report_json(report, provenance));
  } else {
    write_text(options.output, formats::sweep_report_text(report));
  }
}

std::string footer() {
  std::string text =
      "The sweep width comes from the tables (--platform, --object and conditions), or from one "
      "of\n"
      "--sweep-width, --lateral-range, --detection-range and --range-of-detection. The working is\n"
      "shown line by line, to be checked by hand.\n\n"
      "Examples:\n"
      "  sweepwright sweep --platform fixed-wing --object \"Aircraft under 5700 kg\" --height "
      "1000ft \\\n"
      "    --visibility 10NM --terrain hilly --spacing 1NM\n"
      "  sweepwright sweep --sweep-width 2NM --area 400NM2 --hours 4h --speed 90kt\n"
      "  sweepwright sweep --detection-range horizon --height 3000ft --coverage 1\n"
      "  sweepwright sweep --lateral-range trials.csv --pod 0.8\n\n";
  for (const std::string_view caution : formats::kCautions) text += fmt::format("{}\n", caution);
  return text;
}

}  // namespace

void add_sweep_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "sweep", "Work out sweep width, track spacing, coverage, probability of detection and hours");
  command->footer(footer());
  auto options = std::make_shared<SweepOptions>();
  options->request.add_to(*command);
  command->add_flag("--list-objects", options->list_objects, "List the search objects and stop");
  command->add_flag("--laws", options->laws,
                    "Draw the detection laws (SVG) and stop, without a search");
  command->add_flag("--json", options->json, "The same as --format json");
  options->output.add_to(*command, {std::string(kText), "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
