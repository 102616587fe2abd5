// What the corpus cannot show: options, carets, lengths, lines.
#include "sweepwright/locate/read_position.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/grid/chart.hpp"
#include "sweepwright/locate/read_lines.hpp"

namespace sweepwright::locate {
namespace {

using test::at;
using testing::HasSubstr;

Error error_of(const std::string& text, const Options& options = {}) {
  try {
    read_position(text, options);
  } catch (const Error& error) {
    return error;
  }
  throw std::runtime_error("read: " + text);
}

TEST(ReadPosition, strict_names_all_readings) {
  Options strict;
  strict.strict = true;
  const Error error = error_of("38.25, 25.5", strict);
  EXPECT_THAT(error.message(), HasSubstr("can be read in 2 ways"));
  EXPECT_THAT(error.message(), HasSubstr("38-15.00N 025-30.00E"));
  EXPECT_THAT(error.message(), HasSubstr("25-30.00N 038-15.00E"));
}

TEST(ReadPosition, magnetic_bearings_need_a_variation) {
  Options options;
  options.points = {{"ABC", at(38.25, -117)}};
  EXPECT_THAT(error_of("FROM ABC 045M 12NM", options).message(), HasSubstr("magnetic"));
  EXPECT_EQ(error_of("FROM ABC 045M 12NM", options).where(), "character 10");
  EXPECT_THAT(error_of("ABC180017", options).message(), HasSubstr("magnetic"));
  EXPECT_NO_THROW(read_position("FROM ABC 045T 12NM", options));
}

TEST(ReadPosition, variation_is_asked_for_at_the_starting_place) {
  Options options;
  Position asked;
  options.variation = [&](Position place) {
    asked = place;
    return Angle::degrees(-10);
  };
  EXPECT_THAT(read_position("FROM 38-15.0N 117-00.0W 045M 12NM", options).read_as,
              HasSubstr("variation 10.0 W, 035.0 true"));
  EXPECT_EQ(asked, at(38.25, -117));
}

TEST(ReadPosition, a_point_that_is_also_another_notation_comes_first) {
  Options options;
  options.points = {{"BAN", at(10, 20)}};
  options.variation = [](Position) { return Angle::degrees(0); };
  const Reading reading = read_position("BAN180017", options);
  EXPECT_THAT(reading.read_as, HasSubstr("point BAN"));
  ASSERT_EQ(reading.other_readings.size(), 1u);
  EXPECT_THAT(reading.other_readings[0].read_as, HasSubstr("MGRS"));
}

TEST(ReadPosition, charts_can_be_replaced) {
  const auto sheet = grid::ChartSheet{
      "ZZZ",
      "Invented",
      {Angle::degrees(10), Angle::degrees(11), Angle::degrees(20), Angle::degrees(21)}};
  Options options;
  options.charts = grid::make_chart_grid({sheet});
  EXPECT_EQ(read_position("ZZZ 1", options).position, at(10.875, 20.125));
  EXPECT_THROW(read_position("STL 1", options), Error);
}

TEST(ReadPosition, long_texts_are_refused_at_once) {
  const Error error = error_of(std::string(1000000, '1'));
  EXPECT_THAT(error.message(), HasSubstr("too long"));
  EXPECT_EQ(error.where(), "character 501");
}

TEST(ReadPosition, broken_utf8_is_refused_with_a_printable_message) {
  const Error error = error_of("38N \xC3 117W");
  EXPECT_EQ(error.where(), "character 5");
  EXPECT_THAT(error.message(), HasSubstr("38N ? 117W"));
}

TEST(CaretLines, point_at_the_character) {
  const std::string text = "38°15.0'N 117°62.5'W";
  EXPECT_EQ(caret_lines(text, error_of(text)), text + "\n" + std::string(14, ' ') + "^");
}

TEST(CaretLines, show_the_end_of_a_long_text) {
  const std::string text = std::string(70, ' ') + "38N 117X";
  const std::string lines = caret_lines(text, error_of(text));
  const std::size_t line_end = lines.find('\n');
  ASSERT_NE(line_end, std::string::npos);
  EXPECT_LE(line_end, 70u);
  EXPECT_EQ(lines[lines.size() - line_end - 2], 'X');  // above the caret, the last character
}

TEST(CaretLines, are_empty_without_a_character) {
  EXPECT_EQ(caret_lines("38N", Error(ErrorCode::value, "message")), "");
}

TEST(ReadLines, a_bad_line_does_not_lose_the_good_ones) {
  const std::vector<std::string> lines{"# a comment", "38-15.0N 117-02.5W", "",
                                       "  nowhere",   "18SUJ2339407395\r",  "12.5 45.25"};
  std::size_t next = 0;
  std::vector<std::string> heard;
  const LineCounts counts = read_lines(
      [&](std::string& line) {
        if (next == lines.size()) return false;
        line = lines[next++];
        return true;
      },
      [](std::string_view text) { return read_position(text); },
      [&](const LineReading& reading) {
        const auto* error = std::get_if<Error>(&reading.result);
        heard.push_back(std::to_string(reading.line) + " " +
                        (error ? error->where() : std::get<Reading>(reading.result).read_as));
      });
  EXPECT_EQ(counts.read, 3u);
  EXPECT_EQ(counts.failed, 1u);
  EXPECT_EQ(counts.ambiguous, 1u);
  EXPECT_EQ(counts.first_ambiguous_line, 6u);
  EXPECT_THAT(heard, testing::ElementsAre("2 latitude and longitude in degrees and decimal minutes",
                                          "4 line 4: character 3",
                                          "5 MGRS or USNG position, middle of a 1 m square",
                                          "6 latitude and longitude in decimal degrees, latitude "
                                          "first"));
}

}  // namespace
}  // namespace sweepwright::locate
