// Any bytes as a lateral range curve: read, or refused with an Error; what parallel sweeps find
// under it is a probability, and never above the coverage.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/parallel_sweeps.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace sweepwright;
  try {
    const sweep::LateralRangeTable table =
        sweep::parse_lateral_range({reinterpret_cast<const char*>(data), size}, "fuzz.csv");
    const Length width = sweep::area_under(table.curve);
    if (!(width > Length())) std::abort();
    const double found = sweep::parallel_sweeps_probability(table.curve, width).value();
    if (!(found >= 0 && found <= 1)) std::abort();
  } catch (const Error&) {
  }
  return 0;
}
