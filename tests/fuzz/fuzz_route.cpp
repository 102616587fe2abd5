// Any bytes as a route: read, or refused with an Error; no route of fewer than two places.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/route_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  try {
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are the text
    const auto reading =
        sweepwright::formats::parse_route({reinterpret_cast<const char*>(data), size});
    if (reading.route.size() < 2) std::abort();
  } catch (const sweepwright::Error&) {
  }
  return 0;
}
