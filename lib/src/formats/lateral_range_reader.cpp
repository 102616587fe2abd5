#include "sweepwright/formats/lateral_range_reader.hpp"

#include "sweepwright/formats/input_file.hpp"

namespace sweepwright::formats {

LateralRangeFile read_lateral_range_file(const std::string& path) {
  const InputText file = read_text_file(path);
  return {sweep::parse_lateral_range(file.text, path), file.digest};
}

}  // namespace sweepwright::formats
