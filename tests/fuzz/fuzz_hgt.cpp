// Any bytes as a .hgt file: the first line is its name, and the rest is repeated until it has the
// size of a 3 arc-second tile, so that what lies behind the check of the size is reached too.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/hgt_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are the text
  const std::string_view input(reinterpret_cast<const char*>(data), size);
  const std::size_t end = input.find('\n');
  if (end == std::string_view::npos || end + 1 == size) return 0;
  const std::string_view piece = input.substr(end + 1);
  std::string bytes;
  constexpr std::size_t kTile = std::size_t{2} * 1201 * 1201;
  while (bytes.size() < kTile) bytes += piece.substr(0, kTile - bytes.size());
  for (const std::string_view file : {piece, std::string_view(bytes)}) {
    try {
      sweepwright::formats::parse_hgt(file, input.substr(0, end));
    } catch (const sweepwright::Error&) {
    }
  }
  return 0;
}
