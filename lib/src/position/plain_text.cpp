#include "sweepwright/position/plain_text.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace sweepwright {
namespace {

/// A character and what it stands for; '\0' is one that is not seen and does not count.
struct Twin {
  std::uint32_t code_point;
  char plain;
};

// Source: Unicode Standard, code charts Latin-1, General Punctuation, Spacing Modifier Letters,
// Mathematical Operators, Small and Fullwidth Forms.
constexpr Twin kTwins[] = {
    // Degree sign, the asterisk that stands for it, masculine ordinal, ring above, small modifier
    // o,
    // superscript zero.
    {'*', kDegreeSign},
    {0x00B0, kDegreeSign},
    {0x00BA, kDegreeSign},
    {0x02DA, kDegreeSign},
    {0x1D52, kDegreeSign},
    {0x2070, kDegreeSign},
    // Minute: acute, prime modifier letters, single quotes, prime, reversed prime, fullwidth.
    {0x0060, '\''},
    {0x00B4, '\''},
    {0x02B9, '\''},
    {0x02BC, '\''},
    {0x02C8, '\''},
    {0x2018, '\''},
    {0x2019, '\''},
    {0x201A, '\''},
    {0x201B, '\''},
    {0x2032, '\''},
    {0x2035, '\''},
    {0xFF07, '\''},
    // Second: double prime modifier letters, double quotes, double primes, fullwidth.
    {0x02BA, '"'},
    {0x02DD, '"'},
    {0x02EE, '"'},
    {0x201C, '"'},
    {0x201D, '"'},
    {0x201E, '"'},
    {0x201F, '"'},
    {0x2033, '"'},
    {0x2036, '"'},
    {0x3003, '"'},
    {0xFF02, '"'},
    // Dashes: hyphen, non-breaking hyphen, figure dash, en dash, em dash, bar, minus, small, full.
    {0x2010, '-'},
    {0x2011, '-'},
    {0x2012, '-'},
    {0x2013, '-'},
    {0x2014, '-'},
    {0x2015, '-'},
    {0x2212, '-'},
    {0xFE58, '-'},
    {0xFE63, '-'},
    {0xFF0D, '-'},
    // Commas and the like from East Asian keyboards.
    {0x3001, ','},
    {0xFF0C, ','},
    {0xFF0E, '.'},
    {0xFF0B, '+'},
    {0xFF0F, '/'},
    {0xFF1A, ':'},
    {0xFF1B, ';'},
    // Spaces that U+2000..U+200A do not cover: next line, no-break, narrow, mathematical, wide.
    {0x0085, ' '},
    {0x00A0, ' '},
    {0x2028, ' '},
    {0x2029, ' '},
    {0x202F, ' '},
    {0x205F, ' '},
    {0x3000, ' '},
    // Not seen: soft hyphen, zero-width space and joiners, direction marks, word joiner, BOM.
    {0x00AD, '\0'},
    {0x200B, '\0'},
    {0x200C, '\0'},
    {0x200D, '\0'},
    {0x200E, '\0'},
    {0x200F, '\0'},
    {0x202A, '\0'},
    {0x202C, '\0'},
    {0x2060, '\0'},
    {0xFEFF, '\0'},
};

char plain(std::uint32_t code_point) {
  for (const Twin& twin : kTwins) {
    if (twin.code_point == code_point) return twin.plain;
  }
  if (code_point >= 0x2000 && code_point <= 0x200A) return ' ';
  if (code_point >= 0xFF10 && code_point <= 0xFF19) {  // fullwidth digits
    return static_cast<char>('0' + (code_point - 0xFF10));
  }
  if (code_point >= '\t' && code_point <= '\r') return ' ';
  if (code_point < 0x20 || code_point >= 0x7F) return kUnreadable;
  const char c = static_cast<char>(code_point);
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

/// Takes one UTF-8 character off the front. Broken bytes count as one unreadable character each.
std::uint32_t take_character(std::string_view& text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned first = byte(0);
  std::size_t length = 1;
  if (first >= 0xC2 && first <= 0xDF) length = 2;
  if (first >= 0xE0 && first <= 0xEF) length = 3;
  if (first >= 0xF0 && first <= 0xF4) length = 4;
  std::uint32_t code_point = length == 1 ? first : first & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if (i >= text.size() || (byte(i) & 0xC0u) != 0x80u) {
      length = 1;
      break;
    }
    code_point = code_point << 6 | (byte(i) & 0x3Fu);
  }
  // A lone byte above ASCII is no character: 0x80 keeps it apart from all twins.
  if (length == 1 && first >= 0x80) code_point = 0x80;
  text.remove_prefix(length);
  return code_point;
}

}  // namespace

PlainText::PlainText(std::string_view typed) {
  text_.reserve(typed.size());
  origins_.reserve(typed.size());
  for (; !typed.empty(); ++end_) {
    const bool small = typed.front() >= 'a' && typed.front() <= 'z';
    const char c = plain(take_character(typed));
    if (c == '\0') continue;
    text_ += c;
    origins_.push_back({end_, small});
  }
}

std::size_t PlainText::character(std::size_t index) const {
  return index < origins_.size() ? origins_[index].character : end_;
}

bool PlainText::typed_small(std::size_t index) const {
  return index < origins_.size() && origins_[index].small;
}

PlainText PlainText::part(std::size_t first, std::size_t count) const {
  first = std::min(first, text_.size());
  count = std::min(count, text_.size() - first);
  PlainText result;
  result.text_ = text_.substr(first, count);
  const auto begin = std::next(origins_.begin(), static_cast<std::ptrdiff_t>(first));
  result.origins_.assign(begin, std::next(begin, static_cast<std::ptrdiff_t>(count)));
  result.end_ = static_cast<std::uint32_t>(character(first + count));
  return result;
}

PlainText PlainText::without(std::string_view unwanted) const {
  PlainText result;
  for (std::size_t i = 0; i < text_.size(); ++i) {
    if (unwanted.find(text_[i]) != std::string_view::npos) continue;
    result.text_ += text_[i];
    result.origins_.push_back(origins_[i]);
  }
  result.end_ = end_;
  return result;
}

PlainText PlainText::unwrapped() const {
  constexpr std::string_view kOpening = "([{\"'";
  constexpr std::string_view kClosing = ")]}\"'";
  std::size_t first = 0;
  std::size_t last = text_.size();
  for (bool more = true; more;) {
    while (first < last && text_[first] == ' ') ++first;
    while (first < last && text_[last - 1] == ' ') --last;
    const std::size_t pair = first + 1 < last ? kOpening.find(text_[first]) : std::string::npos;
    more = pair != std::string::npos && text_[last - 1] == kClosing[pair];
    if (more) {
      ++first;
      --last;
    }
  }
  return part(first, last - first);
}

}  // namespace sweepwright
