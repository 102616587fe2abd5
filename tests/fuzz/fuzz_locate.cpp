// Positions in any notation: every input is read, or refused with an Error that points at one of
// its characters; what is read is written in every notation and read back as the same place.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/locate/notations.hpp"
#include "sweepwright/locate/read_position.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace {

using namespace sweepwright;

void require(bool holds) {
  if (!holds) std::abort();
}

const locate::Options& options() {
  static const locate::Options made = [] {
    locate::Options result;
    result.points = {{"ABC", Position::at(Angle::degrees(38.25), Angle::degrees(-117))}};
    result.variation = [](Position) { return Angle::degrees(12); };
    return result;
  }();
  return made;
}

void check_refusal(std::string_view text, const Error& error) {
  require(error.code() == ErrorCode::value);
  require(is_utf8(error.what()));
  constexpr std::string_view kCharacter = "character ";
  require(error.where().starts_with(kCharacter));
  const unsigned long number = std::stoul(error.where().substr(kCharacter.size()));
  require(number >= 1 && number <= text.size() + 1);
  require(is_utf8(locate::caret_lines(text, error)));
}

/// Far enough for the coarsest notation written: half of a 7.5' cell in both directions.
void check_reading(const locate::Reading& reading) {
  constexpr double kFurthest = 10000;
  require(is_utf8(reading.read_as) && !reading.read_as.empty());
  for (const locate::Written& written : locate::notations(reading.position)) {
    if (written.text.empty()) continue;
    const Position back = locate::read_position(written.text).position;
    require(geodesic(reading.position, back).length.metres() < kFurthest);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    check_reading(locate::read_position(text, options()));
  } catch (const Error& error) {
    check_refusal(text, error);
  }
  return 0;
}
