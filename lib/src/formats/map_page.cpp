#include "sweepwright/formats/map_page.hpp"

#include <fmt/format.h>

#include <map>
#include <nlohmann/json.hpp>

#include "embedded/geodesy.hpp"
#include "embedded/grids.hpp"
#include "embedded/leaflet.hpp"
#include "embedded/leaflet_licence.hpp"
#include "embedded/leaflet_style.hpp"
#include "embedded/notations.hpp"
#include "embedded/page.hpp"
#include "embedded/page_script.hpp"
#include "embedded/page_style.hpp"
#include "formats/xml_text.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/plan_overlays.hpp"
#include "sweepwright/formats/time_text.hpp"
#include "sweepwright/grid/chart.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

/// What a millimetre of a dash pattern is on the screen.
constexpr double kPixelsPerMillimetre = 4;

/// JSON in a script element: no text may end the element.
std::string script_json(std::string json) {
  std::string out;
  out.reserve(json.size());
  for (const char c : json) {
    if (c == '<') {
      out += "\\u003c";
    } else {
      out += c;
    }
  }
  return out;
}

std::string html_text(std::string_view text) {
  std::string out;
  append_xml_text(out, text);
  return out;
}

std::string sheets_json() {
  ordered_json sheets = ordered_json::array();
  for (const grid::ChartSheet& sheet : grid::built_in_chart_sheets()) {
    const grid::LatLonBox& limits = sheet.limits;
    sheets.push_back({{"code", sheet.code},
                      {"north", limits.north.degrees()},
                      {"south", limits.south.degrees()},
                      {"west", limits.west.degrees()},
                      {"east", limits.east.degrees()}});
  }
  return sheets.dump();
}

std::string styles_json(std::size_t crews) {
  ordered_json styles = ordered_json::array();
  for (std::size_t crew = 0; crew < crews; ++crew) {
    const CrewStyle style = crew_style(crew);
    ordered_json dash;  // null: an unbroken line
    if (!style.dash_mm.empty()) {
      std::string text;
      for (const double part : style.dash_mm) {
        text += fmt::format("{}{:.1f}", text.empty() ? "" : " ", part * kPixelsPerMillimetre);
      }
      dash = text;
    }
    styles.push_back({{"colour", fmt::format("#{:02x}{:02x}{:02x}", style.colour.red,
                                             style.colour.green, style.colour.blue)},
                      {"dash", dash}});
  }
  return styles.dump();
}

std::string plan_geojson(const plan::Plan& plan, const Provenance& provenance) {
  StringSink sink;
  write_plan_geojson(sink, plan, provenance);
  return sink.text();
}

/// The template with each `@NAME@` replaced by its text.
std::string filled(std::string_view page, const std::map<std::string_view, std::string>& parts) {
  std::string out;
  while (true) {
    const std::size_t at = page.find('@');
    out += page.substr(0, at);
    if (at == std::string_view::npos) return out;
    page.remove_prefix(at + 1);
    const std::size_t end = page.find('@');
    out += parts.at(page.substr(0, end));
    page.remove_prefix(end + 1);
  }
}

}  // namespace

std::string write_map_page(const plan::Plan& plan, const Provenance& provenance) {
  std::string cautions;
  for (const std::string_view caution : kCautions) {
    cautions += (cautions.empty() ? "" : " ") + std::string(caution);
  }
  const std::string origin =
      fmt::format("{}, made {}. WGS 84, directions from true north, NM = 1852 m.",
                  creator(provenance), format_utc(provenance.stamp));
  return filled(embedded::page(), {{"TITLE", html_text(plan.mission.incident.name)},
                                   {"LEAFLET_CSS", std::string(embedded::leaflet_style())},
                                   {"PAGE_CSS", std::string(embedded::page_style())},
                                   {"CAUTIONS", html_text(cautions)},
                                   {"ORIGIN", html_text(origin)},
                                   {"PLAN", script_json(plan_geojson(plan, provenance))},
                                   {"SHEETS", sheets_json()},
                                   {"STYLES", styles_json(plan.assignments.size())},
                                   {"LEAFLET_LICENCE", std::string(embedded::leaflet_licence())},
                                   {"LEAFLET_JS", std::string(embedded::leaflet())},
                                   {"GEODESY_JS", std::string(embedded::geodesy())},
                                   {"GRIDS_JS", std::string(embedded::grids())},
                                   {"NOTATIONS_JS", std::string(embedded::notations())},
                                   {"PAGE_JS", std::string(embedded::page_script())}});
}

}  // namespace sweepwright::formats
