#include "formats/json_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "formats/number_text.hpp"
#include "formats/plain_characters.hpp"
#include "formats/utf8.hpp"

namespace sweepwright::formats {
namespace {

constexpr PlainCharacters kPlain("\"\\");

void append_escaped(std::string& out, std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    const char c = text.front();
    if (length == 0) {
      out += kReplacement;
    } else if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
    } else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
      fmt::format_to(std::back_inserter(out), "\\u{:04x}", c);
    } else {
      out += text.substr(0, length);
    }
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
}

struct JsonAppender {
  std::string& out;
  void operator()(std::monostate) const { out += "null"; }
  void operator()(bool value) const { out += value ? "true" : "false"; }
  void operator()(std::int64_t value) const { out += fmt::format_int(value).c_str(); }
  void operator()(double value) const { append_number(out, value); }
  void operator()(const std::string& value) const { append_json_string(out, value); }
  void operator()(const RawJson& value) const { out += value.text; }
  template <typename Entry>
  void operator()(const std::vector<Entry>& entries) const {
    out += '[';
    for (std::size_t i = 0; i < entries.size(); ++i) {
      if (i > 0) out += ',';
      (*this)(entries[i]);
    }
    out += ']';
  }
};

}  // namespace

void append_json_string(std::string& out, std::string_view text) {
  if (kPlain.all_of(text)) {
    out.append(text.size() + 2, '"');
    std::copy(text.begin(), text.end(), out.end() - 1 - static_cast<std::ptrdiff_t>(text.size()));
    return;
  }
  out += '"';
  append_escaped(out, text);
  out += '"';
}

void append_json(std::string& out, const PropertyValue& value) {
  std::visit(JsonAppender{out}, value);
}

void append_json_member(std::string& out, const Property& property) {
  append_json_string(out, property.name);
  out += ':';
  append_json(out, property.value);
}

std::string to_json(const PropertyValue& value) {
  std::string out;
  append_json(out, value);
  return out;
}

}  // namespace sweepwright::formats
