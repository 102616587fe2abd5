#include "sweepwright/formats/next_mission.hpp"

#include <fmt/format.h>

#include "formats/json_document.hpp"
#include "formats/json_edit.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

constexpr auto kDay = std::chrono::hours(24);

/// `2026-06-15T06:30:00-06:00`
std::string local_time_text(TimePoint time, std::chrono::minutes offset) {
  std::string text = format_utc(time + std::chrono::seconds(offset));
  text.pop_back();  // Z
  const auto minutes = std::chrono::abs(offset).count();
  return fmt::format("{}{}{:02}:{:02}", text, offset.count() < 0 ? '-' : '+', minutes / 60,
                     minutes % 60);
}

std::string json_text(std::string_view text) {
  return to_json(std::string(text));
}

/// Members whose texts name files.
bool names_files(std::string_view member) {
  return member == "file" || member == "files" || member == "obstacles" || member == "airspace";
}

bool is_relative(std::string_view file) {
  return !file.starts_with('/') && file != "-";
}

struct FileName {
  JsonPath path;
  std::string name;
};

void collect_files(const JsonValue& value, JsonPath& path, bool named,
                   std::vector<FileName>& found) {
  if (value.kind == JsonKind::text && named && is_relative(value.text)) {
    found.push_back({path, value.text});
  }
  for (std::size_t i = 0; i < value.items.size(); ++i) {
    path.push_back(std::to_string(i));
    collect_files(value.items[i], path, named, found);
    path.pop_back();
  }
  for (const JsonMember& member : value.members) {
    path.push_back(member.name);
    collect_files(member.value, path, names_files(member.name), found);
    path.pop_back();
  }
}

/// The file with every relative name of a file led through `folder`.
std::string with_files_from(const std::string& text, std::string_view folder) {
  std::vector<FileName> files;
  JsonPath path;
  collect_files(parse_json(text), path, false, files);
  std::string moved = text;
  for (const FileName& file : files) {
    moved = with_member(moved, file.path, json_text(std::string(folder) + file.name));
  }
  return moved;
}

}  // namespace

std::string next_day_letter(std::string_view letter) {
  std::string next(letter);
  for (auto c = next.rbegin(); c != next.rend(); ++c) {
    if (*c != 'Z') {
      ++*c;
      return next;
    }
    *c = 'A';
  }
  return next.size() < 2 ? "AA" : "A";
}

NextMission next_mission(std::string_view text, const plan::Mission& mission,
                         std::string_view belief_file, std::string_view folder) {
  NextMission next;
  const plan::Incident& incident = mission.incident;
  const plan::Period& period = incident.operational_period;
  const auto days = std::chrono::ceil<std::chrono::days>(period.to - period.from);
  const auto later = std::max(std::chrono::days(1), days);
  const auto moved = [&](TimePoint time) {
    return json_text(local_time_text(time + later, incident.offset_from_utc));
  };
  next.text = without_member(text, {"search_area"});
  next.text = without_member(next.text, {"belief"});
  if (!folder.empty()) next.text = with_files_from(next.text, folder);
  next.text = with_member(
      next.text, {"belief"},
      fmt::format("[\n    {{ \"name\": \"After the search of {}\", \"file\": {} }}\n  ]",
                  format_utc(period.from), json_text(belief_file)));
  next.text =
      with_member(next.text, {"incident", "operational_period", "from"}, moved(period.from));
  next.text = with_member(next.text, {"incident", "operational_period", "to"}, moved(period.to));
  const std::string letter = next_day_letter(incident.day_letter);
  next.text = with_member(next.text, {"incident", "day_letter"}, json_text(letter));
  for (std::size_t i = 0; i < mission.units.size(); ++i) {
    if (!mission.units[i].depart) continue;
    next.text = with_member(next.text, {"search_units", std::to_string(i), "depart"},
                            moved(*mission.units[i].depart));
  }
  next.changes.push_back(fmt::format("the operational period begins {}, the day letter is {}",
                                     local_time_text(period.from + later, incident.offset_from_utc),
                                     letter));
  next.changes.push_back(fmt::format("the belief is that of {}, after this search", belief_file));
  if (!mission.area.polygons.empty()) {
    next.changes.emplace_back(
        "search_area is left out: each unit gets the ground where its hours are worth most; put it "
        "back to search the same area again");
  }
  next.changes.emplace_back(
      "conditions are those of the search just flown: put in the new forecast, and check which "
      "units are at hand");
  if (!mission.conditions.terrain) {
    next.changes.emplace_back(
        "an object on the water drifts: move the belief before the next search");
  }
  return next;
}

}  // namespace sweepwright::formats
