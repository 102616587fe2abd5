#include "formats/sheet_parts.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {

std::string origin_line(const Provenance& provenance) {
  return creator(provenance) + ", made " + format_utc(provenance.stamp) +
         ". WGS 84. Tracks from TRUE, headings from MAGNETIC north. NM = 1852 m, kt, ft. Times in "
         "the forecast wind, turns included.";
}

std::vector<std::string> footer_lines(const Provenance& provenance) {
  std::vector<std::string> lines{"Made by: " + provenance.command};
  for (const InputDigest& input : provenance.inputs) {
    lines.push_back("Input " + input.name + ", SHA-256 " + input.sha256);
  }
  return lines;
}

}  // namespace sweepwright::formats
