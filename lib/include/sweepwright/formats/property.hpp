// Property: a name and a value, as they hang on a map feature or fill a cell of a table.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace sweepwright::formats {

/// JSON text that its maker vouches for; it is written as it stands.
struct RawJson {
  std::string text;
  bool operator==(const RawJson&) const = default;
};

/// Empty (null), truth, whole number, number, text, list of texts or of numbers, JSON.
using PropertyValue = std::variant<std::monostate, bool, std::int64_t, double, std::string,
                                   std::vector<std::string>, std::vector<double>, RawJson>;

struct Property {
  std::string name;
  PropertyValue value;
  bool operator==(const Property&) const = default;
};

/// The value as plain text: empty for null, `true`, the shortest digits that read back as the same
/// number, list entries joined by `; `. Throws Error(value) for a number that is not finite.
std::string to_text(const PropertyValue& value);

/// The value as JSON. Broken UTF-8 becomes U+FFFD. Throws Error(value) for a number that is not
/// finite.
std::string to_json(const PropertyValue& value);

}  // namespace sweepwright::formats
