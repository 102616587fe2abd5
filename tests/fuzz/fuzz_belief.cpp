// Any bytes as a belief or as probabilities from elsewhere: read, or refused with an Error; a
// belief that is read sums to 1 and can be written.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"
#include "sweepwright/formats/belief_reader.hpp"
#include "sweepwright/formats/belief_writer.hpp"

namespace {

using namespace sweepwright;

void require_whole(const belief::Belief& belief) {
  const double total = belief::sum(belief.probability) + belief.outside;
  if (!(std::abs(total - 1) < 1e-9) || belief.outside < 0) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are the text
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    const belief::Belief belief = formats::parse_belief(text);
    require_whole(belief);
    formats::StringSink sink;
    formats::write_belief(sink, belief, formats::BeliefFormat::geojson, {});
  } catch (const Error&) {
  }
  try {
    formats::parse_stated_probabilities(text, "gars");
  } catch (const Error&) {
  }
  return 0;
}
