// Files and folders for tests: the repository's own, and folders that vanish afterwards.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace sweepwright::test {

/// The repository's folder.
std::filesystem::path repository();
/// The folder of the published check values.
std::filesystem::path checks();

/// The whole of a file, byte for byte. Throws when it cannot be read.
std::string read_file(const std::filesystem::path& file);

/// Writes a file and the folders above it.
void write_file(const std::filesystem::path& file, std::string_view bytes);

/// A new empty folder that is deleted, with all in it, when the object goes.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace sweepwright::test
