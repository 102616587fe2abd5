// Reads a file whole, or says in one sentence why it cannot be used.
//
// Conventions: text is UTF-8, and a byte order mark is dropped; other files are bytes as they
// stand.
//   `-` is standard input.
// Domain: files up to the limit; the size of an ordinary file is checked before it is read, so that
//   a file of a gigabyte is refused at once.
// Errors: Error(unreadable): missing, a folder, unreadable. Error(input): empty, too large; of a
//   text also: not UTF-8 (with byte and line). where() is the path.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>

#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::formats {

/// The largest text file that is read whole: far above any mission or drawn area.
inline constexpr std::size_t kLargestTextBytes = 64 * 1024 * 1024;

struct InputText {
  std::string text;    ///< without byte order mark
  InputDigest digest;  ///< of all bytes of the file
};

InputText read_text_file(const std::string& path, std::size_t most_bytes = kLargestTextBytes);

struct InputBytes {
  std::string bytes;
  InputDigest digest;
};

InputBytes read_binary_file(const std::string& path, std::size_t most_bytes);

/// Gives a file by the name that somebody else's file calls it.
using BytesLoader = std::function<InputBytes(const std::string& name)>;

}  // namespace sweepwright::formats
