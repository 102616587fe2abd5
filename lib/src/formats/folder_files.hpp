// Files of a folder that are all made before the first is written; private to the formats room.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

struct NamedText {
  std::filesystem::path path;  ///< from the folder
  std::string text;
};

template <typename Write>
std::string text_of(Write write) {
  StringSink sink;
  write(sink);
  return sink.text();
}

/// Writes each file as a whole, in place of one that is there; makes folders. Returns the paths
/// from the folder. Throws Error(unwritable).
std::vector<std::filesystem::path> write_folder(const std::filesystem::path& folder,
                                                const std::vector<NamedText>& files);

}  // namespace sweepwright::formats
