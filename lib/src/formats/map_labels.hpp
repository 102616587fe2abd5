// LabelPlacer: finds room for the texts of a map; private to the formats room.
//
// Problem: labels must not cover each other or a symbol, and should cover few lines. Each has
//   places where it would do, best first; the placer weighs how late in that row a place stands
//   against the lines that it covers. Labels that may be left out are left out when all their
//   places are taken.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "formats/map_geometry.hpp"

namespace sweepwright::formats {

class LabelPlacer {
 public:
  explicit LabelPlacer(PaperBox inside) : inside_(inside) {}

  /// Labels stay off this box.
  void keep_clear(const PaperBox& box) { taken_.push_back(box); }
  /// Labels cover this line only when no other place near is free.
  void spare(const PaperLine& line) { lines_.push_back(line); }

  /// The best of the places, reserved; none when each is taken or leaves the map.
  std::optional<PaperPoint> place(PaperSize size, const std::vector<PaperPoint>& centres);
  /// The same for a label that must be shown: the place that covers least, moved into the map.
  PaperPoint place_anyway(PaperSize size, const std::vector<PaperPoint>& centres);
  /// The first of the places that is free, whatever lines run there.
  std::optional<PaperPoint> place_over_lines(PaperSize size,
                                             const std::vector<PaperPoint>& centres);

 private:
  std::optional<PaperPoint> best(PaperSize size, const std::vector<PaperPoint>& centres,
                                 bool may_overlap) const;
  double overlap_mm2(const PaperBox& box) const;
  double line_length_mm(const PaperBox& box) const;

  PaperBox inside_;
  std::vector<PaperBox> taken_;
  std::vector<PaperLine> lines_;
};

/// The text, or as much of its beginning as fits into the width, with `...`.
std::string fitted(std::string_view text, double size_mm, bool bold, double width_mm);

/// The box that a text needs, with a little air.
PaperSize label_size(const Text& text);

/// Places round a symbol of that radius where a label of that size can stand: right, left, above,
/// below, then the corners, then the same a little farther off.
std::vector<PaperPoint> places_round(PaperPoint symbol, double radius_mm, PaperSize label);

/// Places all over an area where a label lies wholly inside it, nearest to the wanted place first.
std::vector<PaperPoint> places_inside(const PaperArea& area, const PaperBox& box, PaperSize label,
                                      PaperPoint wanted);

}  // namespace sweepwright::formats
