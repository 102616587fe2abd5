// Writes values as JSON text; private to the formats room. See json_reading.hpp for the reverse.
//
// Source: RFC 8259, section 7 (which characters of a string are escaped).
#pragma once

#include <string>
#include <string_view>

#include "sweepwright/formats/property.hpp"

namespace sweepwright::formats {

/// The text in quotes; other characters than control characters, `"` and `\` stay as they are.
void append_json_string(std::string& out, std::string_view text);

void append_json(std::string& out, const PropertyValue& value);

/// `"name":value`.
void append_json_member(std::string& out, const Property& property);

}  // namespace sweepwright::formats
