// Quantities as text: every input is read, or refused with Error; what is read is finite.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

/// Runs a reader; its refusals must be fit to print.
template <typename Read>
void try_reading(Read read) {
  try {
    read();
  } catch (const sweepwright::Error& error) {
    require(error.code() == sweepwright::ErrorCode::value);
    require(sweepwright::is_utf8(error.what()));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace sweepwright;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try_reading([&] { require(std::isfinite(parse_length(text).metres())); });
  try_reading([&] { require(std::isfinite(parse_speed(text).metres_per_second())); });
  try_reading([&] { require(std::isfinite(parse_duration(text).count())); });
  try_reading([&] { require(std::isfinite(parse_number(text, "a number"))); });
  try_reading([&] {
    const int number = parse_whole_number(text, 1, 20, "a number of legs");
    require(number >= 1 && number <= 20);
  });
  try_reading([&] {
    std::visit([](auto d) { require(d.degrees() >= 0 && d.degrees() < 360); },
               parse_direction(text));
  });
  return 0;
}
