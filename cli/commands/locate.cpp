// sweepwright locate: how positions were read, and what they are called everywhere.
#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iostream>
#include <memory>
#include <optional>

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
  bool json = false;
  bool strict = false;
};

/// What reading and writing need, made once for any number of lines.
struct Locator {
  locate::Options reading;
  locate::Precision precision;
  TimePoint date;
  std::optional<reference::System> system;
  std::string notation;  ///< the only one to write; empty for all
};

locate::Precision precision(const LocateOptions& options) {
  locate::Precision precision;
  if (options.decimals.empty()) return precision;
  const int decimals = option_value("--decimals", options.decimals, [](const std::string& text) {
    return parse_whole_number(text, 0, 9, "the number of decimals");
  });
  precision.degree_decimals = decimals;
  precision.minute_decimals = decimals;
  precision.second_decimals = decimals;
  precision.utm_decimals = decimals;
  return precision;
}

Locator locator(const LocateOptions& options, const Context& context) {
  Locator made;
  made.reading.strict = options.strict;
  made.precision = precision(options);
  made.date = options.date.empty()
                  ? context.provenance().stamp
                  : option_value("--date", options.date, formats::parse_local_time).time;
  if (!options.points.empty()) made.reading.points = formats::read_points_file(options.points);
  made.reading.variation = [date = made.date](Position place) {
    return magnetic::variation(place, date).angle;
  };
  if (!options.charts.empty()) {
    made.reading.charts = grid::make_chart_grid(
        grid::read_chart_sheets(formats::read_text_file(options.charts).text, options.charts));
  }
  if (!options.crs.empty()) {
    made.system.emplace(option_value(
        "--crs", options.crs, [](const std::string& code) { return reference::System(code); }));
  }
  if (!options.notation.empty()) {
    std::vector<std::string_view> keys;
    for (const locate::Written& entry : locate::notations(Position())) keys.push_back(entry.key);
    made.notation = to_lower_ascii(options.notation);
    if (std::find(keys.begin(), keys.end(), made.notation) == keys.end()) {
      throw Error(ErrorCode::usage,
                  fmt::format("there is no notation '{}'", printable(options.notation)),
                  spelling_hint(options.notation, keys), "--notation");
    }
  }
  return made;
}

/// A position of another reference system: shifted, with the accuracy of the shift.
locate::Reading read_in_system(std::string_view text, const Locator& locator,
                               std::vector<std::string>& remarks) {
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
    remarks.push_back(fmt::format(
        "shifted to WGS 84 by {}, accuracy {}", shifted.operation,
        shifted.accuracy ? format_length(*shifted.accuracy, LengthUnit::metre, 1) : "not stated"));
    remarks.insert(remarks.end(), shifted.warnings.begin(), shifted.warnings.end());
  }
  return result;
}

formats::PositionReport report(locate::Reading reading, const Locator& locator,
                               std::vector<std::string> remarks) {
  formats::PositionReport made{std::move(reading), {}, {}, std::move(remarks)};
  made.notations = locate::notations(made.reading.position, locator.precision);
  try {
    made.variation = magnetic::variation(made.reading.position, locator.date);
    const auto& warnings = made.variation->warnings;
    made.remarks.insert(made.remarks.end(), warnings.begin(), warnings.end());
  } catch (const Error& error) {
    // The position stands without it.
    made.remarks.push_back(fmt::format("no magnetic variation: {}", error.what()));
  }
  return made;
}

std::string only_notation(Position position, const Locator& locator) {
  for (const locate::Written& entry : locate::notations(position, locator.precision)) {
    if (entry.key == locator.notation) return entry.text.empty() ? "-" : entry.text;
  }
  return "-";
}

void locate_one(const LocateOptions& options, const Locator& locator) {
  try {
    std::vector<std::string> remarks;
    locate::Reading reading = locator.system ? read_in_system(options.text, locator, remarks)
                                             : locate::read_position(options.text, locator.reading);
    if (!locator.notation.empty()) {
      tell(fmt::format("read as {}", reading.read_as));
      for (const locate::OtherReading& other : reading.other_readings) {
        tell(fmt::format("could also be read as {}", other.read_as));
      }
      print(only_notation(reading.position, locator) + "\n");
      return;
    }
    const formats::PositionReport made = report(std::move(reading), locator, std::move(remarks));
    print(options.json ? formats::position_report_json(made, /*on_one_line=*/false)
                       : formats::position_report_text(made));
  } catch (const Error& error) {
    const std::string caret = locate::caret_lines(options.text, error);
    if (!caret.empty()) tell(caret);
    throw;
  }
}

/// One line of output for each line of input, a wrong one in its place.
void write_line(const locate::LineReading& line, const LocateOptions& options,
                const Locator& locator, formats::Sink& sink) {
  if (const Error* error = std::get_if<Error>(&line.result)) {
    if (options.json) {
      sink.write(fmt::format("{{\"line\":{},\"error\":{}}}\n", line.line,
                             formats::to_json(std::string(error->what()))));
    } else {
      sink.write(fmt::format("error: {}\n", error->what()));
    }
    return;
  }
  const locate::Reading& reading = std::get<locate::Reading>(line.result);
  if (options.json) {
    const std::string json =
        formats::position_report_json(report(reading, locator, {}), /*on_one_line=*/true);
    sink.write(fmt::format("{{\"line\":{},{}", line.line, std::string_view(json).substr(1)));
  } else if (!locator.notation.empty()) {
    sink.write(only_notation(reading.position, locator) + "\n");
  } else {
    std::string text =
        fmt::format("{}\tread as {}", format_position(reading.position), reading.read_as);
    for (const locate::OtherReading& other : reading.other_readings) {
      text += fmt::format("; could also be {}, read as {}", format_position(other.position),
                          other.read_as);
    }
    sink.write(text + "\n");
  }
}

void locate_lines(const LocateOptions& options, const Locator& locator, Context& context) {
  if (locator.system) {
    throw Error(ErrorCode::usage, "--crs is for one position on the command line",
                "leave out --file", "--crs");
  }
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
  const locate::LineCounts counts = locate::read_lines(
      [&](std::string& line) { return static_cast<bool>(std::getline(lines, line)); },
      locator.reading,
      [&](const locate::LineReading& line) { write_line(line, options, locator, sink); });
  sink.flush();
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
      "  sweepwright locate --file positions.txt --notation mgrs");
  auto options = std::make_shared<LocateOptions>();
  command->add_option("text", options->text, "The position as written or spoken")
      ->type_name("TEXT");
  command
      ->add_option("--file", options->file, "Read one position from each line; - is standard input")
      ->type_name("FILE");
  command->add_option("--crs", options->crs, "Reference system of the position, such as EPSG:4267")
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
  command->add_flag("--json", options->json, "Write JSON; with --file one object a line");
  command->add_flag("--strict", options->strict, "Refuse a text that can be read in two ways");
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
