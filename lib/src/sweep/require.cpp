#include "sweep/require.hpp"

#include <fmt/format.h>

#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {

void require_above_zero(Length length, std::string_view what) {
  if (length > Length() && std::isfinite(length.metres())) return;
  throw Error(ErrorCode::value,
              fmt::format("the {} is {} m, expected a length above 0", what, length.metres()));
}

}  // namespace sweepwright::sweep
