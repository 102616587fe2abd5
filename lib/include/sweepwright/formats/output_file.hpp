// OutputFile: a file that appears whole or not at all.
//
// Problem: a crew must never load half an overlay. The text goes to a hidden file in the same
//   folder, which takes the wanted name on commit(); without commit() it vanishes.
// Conventions: a symbolic link is followed. What is not an ordinary file (a pipe, a terminal) is
//   written to directly: it cannot be replaced.
// Promises: P1 before commit() nothing under the wanted name is touched; P2 after an error or
//   without commit() nothing is left behind (a killed process may leave the hidden file).
// Errors: Error(unwritable) with the path in where().
#pragma once

#include <cstdio>
#include <filesystem>
#include <string_view>

#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

/// What to do with a file that is already there.
enum class Existing { refuse, replace };

class OutputFile : public Sink {
 public:
  OutputFile(const std::filesystem::path& path, Existing existing);
  ~OutputFile() override;
  OutputFile(const OutputFile&) = delete;
  OutputFile& operator=(const OutputFile&) = delete;

  void write(std::string_view bytes) override;
  /// Puts the file in its place. Nothing may be written afterwards.
  void commit();

 private:
  void discard() noexcept;
  [[noreturn]] void fail_writing();

  std::filesystem::path shown_;      ///< as the caller wrote it
  std::filesystem::path wanted_;     ///< links followed
  std::filesystem::path temporary_;  ///< empty when written to directly
  Existing existing_;
  std::FILE* stream_ = nullptr;
};

/// A whole file in one call.
void write_text_file(const std::filesystem::path& path, std::string_view text, Existing existing);

}  // namespace sweepwright::formats
