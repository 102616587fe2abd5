#include "sweepwright/position/plain_text.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace sweepwright {
namespace {

TEST(PlainText, twins_become_plain) {
  EXPECT_EQ(PlainText("a–b−c‑d").text(), "A-B-C-D");
  EXPECT_EQ(PlainText("15′00″ 15’00”").text(), "15'00\" 15'00\"");
  EXPECT_EQ(PlainText("38° 38º 38˚").text(), "38\xB0 38\xB0 38\xB0");
  EXPECT_EQ(PlainText("1\u00a02\u20093\t4").text(), "1 2 3 4");
  EXPECT_EQ(PlainText("３８，５").text(), "38,5");
}

TEST(PlainText, characters_are_counted_as_typed) {
  const PlainText text("\ufeff38°N");  // the byte order mark counts, but is not seen
  EXPECT_EQ(text.text(), "38\xB0N");
  EXPECT_EQ(text.character(0), 2u);
  EXPECT_EQ(text.character(3), 5u);
  EXPECT_EQ(text.character(4), 6u);
  EXPECT_EQ(text.part(2).character(1), 5u);
  EXPECT_EQ(text.part(2, 1).character(1), 5u);
  EXPECT_EQ(text.without("8").character(1), 4u);
}

TEST(PlainText, knows_small_letters) {
  const PlainText text("12M 12m");
  EXPECT_FALSE(text.typed_small(2));
  EXPECT_TRUE(text.typed_small(6));
}

TEST(PlainText, brackets_and_quotes_round_the_whole_go) {
  EXPECT_EQ(PlainText("  ( [38 N] ) ").unwrapped().text(), "38 N");
  EXPECT_EQ(PlainText("\"38 N\"").unwrapped().text(), "38 N");
  EXPECT_EQ(PlainText("38°15'00\"").unwrapped().text(),
            "38\xB0"
            "15'00\"");
  EXPECT_EQ(PlainText("()").unwrapped().text(), "");
  EXPECT_EQ(PlainText("(").unwrapped().text(), "(");
  EXPECT_EQ(PlainText("").unwrapped().text(), "");
}

TEST(PlainText, broken_utf8_is_unreadable_byte_by_byte) {
  EXPECT_EQ(PlainText("3\xC3").text(), "3\x1A");
  EXPECT_EQ(PlainText("\xE2\x80").text(), "\x1A\x1A");
  EXPECT_EQ(PlainText("\xFF"
                      "8")
                .text(),
            "\x1A"
            "8");
  EXPECT_EQ(PlainText(std::string_view("\0", 1)).text(), "\x1A");
}

/// P1 and P2.
RC_GTEST_PROP(PlainText, any_bytes_are_accepted_and_characters_never_decrease,
              (const std::string& bytes)) {
  const PlainText text(bytes);
  for (std::size_t i = 0; i <= text.text().size(); ++i) {
    RC_ASSERT(text.character(i) >= 1);
    RC_ASSERT(text.character(i) <= bytes.size() + 1);
    if (i > 0) RC_ASSERT(text.character(i) >= text.character(i - 1));
  }
}

}  // namespace
}  // namespace sweepwright
