#include "sweepwright/grid/quarter.hpp"

#include <algorithm>
#include <array>

#include "grid/lat_lon_grid.hpp"
#include "grid/name_error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {
namespace {

constexpr int kMostQuarters = 4;
constexpr int kSixteenth = kStepsPerDegree / 16;

/// The intersection at a cell's south-east corner, in whole degrees, north and east positive.
struct Corner {
  int latitude;
  int longitude;
};

// The parts of all names, made when the library is compiled: a name is put together by copying.
using Part = std::array<char, 4>;
struct NameParts {
  // By degrees from the south pole and from 180 W of the cell's south-west corner.
  std::array<std::array<Part, 180>, 2> latitudes{};  ///< [0] `36/`, [1] `36N/`
  std::array<Part, 360> longitudes{};  ///< `102W`; the letter is left off where not wanted
  std::array<Part, 256> quarters{};    ///< by 16 x row + column in sixteenths of a degree
};

constexpr NameParts make_name_parts() {
  const auto digit = [](int value) { return static_cast<char>('0' + value % 10); };
  NameParts parts;
  for (int i = 0; i < 180; ++i) {
    const int value = i < 90 ? 90 - i : i - 90;
    const auto index = static_cast<std::size_t>(i);
    parts.latitudes[0][index] = {digit(value / 10), digit(value), '/', ' '};
    parts.latitudes[1][index] = {digit(value / 10), digit(value), i < 90 ? 'S' : 'N', '/'};
  }
  for (int i = 0; i < 360; ++i) {
    const int corner = i + 1 - 180;
    const int value = corner < 0 ? -corner : corner;
    parts.longitudes[static_cast<std::size_t>(i)] = {digit(value / 100), digit(value / 10),
                                                     digit(value), corner > 0 ? 'E' : 'W'};
  }
  for (int i = 0; i < 256; ++i) {
    for (int cut = 0; cut < kMostQuarters; ++cut) {
      const int northern = (i / 16) >> (kMostQuarters - 1 - cut) & 1;
      const int eastern = (i % 16) >> (kMostQuarters - 1 - cut) & 1;
      parts.quarters[static_cast<std::size_t>(i)][static_cast<std::size_t>(cut)] =
          static_cast<char>('A' + 2 * (1 - northern) + eastern);
    }
  }
  return parts;
}

constexpr NameParts kParts = make_name_parts();

enum class Letters { where_needed, always };

std::string write_name(StepSquare square, int quarters, Letters letters) {
  // In sixteenths of a degree, of which the last four binary digits are the four cuts.
  const unsigned north = static_cast<unsigned>(square.north) / kSixteenth;
  const unsigned east = static_cast<unsigned>(square.east) / kSixteenth;
  const unsigned latitude = north / 16;
  const unsigned longitude = east / 16;
  const bool lettered = (letters == Letters::always) | (latitude < 90) | (longitude >= 180);

  std::string text = "00S/000EABCD";  // the longest name
  char* const out = text.data();
  const int width = 3 + static_cast<int>(lettered);
  std::copy_n(kParts.latitudes[lettered][latitude].data(), 4, out);
  std::copy_n(kParts.longitudes[longitude].data(), 4, out + width);
  std::copy_n(kParts.quarters[16 * (north % 16) + east % 16].data(), 4, out + 2 * width);
  text.erase(text.begin() + 2 * width + quarters, text.end());
  return text;
}

/// Reads a name from left to right.
class NameReader {
 public:
  explicit NameReader(std::string_view name) : name_(name) {}

