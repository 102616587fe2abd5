#include "formats/folder_files.hpp"

#include <fmt/format.h>

#include <system_error>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/output_file.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;

void make_folder(const fs::path& folder) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error || !fs::is_directory(folder)) {
    throw Error(ErrorCode::unwritable,
                error ? fmt::format("the folder cannot be made: {}", error.message())
                      : std::string("a file of that name is in the way"),
                "give a folder that you may write to", folder.string());
  }
}

}  // namespace

std::vector<fs::path> write_folder(const fs::path& folder, const std::vector<NamedText>& files) {
  for (const NamedText& file : files) make_folder((folder / file.path).parent_path());
  std::vector<fs::path> written;
  for (const NamedText& file : files) {
    write_text_file(folder / file.path, file.text, Existing::replace);
    written.push_back(file.path);
  }
  return written;
}

}  // namespace sweepwright::formats
