// Any bytes as a list of named points: read, or refused with an Error; no point without a name.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/point_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  try {
    const auto points =
        sweepwright::formats::parse_points({reinterpret_cast<const char*>(data), size});
    for (const auto& [name, position] : points) {
      if (name.empty()) std::abort();
    }
  } catch (const sweepwright::Error&) {
  }
  return 0;
}
