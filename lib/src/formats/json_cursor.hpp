// JsonCursor and JsonObject: read a JSON tree into values and collect every mistake on the way.
//
// Problem: a planner mends all mistakes of a file at once, so one bad field must not hide the next.
// Conventions: a reader is a function `T read(const JsonCursor&)` that returns the value or throws
//   Error. JsonObject::required() and optional() call it, and write down what it throws with line
//   and JSON pointer (RFC 6901). A field that no call asked for is unknown, so the names that a
//   file may use stand only where they are read.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "formats/json_document.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {

/// The mistakes found in one file so far.
class Mistakes {
 public:
  void add(int line, const std::string& pointer, const Error& error);
  std::size_t count() const { return list_.size(); }
  /// Throws one Error that names them all in the order of their lines (the first ten when there are
  /// more); does nothing when there are none.
  void throw_if_any(std::string_view file) const;
  /// All of them in words, in the order of their lines.
  std::vector<std::string> texts() const;

 private:
  struct Mistake {
    int line;
    Error error;
  };
  std::vector<Mistake> by_line() const;
  std::vector<Mistake> list_;
};

/// A value, and its place in the file.
class JsonCursor {
 public:
  JsonCursor(const JsonValue& value, std::string pointer, Mistakes& mistakes)
      : value_(&value), pointer_(std::move(pointer)), mistakes_(&mistakes) {}

  const JsonValue& value() const { return *value_; }
  Mistakes& mistakes() const { return *mistakes_; }
  JsonCursor child(std::string_view part, const JsonValue& value) const;
  /// Writes down a mistake at this place.
  void mistake(const Error& error) const { mistakes_->add(value_->line, pointer_, error); }

  /// The characters of a text; `wanted` says in the error what to write here.
  const std::string& text(std::string_view wanted) const;
  double number(std::string_view wanted) const;

  /// Reads this place; a mistake is written down and nothing returned.
  template <typename Read>
  auto attempt(const Read& read) const -> std::optional<decltype(read(*this))> {
    try {
      return read(*this);
    } catch (const Error& error) {
      mistake(error);
      return std::nullopt;
    }
  }

  /// Reads each item of a list of `least` to `most` items; items that fail are left out.
  template <typename Read>
  auto list(std::size_t least, std::size_t most, const Read& read) const
      -> std::vector<decltype(read(*this))> {
    std::vector<decltype(read(*this))> items;
    require_list(least, most);
    for (std::size_t i = 0; i < value_->items.size(); ++i) {
      auto item = child(std::to_string(i), value_->items[i]).attempt(read);
      if (item) items.push_back(std::move(*item));
    }
    return items;
  }

 private:
  void require_list(std::size_t least, std::size_t most) const;

  const JsonValue* value_;
  std::string pointer_;
  Mistakes* mistakes_;
};

/// An object of the file while its fields are read, one call for each. finish() comes last.
class JsonObject {
 public:
  /// Throws Error when the value is not an object.
  explicit JsonObject(JsonCursor cursor);

  bool has(std::string_view field) const { return find(field) != nullptr; }

  /// The field's value; a default value, and a mistake, when it is missing or wrong.
  template <typename Read>
  auto required(std::string_view field, const Read& read) {
    if (!has(field)) missing_.push_back(field);
    return optional(field, read).value_or(decltype(read(cursor_))());
  }

  /// The field's value when it is there.
  template <typename Read>
  auto optional(std::string_view field, const Read& read)
      -> std::optional<decltype(read(std::declval<JsonCursor>()))> {
    known_.push_back(field);
    const JsonValue* const value = find(field);
    if (value == nullptr) return std::nullopt;
    return cursor_.child(field, *value).attempt(read);
  }

  /// The items of a list that may be missing.
  template <typename Read>
  auto list(std::string_view field, std::size_t most, const Read& read)
      -> std::vector<decltype(read(std::declval<JsonCursor>()))> {
    auto items = optional(field, [&](const JsonCursor& list) { return list.list(0, most, read); });
    if (!items) return {};
    return std::move(*items);
  }

  /// Writes down a mistake at a field, or at the object when it has no such field.
  void mistake(std::string_view field, const Error& error) const;

  /// True while no field of this object was missing or wrong.
  bool sound() const { return missing_.empty() && cursor_.mistakes().count() == mistakes_before_; }

  /// Writes down missing fields and fields that nothing asked for.
  void finish() const;

 private:
  const JsonValue* find(std::string_view field) const;

  JsonCursor cursor_;
  std::size_t mistakes_before_;
  std::vector<std::string_view> known_;
  std::vector<std::string_view> missing_;
};

}  // namespace sweepwright::formats
