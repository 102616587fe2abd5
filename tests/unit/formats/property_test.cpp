#include "sweepwright/formats/property.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

TEST(Property, every_kind_as_json_and_as_text) {
  const auto both = [](const PropertyValue& value) {
    return to_json(value) + " " + to_text(value);
  };
  EXPECT_EQ(both({}), "null ");
  EXPECT_EQ(both(true), "true true");
  EXPECT_EQ(both(std::int64_t{-12}), "-12 -12");
  EXPECT_EQ(both(0.1), "0.1 0.1");
  EXPECT_EQ(both(5.0), "5 5");
  EXPECT_EQ(both("A1"), "\"A1\" A1");
  EXPECT_EQ(both(std::vector<std::string>{"a", "b"}), "[\"a\",\"b\"] a; b");
  EXPECT_EQ(both(std::vector<double>{1, 2.5}), "[1,2.5] 1; 2.5");
  EXPECT_EQ(both(RawJson{"{\"a\":1}"}), "{\"a\":1} {\"a\":1}");
}

TEST(Property, a_literal_is_a_text_and_not_a_truth) {
  EXPECT_TRUE(std::holds_alternative<std::string>(Property{"name", "x"}.value));
  EXPECT_TRUE(std::holds_alternative<double>(Property{"name", 1.0}.value));
  EXPECT_TRUE(std::holds_alternative<std::int64_t>(Property{"name", 1}.value));
}

TEST(Property, numbers_read_back_as_the_same_number) {
  for (const double value : {1.0 / 3, 1e-300, 1.7976931348623157e308, 123456789.123, -0.0}) {
    EXPECT_EQ(nlohmann::json::parse(to_json(value)).get<double>(), value);
  }
}

TEST(Property, numbers_that_are_not_finite_are_refused) {
  for (const double value :
       {std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
        std::numeric_limits<double>::quiet_NaN()}) {
    EXPECT_THROW(to_json(value), Error);
    EXPECT_THROW(to_text(value), Error);
    EXPECT_THROW(to_json(std::vector<double>{value}), Error);
  }
}

// Every byte and every pair with a quote must come back from another program's parser.
TEST(Property, any_text_survives_json) {
  for (int c = 0; c < 128; ++c) {
    const std::string text = std::string("\"\\") + static_cast<char>(c) + "/</script>";
    EXPECT_EQ(nlohmann::json::parse(to_json(text)).get<std::string>(), text);
  }
  const std::string wide = "Håkon 北 \xF0\x9F\x9A\x81";
  EXPECT_EQ(nlohmann::json::parse(to_json(wide)).get<std::string>(), wide);
}

TEST(Property, broken_utf8_becomes_the_replacement_character) {
  EXPECT_EQ(to_json(std::string("a\xFF") + "b"),
            "\"a\xEF\xBF\xBD"
            "b\"");
  EXPECT_EQ(to_json(std::string("\xC3")), "\"\xEF\xBF\xBD\"");
}

}  // namespace
}  // namespace sweepwright::formats
