#include "common/output.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/output_file.hpp"

namespace sweepwright::cli {

void OutputOptions::add_to(CLI::App& command, std::vector<std::string> formats) {
  formats_ = std::move(formats);
  command.add_option("-o,--output", path_, "File to write; - or none: standard output")
      ->type_name("FILE");
  command.add_flag("--overwrite", overwrite_, "Replace the output file if it exists");
  if (formats_.empty()) return;
  std::string choices;
  for (const std::string& format : formats_) choices += (choices.empty() ? "" : "|") + format;
  command
      .add_option(
          "-f,--format", format_,
          fmt::format("Output format; else by the file's ending, else {}", formats_.front()))
      ->type_name(choices);
}

std::string OutputOptions::format() const {
  const auto known = [&](const std::string& name) {
    return std::find(formats_.begin(), formats_.end(), name) != formats_.end();
  };
  if (!format_.empty()) {
    std::string wanted = to_lower_ascii(format_);
    if (known(wanted)) return wanted;
    const std::vector<std::string_view> choices(formats_.begin(), formats_.end());
    throw Error(ErrorCode::usage, fmt::format("there is no format '{}'", printable(format_)),
                spelling_hint(format_, choices), "--format");
  }
  if (path_.empty() || path_ == "-") return formats_.front();
  const std::string ending = to_lower_ascii(std::filesystem::path(path_).extension().string());
  if (!ending.empty() && known(ending.substr(1))) return ending.substr(1);
  throw Error(ErrorCode::usage, fmt::format("the ending of '{}' names no format", printable(path_)),
              "add --format", "--output");
}

void OutputOptions::write(const std::function<void(formats::Sink&)>& write) const {
  if (path_.empty() || path_ == "-") {
    formats::StreamSink sink(stdout, "standard output");
    write(sink);
    sink.flush();
    return;
  }
  formats::OutputFile file(path_,
                           overwrite_ ? formats::Existing::replace : formats::Existing::refuse);
  write(file);
  file.commit();
}

std::string caution_lines() {
  std::string text;
  for (const std::string_view caution : formats::kCautions) text += fmt::format("{}\n", caution);
  return text;
}

void print(std::string_view text) {
  formats::StreamSink sink(stdout, "standard output");
  sink.write(text);
  sink.flush();
}

void tell(std::string_view text) {
  std::fflush(stdout);
  fmt::print(stderr, "{}\n", text);
}

}  // namespace sweepwright::cli
