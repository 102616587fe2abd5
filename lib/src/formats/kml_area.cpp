#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <pugixml.hpp>
#include <string>

#include "formats/area_collector.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr int kDeepestElement = 64;

/// The element's name without its namespace prefix.
std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  return name.substr(name.find(':') + 1);  // all of it when there is no colon
}

std::string text_of(const pugi::xml_node& node) {
  std::string text;
  for (const pugi::xml_node& child : node.children()) {
    if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata)
      text += child.value();
  }
  return text;
}

pugi::xml_node child_of(const pugi::xml_node& node, std::string_view name) {
  return node.find_child([&](const pugi::xml_node& child) { return local_name(child) == name; });
}

void remove_blanks(std::string_view& text) {
  text.remove_prefix(std::min(text.find_first_not_of(" \t\r\n"), text.size()));
}

class KmlReader {
 public:
  explicit KmlReader(std::string_view text) : text_(text) {}

  DrawnFile read() {
    pugi::xml_document document;
    const pugi::xml_parse_result result = document.load_buffer(
        text_.data(), text_.size(), pugi::parse_default | pugi::parse_doctype, pugi::encoding_utf8);
    if (!result) {
      throw Error(ErrorCode::input, fmt::format("the XML is broken: {}", result.description()),
                  "is the file cut off?", line_at(result.offset));
    }
    for (const pugi::xml_node& node : document.children()) {
      if (node.type() == pugi::node_doctype) {
        throw Error(ErrorCode::input, "the file has a document type declaration, and KML has none",
                    "take it out", line_at(node.offset_debug()));
      }
    }
    const pugi::xml_node root = document.document_element();
    if (local_name(root) != "kml") {
      throw Error(
          ErrorCode::input,
          fmt::format("this is no KML: its outermost element is '{}'", printable(root.name())),
          local_name(root) == "gpx" ? "GPX holds no areas: draw a polygon as KML or GeoJSON" : "",
          line_at(root.offset_debug()));
    }
    container(root, "", 0);
    return {std::move(area_), std::move(file_name_)};
  }

 private:
  /// Elements come mostly in the order of the file, so the count goes on from the last one.
  std::ptrdiff_t line_of(std::ptrdiff_t offset) {
    const std::ptrdiff_t end =
        std::clamp<std::ptrdiff_t>(offset, 0, static_cast<std::ptrdiff_t>(text_.size()));
    if (end < counted_) {
      counted_ = 0;
      line_ = 1;
    }
    line_ += std::count(text_.begin() + counted_, text_.begin() + end, '\n');
    counted_ = end;
    return line_;
  }

  std::string line_at(std::ptrdiff_t offset) { return fmt::format("line {}", line_of(offset)); }

  std::string place(const pugi::xml_node& node, const std::string& path) {
    return line_at(node.offset_debug()) + " " + path;
  }

  static void require_depth(int depth) {
    if (depth <= kDeepestElement) return;
    throw Error(ErrorCode::input,
                fmt::format("elements are nested more than {} deep", kDeepestElement));
  }

  /// kml, Document, Folder: whatever holds other features.
  void container(const pugi::xml_node& node, const std::string& path, int depth) {
    require_depth(depth);
    const std::string_view name = local_name(node);
    if (name == "Document" || name == "Folder") remember_name(node);
    for (const pugi::xml_node& child : node.children()) {
      const std::string_view kind = local_name(child);
      const std::string child_path = path + "/" + std::string(kind);
      if (kind == "Document" || kind == "Folder") {
        container(child, child_path, depth + 1);
      } else if (kind == "Placemark") {
        placemark(child, child_path, depth + 1);
      } else if (kind == "NetworkLink") {
        area_.odd.others.push_back(place(child, child_path) + ": a link was not followed");
      } else if (kind == "GroundOverlay" || kind == "ScreenOverlay" || kind == "PhotoOverlay") {
        area_.odd.others.push_back(place(child, child_path) + ": a picture was left out");
      }
    }
  }

  void remember_name(const pugi::xml_node& node) {
    if (file_name_.empty()) file_name_ = trimmed(text_of(child_of(node, "name")));
  }

  void placemark(const pugi::xml_node& node, const std::string& path, int depth) {
    const std::string name(trimmed(text_of(child_of(node, "name"))));
    const std::string named = name.empty() ? path : fmt::format("{} '{}'", path, printable(name));
    bool any = false;
    for (const pugi::xml_node& child : node.children()) {
      any = geometry(child, named, name, depth + 1) || any;
    }
    if (!any) ++area_.odd.without_geometry;
  }

