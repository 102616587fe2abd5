#include "sweepwright/formats/dted_reader.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <limits>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kHeaderBytes = 80 + 648 + 2700;  // user header, data set, accuracy
constexpr std::size_t kDataSetAt = 80;
constexpr std::size_t kVerticalDatumAt = kDataSetAt + 141;
constexpr std::size_t kHorizontalDatumAt = kDataSetAt + 144;
constexpr std::size_t kProfileHeaderBytes = 8;
constexpr std::size_t kSumBytes = 4;
constexpr std::uint8_t kProfileMark = 0xAA;
constexpr int kGap = -32767;

class DtedReader {
 public:
  DtedReader(std::string_view bytes, std::string_view name) : bytes_(bytes) {
    reading_.tile.source = std::string(name);
  }

  ElevationReading read() {
    if (bytes_.size() < kHeaderBytes) fail("the file ends within its header", "is it cut off?");
    read_header();
    read_datums();
    const std::size_t wanted = kHeaderBytes + columns() * profile_bytes();
    if (bytes_.size() < wanted) {
      fail(fmt::format("the file has {} bytes, and its {} profiles need {}", bytes_.size(),
                       columns(), wanted),
           "is it cut off?");
    }
    reading_.tile.heights_m.resize(columns() * rows());
    for (std::size_t column = 0; column < columns(); ++column) read_profile(column);
    return std::move(reading_);
  }

 private:
  [[noreturn]] static void fail(std::string message, std::string hint = {}) {
    throw Error(ErrorCode::input, std::move(message), std::move(hint));
  }

  std::size_t rows() const { return static_cast<std::size_t>(reading_.tile.rows); }
  std::size_t columns() const { return static_cast<std::size_t>(reading_.tile.columns); }
  std::size_t profile_bytes() const { return kProfileHeaderBytes + 2 * rows() + kSumBytes; }

  int number(std::size_t at, std::size_t count, int least, int most, std::string_view what) const {
    return parse_whole_number(trimmed(bytes_.substr(at, count)), least, most, what);
  }

  /// `1060000W`: degrees, minutes, seconds and a letter.
  Angle corner(std::size_t at, int most, char positive, char negative) const {
    const int degrees = number(at, 3, 0, most, "degrees of the corner");
    const int minutes = number(at + 3, 2, 0, 59, "minutes of the corner");
    const int seconds = number(at + 5, 2, 0, 59, "seconds of the corner");
    const char letter = bytes_[at + 7];
    if (letter != positive && letter != negative) {
      fail(fmt::format("the corner has neither {} nor {}", positive, negative));
    }
    const Angle angle = Angle::degrees(degrees + minutes / 60.0 + seconds / 3600.0);
    return letter == positive ? angle : -angle;
  }

  void read_header() {
    const Angle west = corner(4, 180, 'E', 'W');
    const Angle south = corner(12, 90, 'N', 'S');
    const Angle longitude_step = step(20);
    const Angle latitude_step = step(24);
    terrain::ElevationTile& tile = reading_.tile;
    tile.columns = number(47, 4, 2, 9999, "the number of profiles");
    tile.rows = number(51, 4, 2, 9999, "the number of heights in a profile");
    tile.posts = terrain::PostKind::point;
    tile.lattice = terrain::GeographicLattice{south + (tile.rows - 1) * latitude_step, west,
                                              latitude_step, longitude_step};
    reading_.unit = HeightUnit::metre;
  }

  Angle step(std::size_t at) const {
    constexpr double kTenthsOfSecondInDegree = 36000;
    return Angle::degrees(number(at, 4, 1, 9999, "a step in tenths of a second") /
                          kTenthsOfSecondInDegree);
  }

  void read_datums() {
    const std::string_view vertical = trimmed(bytes_.substr(kVerticalDatumAt, 3));
    reading_.tile.vertical_reference = vertical == "E96"   ? "mean sea level (EGM96)"
                                       : vertical == "MSL" ? "mean sea level"
                                                           : "";
    const std::string_view horizontal = trimmed(bytes_.substr(kHorizontalDatumAt, 5));
    if (horizontal == "WGS72") {
      reading_.remarks.push_back("positions are on WGS 72: read as WGS 84, up to 20 m off");
    } else if (horizontal != "WGS84") {
      fail(fmt::format("positions are on '{}'", printable(horizontal)),
           "turn the model into WGS 84 first");
    }
  }

  std::uint8_t byte(std::size_t at) const { return static_cast<std::uint8_t>(bytes_[at]); }

  unsigned big_endian(std::size_t at, std::size_t count) const {
    unsigned value = 0;
    for (std::size_t i = 0; i < count; ++i) value = (value << 8U) | byte(at + i);
    return value;
  }

  void read_profile(std::size_t column) {
    const std::size_t start = kHeaderBytes + column * profile_bytes();
    if (byte(start) != kProfileMark || big_endian(start + 4, 2) != column) {
      fail(fmt::format("profile {} is not where it should be", column + 1), "is the file damaged?");
    }
    const std::size_t sum_at = start + kProfileHeaderBytes + 2 * rows();
    unsigned sum = 0;
    for (std::size_t at = start; at < sum_at; ++at) sum += byte(at);
    if (sum != big_endian(sum_at, kSumBytes)) {
      fail(fmt::format("the sum of profile {} is {}, and its record says {}", column + 1, sum,
                       big_endian(sum_at, kSumBytes)),
           "the file is damaged: fetch it again");
    }
    for (std::size_t i = 0; i < rows(); ++i) {
      const unsigned word = big_endian(start + kProfileHeaderBytes + 2 * i, 2);
      const int magnitude = static_cast<int>(word & 0x7FFFU);
      const int height = (word & 0x8000U) != 0 ? -magnitude : magnitude;
      reading_.tile.heights_m[(rows() - 1 - i) * columns() + column] =
          height == kGap ? std::numeric_limits<float>::quiet_NaN() : static_cast<float>(height);
    }
  }

  std::string_view bytes_;
  ElevationReading reading_;
};

}  // namespace

bool is_dted(std::string_view bytes) {
  return bytes.starts_with("UHL1");
}

ElevationReading parse_dted(std::string_view bytes, std::string_view name) {
  return DtedReader(bytes, name).read();
}

}  // namespace sweepwright::formats
