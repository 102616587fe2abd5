// Writes an overlay in the format that a command's output options ask for.
#pragma once

#include <string>
#include <vector>

#include "common/output.hpp"
#include "sweepwright/formats/overlay_writer.hpp"

namespace sweepwright::cli {

/// For OutputOptions::add_to().
std::vector<std::string> overlay_formats();

void write_overlay_to(const OutputOptions& output, const formats::Overlay& overlay,
                      const formats::Provenance& provenance);

}  // namespace sweepwright::cli
