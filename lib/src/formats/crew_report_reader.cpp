#include "sweepwright/formats/crew_report_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "formats/csv_row.hpp"
#include "formats/json_cursor.hpp"
#include "formats/mission_values.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kLargestReportBytes = 16 * 1024 * 1024;
constexpr std::size_t kMostReports = 10000;
constexpr std::size_t kMostEntries = 1000;  // of one kind, on one form
constexpr auto kDay = std::chrono::hours(24);

/// `07:05`, `0705` or `07:05:30` of a clock; none for other texts.
std::optional<std::chrono::seconds> clock_time(std::string_view text) {
  std::string digits;
  for (const char c : text) {
    if (is_ascii_digit(c)) {
      digits += c;
    } else if (c != ':') {
      return std::nullopt;
    }
  }
  if (digits.size() != 4 && digits.size() != 6) return std::nullopt;
  const auto pair = [&](std::size_t at) { return 10 * (digits[at] - '0') + digits[at + 1] - '0'; };
  const int second = digits.size() == 6 ? pair(4) : 0;
  if (pair(0) > 23 || pair(2) > 59 || second > 59) return std::nullopt;
  return std::chrono::hours(pair(0)) + std::chrono::minutes(pair(2)) + std::chrono::seconds(second);
}

/// Reads one form; what a form may hold stands here.
class FormReader {
 public:
  explicit FormReader(const plan::Incident& incident) : incident_(incident) {}

  debrief::CrewReport operator()(const JsonCursor& cursor) const {
    JsonObject in(cursor);
    const auto when = [this](const JsonCursor& place) { return time(place); };
    debrief::CrewReport report;
    report.sector = in.optional("sector", short_text).value_or("");
    report.callsign = in.optional("callsign", short_text).value_or("");
    report.on_task = in.optional("on_task", when);
    report.off_task = in.optional("off_task", when);
    report.visibility = in.optional("visibility", length(Least::above_zero, "100NM"));
    report.height = in.optional("height", length(Least::above_zero, "60000ft"));
    report.speed = in.optional("speed", speed(Least::above_zero, "500kt"));
    report.fatigued = in.optional("fatigued", yes_or_no).value_or(false);
    report.own_pod = in.optional("pod", share);
    report.own_estimate = in.optional("estimate", short_text).value_or("");
    report.above_cloud = in.list("above_cloud", kMostEntries,
                                 [this](const JsonCursor& place) { return period(place); });
    report.sightings = in.list("sightings", kMostEntries,
                               [this](const JsonCursor& place) { return sighting(place); });
    report.remarks = in.list("remarks", kMostEntries, long_text);
    if (report.on_task && report.off_task && *report.off_task <= *report.on_task) {
      in.mistake("off_task", Error(ErrorCode::value, "off task is not after on task",
                                   "check both times; neither is used"));
      report.on_task.reset();
      report.off_task.reset();
    }
    in.finish();
    return report;
  }

 private:
  static sweep::Probability share(const JsonCursor& cursor) {
    const double value = cursor.number("a number from 0 to 1 without quotes, such as 0.6");
    if (!(value >= 0 && value <= 1)) {
      throw Error(ErrorCode::value, fmt::format("{} is not from 0 to 1", value),
                  "write 60 percent as 0.6");
    }
    return sweep::Probability(value);
  }

  TimePoint time(const JsonCursor& cursor) const {
    const std::string& text = cursor.text("a time in quotes, such as \"07:05\"");
    const auto clock = clock_time(trimmed(text));
    return clock ? nearest_to_period(*clock) : local_time(cursor).time;
  }

  TimePoint nearest_to_period(std::chrono::seconds clock) const {
    const plan::Period& period = incident_.operational_period;
    if (period.to - period.from > kDay) {
      throw Error(ErrorCode::value, "the time has no date, and the period is longer than a day",
                  "write date, time and offset, such as 2026-07-14T12:30:00-06:00");
    }
    const TimePoint middle = period.from + (period.to - period.from) / 2;
    const auto local_midnight = std::chrono::floor<std::chrono::days>(
        middle + std::chrono::seconds(incident_.offset_from_utc));
    const auto on_day = [&](int day) {
      return TimePoint(local_midnight) + day * kDay + clock -
             std::chrono::seconds(incident_.offset_from_utc);
    };
    TimePoint best = on_day(0);
    for (const int day : {-1, 1}) {
      if (std::chrono::abs(on_day(day) - middle) < std::chrono::abs(best - middle)) {
        best = on_day(day);
      }
    }
    return best;
  }

