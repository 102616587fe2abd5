#include "hazard/words.hpp"

#include <fmt/format.h>

#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::hazard {
namespace {

constexpr std::size_t kMostNames = 10;

}  // namespace

std::string feet(Length height) {
  return format_length(height, LengthUnit::foot, 0);
}

std::string listed(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i == kMostNames) return text + fmt::format(" and {} more", names.size() - kMostNames);
    text += i == 0 ? "" : i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

}  // namespace sweepwright::hazard
