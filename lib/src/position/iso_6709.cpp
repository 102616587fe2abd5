#include "position/iso_6709.hpp"

#include <charconv>

#include "sweepwright/base/text.hpp"

namespace sweepwright::detail {
namespace {

std::size_t digits_end(std::string_view text, std::size_t from) {
  while (from < text.size() && is_ascii_digit(text[from])) ++from;
  return from;
}

std::optional<Number> take_coordinate(std::string_view& text, Axis axis) {
  constexpr std::size_t kLongest = 30;
  if (text.empty() || (text[0] != '+' && text[0] != '-')) return std::nullopt;
  const std::size_t whole_end = digits_end(text, 1);
  std::size_t end = whole_end;
  if (end < text.size() && text[end] == '.') end = digits_end(text, end + 1);
  if (end == whole_end + 1 || end > kLongest) return std::nullopt;  // a point without decimals

  Number number;
  number.sign = text[0];
  number.whole_digits = static_cast<int>(whole_end - 1);
  number.has_decimals = end != whole_end;
  std::from_chars(text.data() + 1, text.data() + end, number.value, std::chars_format::fixed);
  if (!compact_coordinate(number, axis)) return std::nullopt;
  text.remove_prefix(end);
  return number;
}

}  // namespace

std::optional<GroupPair> iso_6709(const PlainText& text) {
  std::string_view rest = text.text();
  GroupPair pair;
  pair.axes = {Axis::latitude, Axis::longitude};
  for (std::size_t i = 0; i < 2; ++i) {
    const std::size_t at = text.text().size() - rest.size();
    const std::optional<Number> number = take_coordinate(rest, (*pair.axes)[i]);
    if (!number) return std::nullopt;
    pair.groups[i].numbers.push_back({at, *number});
  }
  if (rest == "/") rest.remove_prefix(1);
  if (!rest.empty()) return std::nullopt;
  return pair;
}

}  // namespace sweepwright::detail