  plan::Period period(const JsonCursor& cursor) const {
    JsonObject in(cursor);
    const auto when = [this](const JsonCursor& place) { return time(place); };
    const auto from = in.optional("from", when);
    const auto to = in.optional("to", when);
    in.finish();
    if (!from || !to || *to <= *from) {
      throw Error(ErrorCode::value, "this is no span of time", "write 'from' and a later 'to'");
    }
    return {*from, *to};
  }

  debrief::Sighting sighting(const JsonCursor& cursor) const {
    JsonObject in(cursor);
    debrief::Sighting sighting;
    sighting.time = in.optional("time", [this](const JsonCursor& place) { return time(place); });
    sighting.position = in.optional("position", position);
    sighting.seen = in.optional("seen", long_text).value_or("");
    sighting.done = in.optional("done", long_text).value_or("");
    in.finish();
    return sighting;
  }

  const plan::Incident& incident_;
};

JsonValue text_value(std::string text, int line) {
  JsonValue value;
  value.kind = JsonKind::text;
  value.line = line;
  value.text = std::move(text);
  return value;
}

JsonValue object_value(int line) {
  JsonValue value;
  value.kind = JsonKind::object;
  value.line = line;
  return value;
}

/// The cell as the JSON field would hold it.
JsonValue cell_value(const std::string& column, const std::string& cell, int line) {
  JsonValue value = text_value(cell, line);
  if (column == "pod") {
    value.kind = JsonKind::number;
    value.number = parse_number(cell, "a probability");
  } else if (column == "fatigued") {
    const std::string word = to_lower_ascii(cell);
    const bool yes = word == "yes" || word == "true" || word == "1";
    if (!yes && word != "no" && word != "false" && word != "0") {
      throw Error(ErrorCode::value, fmt::format("'{}' is neither yes nor no", printable(cell)));
    }
    value.kind = JsonKind::boolean;
    value.text = yes ? "true" : "false";
  }
  return value;
}

/// Columns whose cells are fields of an entry in one of the form's lists.
struct ListColumn {
  std::string_view list;
  std::string_view field;
};
const std::map<std::string, ListColumn, std::less<>>& list_columns() {
  static const std::map<std::string, ListColumn, std::less<>> columns{
      {"cloud_from", {"above_cloud", "from"}},
      {"cloud_to", {"above_cloud", "to"}},
      {"sighting_time", {"sightings", "time"}},
      {"sighting_position", {"sightings", "position"}},
      {"seen", {"sightings", "seen"}},
      {"done", {"sightings", "done"}},
      {"remarks", {"remarks", ""}}};
  return columns;
}

void add_member(JsonValue& object, std::string_view name, JsonValue value) {
  object.members.push_back({std::string(name), std::move(value)});
}

void add_to_list(JsonValue& form, const ListColumn& column, JsonValue value) {
  const int line = value.line;
  auto list = std::find_if(form.members.begin(), form.members.end(),
                           [&](const JsonMember& member) { return member.name == column.list; });
  if (list == form.members.end()) {
    JsonValue items;
    items.kind = JsonKind::array;
    items.line = line;
    if (!column.field.empty()) items.items.push_back(object_value(line));
    add_member(form, column.list, std::move(items));
    list = std::prev(form.members.end());
  }
  if (column.field.empty()) {
    list->value.items.push_back(std::move(value));
  } else {
    add_member(list->value.items.front(), column.field, std::move(value));
  }
}