  /// Up to `most_digits` digits, at most `most`.
  int degrees(std::size_t most_digits, int most, std::string_view expected) {
    const std::size_t start = at_;
    int value = 0;
    while (at_ < name_.size() && at_ - start < most_digits && is_ascii_digit(name_[at_])) {
      value = 10 * value + (name_[at_++] - '0');
    }
    if (at_ == start || value > most) throw wrong(start, expected);
    return value;
  }
  bool take(char c) {
    const bool found = at_ < name_.size() && name_[at_] == c;
    if (found) ++at_;
    return found;
  }
  /// One of two letters, or neither (0).
  char letter(char a, char b) {
    if (take(a)) return a;
    return take(b) ? b : '\0';
  }
  bool ended() const { return at_ == name_.size(); }
  std::size_t at() const { return at_; }
  Error wrong(std::size_t at, std::string_view expected) const {
    return name_error("a cell of the one-degree grid", name_, at, expected,
                      "36/102, 36/102A or 34S/152EAD");
  }
  Error wrong(std::string_view expected) const { return wrong(at_, expected); }

 private:
  std::string_view name_;
  std::size_t at_ = 0;
};

Corner read_corner(NameReader& reader) {
  const int latitude = reader.degrees(2, 90, "a latitude of two digits");
  const char ns = reader.letter('N', 'S');
  if (!reader.take('/')) throw reader.wrong(ns == '\0' ? "N, S or '/'" : "'/'");
  const std::size_t longitude_at = reader.at();
  const int longitude = reader.degrees(3, 180, "a longitude of three digits, up to 180,");
  const std::size_t letter_at = reader.at();
  const char ew = reader.letter('E', 'W');
  if ((ns == '\0') != (ew == '\0')) {
    throw reader.wrong(letter_at, ns == '\0' ? "no letter, as the latitude has none," : "E or W");
  }
  // The same line written the other way: which side is meant cannot be told.
  if (ns == 'S' && latitude == 0) {
    throw reader.wrong(0, "00N (the cell north of the equator) or 01S (south of it)");
  }
  if (ns != 'S' && latitude == 90) throw reader.wrong(0, "a latitude up to 89N");
  if (ew == 'E' && longitude == 0) {
    throw reader.wrong(longitude_at, "000W (the cell west of Greenwich) or 001E (east of it)");
  }
  if (ew != 'E' && longitude == 180) {
    throw reader.wrong(longitude_at,
                       "180E (the cell west of the 180th meridian) or 179W (east of it)");
  }
  return {ns == 'S' ? -latitude : latitude, ew == 'E' ? longitude : -longitude};
}

class QuarterGrid final : public LatLonGrid {
 public:
  explicit QuarterGrid(Letters letters)
      : LatLonGrid("quarter", OwnedSide::east,
                   {{"1deg", kStepsPerDegree},
                    {"30min", kStepsPerDegree / 2},
                    {"15min", kStepsPerDegree / 4},
                    {"7.5min", kStepsPerDegree / 8},
                    {"3.75min", kStepsPerDegree / 16}}),
        letters_(letters) {}

  Place place_of(std::string_view name) const override {
    NameReader reader(name);
    const Corner degree = read_corner(reader);
    StepSquare corner{(degree.latitude + 90) * kStepsPerDegree,
                      (degree.longitude - 1 + 180) * kStepsPerDegree};
    int depth = 0;
    for (; !reader.ended(); ++depth) {
      const char letter = name[reader.at()];
      if (depth == kMostQuarters)
        throw reader.wrong("the end of the name (four quarters are the most)");
      if (letter < 'A' || letter > 'D' || !reader.take(letter)) {
        throw reader.wrong("a quarter from A to D");
      }
      const int part = steps(depth + 1);
      corner.north += letter < 'C' ? part : 0;
      corner.east += (letter - 'A') % 2 * part;
    }
    return {depth, corner};
  }

  // The base class's answer with fewer calls: millions of places are named.
  std::string name_of(Position position, const Level& level) const override {
    return name_at(east_owning_square(position), level.depth);
  }

 private:
  std::string name_at(StepSquare square, int depth) const override {
    return write_name(square, depth, letters_);
  }

  Letters letters_;
};

}  // namespace

const Grid& quarter_grid() {
  static const QuarterGrid grid(Letters::where_needed);
  return grid;
}

const Grid& lettered_quarter_grid() {
  static const QuarterGrid grid(Letters::always);
  return grid;
}

std::string with_hemisphere_letters(std::string_view name) {
  return lettered_quarter_grid().cell(name).name;
}

}  // namespace sweepwright::grid