  /// False when the element is no geometry.
  bool geometry(const pugi::xml_node& node, const std::string& path, const std::string& name,
                int depth) {
    require_depth(depth);
    const std::string_view kind = local_name(node);
    const std::string here = path + "/" + std::string(kind);
    if (kind == "MultiGeometry") {
      for (const pugi::xml_node& child : node.children()) geometry(child, here, name, depth + 1);
    } else if (kind == "Polygon") {
      polygon(node, here, name);
    } else if (kind == "LinearRing") {
      ++area_.odd.loose_rings;
      area_.add_polygon({{ring(node, here)}, name});
    } else if (kind == "LineString") {
      area_.add_line(ring(node, here), name);
    } else if (kind == "Point") {
      const std::size_t altitudes = area_.odd.altitudes;
      for (const DrawnPoint& at : ring(node, here).points) area_.add_point(at);
      area_.odd.altitudes = altitudes;  // nobody misses that of a point
    } else if (kind == "Track" || kind == "MultiTrack") {
      ++area_.odd.lines;
    } else if (kind == "Model") {
      area_.odd.others.push_back(place(node, here) + ": a model was left out");
    } else {
      return false;
    }
    return true;
  }

  void polygon(const pugi::xml_node& node, const std::string& path, const std::string& name) {
    DrawnPolygon drawn;
    drawn.name = name;
    for (const std::string_view boundary : {"outerBoundaryIs", "innerBoundaryIs"}) {
      for (const pugi::xml_node& child : node.children()) {
        if (local_name(child) != boundary) continue;
        for (const pugi::xml_node& one : child.children()) {
          if (local_name(one) != "LinearRing") continue;
          drawn.rings.push_back(ring(one, path + "/" + std::string(boundary) + "/LinearRing"));
        }
      }
      if (drawn.rings.empty()) {
        throw Error(ErrorCode::input, "the polygon has no outerBoundaryIs with a LinearRing", {},
                    place(node, path));
      }
      if (boundary == "outerBoundaryIs" && drawn.rings.size() > 1) {
        throw Error(ErrorCode::input, "the polygon has more than one outer boundary",
                    "make a polygon of each", place(node, path));
      }
    }
    area_.add_polygon(std::move(drawn));
  }

  DrawnRing ring(const pugi::xml_node& node, const std::string& path) {
    const pugi::xml_node coordinates = child_of(node, "coordinates");
    if (!coordinates) {
      throw Error(ErrorCode::input, "there are no coordinates", {}, place(node, path));
    }
    DrawnRing ring;
    ring.place = place(coordinates, path + "/coordinates");
    const std::string text = text_of(coordinates);
    std::string_view rest = trimmed(text);
    while (!rest.empty()) {
      const std::ptrdiff_t done = rest.data() - text.data();
      try {
        ring.points.push_back(point(rest));
      } catch (const Error& error) {
        const auto lines_within = std::count(text.begin(), text.begin() + done, '\n');
        throw error.at(fmt::format("line {} {}/coordinates point {}",
                                   line_of(coordinates.first_child().offset_debug()) + lines_within,
                                   path, ring.points.size() + 1));
      }
    }
    return ring;
  }

  /// Takes `longitude,latitude[,altitude]` and the blanks behind it off the front. Blanks after a
  /// comma are let pass.
  DrawnPoint point(std::string_view& rest) {
    std::vector<double> values;
    do {
      if (!values.empty()) {
        rest.remove_prefix(1);  // the comma
        remove_blanks(rest);
      }
      values.push_back(number(rest));
    } while (rest.starts_with(','));
    remove_blanks(rest);

    constexpr std::string_view kForm =
        "a point is longitude,latitude[,altitude], and blanks part points";
    if (values.size() < 2) {
      throw Error(ErrorCode::input, "a point has a longitude only", std::string(kForm));
    }
    if (values.size() > 3) {
      throw Error(ErrorCode::input, fmt::format("a point has {} numbers", values.size()),
                  std::string(kForm));
    }
    if (values.size() == 3) ++area_.odd.altitudes;
    const DrawnPoint drawn{values[0], values[1]};
    require_on_earth(drawn);
    return drawn;
  }

  /// Takes a number off the front, which must end at a comma, a blank or the end.
  static double number(std::string_view& rest) {
    const std::size_t end = std::min(rest.find_first_of(", \t\r\n"), rest.size());
    std::string_view word = rest.substr(0, end);
    const std::string_view written = word;
    if (word.starts_with('+')) word.remove_prefix(1);
    double value = 0;
    const auto [stop, fault] = std::from_chars(word.data(), word.data() + word.size(), value);
    if (fault != std::errc() || stop != word.data() + word.size()) {
      throw Error(ErrorCode::input,
                  written.empty() ? "a number is missing"
                                  : fmt::format("'{}' is no number of degrees", printable(written)),
                  "a point is longitude,latitude[,altitude], with decimal points");
    }
    rest.remove_prefix(end);
    return value;
  }

  std::string_view text_;
  std::ptrdiff_t counted_ = 0;  ///< so far in the text the lines are counted
  std::ptrdiff_t line_ = 1;
  std::string file_name_;
  AreaCollector area_;
};

}  // namespace

DrawnFile read_drawn_kml(std::string_view text) {
  return KmlReader(text).read();
}

}  // namespace sweepwright::formats
