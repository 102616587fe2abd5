// What every command is given, and the list of commands.
//
// A command is one file: it declares its options, and its action parses their texts, calls the
// library once and hands the answer to a writer. Mathematics live in the library.
#pragma once

#include <CLI/CLI.hpp>
#include <string>

#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::cli {

/// The world as handed in: what was typed, and the time to stamp outputs with.
struct Context {
  std::string command_line;
  std::string stamp_option;  ///< of --stamp; empty when not given
  int exit_status = 0;       ///< set by an action whose work was partly done, or whose answer is no

  /// Version, command line and stamp for an output. The stamp is that of --stamp, else of the
  /// environment's SOURCE_DATE_EPOCH, else the clock's.
  formats::Provenance provenance() const;
};

void add_locate_command(CLI::App& app, Context& context);
void add_grid_command(CLI::App& app, Context& context);
void add_sweep_command(CLI::App& app, Context& context);
void add_belief_command(CLI::App& app, Context& context);
void add_effort_command(CLI::App& app, Context& context);
void add_pattern_command(CLI::App& app, Context& context);
void add_leg_command(CLI::App& app, Context& context);
void add_rings_command(CLI::App& app, Context& context);
void add_ahead_command(CLI::App& app, Context& context);
void add_sectors_command(CLI::App& app, Context& context);
void add_terrain_command(CLI::App& app, Context& context);
void add_track_command(CLI::App& app, Context& context);
void add_coverage_command(CLI::App& app, Context& context);
void add_plan_command(CLI::App& app, Context& context);
void add_check_command(CLI::App& app, Context& context);
void add_debrief_command(CLI::App& app, Context& context);

}  // namespace sweepwright::cli
