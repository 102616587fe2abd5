// Cursor: walks over plain text from left to right.
#pragma once

#include <charconv>
#include <string_view>

#include "sweepwright/base/text.hpp"

namespace sweepwright::locate {

class Cursor {
 public:
  explicit Cursor(std::string_view text) : text_(text) {}

  std::size_t at() const { return at_; }
  bool ended() const { return at_ == text_.size(); }
  std::string_view rest() const { return text_.substr(at_); }

  /// Passes over any of `characters`.
  void skip(std::string_view characters) { take_any(characters); }
  std::string_view take_any(std::string_view characters) {
    return take_while([&](char c) { return characters.find(c) != std::string_view::npos; });
  }
  std::string_view take_digits() { return take_while(is_ascii_digit); }
  std::string_view take_letters() { return take_while(is_ascii_letter); }
  /// Digits, perhaps with a decimal point and more digits; empty when no digit is next.
  std::string_view take_decimal() {
    const std::size_t start = at_;
    take_digits();
    if (at_ != start && at_ + 1 < text_.size() && text_[at_] == '.' &&
        is_ascii_digit(text_[at_ + 1])) {
      ++at_;
      take_digits();
    }
    return text_.substr(start, at_ - start);
  }
  /// Passes over `word` when it is next and no letter follows it.
  bool take_word(std::string_view word) {
    if (!rest().starts_with(word)) return false;
    const std::size_t end = at_ + word.size();
    if (end < text_.size() && is_ascii_letter(text_[end])) return false;
    at_ = end;
    return true;
  }

 private:
  template <typename Wanted>
  std::string_view take_while(Wanted wanted) {
    const std::size_t start = at_;
    while (at_ < text_.size() && wanted(text_[at_])) ++at_;
    return text_.substr(start, at_ - start);
  }
  std::string_view text_;
  std::size_t at_ = 0;
};

/// The value of digits with or without a decimal point.
inline double decimal_value(std::string_view digits) {
  double value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
  return value;
}

}  // namespace sweepwright::locate