/// The lines of a table as a list of forms; lines that are none are named in `problems`.
JsonValue forms_of_table(std::string_view text, std::vector<std::string>& problems) {
  JsonValue forms;
  forms.kind = JsonKind::array;
  std::vector<std::string> columns;
  char delimiter = ',';
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    const std::string place = fmt::format("line {}", number);
    if (columns.empty()) {
      delimiter = csv_delimiter(line);
      for (const std::string& name : csv_cells(line, delimiter)) {
        columns.push_back(to_lower_ascii(name));
      }
      const auto has = [&](std::string_view name) {
        return std::find(columns.begin(), columns.end(), name) != columns.end();
      };
      if (!has("sector") && !has("callsign")) {
        throw Error(ErrorCode::input, "the table has neither a column 'sector' nor 'callsign'",
                    "its first line names the columns: sector,callsign,on_task,off_task,...",
                    place);
      }
      continue;
    }
    try {
      const std::vector<std::string> cells = csv_cells(line, delimiter);
      if (cells.size() != columns.size()) {
        throw Error(ErrorCode::input, fmt::format("the line has {} cells, and the table {} columns",
                                                  cells.size(), columns.size()));
      }
      JsonValue form = object_value(number);
      for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i].empty()) continue;
        JsonValue value = cell_value(columns[i], cells[i], number);
        const auto list = list_columns().find(columns[i]);
        if (list != list_columns().end()) {
          add_to_list(form, list->second, std::move(value));
        } else {
          add_member(form, columns[i], std::move(value));
        }
      }
      forms.items.push_back(std::move(form));
    } catch (const Error& error) {
      problems.emplace_back(error.at(place).what());
    }
  }
  return forms;
}

/// The forms of a JSON text: itself, its items, or those of `reports`.
const JsonValue* forms_of_json(const JsonValue& root) {
  if (root.kind != JsonKind::object) return &root;
  for (const JsonMember& member : root.members) {
    if (member.name == "reports") return &member.value;
  }
  return &root;
}

void add(CrewReports& found, debrief::CrewReport report) {
  const auto same = [](const std::string& a, const std::string& b) {
    return to_lower_ascii(a) == to_lower_ascii(b);
  };
  for (debrief::CrewReport& known : found.reports) {
    // Two times on task are two sorties.
    const bool other_sortie = known.on_task && report.on_task && *known.on_task != *report.on_task;
    if (!other_sortie && same(known.sector, report.sector) &&
        same(known.callsign, report.callsign)) {
      known = debrief::merged(std::move(known), report);
      return;
    }
  }
  found.reports.push_back(std::move(report));
}

}  // namespace

CrewReports parse_crew_reports(std::string_view text, const plan::Incident& incident) {
  CrewReports found;
  const std::string_view content = trimmed(text);
  const bool json = content.starts_with('{') || content.starts_with('[');
  const JsonValue root = json ? parse_json(text) : forms_of_table(text, found.problems);
  const JsonValue& forms = json ? *forms_of_json(root) : root;
  const std::size_t count = forms.kind == JsonKind::array ? forms.items.size() : 1;
  if (count > kMostReports) {
    throw Error(ErrorCode::input, fmt::format("the file has {} reports", count),
                fmt::format("give at most {}", kMostReports));
  }
  for (std::size_t i = 0; i < count; ++i) {
    const JsonValue& form = forms.kind == JsonKind::array ? forms.items[i] : forms;
    Mistakes mistakes;
    auto report = JsonCursor(form, "", mistakes).attempt(FormReader(incident));
    for (std::string& problem : mistakes.texts()) found.problems.push_back(std::move(problem));
    if (!report) continue;
    if (report->sector.empty() && report->callsign.empty()) {
      found.problems.push_back(fmt::format(
          "line {}: the report names neither a sector nor a callsign: it is left out", form.line));
      continue;
    }
    add(found, std::move(*report));
  }
  return found;
}

CrewReportFile read_crew_reports(const std::string& path, const plan::Incident& incident) {
  const InputText file = read_text_file(path, kLargestReportBytes);
  try {
    CrewReportFile read{parse_crew_reports(file.text, incident), file.digest};
    for (std::string& problem : read.content.problems) {
      problem = fmt::format("{}: {}", file.digest.name, problem);
    }
    return read;
  } catch (const Error& error) {
    throw error.at(file.digest.name);
  }
}

}  // namespace sweepwright::formats
