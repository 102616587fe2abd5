// Any bytes as a DTED file: read, or refused with an Error.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/dted_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  try {
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are the text
    sweepwright::formats::parse_dted({reinterpret_cast<const char*>(data), size}, "fuzz");
  } catch (const sweepwright::Error&) {
  }
  return 0;
}
