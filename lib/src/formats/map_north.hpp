// The north arrows of a map; private to the formats room.
//
// Conventions: true north is up. Magnetic north stands beside it, turned by the variation as it is,
//   never exaggerated; a map without a date has no magnetic north. The half head on the side of the
//   variation tells the arrow of magnetic north from that of true north.
#pragma once

#include <optional>

#include "formats/map_labels.hpp"
#include "formats/map_symbols.hpp"
#include "sweepwright/magnetic/variation.hpp"

namespace sweepwright::formats {

class NorthArrows {
 public:
  explicit NorthArrows(const std::optional<magnetic::Variation>& variation);

  PaperSize size() const;
  /// Stands them in the corner of the frame where they cover least, on the right if they can.
  void place(const PaperBox& frame, LabelPlacer& placer);
  /// On white, so that lines of the map do not run through them.
  Elements elements() const;

 private:
  std::optional<Angle> variation_;
  std::string note_;  ///< what there is to know of the variation
  PaperPoint centre_;
};

}  // namespace sweepwright::formats
