#include "formats/xml_text.hpp"

#include <algorithm>

#include "formats/plain_characters.hpp"
#include "formats/utf8.hpp"

namespace sweepwright::formats {
namespace {

constexpr PlainCharacters kPlain("&<>\"'");

/// False for characters that no XML 1.0 document may hold.
bool is_xml_character(std::string_view character) {
  const auto first = static_cast<unsigned char>(character.front());
  if (first < 0x20) return first == '\t' || first == '\n' || first == '\r';
  return character != "\xEF\xBF\xBE" && character != "\xEF\xBF\xBF";  // U+FFFE, U+FFFF
}

std::string_view reference(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    case '\r':
      return "&#13;";  // a bare one would be read as a line end
    default:
      return {};
  }
}

}  // namespace

void append_xml_text(std::string& out, std::string_view text) {
  if (kPlain.all_of(text)) {
    out += text;
    return;
  }
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    if (length == 0 || !is_xml_character(text.substr(0, length))) {
      out += kReplacement;
    } else if (const std::string_view escaped = reference(text.front()); !escaped.empty()) {
      out += escaped;
    } else {
      out += text.substr(0, length);
    }
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
}

void append_xml_element(std::string& out, std::string_view tag, std::string_view text) {
  out += '<';
  out += tag;
  out += '>';
  append_xml_text(out, text);
  out += "</";
  out += tag;
  out += '>';
}

void append_xml_element_if_any(std::string& out, std::string_view tag, std::string_view text) {
  if (!text.empty()) append_xml_element(out, tag, text);
}

std::string plain_text_as_html(std::string_view text) {
  std::string html;
  for (const char c : text) {
    if (c == '\n') {
      html += "<br/>";
    } else if (const std::string_view escaped = reference(c); !escaped.empty()) {
      html += escaped;
    } else {
      html += c;
    }
  }
  return html;
}

}  // namespace sweepwright::formats
