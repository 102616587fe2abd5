#include "sweepwright/formats/hgt_reader.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <limits>
#include <optional>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kBytesOfPost = 2;
constexpr std::int16_t kGap = -32768;

struct Corner {
  int latitude;
  int longitude;
};

/// `count` digits at the front of `text`.
std::optional<int> digits(std::string_view text, std::size_t count) {
  if (text.size() < count) return std::nullopt;
  int value = 0;
  for (const char c : text.substr(0, count)) {
    if (!is_ascii_digit(c)) return std::nullopt;
    value = 10 * value + (c - '0');
  }
  return value;
}

/// The corner that a file name such as `folder/N37W106.SRTMGL3.hgt` names.
std::optional<Corner> corner_of(std::string_view path) {
  const std::string name = to_upper_ascii(path.substr(path.find_last_of("/\\") + 1));
  if (name.size() < 7 || (name.size() > 7 && name[7] != '.')) return std::nullopt;
  const std::optional<int> latitude = digits(std::string_view(name).substr(1), 2);
  const std::optional<int> longitude = digits(std::string_view(name).substr(4), 3);
  const bool letters = (name[0] == 'N' || name[0] == 'S') && (name[3] == 'E' || name[3] == 'W');
  if (!letters || !latitude || !longitude || *latitude > 90 || *longitude > 180) {
    return std::nullopt;
  }
  return Corner{name[0] == 'S' ? -*latitude : *latitude, name[3] == 'W' ? -*longitude : *longitude};
}

int side_of(std::size_t bytes) {
  for (const int side : {1201, 3601}) {
    const auto posts = static_cast<std::size_t>(side) * static_cast<std::size_t>(side);
    if (bytes == posts * kBytesOfPost) return side;
  }
  throw Error(ErrorCode::input,
              fmt::format("a .hgt file has 2,884,802 bytes (3 arc-seconds) or 25,934,402 "
                          "(1 arc-second), and this one has {}",
                          bytes),
              "is it cut off, or still packed?");
}

}  // namespace

ElevationReading parse_hgt(std::string_view bytes, std::string_view name) {
  const std::optional<Corner> corner = corner_of(name);
  if (!corner) {
    throw Error(ErrorCode::input,
                fmt::format("the name '{}' does not say where the heights are", printable(name)),
                "a .hgt file is named for its south-west corner, such as N37W106.hgt");
  }
  const int side = side_of(bytes.size());
  const Angle step = Angle::degrees(1) / (side - 1);
  ElevationReading reading;
  reading.unit = HeightUnit::metre;
  reading.tile = {terrain::GeographicLattice{Angle::degrees(corner->latitude + 1),
                                             Angle::degrees(corner->longitude), step, step},
                  terrain::PostKind::point,
                  side,
                  side,
                  {},
                  std::string(name),
                  "mean sea level (EGM96)"};
  reading.tile.heights_m.reserve(bytes.size() / kBytesOfPost);
  for (std::size_t i = 0; i < bytes.size(); i += kBytesOfPost) {
    const auto high = static_cast<std::uint8_t>(bytes[i]);
    const auto low = static_cast<std::uint8_t>(bytes[i + 1]);
    const auto height = static_cast<std::int16_t>(static_cast<std::uint16_t>((high << 8U) | low));
    reading.tile.heights_m.push_back(height == kGap ? std::numeric_limits<float>::quiet_NaN()
                                                    : static_cast<float>(height));
  }
  return reading;
}

}  // namespace sweepwright::formats
