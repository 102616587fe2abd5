#include "formats/box_text.hpp"

namespace sweepwright::formats {

void BoxText::append_corners(std::string& out, const FlatBox& box, const ShortText& between) {
  south_.set(box.south);
  north_.set(box.north);
  if (box.west == east_.angle) west_ = east_;  // the neighbour's east
  west_.set(box.west);
  east_.set(box.east);

  constexpr std::size_t kCorners = 5;
  std::array<char, 4 * kCorners * ShortText::kRoom> corners;  // two limits, a comma and `between`
  char* end = corners.data();
  const auto put = [&end, &between](const Limit& longitude, const Limit& latitude) {
    end = longitude.text.put(end);
    *end++ = ',';
    end = between.put(latitude.text.put(end));
  };
  put(west_, south_);
  put(east_, south_);
  put(east_, north_);
  put(west_, north_);
  put(west_, south_);
  out.append(corners.data(), end - between.size);
}

}  // namespace sweepwright::formats
