// Any bytes as an elevation file of any form: a model, or refused with an Error.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/elevation_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace sweepwright;
  try {
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are the text
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const terrain::ElevationModel model({formats::parse_elevation(bytes, "fuzz").tile});
    height(model, Position());
  } catch (const Error&) {
  }
  return 0;
}
