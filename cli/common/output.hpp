// Where a command's data goes: a file that appears whole, or standard output.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::cli {

/// The options -o, --overwrite and -f of a command.
class OutputOptions {
 public:
  /// `formats`: the choices of --format; the first is the default. None: no --format.
  void add_to(CLI::App& command, std::vector<std::string> formats);

  /// The format asked for, else that of the output's ending, else the default. Throws Error(usage).
  std::string format() const;

  /// Hands a sink to `write`, and puts the finished file in its place.
  void write(const std::function<void(formats::Sink&)>& write) const;

 private:
  std::string path_;
  std::string format_;
  bool overwrite_ = false;
  std::vector<std::string> formats_;
};

/// The format of pictures, and their size: the width of a page.
inline constexpr std::string_view kPicture = "svg";
inline constexpr formats::PaperSize kPictureSize{180, 140};

/// The cautions, one a line: the end of each command's help.
std::string caution_lines();

/// Writes text to standard output.
void print(std::string_view text);
/// Writes a line to standard error: talk, not data.
void tell(std::string_view text);

}  // namespace sweepwright::cli
