#include "formats/json_document.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

/// Hands the text to the parser and lets the tree builder see how far the parser has come.
struct TrackingIterator {
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  const char* next = nullptr;
  const char** furthest = nullptr;

  reference operator*() const { return *next; }
  TrackingIterator& operator++() {
    *furthest = ++next;
    return *this;
  }
  TrackingIterator operator++(int) {
    const TrackingIterator before = *this;
    ++*this;
    return before;
  }
  bool operator==(const TrackingIterator& other) const { return next == other.next; }
  bool operator!=(const TrackingIterator& other) const { return next != other.next; }
};

bool in_word(char c) {
  return is_ascii_letter(c) || is_ascii_digit(c) || c == '+' || c == '-' || c == '.' || c == '_';
}

/// The token of the text at whose end the parser gave up; `place` becomes its beginning.
std::string_view found_at(std::string_view text, std::size_t& place) {
  if (text[place] == '"' && place > 0) {
    const std::size_t end = place + 1;
    const std::size_t opening = text.rfind('"', place - 1);
    if (opening != std::string_view::npos) place = opening;
    return text.substr(place, end - place);
  }
  if (!in_word(text[place])) return text.substr(place, 1);
  while (place > 0 && in_word(text[place - 1])) --place;
  std::size_t end = place;
  while (end < text.size() && in_word(text[end])) ++end;
  return text.substr(place, end - place);
}

bool is_not_finite(std::string_view word) {
  const std::string lower = to_lower_ascii(word);
  return lower.ends_with("nan") || lower.ends_with("inf") || lower.ends_with("infinity");
}

/// How to mend what cannot stand here.
std::string syntax_hint(std::string_view before, std::string_view found) {
  const std::string_view earlier = trimmed(before);
  const char last = earlier.empty() ? ' ' : earlier.back();
  if (found == "}" || found == "]") {
    return last == ',' ? "take away the comma before it" : "check commas and brackets before it";
  }
  if (found == "/" || found == "#") return "JSON has no comments";
  if (found == "'") return "a text stands in double quotes";
  if (is_not_finite(found)) return "write a number; JSON has none that is not finite";
  const bool begins_value =
      found[0] == '"' || found[0] == '{' || found[0] == '[' || in_word(found[0]);
  const bool after_value = last == '"' || last == '}' || last == ']' || is_ascii_digit(last);
  if (begins_value && after_value) return "is a comma or a colon missing before it?";
  if (is_ascii_letter(found[0])) return "a text and a field's name stand in double quotes";
  if (in_word(found[0])) return "a number is written like 12 or 0.5";
  return "check commas, quotes and brackets before it";
}

