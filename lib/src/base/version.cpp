#include "sweepwright/base/version.hpp"

namespace sweepwright {

std::string_view version() {
  return SWEEPWRIGHT_VERSION;
}

}  // namespace sweepwright
