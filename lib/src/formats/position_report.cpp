#include "sweepwright/formats/position_report.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "sweepwright/formats/time_text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {

std::string position_report_text(const PositionReport& report) {
  std::string text = fmt::format("{}\nread as {}\n", format_position(report.reading.position),
                                 report.reading.read_as);
  for (const locate::OtherReading& other : report.reading.other_readings) {
    text += fmt::format("could also be {}, read as {}\n", format_position(other.position),
                        other.read_as);
  }
  text += "\n";
  for (const locate::Written& entry : report.notations) {
    text += fmt::format("{:<10} {}\n", entry.key, entry.text.empty() ? "-" : entry.text);
  }
  for (std::size_t i = 1; i < report.chart_sheets.size(); ++i) {
    text += fmt::format("{:<10} {}\n", i == 1 ? "also chart" : "", report.chart_sheets[i].name);
  }
  if (report.variation) {
    text += fmt::format("{:<10} {}\n", "variation", magnetic::format_variation(*report.variation));
  }
  for (const std::string& remark : report.remarks) text += remark + "\n";
  return text;
}

std::string position_report_json(const PositionReport& report, bool on_one_line) {
  using nlohmann::ordered_json;
  const locate::Reading& reading = report.reading;
  ordered_json others = ordered_json::array();
  for (const locate::OtherReading& other : reading.other_readings) {
    others.push_back({{"latitude", other.position.latitude().degrees()},
                      {"longitude", other.position.longitude().degrees()},
                      {"read_as", other.read_as}});
  }
  ordered_json notations = ordered_json::object();
  for (const locate::Written& entry : report.notations) {
    notations[std::string(entry.key)] = entry.text;
  }
  ordered_json sheets = ordered_json::array();
  for (const grid::ChartName& on : report.chart_sheets) {
    sheets.push_back({{"sheet", on.sheet}, {"name", on.name}});
  }
  ordered_json json{{"latitude", reading.position.latitude().degrees()},
                    {"longitude", reading.position.longitude().degrees()},
                    {"read_as", reading.read_as},
                    {"other_readings", others},
                    {"notations", notations},
                    {"chart_sheets", sheets}};
  if (report.variation) {
    json["variation_deg"] = report.variation->angle.degrees();
    json["variation_model"] = report.variation->model;
    json["variation_date"] = format_utc(report.variation->date);
  }
  if (!report.remarks.empty()) json["remarks"] = report.remarks;
  return json.dump(on_one_line ? -1 : 2) + "\n";
}

}  // namespace sweepwright::formats
