// Small helpers for text: trimming, letter case, printing what was found, nearest spelling, UTF-8.
//
// All of them work on bytes and ignore the locale.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sweepwright {

/// The text without leading and trailing blanks, tabs and line ends.
std::string_view trimmed(std::string_view text);
/// ASCII letters made small, all else kept.
std::string to_lower_ascii(std::string_view text);
/// ASCII letters made capital, all else kept.
std::string to_upper_ascii(std::string_view text);
bool is_ascii_letter(char c);
bool is_ascii_digit(char c);

/// The text fit to stand in a message: control characters and broken UTF-8 shown as `?`, and cut
/// with `...` after 60 characters.
std::string printable(std::string_view text);

/// True when the bytes are well-formed UTF-8 (RFC 3629: no surrogates, no overlong forms).
bool is_utf8(std::string_view text);

/// The choices nearest to `word` in spelling, nearest first, at most three, none when nothing is
/// near. Letter case does not count.
std::vector<std::string> nearest_spellings(std::string_view word,
                                           std::span<const std::string_view> choices);

/// `did you mean 'helicopter'?`, or `choose one of: a, b, c` when no spelling is near.
std::string spelling_hint(std::string_view word, std::span<const std::string_view> choices);

}  // namespace sweepwright
