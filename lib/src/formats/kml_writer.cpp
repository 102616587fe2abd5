#include "sweepwright/formats/kml_writer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "formats/kml_geometry.hpp"
#include "formats/number_text.hpp"
#include "formats/text_buffer.hpp"
#include "formats/xml_text.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

void require_style_id(const std::string& id) {
  const auto fits = [](char c) {
    return is_ascii_letter(c) || is_ascii_digit(c) || c == '-' || c == '_';
  };
  if (id.empty() || !is_ascii_letter(id[0]) || !std::all_of(id.begin(), id.end(), fits)) {
    throw Error(ErrorCode::value, fmt::format("'{}' cannot name a style", printable(id)),
                "use letters, digits, - and _, a letter first");
  }
}

/// KML writes colours backwards: opacity, blue, green, red.
void append_colour(std::string& out, Colour colour) {
  fmt::format_to(std::back_inserter(out), "<color>{:02x}{:02x}{:02x}{:02x}</color>", colour.opacity,
                 colour.blue, colour.green, colour.red);
}

void append_number_element(std::string& out, std::string_view tag, double value) {
  std::string digits;
  append_number(digits, value);
  append_xml_element(out, tag, digits);
}

/// The schema wants the styles in this order.
void append_style(std::string& out, const KmlStyle& style) {
  out += "<Style id=\"" + style.id + "\"><IconStyle>";
  append_colour(out, style.line);
  append_number_element(out, "scale", style.icon_scale);
  out += "</IconStyle><LabelStyle>";
  append_number_element(out, "scale", style.label_scale);
  out += "</LabelStyle><LineStyle>";
  append_colour(out, style.line);
  append_number_element(out, "width", style.line_width_pixels);
  out += "</LineStyle><PolyStyle>";
  if (style.fill) append_colour(out, *style.fill);
  append_xml_element(out, "fill", style.fill ? "1" : "0");
  out += "</PolyStyle></Style>\n";
}

/// Programs show a description as HTML, and a name as it stands.
void append_name_and_description(std::string& out, std::string_view name,
                                 std::string_view description) {
  append_xml_element(out, "name", name);
  append_xml_element_if_any(out, "description", plain_text_as_html(description));
}

void append_time(std::string& out, const KmlTimeSpan& time) {
  out += "<TimeSpan>";
  if (time.begin) append_xml_element(out, "begin", format_utc(*time.begin));
  if (time.end) append_xml_element(out, "end", format_utc(*time.end));
  out += "</TimeSpan>";
}

}  // namespace

void append_kml_data(std::string& out, const Property& property) {
  out += "<Data name=\"";
  append_xml_text(out, property.name);
  out += "\">";
  append_xml_element(out, "value", to_text(property.value));
  out += "</Data>";
}

KmlWriter::KmlWriter(Sink& sink, const KmlDocument& document)
    : out_(std::make_unique<TextBuffer>(sink)), box_text_(std::make_unique<BoxText>()) {
  std::string& out = out_->text;
  out +=
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<kml xmlns=\"http://www.opengis.net/kml/2.2\">\n<Document>";
  append_name_and_description(out, document.name, document.description);
  out += '\n';
  for (const KmlStyle& style : document.styles) {
    require_style_id(style.id);
    append_style(out, style);
    style_ids_.push_back(style.id);
  }
}

KmlWriter::~KmlWriter() = default;

void KmlWriter::open_folder(std::string_view name, std::string_view description) {
  out_->text += "<Folder>";
  append_name_and_description(out_->text, name, description);
  out_->text += '\n';
  ++open_folders_;
}

void KmlWriter::close_folder() {
  if (open_folders_ == 0) throw Error(ErrorCode::value, "no folder is open");
  out_->text += "</Folder>\n";
  --open_folders_;
}

void KmlWriter::placemark(const Placemark& placemark) {
  if (!placemark.style_id.empty() &&
      std::find(style_ids_.begin(), style_ids_.end(), placemark.style_id) == style_ids_.end()) {
    throw Error(ErrorCode::value,
                fmt::format("there is no style '{}'", printable(placemark.style_id)));
  }
  // The schema wants the elements in this order.
  std::string& out = out_->text;
  out += "<Placemark>";
  append_name_and_description(out, placemark.name, placemark.description);
  if (placemark.time) append_time(out, *placemark.time);
  if (!placemark.style_id.empty()) {
    out += "<styleUrl>#";
    out += placemark.style_id;
    out += "</styleUrl>";
  }
  if (!placemark.properties.empty() || !placemark.data.empty()) {
    out += "<ExtendedData>";
    for (const Property& property : placemark.properties) append_kml_data(out, property);
    out += placemark.data;
    out += "</ExtendedData>";
  }
  append_kml_geometry(out, placemark.geometry, *box_text_);
  out += "</Placemark>\n";
  out_->hand_over_if_large();
}

void KmlWriter::finish() {
  while (open_folders_ > 0) close_folder();
  out_->text += "</Document>\n</kml>\n";
  out_->hand_over();
}

}  // namespace sweepwright::formats
