// The command: collects the subcommands, runs one, and turns errors into a message and an exit
// status.
//
// Exit status: 0 done; 1 some of the work could not be done; 2 the command line or an input was
// wrong;
//   3 done, and the answer of a check is no.
#include <fmt/format.h>

#include <exception>

#include "common/command.hpp"
#include "common/output.hpp"
#include "common/usage_error.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/version.hpp"

namespace sweepwright::cli {
namespace {

constexpr int kPartlyDone = 1;
constexpr int kWrongInput = 2;

int exit_status(ErrorCode code) {
  switch (code) {
    case ErrorCode::usage:
    case ErrorCode::input:
    case ErrorCode::value:
    case ErrorCode::geometry:
    case ErrorCode::unreadable:
      return kWrongInput;
    case ErrorCode::impossible:
    case ErrorCode::unwritable:
      return kPartlyDone;
  }
  return kPartlyDone;
}

std::string typed(int argc, char** argv) {
  std::string line = "sweepwright";
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    const bool plain =
        !word.empty() && word.find_first_of(" \t\n'\"\\$&|;<>()*?") == std::string::npos;
    line += plain ? " " + word : " '" + word + "'";
  }
  return line;
}

std::string footer() {
  return "sweepwright COMMAND --help shows a command's options with an example.\n\n" +
         caution_lines();
}

int run(int argc, char** argv) {
  CLI::App app("Plans searches for missing aircraft, boats and people.", "sweepwright");
  Context context;
  context.command_line = typed(argc, argv);
  app.footer(footer());
  app.set_version_flag("--version", fmt::format("sweepwright {}", version()));
  app.add_option("--stamp", context.stamp_option,
                 "Time to stamp outputs with, so that a run can be repeated byte for byte")
      ->type_name("TIME");
  app.require_subcommand(1);
  app.fallthrough();
  add_plan_command(app, context);
  add_check_command(app, context);
  add_debrief_command(app, context);
  add_locate_command(app, context);
  add_grid_command(app, context);
  add_sweep_command(app, context);
  add_belief_command(app, context);
  add_effort_command(app, context);
  add_sectors_command(app, context);
  add_pattern_command(app, context);
  add_leg_command(app, context);
  add_rings_command(app, context);
  add_ahead_command(app, context);
  add_terrain_command(app, context);
  add_track_command(app, context);
  add_coverage_command(app, context);
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& help) {
    return app.exit(help);
  } catch (const CLI::ParseError& error) {
    throw usage_error(app, error);
  }
  return context.exit_status;
}

}  // namespace
}  // namespace sweepwright::cli

int main(int argc, char** argv) {
  using namespace sweepwright;
  try {
    return cli::run(argc, argv);
  } catch (const Error& error) {
    cli::tell(fmt::format("sweepwright: {}", error.what()));
    return cli::exit_status(error.code());
  } catch (const std::bad_alloc&) {
    cli::tell("sweepwright: there is not enough memory for this");
    return cli::kPartlyDone;
  } catch (const std::exception& error) {
    cli::tell(fmt::format("sweepwright: internal error: {}", error.what()));
    return cli::kPartlyDone;
  }
}
