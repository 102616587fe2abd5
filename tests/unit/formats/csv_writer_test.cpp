// Source: RFC 4180 section 2 (rules 1 to 7). Formula characters: OWASP, CSV Injection, from memory.
#include "sweepwright/formats/csv_writer.hpp"

#include <gtest/gtest.h>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

std::string cell(const PropertyValue& value) {
  StringSink sink;
  const std::vector<std::string> columns{"c"};
  CsvWriter writer(sink, columns);
  writer.row({&value, 1});
  return sink.text().substr(3, sink.text().size() - 5);  // without header and last line end
}

TEST(CsvWriter, header_rows_and_line_ends) {
  StringSink sink;
  const std::vector<std::string> columns{"cell", "note, long"};
  CsvWriter writer(sink, columns);
  const std::vector<PropertyValue> row{"166LM", 1.5};
  writer.row(row);
  EXPECT_EQ(sink.text(), "cell,\"note, long\"\r\n166LM,1.5\r\n");
}

TEST(CsvWriter, quotes_what_needs_it) {
  EXPECT_EQ(cell("plain"), "plain");
  EXPECT_EQ(cell("a,b"), "\"a,b\"");
  EXPECT_EQ(cell("say \"hello\""), "\"say \"\"hello\"\"\"");
  EXPECT_EQ(cell("two\nlines"), "\"two\nlines\"");
  EXPECT_EQ(cell(""), "");
}

TEST(CsvWriter, makes_formulas_harmless_and_leaves_numbers_alone) {
  EXPECT_EQ(cell("=1+1"), "'=1+1");
  EXPECT_EQ(cell("@SUM(A1)"), "'@SUM(A1)");
  EXPECT_EQ(cell("+cmd|' /C calc'!A0"), "'+cmd|' /C calc'!A0");
  EXPECT_EQ(cell("-2+3"), "'-2+3");
  EXPECT_EQ(cell("\tx"), "'\tx");
  EXPECT_EQ(cell("=A1,\"x\""), "\"'=A1,\"\"x\"\"\"");
  EXPECT_EQ(cell("\r=1"), "\"'\r=1\"");
  for (const char* number : {"-12", "+3.5", "-1e-7", "12"}) EXPECT_EQ(cell(number), number);
  EXPECT_EQ(cell(-12.5), "-12.5");
  for (const char* almost : {"-", "-1.", "-.5", "+1e", "-1 2"}) {
    EXPECT_EQ(cell(almost), std::string("'") + almost);
  }
}

TEST(CsvWriter, refuses_a_row_of_another_length) {
  StringSink sink;
  const std::vector<std::string> columns{"a", "b"};
  CsvWriter writer(sink, columns);
  EXPECT_THROW(writer.row(std::vector<PropertyValue>{"x"}), Error);
}

}  // namespace
}  // namespace sweepwright::formats
