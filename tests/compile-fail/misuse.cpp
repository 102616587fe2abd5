// Mistakes that must not compile, each beside the same line mended. CMakeLists.txt compiles each
// case twice: as it is, where it must fail for the named reason, and with MENDED, where it must
// not.
#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/quantity.hpp"
#include "sweepwright/position/position.hpp"

#ifdef MENDED
#define MISTAKE_OR_MENDED(mistake, mended) mended
#else
#define MISTAKE_OR_MENDED(mistake, mended) mistake
#endif

namespace sweepwright {

[[maybe_unused]] void misuse(Length length, Speed speed, Angle angle, Duration time,
                             TrueDirection true_track, MagneticDirection magnetic_track) {
#if defined(METRES_PLUS_DEGREES)
  static_cast<void>(MISTAKE_OR_MENDED(length + angle, length + length));
#elif defined(LENGTH_PLUS_SPEED)
  static_cast<void>(MISTAKE_OR_MENDED(length + speed, length + speed * time));
#elif defined(LENGTH_TIMES_LENGTH_IS_NO_LENGTH)
  length = MISTAKE_OR_MENDED(length * length, length * 2);
#elif defined(LENGTH_COMPARED_WITH_SPEED)
  static_cast<void>(MISTAKE_OR_MENDED(length < speed, length < length));
#elif defined(LENGTH_FROM_BARE_NUMBER)
  const Length from = MISTAKE_OR_MENDED(5.0, Length::metres(5.0));
  static_cast<void>(from);
#elif defined(LENGTH_BUILT_FROM_BARE_NUMBER)
  static_cast<void>(MISTAKE_OR_MENDED(Length(5.0), Length::feet(5.0)));
#elif defined(BARE_NUMBER_FROM_LENGTH)
  const double number = MISTAKE_OR_MENDED(length, length.metres());
  static_cast<void>(number);
#elif defined(POSITION_FROM_BARE_NUMBERS)
  static_cast<void>(MISTAKE_OR_MENDED(Position::at(47.0, 11.0), Position::at(angle, angle)));
#elif defined(TRUE_FROM_MAGNETIC)
  true_track = MISTAKE_OR_MENDED(magnetic_track, true_track.reversed());
#elif defined(TRUE_COMPARED_WITH_MAGNETIC)
  static_cast<void>(MISTAKE_OR_MENDED(true_track == magnetic_track, true_track == true_track));
#elif defined(TURN_FROM_TRUE_TO_MAGNETIC)
  static_cast<void>(MISTAKE_OR_MENDED(turn_between(true_track, magnetic_track),
                                      turn_between(magnetic_track, magnetic_track)));
#elif defined(DIRECTION_FROM_BARE_NUMBER)
  true_track = MISTAKE_OR_MENDED(45.0, TrueDirection::degrees(45.0));
#else
#error "no such case"
#endif
  static_cast<void>(true_track);
}

}  // namespace sweepwright
