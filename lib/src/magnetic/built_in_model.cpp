#include "embedded/wmm2025.hpp"
#include "sweepwright/magnetic/model.hpp"

namespace sweepwright::magnetic {

const Model& world_magnetic_model() {
  static const Model model = parse_model(embedded::wmm2025(), "wmm2025.cof");
  return model;
}

}  // namespace sweepwright::magnetic
