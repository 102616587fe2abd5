// PlainText: a typed text made plain, so that readers meet only capital ASCII letters.
//
// Problem: one position is typed with a dozen kinds of dash, space, quote and degree sign. Readers
//   should know one of each, and still be able to point at the character that was typed.
// Conventions: letters become capitals; every dash becomes `-`, every space, tab and line end ` `,
//   minute signs `'`, second signs `"`, degree signs kDegreeSign. Invisible marks vanish. Whatever
//   has no place in a position becomes kUnreadable. Characters are counted from 1, in Unicode
//   characters, not bytes.
// Promises: P1 character() never decreases; P2 any bytes are accepted (plain_text_test.cpp).
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace sweepwright {

inline constexpr char kDegreeSign = '\xB0';
inline constexpr char kUnreadable = '\x1A';

class PlainText {
 public:
  explicit PlainText(std::string_view typed);

  std::string_view text() const { return text_; }
  /// The number of the typed character behind text()[index]; at text().size(), one past the last.
  std::size_t character(std::size_t index) const;

  /// True where a small letter was typed: `m` is metres, `M` may be anything.
  bool typed_small(std::size_t index) const;

  /// text().substr(first, count), which still knows its place in what was typed.
  PlainText part(std::size_t first, std::size_t count = std::string_view::npos) const;
  /// Without the characters of `unwanted`, each other one still knowing its place.
  PlainText without(std::string_view unwanted) const;
  /// Without blanks at both ends, and without a pair of brackets or quotes round the whole.
  PlainText unwrapped() const;

 private:
  struct Origin {
    std::uint32_t character;
    bool small;
  };
  PlainText() = default;
  std::string text_;
  std::vector<Origin> origins_;  ///< one for each byte of text_
  std::uint32_t end_ = 1;
};

/// Where and why a text could not be read. `character` counts from 1.
struct TextFailure {
  std::size_t character = 1;
  std::string message;  ///< what was found and what was expected
  std::string hint;     ///< how to mend it; may be empty
};

}  // namespace sweepwright
