// sweepwright locate: how positions were read, and what they are called everywhere.
#include <fmt/format.h>

#include <fstream>
#include <iostream>
#include <memory>
#include <optional>
#include <set>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/formats/point_reader.hpp"
#include "sweepwright/formats/position_report.hpp"
#include "sweepwright/grid/chart.hpp"
#include "sweepwright/locate/read_lines.hpp"
#include "sweepwright/magnetic/variation.hpp"
#include "sweepwright/position/position_text.hpp"
#include "sweepwright/reference/coordinates_text.hpp"

namespace sweepwright::cli {
namespace {

struct LocateOptions {
  std::string text;
  std::string file;
  std::string crs;
  std::string points;
  std::string charts;
  std::string date;
  std::string notation;
  std::string decimals;
  bool hemisphere_letters = false;
  bool json = false;
  bool strict = false;
};

/// What reading and writing need, made once for any number of lines.
struct Locator {
  locate::Options reading;
  locate::Writing writing;
  std::vector<grid::ChartSheet> sheets;
  TimePoint date;
  std::optional<reference::System> system;
  std::string notation;  ///< the only one to write; empty for all
};

locate::Writing writing(const LocateOptions& options) {
  locate::Writing writing;
  writing.hemisphere_letters = options.hemisphere_letters;
  if (options.decimals.empty()) return writing;
  const int decimals = option_value("--decimals", options.decimals, [](const std::string& text) {
    return parse_whole_number(text, 0, 9, "the number of decimals");
  });
  writing.degree_decimals = decimals;
  writing.minute_decimals = decimals;
  writing.second_decimals = decimals;
  writing.utm_decimals = decimals;
  return writing;
}

std::vector<grid::ChartSheet> chart_sheets(const LocateOptions& options) {
  if (options.charts.empty()) return grid::built_in_chart_sheets();
  return grid::read_chart_sheets(formats::read_text_file(options.charts).text, options.charts);
}

/// The key of the only notation to write; empty for all.
std::string only_notation(const LocateOptions& options) {
  if (options.notation.empty()) return {};
  if (options.json) {
    throw Error(ErrorCode::usage, "--json writes all notations", "leave out one of the two",
                "--notation");
  }
  return option_value("--notation", to_lower_ascii(options.notation), [](const std::string& key) {
    locate::format_notation(key, Position());
    return key;
  });
}

Locator locator(const LocateOptions& options, const Context& context) {
  Locator made;
  made.reading.strict = options.strict;
  made.writing = writing(options);
  made.date = options.date.empty()
                  ? context.provenance().stamp
                  : option_value("--date", options.date, formats::parse_local_time).time;
  if (!options.points.empty()) made.reading.points = formats::read_points_file(options.points);
  made.reading.variation = [date = made.date](Position place) {
    return magnetic::variation(place, date).angle;
  };
  made.sheets = chart_sheets(options);
  made.reading.charts = grid::make_chart_grid(made.sheets);
  made.writing.charts = made.reading.charts;
  if (!options.crs.empty()) {
    made.system.emplace(option_value(
        "--crs", options.crs, [](const std::string& code) { return reference::System(code); }));
  }
  made.notation = only_notation(options);
  return made;
}

/// A position of another reference system: shifted, with the accuracy of the shift.
locate::Reading read_in_system(std::string_view text, const Locator& locator) {
  const reference::SystemInfo& info = locator.system->info();
  const auto readings = reference::read_coordinates(text, *locator.system);
  if (locator.reading.strict && readings.size() > 1) {
    throw Error(ErrorCode::value, fmt::format("'{}' can be read in two ways", printable(text)),
                fmt::format("write {}", reference::axes_in_words(info)));
  }
  locate::Reading result;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const reference::Conversion& shifted = readings[i].conversion;
    const std::string read_as =
        fmt::format("{} in {} ({})", readings[i].read_as, info.code, info.name);
    if (i > 0) {
      result.other_readings.push_back({shifted.position, read_as});
      continue;
    }
    result.position = shifted.position;
    result.read_as = read_as;
    result.remarks = shifted.warnings;
    result.remarks.insert(
        result.remarks.begin(),
        fmt::format("shifted to WGS 84 by {}, accuracy {}", shifted.operation,
                    shifted.accuracy ? format_length(*shifted.accuracy, LengthUnit::metre, 1)
                                     : "not stated"));
  }
  return result;
}

locate::Reading read(std::string_view text, const Locator& locator) {
  return locator.system ? read_in_system(text, locator)
                        : locate::read_position(text, locator.reading);
}

formats::PositionReport report(const locate::Reading& reading, const Locator& locator) {
  formats::PositionReport made;
  made.reading = reading;
  made.notations = locate::notations(reading.position, locator.writing);
  made.chart_sheets =
      grid::chart_names(locator.sheets, reading.position, locator.writing.charts->levels().back());
  made.remarks = reading.remarks;
  try {
    made.variation = magnetic::variation(reading.position, locator.date);
    const auto& warnings = made.variation->warnings;
    made.remarks.insert(made.remarks.end(), warnings.begin(), warnings.end());
  } catch (const Error& error) {
    // The position stands without it.
    made.remarks.push_back(fmt::format("no magnetic variation: {}", error.what()));
  }
  return made;
}

std::string in_notation(Position position, const Locator& locator) {
  const std::string text = locate::format_notation(locator.notation, position, locator.writing);
  return text.empty() ? "-" : text;
}

void locate_one(const LocateOptions& options, const Locator& locator) {
  try {
    const locate::Reading reading = read(options.text, locator);
    if (!locator.notation.empty()) {
      tell(fmt::format("read as {}", reading.read_as));
      for (const locate::OtherReading& other : reading.other_readings) {
        tell(fmt::format("could also be read as {}", other.read_as));
      }
      for (const std::string& remark : reading.remarks) tell(remark);
      print(in_notation(reading.position, locator) + "\n");
      return;
    }
    const formats::PositionReport made = report(reading, locator);
    print(options.json ? formats::position_report_json(made, /*on_one_line=*/false)
                       : formats::position_report_text(made));
  } catch (const Error& error) {
    const std::string caret = locate::caret_lines(options.text, error);
    if (!caret.empty()) tell(caret);
    throw;
  }
}

/// The reading on one line, with all that whoever uses it must know.
std::string line_text(const locate::Reading& reading) {
  std::string text =
      fmt::format("{}\tread as {}", format_position(reading.position), reading.read_as);
  for (const locate::OtherReading& other : reading.other_readings) {
    text += fmt::format("; could also be {}, read as {}", format_position(other.position),
                        other.read_as);
  }
  for (const std::string& remark : reading.remarks) text += fmt::format("; {}", remark);
  return text + "\n";
}

/// One line of output for each line of input, a wrong one in its place.
void write_line(const locate::LineReading& line, const LocateOptions& options,
                const Locator& locator, formats::Sink& sink) {
  if (const Error* error = std::get_if<Error>(&line.result)) {
    sink.write(options.json ? fmt::format("{{\"line\":{},\"error\":{}}}\n", line.line,
                                          formats::to_json(std::string(error->what())))
                            : fmt::format("error: {}\n", error->what()));
    return;
  }
  const locate::Reading& reading = std::get<locate::Reading>(line.result);
  if (options.json) {
    const std::string json =
        formats::position_report_json(report(reading, locator), /*on_one_line=*/true);
    sink.write(fmt::format("{{\"line\":{},{}", line.line, std::string_view(json).substr(1)));
  } else if (!locator.notation.empty()) {
    sink.write(in_notation(reading.position, locator) + "\n");
  } else {
    sink.write(line_text(reading));
  }
}

/// Tells each remark of a file's positions once, with the line that it first stood for.
class RemarksOnce {
 public:
  void tell_new(std::size_t line, const std::vector<std::string>& remarks) {
    for (const std::string& remark : remarks) {
      if (told_.size() > kMost || !told_.insert(remark).second) continue;
      tell(told_.size() > kMost ? std::string("further remarks are left out; see them with --json")
                                : fmt::format("from line {}: {}", line, remark));
    }
  }

