// GeoJsonPlace: a value of a GeoJSON text and where it stands; private to the formats room.
//
// Errors are thrown at once, with line and JSON pointer (RFC 6901).
#pragma once

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "formats/json_document.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {

inline const JsonValue* member(const JsonValue& object, std::string_view name) {
  for (const JsonMember& m : object.members) {
    if (m.name == name) return &m.value;
  }
  return nullptr;
}

/// A value and its JSON pointer.
class GeoJsonPlace {
 public:
  GeoJsonPlace(const JsonValue& value, std::string pointer)
      : value_(&value), pointer_(std::move(pointer)) {}
  const JsonValue& value() const { return *value_; }

  std::string text() const {
    return pointer_.empty() ? fmt::format("line {}", value_->line)
                            : fmt::format("line {} {}", value_->line, pointer_);
  }
  [[noreturn]] void fail(std::string message, std::string hint = {}) const {
    throw Error(ErrorCode::input, std::move(message), std::move(hint), text());
  }

  GeoJsonPlace item(std::size_t index) const {
    return {value_->items[index], pointer_ + "/" + std::to_string(index)};
  }
  std::optional<GeoJsonPlace> field(std::string_view name) const {
    const JsonValue* const found = member(*value_, name);
    if (found == nullptr) return std::nullopt;
    return GeoJsonPlace(*found, pointer_ + "/" + pointer_part(name));
  }
  GeoJsonPlace needed_list(std::string_view name) const {
    const std::optional<GeoJsonPlace> found = field(name);
    if (!found) fail(fmt::format("'{}' is missing", name));
    found->require_list();
    return *found;
  }
  void require_list() const {
    if (value_->kind != JsonKind::array)
      fail(fmt::format("{} where a list is wanted", shown(*value_)));
  }

  /// Calls `read` with each item of the list.
  template <typename Read>
  void each(const Read& read) const {
    require_list();
    for (std::size_t i = 0; i < value_->items.size(); ++i) read(item(i));
  }

 private:
  const JsonValue* value_;
  std::string pointer_;
};

/// The member's text without blanks round it; empty when there is none.
inline std::string text_member(const JsonValue& object, std::string_view name) {
  const JsonValue* const found = member(object, name);
  return found != nullptr && found->kind == JsonKind::text ? std::string(trimmed(found->text)) : "";
}

}  // namespace sweepwright::formats
