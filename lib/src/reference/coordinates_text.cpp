#include "sweepwright/reference/coordinates_text.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <optional>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::reference {
namespace {

Error unreadable(const TextFailure& failure) {
  return Error(ErrorCode::value, failure.message,
               failure.hint.empty() ? "write latitude and longitude, such as 38-15.0N 117-02.5W"
                                    : failure.hint,
               fmt::format("character {}", failure.character));
}

std::string in_words(const Axis& axis, double value) {
  return fmt::format("{} {} {}", axis.name, value, axis.unit);
}

CoordinatesReading make_reading(Coordinates coordinates, const SystemInfo& system) {
  return {coordinates, in_words(system.axes[0], coordinates.first) + ", " +
                           in_words(system.axes[1], coordinates.second)};
}

/// A number and the letter of its direction, if one was written; 0 if not.
struct LetteredNumber {
  double value;
  char letter;
  std::size_t place;  ///< in the plain text
};

/// Reads `E651409.9`, `651409.9 E` or `651409.9` from a text.
class NumberReader {
 public:
  NumberReader(const PlainText& text, std::string hint) : text_(text), hint_(std::move(hint)) {}

  LetteredNumber next() {
    skip_separators();
    const std::size_t place = at_;
    char letter = take_letter();
    const double value = take_number(place);
    skip(" ");
    // In `651409 N313177` the letter belongs to the number that it touches.
    const bool before_number = at_ + 1 < text().size() && is_ascii_digit(text()[at_ + 1]);
    if (letter == 0 && !before_number) letter = take_letter();
    return {value, letter, place};
  }

  void expect_end() {
    skip(" ");
    if (at_ < text().size()) throw failure(at_, "expected the end after two numbers");
  }

  Error failure(std::size_t place, std::string message) const {
    return unreadable({text_.character(place), std::move(message), hint_});
  }

 private:
  std::string_view text() const { return text_.text(); }

  void skip(std::string_view characters) {
    while (at_ < text().size() && characters.find(text()[at_]) != std::string_view::npos) ++at_;
  }

  void skip_separators() {
    skip(" ");
    if (at_ > 0 && at_ < text().size() && (text()[at_] == ',' || text()[at_] == ';')) ++at_;
    skip(" ");
  }

  char take_letter() {
    if (at_ == text().size() ||
        std::string_view("NESW").find(text()[at_]) == std::string_view::npos)
      return 0;
    const char letter = text()[at_++];
    skip(" ");
    return letter;
  }

  /// `place`: where the number begins, its letter included.
  double take_number(std::size_t place) {
    const char* const end = text().data() + text().size();
    const char* const start = text().data() + at_;
    double value = 0;
    const auto [stop, error] = std::from_chars(start, end, value, std::chars_format::fixed);
    if (error != std::errc() || is_ascii_letter(*(stop - 1))) {  // `inf` and `nan` are no numbers
      throw failure(
          place, at_ == text().size() ? "expected a number, found the end" : "expected a number");
    }
    at_ = static_cast<std::size_t>(stop - text().data());
    return value;
  }

  const PlainText& text_;
  std::string hint_;
  std::size_t at_ = 0;
};

char letter_of(const Axis& axis) {
  return axis.direction.empty() ? '\0' : to_upper_ascii(axis.direction)[0];
}

CoordinatesReading parse_numbers(const PlainText& text, const SystemInfo& system) {
  NumberReader reader(
      text, fmt::format("give two numbers of {}: {}", system.code, axes_in_words(system)));
  std::array<LetteredNumber, 2> numbers{reader.next(), reader.next()};
  reader.expect_end();
  const bool lettered = numbers[0].letter != 0 || numbers[1].letter != 0;
  if (lettered && numbers[0].letter == letter_of(system.axes[1])) std::swap(numbers[0], numbers[1]);
  for (std::size_t i = 0; lettered && i < 2; ++i) {
    if (numbers[i].letter != letter_of(system.axes[i])) {
      throw reader.failure(numbers[i].place, "the letters do not fit the directions of the axes");
    }
  }
  return make_reading({numbers[0].value, numbers[1].value}, system);
}

std::vector<CoordinatesReading> parse_degrees(const PlainText& text, const SystemInfo& system) {
  const PositionOutcome outcome = parse_latitude_longitude(text);
  if (const auto* failure = std::get_if<TextFailure>(&outcome)) throw unreadable(*failure);
  const bool latitude_first = letter_of(system.axes[0]) == 'N';
  const auto& readings = std::get<std::vector<PositionReading>>(outcome);
  if (!latitude_first && readings.size() > 1) {
    throw unreadable(
        {1, fmt::format("the text has two readings, and {} puts longitude first", system.code),
         "add the letters N or S, and E or W"});
  }
  std::vector<CoordinatesReading> found;
  for (const PositionReading& reading : readings) {
    const double latitude = reading.position.latitude().degrees();
    const double longitude = reading.position.longitude().degrees();
    found.push_back(
        {latitude_first ? Coordinates{latitude, longitude} : Coordinates{longitude, latitude},
         reading.read_as});
  }
  return found;
}

}  // namespace

std::vector<CoordinatesReading> parse_coordinates(std::string_view text, const SystemInfo& system) {
  const PlainText plain(text);
  // Also "degree minute second hemisphere", as older entries of the registry say.
  const bool degrees = system.geographic && system.axes[0].unit.starts_with("degree");
  if (degrees) return parse_degrees(plain, system);
  return {parse_numbers(plain, system)};
}

std::vector<ConvertedReading> read_coordinates(std::string_view text, const System& system) {
  std::vector<ConvertedReading> found;
  std::optional<Error> first_failure;
  for (const CoordinatesReading& reading : parse_coordinates(text, system.info())) {
    try {
      found.push_back({system.to_wgs84(reading.coordinates), reading.read_as});
    } catch (const Error& error) {
      // A place of the system that cannot be shifted remains a second meaning: not passed over.
      if (error.code() != ErrorCode::value) throw;
      if (!first_failure) first_failure = error;
    }
  }
  if (found.empty()) throw *first_failure;
  return found;
}

}  // namespace sweepwright::reference