 private:
  static constexpr std::size_t kMost = 20;  // so that a file of any length needs no memory
  std::set<std::string> told_;
};

/// What the lines of one notation alone cannot say.
void tell_what_is_not_written(const locate::LineCounts& counts) {
  if (counts.ambiguous == 0) return;
  tell(
      fmt::format("sweepwright: {} of {} positions can be read in more than one way, the first on "
                  "line {}; leave "
                  "out --notation to see the readings, or refuse them with --strict",
                  counts.ambiguous, counts.read, counts.first_ambiguous_line));
}

void locate_lines(const LocateOptions& options, const Locator& locator, Context& context) {
  std::ifstream file;
  const bool standard_input = options.file == "-";
  if (!standard_input) {
    file.open(options.file);
    if (!file) {
      throw Error(ErrorCode::unreadable, "there is no such file, or it cannot be read",
                  "check its name and folder", options.file);
    }
  }
  std::istream& lines = standard_input ? std::cin : file;
  formats::StreamSink sink(stdout, "standard output");
  RemarksOnce remarks;
  const locate::LineCounts counts = locate::read_lines(
      [&](std::string& line) { return static_cast<bool>(std::getline(lines, line)); },
      [&](std::string_view text) { return read(text, locator); },
      [&](const locate::LineReading& line) {
        write_line(line, options, locator, sink);
        const auto* reading = std::get_if<locate::Reading>(&line.result);
        if (!locator.notation.empty() && reading != nullptr) {
          remarks.tell_new(line.line, reading->remarks);
        }
      });
  sink.flush();
  if (lines.bad()) {
    throw Error(ErrorCode::unreadable, "reading stopped before the end",
                "check that it is a file of text", options.file);
  }
  if (!locator.notation.empty()) tell_what_is_not_written(counts);
  if (counts.failed > 0) {
    tell(fmt::format("sweepwright: {} of {} positions could not be read", counts.failed,
                     counts.read + counts.failed));
    context.exit_status = 1;
  }
}

void run(const LocateOptions& options, Context& context) {
  if (options.text.empty() && options.file.empty()) {
    throw Error(ErrorCode::usage, "no position is given",
                "write one in quotes, or give --file with one position a line");
  }
  if (!options.text.empty() && !options.file.empty()) {
    throw Error(ErrorCode::usage, "a position and a file are given", "give one of them", "--file");
  }
  const Locator made = locator(options, context);
  if (options.file.empty()) {
    locate_one(options, made);
  } else {
    locate_lines(options, made, context);
  }
}

}  // namespace

