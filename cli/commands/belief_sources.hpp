// What the command `belief` starts from: options that describe one source, or a belief in a file.
#pragma once

#include <optional>
#include <vector>

#include "common/option_texts.hpp"
#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::cli {

/// Declares --datum, --route and the other sources with their options.
void add_source_options(CLI::App& command, OptionTexts& options);

/// The scenario that the options describe, and the files that were read for it; none when no source
/// is given. `system`: the grid's name, for files of cells that do not say theirs.
struct GivenSource {
  std::vector<belief::Scenario> scenarios;
  std::vector<formats::InputDigest> inputs;
};
GivenSource given_source(OptionTexts& options, const std::string& system);

}  // namespace sweepwright::cli
