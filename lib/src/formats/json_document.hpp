// JsonValue: a JSON text as a tree that remembers its lines, spellings and the order of its fields.
//
// Problem: a person must be told on which line a mistake stands, and a field that is written twice
//   must not silently win over the other. The usual JSON trees forget both.
// Domain: UTF-8, RFC 8259; nested to kDeepestJson, at most kMostJsonValues values unless the caller
//   allows more (a hostile file cannot fill the memory). Everything else is an Error(input) with
//   line and column.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sweepwright::formats {

inline constexpr std::size_t kDeepestJson = 32;
inline constexpr std::size_t kMostJsonValues = 200'000;

enum class JsonKind { null, boolean, number, text, array, object };

struct JsonMember;

struct JsonValue {
  JsonKind kind = JsonKind::null;
  int line = 1;  ///< where it begins, counted from 1
  double number = 0;
  std::string text;                 ///< a text's characters; a number as it was written
  std::vector<JsonValue> items;     ///< of an array
  std::vector<JsonMember> members;  ///< of an object, as written; no name twice
};

struct JsonMember {
  std::string name;
  JsonValue value;
};

/// Reads a whole text. where() of an error is `line 3`, or `line 3 column 5` where it is no JSON.
JsonValue parse_json(std::string_view text, std::size_t most_values = kMostJsonValues);

/// The value in a few words, for messages: `the number 12`, `an object`, `"twelve"`.
std::string shown(const JsonValue& value);

/// A name made safe for a JSON pointer (RFC 6901 section 3).
std::string pointer_part(std::string_view name);

}  // namespace sweepwright::formats
