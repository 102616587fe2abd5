#include "sweepwright/base/text.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace sweepwright {
namespace {

constexpr std::string_view kBlank = " \t\r\n";

/// Length of the well-formed UTF-8 sequence at the front of `text`, 0 when there is none.
/// [RFC 3629 section 4, the table of octet sequences]
std::size_t utf8_length(std::string_view text) {
  const auto at = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const auto in = [&](std::size_t i, unsigned low, unsigned high) {
    return i < text.size() && at(i) >= low && at(i) <= high;
  };
  if (text.empty()) return 0;
  const unsigned first = at(0);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return in(1, 0x80, 0xBF) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const unsigned low = first == 0xE0 ? 0xA0 : 0x80;
    const unsigned high = first == 0xED ? 0x9F : 0xBF;
    return in(1, low, high) && in(2, 0x80, 0xBF) ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const unsigned low = first == 0xF0 ? 0x90 : 0x80;
    const unsigned high = first == 0xF4 ? 0x8F : 0xBF;
    return in(1, low, high) && in(2, 0x80, 0xBF) && in(3, 0x80, 0xBF) ? 4 : 0;
  }
  return 0;
}

/// True for a control character: U+0000 to U+001F, U+007F to U+009F [ECMA-48 section 5].
bool is_control(std::string_view character) {
  const auto first = static_cast<unsigned char>(character[0]);
  const auto last = static_cast<unsigned char>(character.back());
  return first < 0x20 || first == 0x7F || (first == 0xC2 && last < 0xA0);
}

/// Edits (insert, drop, replace, swap of neighbours) that turn `a` into `b`.
std::size_t edit_distance(const std::string& a, const std::string& b) {
  std::vector<std::size_t> before_last(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(last.begin(), last.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replace});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before_last[j - 2] + 1);
      }
    }
    before_last = std::exchange(last, row);
  }
  return last[b.size()];
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

bool is_ascii_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_ascii_digit(char c) {
  return c >= '0' && c <= '9';
}

std::string to_lower_ascii(std::string_view text) {
  std::string lower(text);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

std::string to_upper_ascii(std::string_view text) {
  std::string upper(text);
  for (char& c : upper) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return upper;
}

std::string printable(std::string_view text) {
  constexpr int kMost = 60;
  std::string shown;
  int characters = 0;
  while (!text.empty()) {
    if (characters++ == kMost) return shown + "...";
    const std::size_t length = utf8_length(text);
    if (length == 0 || is_control(text.substr(0, length))) {
      shown += '?';
    } else {
      shown += text.substr(0, length);
    }
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return shown;
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

std::vector<std::string> nearest_spellings(std::string_view word,
                                           std::span<const std::string_view> choices) {
  const std::string wanted = to_lower_ascii(word);
  std::vector<std::pair<std::size_t, std::string>> near;
  for (const std::string_view choice : choices) {
    const std::string lower = to_lower_ascii(choice);
    const std::size_t distance = edit_distance(wanted, lower);
    const bool begins = wanted.size() >= 3 && lower.starts_with(wanted);
    if (begins || distance <= std::max<std::size_t>(1, std::min(wanted.size(), lower.size()) / 3)) {
      near.emplace_back(begins ? 0 : distance, choice);
    }
  }
  std::stable_sort(near.begin(), near.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> names;
  for (std::size_t i = 0; i < near.size() && i < 3; ++i) names.push_back(near[i].second);
  return names;
}

std::string spelling_hint(std::string_view word, std::span<const std::string_view> choices) {
  const std::vector<std::string> near = nearest_spellings(word, choices);
  std::string hint;
  if (near.empty()) {
    for (const std::string_view choice : choices) {
      hint += hint.empty() ? "choose one of: " : ", ";
      hint += choice;
    }
    return hint;
  }
  for (const std::string& name : near) {
    hint += hint.empty() ? "did you mean '" : "' or '";
    hint += name;
  }
  return hint + "'?";
}

}  // namespace sweepwright
