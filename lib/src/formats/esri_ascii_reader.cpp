#include "sweepwright/formats/esri_ascii_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

using namespace std::string_view_literals;

constexpr std::array kKeywords = {"ncols"sv,     "nrows"sv,       "xllcorner"sv, "xllcenter"sv,
                                  "yllcorner"sv, "yllcenter"sv,   "cellsize"sv,  "dx"sv,
                                  "dy"sv,        "nodata_value"sv};
constexpr double kMostHeight = 100'000;

/// Words of a text, with the line that each stands on.
class Words {
 public:
  explicit Words(std::string_view text) : text_(text) {}

  /// The next word without taking it; empty at the end.
  std::string_view peek() {
    while (at_ < text_.size() && is_blank(text_[at_])) {
      if (text_[at_] == '\n') ++line_;
      ++at_;
    }
    std::size_t end = at_;
    while (end < text_.size() && !is_blank(text_[end])) ++end;
    return text_.substr(at_, end - at_);
  }
  std::string_view take() {
    const std::string_view word = peek();
    at_ += word.size();
    return word;
  }
  std::string place() const { return fmt::format("line {}", line_); }
  /// Bytes that are not yet taken.
  std::size_t left() const { return text_.size() - at_; }

 private:
  static bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 1;
};

class EsriAsciiReader {
 public:
  EsriAsciiReader(std::string_view text, std::string_view name, const ElevationOptions& options)
      : words_(text), options_(options) {
    reading_.tile.source = std::string(name);
  }

  ElevationReading read() {
    read_header();
    terrain::ElevationTile& tile = reading_.tile;
    tile.rows = count("nrows");
    tile.columns = count("ncols");
    tile.posts = terrain::PostKind::area;
    tile.lattice = lattice();
    read_heights();
    return std::move(reading_);
  }

 private:
  [[noreturn]] void fail(std::string message, std::string hint = {}) const {
    throw Error(ErrorCode::input, std::move(message), std::move(hint), words_.place());
  }

  double number(std::string_view word) const {
    if (to_lower_ascii(word) == "nan") return std::numeric_limits<double>::quiet_NaN();
    std::string_view digits = word;
    if (digits.starts_with('+')) digits.remove_prefix(1);
    double value = 0;
    const auto [stop, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (fault != std::errc() || stop != digits.data() + digits.size() || std::isinf(value)) {
      fail(fmt::format("'{}' is no number", printable(word)), "numbers have decimal points");
    }
    return value;
  }

  void read_header() {
    while (!words_.peek().empty() && is_ascii_letter(words_.peek().front()) &&
           to_lower_ascii(words_.peek()) != "nan") {
      const std::string keyword = to_lower_ascii(words_.take());
      if (std::find(kKeywords.begin(), kKeywords.end(), keyword) == kKeywords.end()) {
        fail(fmt::format("'{}' is no keyword of an ASCII grid", printable(keyword)),
             spelling_hint(keyword, kKeywords));
      }
      if (words_.peek().empty()) fail(fmt::format("'{}' has no value", keyword));
      const double value = number(words_.take());
      if (std::isnan(value) && keyword != "nodata_value") {
        fail(fmt::format("'{}' is not a number", keyword));
      }
      if (!header_.emplace(keyword, value).second) fail(fmt::format("'{}' stands twice", keyword));
    }
  }

  std::optional<double> value(const std::string& keyword) const {
    const auto found = header_.find(keyword);
    if (found == header_.end()) return std::nullopt;
    return found->second;
  }

  double needed(const std::string& keyword) const {
    const std::optional<double> found = value(keyword);
    if (!found) fail(fmt::format("the header has no '{}'", keyword));
    return *found;
  }

  int count(const std::string& keyword) const {
    const double found = needed(keyword);
    if (!(found >= 2 && found <= terrain::kMostRows) || found != std::floor(found)) {
      fail(fmt::format("'{}' is {}, and a whole number from 2 to {} is wanted", keyword, found,
                       terrain::kMostRows));
    }
    return static_cast<int>(found);
  }

  double step(const std::string& keyword) const {
    const double found = value(keyword) ? *value(keyword) : needed("cellsize");
    if (!(found > 0)) fail(fmt::format("a cell of size {} is none", found));
    return found;
  }

  /// The lower left post along one axis, `x` or `y`.
  double first_post(const std::string& axis, double cell) const {
    if (const std::optional<double> centre = value(axis + "llcenter")) return *centre;
    return needed(axis + "llcorner") + cell / 2;
  }

  terrain::Lattice lattice() const {
    const double dx = step("dx");
    const double dy = step("dy");
    const double west = first_post("x", dx);
    const double south = first_post("y", dy);
    const double north = south + (reading_.tile.rows - 1) * dy;
    if (options_.zone) {
      return terrain::UtmLattice{options_.zone->zone,   options_.zone->hemisphere,
                                 Length::metres(north), Length::metres(west),
                                 Length::metres(dy),    Length::metres(dx)};
    }
    if (!(std::abs(west) <= 360 && south >= -90 && north <= 90)) {
      fail(fmt::format("the grid's corner at x {} y {} is not in degrees", west - dx / 2,
                       south - dy / 2),
           "name the UTM zone of its metres, such as 13N");
    }
    return terrain::GeographicLattice{Angle::degrees(north), Angle::degrees(west),
                                      Angle::degrees(dy), Angle::degrees(dx)};
  }

  void read_heights() {
    terrain::ElevationTile& tile = reading_.tile;
    const std::size_t wanted =
        static_cast<std::size_t>(tile.rows) * static_cast<std::size_t>(tile.columns);
    // Each height takes two bytes at least: a short file is refused before memory is taken for it.
    if (wanted > terrain::kMostPosts || wanted > words_.left() / 2 + 1) {
      fail(fmt::format("the header promises {} rows of {} heights, more than the file can hold",
                       tile.rows, tile.columns),
           "is the file cut off?");
    }
    tile.heights_m.reserve(wanted);
    const std::optional<double> gap = value("nodata_value");
    while (!words_.peek().empty()) {
      const double height = number(words_.take());
      if (tile.heights_m.size() == wanted) {
        fail(fmt::format("there are more heights than {} rows of {}", tile.rows, tile.columns),
             "is the header right?");
      }
      tile.heights_m.push_back(post(height, gap));
    }
    if (tile.heights_m.size() != wanted) {
      fail(fmt::format("the file ends after {} of {} heights", tile.heights_m.size(), wanted),
           "is it cut off?");
    }
    if (!gap) {
      reading_.remarks.push_back("the header has no nodata_value: no height was taken for a gap");
    }
  }

  float post(double height, std::optional<double> gap) const {
    if (std::isnan(height) || (gap && height == *gap)) {
      return std::numeric_limits<float>::quiet_NaN();
    }
    if (std::abs(height) > kMostHeight) {
      fail(fmt::format("{} is no height of ground", height),
           "is it a gap that the header's nodata_value does not name?");
    }
    return static_cast<float>(height);
  }

  Words words_;
  const ElevationOptions& options_;
  std::map<std::string, double> header_;
  ElevationReading reading_;
};

}  // namespace

ElevationReading parse_esri_ascii(std::string_view text, std::string_view name,
                                  const ElevationOptions& options) {
  return EsriAsciiReader(text, name, options).read();
}

}  // namespace sweepwright::formats