/// Builds the tree from the parser's events.
class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
 public:
  TreeBuilder(std::string_view text, std::size_t most_values)
      : text_(text), most_values_(most_values), furthest_(text.data()), counted_(text.data()) {}

  TrackingIterator begin() { return {text_.data(), &furthest_}; }
  TrackingIterator end() { return {text_.data() + text_.size(), &furthest_}; }
  JsonValue take() { return std::move(root_); }

  bool null() override {
    add(JsonKind::null);
    return true;
  }
  bool boolean(bool value) override {
    add(JsonKind::boolean)->text = value ? "true" : "false";
    return true;
  }
  bool number_integer(number_integer_t value) override {
    return add_number(static_cast<double>(value), std::to_string(value));
  }
  bool number_unsigned(number_unsigned_t value) override {
    return add_number(static_cast<double>(value), std::to_string(value));
  }
  bool number_float(number_float_t value, const string_t& spelling) override {
    return add_number(value, spelling);
  }
  bool string(string_t& value) override {
    add(JsonKind::text)->text = std::move(value);
    return true;
  }
  bool binary(binary_t&) override { return false; }  // no part of JSON text
  bool start_object(std::size_t) override { return open(JsonKind::object); }
  bool start_array(std::size_t) override { return open(JsonKind::array); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    if (!open_.back().names.insert(name).second) {
      throw Error(ErrorCode::input,
                  fmt::format("the field '{}' stands here twice", printable(name)),
                  "keep one of them", fmt::format("line {}", line()));
    }
    open_.back().value->members.push_back({std::move(name), {}});
    return true;
  }

  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::detail::exception& error) override {
    if (position > text_.size()) {
      throw Error(ErrorCode::input, "the file ends before its JSON does",
                  "is it cut off? close every quote and bracket", place_text(text_.size()));
    }
    std::size_t place = position - 1;
    const std::string_view found = found_at(text_, place);
    if (error.id == kNumberTooLarge) {
      throw Error(ErrorCode::input, fmt::format("'{}' is too large a number", printable(found)),
                  "check its digits and its exponent", place_text(place));
    }
    const std::string_view reason = error.what();
    constexpr std::string_view kInText = "invalid string: ";
    if (const std::size_t at = reason.find(kInText); at != std::string_view::npos) {
      const std::string_view rest = reason.substr(at + kInText.size());
      throw Error(ErrorCode::input,
                  fmt::format("a text is not right: {}", rest.substr(0, rest.find("; last read"))),
                  "a text ends on the line where it begins, and \\ is written \\\\",
                  place_text(position - 1));
    }
    if (open_.empty() && count_ > 0) {
      throw Error(ErrorCode::input,
                  fmt::format("'{}' stands after the end of the JSON", printable(found)),
                  "take it away, or check the brackets before it", place_text(place));
    }
    throw Error(ErrorCode::input, fmt::format("'{}' cannot stand here", printable(found)),
                syntax_hint(text_.substr(0, place), found), place_text(place));
  }

 private:
  static constexpr int kNumberTooLarge = 406;  // the library's number for this error

  /// An array or object that is not closed yet, and the names that it has so far.
  struct Open {
    JsonValue* value;
    std::set<std::string> names;
  };

  /// The line of the token that was read last. The last character may belong to the next one.
  int line() {
    const char* const end = std::max(counted_, furthest_ - 1);
    line_ += static_cast<int>(std::count(counted_, end, '\n'));
    counted_ = end;
    return line_;
  }

  std::string place_text(std::size_t place) const {
    const std::string_view before = text_.substr(0, place);
    const std::size_t line_start = before.rfind('\n') + 1;  // 0 when there is no line end
    const auto lines = std::count(before.begin(), before.end(), '\n') + 1;
    return fmt::format("line {} column {}", lines, place - line_start + 1);
  }

  JsonValue* add(JsonKind kind) {
    if (++count_ > most_values_) {
      throw Error(ErrorCode::input, fmt::format("the file has more than {} values", most_values_),
                  {}, fmt::format("line {}", line()));
    }
    JsonValue* place = &root_;
    if (!open_.empty()) {
      JsonValue& parent = *open_.back().value;
      const bool named = parent.kind == JsonKind::object;
      place = named ? &parent.members.back().value : &parent.items.emplace_back();
    }
    place->kind = kind;
    place->line = line();
    return place;
  }

  bool add_number(double value, std::string spelling) {
    JsonValue* const place = add(JsonKind::number);
    place->number = value;
    place->text = std::move(spelling);
    return true;
  }

  bool open(JsonKind kind) {
    if (open_.size() == kDeepestJson) {
      throw Error(
          ErrorCode::input, fmt::format("brackets are nested more than {} deep", kDeepestJson),
          "check that every bracket is closed in its place", fmt::format("line {}", line()));
    }
    open_.push_back({add(kind), {}});
    return true;
  }

  bool close() {
    open_.pop_back();
    return true;
  }

  std::string_view text_;
  std::size_t most_values_;
  const char* furthest_;
  const char* counted_;
  int line_ = 1;
  std::size_t count_ = 0;
  JsonValue root_;
  std::vector<Open> open_;  // outermost first
};

}  // namespace

JsonValue parse_json(std::string_view text, std::size_t most_values) {
  if (!is_utf8(text)) {
    throw Error(ErrorCode::input, "the file is not in UTF-8", "save it again with UTF-8 encoding");
  }
  // The parser takes a zero byte for the end and would not see what follows.
  if (text.find('\0') != std::string_view::npos) {
    throw Error(ErrorCode::input, "the file holds a zero byte: it is not text",
                "save it again with UTF-8 encoding");
  }
  if (trimmed(text).empty()) throw Error(ErrorCode::input, "the file is empty");
  TreeBuilder builder(text, most_values);
  nlohmann::json::sax_parse(builder.begin(), builder.end(), &builder);
  return builder.take();
}

std::string shown(const JsonValue& value) {
  switch (value.kind) {
    case JsonKind::null:
      return "null";
    case JsonKind::boolean:
      return value.text;
    case JsonKind::number:
      return "the number " + printable(value.text);
    case JsonKind::text:
      return fmt::format("the text \"{}\"", printable(value.text));
    case JsonKind::array:
      return "a list [...]";
    case JsonKind::object:
      return "an object {...}";
  }
  return {};
}

std::string pointer_part(std::string_view name) {
  std::string part;
  for (const char c : printable(name)) {
    if (c == '~') {
      part += "~0";
    } else if (c == '/') {
      part += "~1";
    } else {
      part += c;
    }
  }
  return part;
}

}  // namespace sweepwright::formats
