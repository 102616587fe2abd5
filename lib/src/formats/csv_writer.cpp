#include "sweepwright/formats/csv_writer.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

/// Sign, digits, a point with digits, an exponent: what every spreadsheet takes for a number.
bool is_plain_number(std::string_view text) {
  const auto skip_digits = [&] {
    const std::size_t before = text.size();
    while (!text.empty() && is_ascii_digit(text.front())) text.remove_prefix(1);
    return text.size() < before;
  };
  const auto skip_sign = [&] {
    if (!text.empty() && (text.front() == '+' || text.front() == '-')) text.remove_prefix(1);
  };
  skip_sign();
  if (!skip_digits()) return false;
  if (text.starts_with('.')) {
    text.remove_prefix(1);
    if (!skip_digits()) return false;
  }
  if (text.starts_with('e') || text.starts_with('E')) {
    text.remove_prefix(1);
    skip_sign();
    if (!skip_digits()) return false;
  }
  return text.empty();
}

bool looks_like_formula(std::string_view text) {
  constexpr std::string_view kFirst = "=+-@\t\r";
  return !text.empty() && kFirst.find(text.front()) != std::string_view::npos &&
         !is_plain_number(text);
}

void append_cell(std::string& out, std::string_view text) {
  const bool harmful = looks_like_formula(text);
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
    if (harmful) out += '\'';
    out += text;
    return;
  }
  out += '"';
  if (harmful) out += '\'';
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  out += '"';
}

}  // namespace

CsvWriter::CsvWriter(Sink& sink, std::span<const std::string> columns)
    : sink_(sink), columns_(columns.size()) {
  const std::vector<PropertyValue> header(columns.begin(), columns.end());
  row(header);
}

void CsvWriter::row(std::span<const PropertyValue> cells) {
  if (cells.size() != columns_) {
    throw Error(ErrorCode::value, fmt::format("a row has {} cells, and the table {} columns",
                                              cells.size(), columns_));
  }
  line_.clear();
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) line_ += ',';
    append_cell(line_, to_text(cells[i]));
  }
  line_ += "\r\n";
  sink_.write(line_);
}

}  // namespace sweepwright::formats
