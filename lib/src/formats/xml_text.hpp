// Text for XML documents: the one place where it is escaped; private to the formats room.
//
// Source: W3C, Extensible Markup Language (XML) 1.0, 5th edition, sections 2.2 and 2.4.
#pragma once

#include <string>
#include <string_view>

namespace sweepwright::formats {

/// The text as content of an element or of an attribute in double quotes. What XML cannot hold
/// (control characters, broken UTF-8) becomes U+FFFD.
void append_xml_text(std::string& out, std::string_view text);

/// `<tag>text</tag>`.
void append_xml_element(std::string& out, std::string_view tag, std::string_view text);

/// The same, nothing when the text is empty.
void append_xml_element_if_any(std::string& out, std::string_view tag, std::string_view text);

/// Plain text as HTML that shows it as typed: mark-up escaped, line ends kept.
std::string plain_text_as_html(std::string_view text);

}  // namespace sweepwright::formats
