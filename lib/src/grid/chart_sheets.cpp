#include "embedded/chart_sheets.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/grid/chart.hpp"

namespace sweepwright::grid {
namespace {

constexpr std::string_view kColumns = "chart,name,north,south,west,east,cells";
constexpr std::size_t kColumnCount = 7;

Error wrong(std::string message, std::string hint = {}) {
  return Error(ErrorCode::input, std::move(message), std::move(hint));
}

std::vector<std::string_view> parts_of(std::string_view line) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t comma = line.find(',');
    parts.push_back(trimmed(line.substr(0, comma)));
    if (comma == std::string_view::npos) return parts;
    line.remove_prefix(comma + 1);
  }
}

int parse_whole(std::string_view text, std::string_view what) {
  int value = -1;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc() || end != text.data() + text.size() || value < 0) {
    throw wrong(fmt::format("'{}' is not {}", printable(text), what));
  }
  return value;
}

/// Reads `39-45N`. `letters` are the two hemispheres, the positive one first.
Angle parse_limit(std::string_view text, std::string_view letters, int most) {
  const std::string form = fmt::format("a limit like 39-45{}", letters[0]);
  const std::size_t dash = text.find('-');
  const std::size_t letter = text.empty() ? letters.npos : letters.find(text.back());
  if (dash == text.npos || letter == letters.npos) {
    throw wrong(fmt::format("'{}' is not {}", printable(text), form));
  }
  const int degrees = parse_whole(text.substr(0, dash), form);
  const int minutes = parse_whole(text.substr(dash + 1, text.size() - dash - 2), form);
  if (minutes > 59 || degrees * 60 + minutes > most * 60) {
    throw wrong(fmt::format("'{}' is beyond {} degrees or 59 minutes", printable(text), most));
  }
  if (minutes % 15 != 0) {
    throw wrong(fmt::format("the limit {} is not on a 15-minute line", printable(text)),
                "cells are numbered in steps of 15 minutes from the sheet's north-west corner");
  }
  const Angle size = Angle::degrees(degrees + minutes / 60.0);
  return letter == 0 ? size : -size;
}

std::string parse_code(std::string_view text) {
  const std::string code = to_upper_ascii(text);
  if (code.empty() || code.size() > 8 || !std::all_of(code.begin(), code.end(), is_ascii_letter)) {
    throw wrong(fmt::format("'{}' is not a chart code of one to eight letters", printable(text)));
  }
  return code;
}

ChartSheet parse_sheet(std::string_view line) {
  if (line.find('"') != line.npos) throw wrong("the table of charts has no quoted cells");
  const std::vector<std::string_view> parts = parts_of(line);
  if (parts.size() != kColumnCount) {
    throw wrong(fmt::format("the line has {} cells, expected {}", parts.size(), kColumnCount),
                fmt::format("the columns are {}", kColumns));
  }
  ChartSheet sheet{parse_code(parts[0]), std::string(parts[1]),
                   LatLonBox{.south = parse_limit(parts[3], "NS", 90),
                             .north = parse_limit(parts[2], "NS", 90),
                             .west = parse_limit(parts[4], "EW", 180),
                             .east = parse_limit(parts[5], "EW", 180)}};
  if (sheet.limits.west.degrees() == 180) sheet.limits.west = Angle::degrees(-180);
  if (sheet.limits.east.degrees() == -180) sheet.limits.east = Angle::degrees(180);
  check(sheet.limits);
  const double high = (sheet.limits.north - sheet.limits.south).degrees();
  const int expected =
      static_cast<int>(high * 4) * static_cast<int>(width(sheet.limits).degrees() * 4);
  const int cells = parse_whole(parts[6], "a number of cells");
  if (cells != expected) {
    throw wrong(fmt::format("chart {} has {} cells by its last column, but its limits hold {}",
                            sheet.code, cells, expected),
                "check the limits");
  }
  return sheet;
}

}  // namespace

std::vector<ChartSheet> read_chart_sheets(std::string_view text, std::string_view where) {
  if (!is_utf8(text)) throw wrong("the table of charts is not UTF-8 text").at(where);
  std::vector<ChartSheet> sheets;
  bool seen_columns = false;
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = text.find('\n');
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    if (line.empty() || line.front() == '#') continue;
    try {
      if (!seen_columns) {
        if (line != kColumns) {
          throw wrong(
              fmt::format("the first line is '{}', expected the column names", printable(line)),
              fmt::format("the columns are {}", kColumns));
        }
        seen_columns = true;
        continue;
      }
      sheets.push_back(parse_sheet(line));
      for (std::size_t i = 0; i + 1 < sheets.size(); ++i) {
        if (sheets[i].code == sheets.back().code) {
          throw wrong(fmt::format("chart {} stands twice in the table", sheets[i].code));
        }
      }
    } catch (const Error& error) {
      throw error.at(fmt::format("{}: line {}", where, number));
    }
  }
  if (sheets.empty()) throw wrong("the table of charts has no rows").at(where);
  return sheets;
}

const std::vector<ChartSheet>& built_in_chart_sheets() {
  static const std::vector<ChartSheet> sheets =
      read_chart_sheets(embedded::chart_sheets(), "lib/data/chart_sheets.csv");
  return sheets;
}

}  // namespace sweepwright::grid
