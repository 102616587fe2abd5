#include "formats/gpx_route.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <pugixml.hpp>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

/// The element's name without its namespace prefix.
std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  return name.substr(name.find(':') + 1);  // all of it when there is no colon
}

std::vector<pugi::xml_node> children(const pugi::xml_node& node, std::string_view name) {
  std::vector<pugi::xml_node> found;
  for (const pugi::xml_node& child : node.children()) {
    if (local_name(child) == name) found.push_back(child);
  }
  return found;
}

std::string name_of(const pugi::xml_node& node) {
  const std::vector<pugi::xml_node> names = children(node, "name");
  return names.empty() ? "" : std::string(trimmed(names.front().text().get()));
}

class GpxRouteReader {
 public:
  explicit GpxRouteReader(std::string_view text) : text_(text) {}

  RouteReading read() {
    pugi::xml_document document;
    const pugi::xml_parse_result result =
        document.load_buffer(text_.data(), text_.size(), pugi::parse_default, pugi::encoding_utf8);
    if (!result) {
      throw Error(ErrorCode::input, fmt::format("the XML is broken: {}", result.description()),
                  "is the file cut off?", line_at(result.offset));
    }
    const pugi::xml_node root = document.document_element();
    const std::vector<pugi::xml_node> routes = children(root, "rte");
    const std::vector<pugi::xml_node> tracks = children(root, "trk");
    RouteReading reading;
    if (!routes.empty()) {
      require_one(routes, "routes");
      reading = along(routes.front(), children(routes.front(), "rtept"));
      if (!tracks.empty()) reading.remarks.push_back("tracks beside the route were left out");
    } else if (!tracks.empty()) {
      require_one(tracks, "tracks");
      const std::vector<pugi::xml_node> segments = children(tracks.front(), "trkseg");
      require_one(segments, "track segments");
      reading = along(tracks.front(), children(segments.front(), "trkpt"));
      reading.remarks.push_back("no route: the track was taken for it");
    } else {
      reading = along(root, children(root, "wpt"));
      reading.remarks.push_back("no route: the waypoints were taken for it, in their order");
    }
    return reading;
  }

 private:
  std::string line_at(std::ptrdiff_t offset) const {
    const std::ptrdiff_t end =
        std::clamp<std::ptrdiff_t>(offset, 0, static_cast<std::ptrdiff_t>(text_.size()));
    return fmt::format("line {}", 1 + std::count(text_.begin(), text_.begin() + end, '\n'));
  }

  void require_one(const std::vector<pugi::xml_node>& nodes, std::string_view things) const {
    if (nodes.size() == 1) return;
    throw Error(ErrorCode::input, fmt::format("the file holds {} {}", nodes.size(), things),
                "keep the one that is meant");
  }

  RouteReading along(const pugi::xml_node& named, const std::vector<pugi::xml_node>& points) const {
    RouteReading reading;
    reading.name = name_of(named);
    for (const pugi::xml_node& point : points) {
      try {
        reading.route.push_back(
            Position::at(degrees(point, "lat", 90), degrees(point, "lon", 180)));
      } catch (const Error& error) {
        throw error.at(line_at(point.offset_debug()));
      }
    }
    return reading;
  }

  static Angle degrees(const pugi::xml_node& point, const char* attribute, double most) {
    const std::string_view written = trimmed(point.attribute(attribute).value());
    double value = 0;
    const auto [stop, fault] =
        std::from_chars(written.data(), written.data() + written.size(), value);
    if (fault != std::errc() || stop != written.data() + written.size() ||
        !(std::abs(value) <= most)) {
      throw Error(ErrorCode::input,
                  fmt::format("{} of a place is '{}'", attribute, printable(written)),
                  fmt::format("write degrees from -{0} to {0}, with a decimal point", most));
    }
    return Angle::degrees(value);
  }

  std::string_view text_;
};

}  // namespace

bool is_gpx(std::string_view text) {
  pugi::xml_document document;
  document.load_buffer(text.data(), text.size(), pugi::parse_default, pugi::encoding_utf8);
  return local_name(document.document_element()) == "gpx";
}

RouteReading read_gpx_route(std::string_view text) {
  return GpxRouteReader(text).read();
}

}  // namespace sweepwright::formats