void add_locate_command(CLI::App& app, Context& context) {
  CLI::App* command =
      app.add_subcommand("locate", "Say how a position is read, and write it in every notation");
  command->footer(
      "Latitude comes first unless hemisphere letters say otherwise. Grid names, UTM, MGRS, and a "
      "bearing\n"
      "and distance from a position are read too.\n\n"
      "Examples:\n"
      "  sweepwright locate \"38-15.0N 117-02.5W\"\n"
      "  sweepwright locate \"FROM 38-15.0N 117-02.5W 045T 12NM\"\n"
      "  sweepwright locate --crs EPSG:4267 \"38-15.0N 117-02.5W\"\n"
      "  sweepwright locate --file positions.txt --notation mgrs\n"
      "  sweepwright locate --file - --crs EPSG:4267 --json\n\n" +
      caution_lines());
  auto options = std::make_shared<LocateOptions>();
  command->add_option("text", options->text, "The position as written or spoken")
      ->type_name("TEXT");
  command
      ->add_option("--file", options->file, "Read one position from each line; - is standard input")
      ->type_name("FILE");
  command->add_option("--crs", options->crs, "Reference system of the positions, such as EPSG:4267")
      ->type_name("CODE");
  command
      ->add_option("--points", options->points,
                   "File of named points for bearings: NAME POSITION lines")
      ->type_name("FILE");
  command
      ->add_option("--charts", options->charts,
                   "Table of chart sheets in place of the built-in one")
      ->type_name("FILE");
  command
      ->add_option("--date", options->date, "Date of the magnetic variation; else that of the run")
      ->type_name("TIME");
  command->add_option("--notation", options->notation, "Write this notation only")
      ->type_name("decimal|minutes|seconds|utm|mgrs|gars|georef|quarter|chart");
  command
      ->add_option("--decimals", options->decimals,
                   "Decimals of degrees, minutes, seconds and metres")
      ->type_name("N");
  command->add_flag("--hemisphere-letters", options->hemisphere_letters,
                    "One-degree grid: N, S, E, W in every name, such as 38N/117WDB");
  command->add_flag("--json", options->json, "Write JSON; with --file one object a line");
  command->add_flag("--strict", options->strict, "Refuse a text that can be read in two ways");
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
