#include <fmt/format.h>

#include <map>
#include <set>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/gpx_writer.hpp"

namespace sweepwright::formats {
namespace {

std::string letters_and_digits(std::string_view name) {
  std::string kept;
  for (const char c : to_upper_ascii(name)) {
    if (is_ascii_letter(c) || is_ascii_digit(c)) kept += c;
  }
  return kept.empty() ? "WP" : kept;
}

}  // namespace

std::vector<std::string> short_names(std::span<const std::string> names, std::size_t most) {
  if (most < 3) {
    throw Error(ErrorCode::value, fmt::format("short names of {} characters are too short", most),
                "allow at least 3 characters");
  }
  std::map<std::string, std::string> short_of;
  std::set<std::string> taken;
  // Names that are short already keep their spelling, wherever they stand in the list.
  for (const std::string& name : names) {
    if (name.size() <= most && name == letters_and_digits(name)) {
      short_of[name] = name;
      taken.insert(name);
    }
  }
  std::map<std::string, int> next_number;
  std::vector<std::string> out;
  for (const std::string& name : names) {
    if (!short_of.contains(name)) {
      const std::string stem = letters_and_digits(name).substr(0, most);
      std::string candidate = stem;
      while (taken.contains(candidate)) {
        const std::string number = std::to_string(++next_number.try_emplace(stem, 1).first->second);
        if (number.size() >= most) {
          throw Error(ErrorCode::value,
                      fmt::format("there are more names than short names that begin with {}", stem),
                      "allow longer names");
        }
        candidate = stem.substr(0, most - number.size()) + number;
      }
      taken.insert(candidate);
      short_of[name] = candidate;
    }
    out.push_back(short_of[name]);
  }
  return out;
}

}  // namespace sweepwright::formats
