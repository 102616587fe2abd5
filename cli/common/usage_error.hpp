// Turns the option parser's complaints into our one kind of error, with the nearest spelling.
#pragma once

#include <CLI/CLI.hpp>

#include "sweepwright/base/error.hpp"

namespace sweepwright::cli {

Error usage_error(const CLI::App& app, const CLI::ParseError& error);

}  // namespace sweepwright::cli
