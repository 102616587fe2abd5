#include "sweepwright/formats/gpx_writer.hpp"

#include <cmath>
#include <map>

#include "formats/number_text.hpp"
#include "formats/text_buffer.hpp"
#include "formats/xml_text.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

/// Full names to short ones; empty when full names are wanted.
std::map<std::string, std::string> names_of(const GpxDocument& document, GpxNames names) {
  std::vector<std::string> full;
  if (names == GpxNames::short_names) {
    for (const GpxPoint& point : document.waypoints) full.push_back(point.name);
    for (const GpxRoute& route : document.routes) {
      for (const GpxPoint& point : route.points) full.push_back(point.name);
    }
  }
  const std::vector<std::string> small = short_names(full);
  std::map<std::string, std::string> out;
  for (std::size_t i = 0; i < full.size(); ++i) out[full[i]] = small[i];
  return out;
}

/// The schema wants longitudes below 180: 179.99999999 must not be rounded up to it.
Angle gpx_longitude(Position position) {
  const Angle rounded = Angle::degrees(
      std::round(position.longitude().degrees() * kUnitsPerDegree) / kUnitsPerDegree);
  return rounded.degrees() >= 180 ? Angle::degrees(-180) : rounded;
}

/// The schema wants the elements in this order: name, cmt, desc, sym.
void append_point(std::string& out, std::string_view tag, const GpxPoint& point,
                  const std::map<std::string, std::string>& names) {
  out += '<';
  out += tag;
  out += " lat=\"";
  append_degrees(out, point.position.latitude());
  out += "\" lon=\"";
  append_degrees(out, gpx_longitude(point.position));
  out += "\">";
  const auto small = names.find(point.name);
  if (small == names.end()) {
    append_xml_element_if_any(out, "name", point.name);
  } else {
    append_xml_element(out, "name", small->second);
    append_xml_element_if_any(out, "cmt", point.name);
  }
  append_xml_element_if_any(out, "desc", point.description);
  append_xml_element_if_any(out, "sym", point.symbol);
  out += "</";
  out += tag;
  out += ">\n";
}

}  // namespace

void write_gpx(Sink& sink, const GpxDocument& document, GpxNames names) {
  const std::map<std::string, std::string> small = names_of(document, names);
  TextBuffer buffer(sink);
  std::string& out = buffer.text;
  out += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"";
  append_xml_text(out, document.creator);
  out += "\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n<metadata>\n";
  append_xml_element(out, "name", document.name);
  out += '\n';
  append_xml_element(out, "desc", document.description);
  out += '\n';
  if (document.time) {
    append_xml_element(out, "time", format_utc(*document.time));
    out += '\n';
  }
  out += "</metadata>\n";
  for (const GpxPoint& point : document.waypoints) {
    append_point(out, "wpt", point, small);
    buffer.hand_over_if_large();
  }
  for (const GpxRoute& route : document.routes) {
    out += "<rte>";
    append_xml_element(out, "name", route.name);
    append_xml_element_if_any(out, "desc", route.description);
    out += '\n';
    for (const GpxPoint& point : route.points) {
      append_point(out, "rtept", point, small);
      buffer.hand_over_if_large();
    }
    out += "</rte>\n";
  }
  out += "</gpx>\n";
  buffer.hand_over();
}

}  // namespace sweepwright::formats
