// The options of commands that read logs: --track and how to read and clean it.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/track_reader.hpp"

namespace sweepwright::cli {

class TrackOptions {
 public:
  /// With `file_option`, the files are those of --track; else the command names them itself.
  void add_to(CLI::App& command, bool file_option);

  const std::vector<std::string>& files() const { return files_; }
  /// Throw Error for a text that is no value of its option.
  formats::TrackReadOptions reading() const;
  track::CleaningOptions cleaning() const;

 private:
  std::vector<std::string> files_;
  std::string format_;
  std::string offset_;
  std::string day_;
  std::vector<std::string> columns_;
  std::string fastest_ = "400kt";
  std::string longest_gap_ = "60s";
  std::string longest_step_ = "1NM";
};

/// Of a file, whatever its length.
formats::InputDigest track_digest(const std::string& file);

}  // namespace sweepwright::cli
