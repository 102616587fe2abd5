// Text helpers: UTF-8 against RFC 3629, nearest spellings, and what messages may show.
#include "sweepwright/base/text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <sstream>

#include "support/check_table.hpp"

namespace sweepwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::string from_hex(const std::string& text) {
  std::istringstream words(text);
  std::string bytes;
  for (std::string word; words >> word;) {
    bytes += static_cast<char>(std::stoi(word, nullptr, 16));
  }
  return bytes;
}

/// The octets of a number, by the table of RFC 3629 section 3.
std::string encoded(unsigned long number) {
  const auto octet = [](unsigned long value) { return static_cast<char>(value); };
  const auto rest = [&](int shift) { return octet(0x80 | ((number >> shift) & 0x3F)); };
  if (number < 0x80) return {octet(number)};
  if (number < 0x800) return {octet(0xC0 | (number >> 6)), rest(0)};
  if (number < 0x10000) return {octet(0xE0 | (number >> 12)), rest(6), rest(0)};
  return {octet(0xF0 | (number >> 18)), rest(12), rest(6), rest(0)};
}

class Utf8 : public testing::TestWithParam<test::CheckRow> {};

TEST_P(Utf8, is_told_from_other_bytes) {
  const std::string bytes = from_hex(GetParam().text("bytes"));
  EXPECT_EQ(is_utf8(bytes), GetParam().text("well_formed") == "yes");
  EXPECT_TRUE(is_utf8(printable(bytes)));
}

INSTANTIATE_TEST_SUITE_P(Rfc3629, Utf8,
                         testing::ValuesIn(test::check_rows("base/utf8.csv",
                                                            {"name", "bytes", "well_formed"})),
                         test::RowName());

TEST(Utf8Exhaustive, every_scalar_value_and_no_other_number) {
  for (unsigned long number = 0; number < 0x120000; ++number) {
    const bool scalar = number < 0xD800 || (number > 0xDFFF && number <= 0x10FFFF);
    ASSERT_EQ(is_utf8(encoded(number)), scalar) << std::hex << number;
  }
}

TEST(Utf8Exhaustive, two_octets) {
  for (unsigned first = 0; first < 256; ++first) {
    for (unsigned second = 0; second < 256; ++second) {
      const bool ascii = first < 0x80 && second < 0x80;
      const bool pair = first >= 0xC2 && first <= 0xDF && second >= 0x80 && second <= 0xBF;
      const std::string bytes{static_cast<char>(first), static_cast<char>(second)};
      ASSERT_EQ(is_utf8(bytes), ascii || pair) << first << ' ' << second;
    }
  }
}

TEST(Text, is_trimmed_at_both_ends_only) {
  EXPECT_EQ(trimmed(" \t a b \r\n"), "a b");
  EXPECT_EQ(trimmed(" \t\r\n"), "");
  EXPECT_EQ(trimmed(""), "");
  EXPECT_EQ(trimmed("a"), "a");
}

TEST(Text, letter_case_is_that_of_ascii) {
  EXPECT_EQ(to_lower_ascii("AZ[@19\xC3\x84"), "az[@19\xC3\x84");
  EXPECT_EQ(to_upper_ascii("az{`19\xC3\xA4"), "AZ{`19\xC3\xA4");
  for (int c = -128; c < 128; ++c) {
    const char byte = static_cast<char>(c);
    EXPECT_EQ(is_ascii_letter(byte), (c >= 65 && c <= 90) || (c >= 97 && c <= 122)) << c;
    EXPECT_EQ(is_ascii_digit(byte), c >= 48 && c <= 57) << c;
  }
}

TEST(Printable, keeps_what_can_be_read) {
  EXPECT_EQ(printable("12NM"), "12NM");
  EXPECT_EQ(printable("K\xC3\xB6ln \xE6\x97\xA5"), "K\xC3\xB6ln \xE6\x97\xA5");
}

TEST(Printable, hides_control_characters_and_broken_bytes) {
  EXPECT_EQ(printable("a\nb\x1B[31m\x7F"), "a?b?[31m?");
  EXPECT_EQ(printable(std::string_view("\0", 1)), "?");
  EXPECT_EQ(printable("\xFF\xC3"), "??");
  // U+009B starts a terminal's control sequence just as ESC [ does [ECMA-48 5.3].
  EXPECT_EQ(printable("\xC2\x9B"
                      "31m"),
            "?31m");
  EXPECT_EQ(printable("\xC2\x80\xC2\x9F\xC2\xA0"), "??\xC2\xA0");
}

TEST(Printable, is_cut_after_60_characters) {
  const std::string sixty(60, 'x');
  EXPECT_EQ(printable(sixty), sixty);
  EXPECT_EQ(printable(sixty + "x"), sixty + "...");
  std::string wide;
  for (int i = 0; i < 61; ++i) wide += "\xC3\xB6";
  EXPECT_EQ(printable(wide), wide.substr(0, 120) + "...");
}

constexpr std::array<std::string_view, 4> kPlatforms{"fixed-wing", "helicopter", "vessel",
                                                     "ground"};

TEST(Spelling, nearest_come_first) {
  EXPECT_THAT(nearest_spellings("helicoptre", kPlatforms), ElementsAre("helicopter"));
  EXPECT_THAT(nearest_spellings("VESEL", kPlatforms), ElementsAre("vessel"));
  EXPECT_THAT(nearest_spellings("heli", kPlatforms), ElementsAre("helicopter"));
  EXPECT_THAT(nearest_spellings("submarine", kPlatforms), IsEmpty());
  constexpr std::array<std::string_view, 5> kNear{"aa", "ab", "ac", "ad", "a"};
  EXPECT_THAT(nearest_spellings("ab", kNear), ElementsAre("ab", "aa", "ac"));
}

TEST(Spelling, swapped_neighbours_are_one_slip) {
  constexpr std::array<std::string_view, 1> kOne{"sea"};
  EXPECT_THAT(nearest_spellings("esa", kOne), ElementsAre("sea"));
}

TEST(Spelling, hint_asks_or_lists) {
  EXPECT_EQ(spelling_hint("vesel", kPlatforms), "did you mean 'vessel'?");
  EXPECT_EQ(spelling_hint("submarine", kPlatforms),
            "choose one of: fixed-wing, helicopter, vessel, ground");
  constexpr std::array<std::string_view, 2> kTwo{"gars", "cars"};
  EXPECT_EQ(spelling_hint("ars", kTwo), "did you mean 'gars' or 'cars'?");
}

}  // namespace
}  // namespace sweepwright
