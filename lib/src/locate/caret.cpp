#include <fmt/format.h>

#include <charconv>

#include "sweepwright/base/text.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::locate {
namespace {

/// The text without its first characters (not bytes).
std::string_view without_first(std::string_view text, std::size_t characters) {
  for (; characters > 0 && !text.empty(); --characters) {
    do {
      text.remove_prefix(1);
    } while (!text.empty() && (static_cast<unsigned char>(text.front()) & 0xC0u) == 0x80u);
  }
  return text;
}

}  // namespace

std::string caret_lines(std::string_view text, const Error& error) {
  constexpr std::string_view kWhere = "character ";
  const std::size_t found = error.where().rfind(kWhere);
  if (found == std::string::npos) return {};
  std::size_t number = 0;
  const std::string_view digits = std::string_view(error.where()).substr(found + kWhere.size());
  std::from_chars(digits.data(), digits.data() + digits.size(), number);
  if (number == 0) return {};
  // printable() shows 60 characters: a long text is shown from shortly before the caret.
  constexpr std::size_t kMostBefore = 40;
  const std::size_t hidden = number > kMostBefore + 1 ? number - kMostBefore - 1 : 0;
  const std::string_view cut = hidden > 0 ? "..." : "";
  return fmt::format("{}{}\n{:>{}}", cut, printable(without_first(text, hidden)), "^",
                     cut.size() + number - hidden);
}

}  // namespace sweepwright::locate
