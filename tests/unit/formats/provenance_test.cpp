#include "sweepwright/formats/provenance.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;
using namespace std::chrono_literals;

TimePoint noon() {
  return std::chrono::sys_days(std::chrono::year_month_day(2026y, std::chrono::July, 14d)) + 12h +
         5min + 9s;
}

Provenance example() {
  return {"0.1.0", "sweepwright plan \"a b\".json -o out", noon(), {{"a b.json", "00ff"}}};
}

TEST(TimeText, is_rfc_3339) {
  EXPECT_EQ(format_utc(noon()), "2026-07-14T12:05:09Z");
  EXPECT_EQ(format_utc(TimePoint(-1s)), "1969-12-31T23:59:59Z");
  EXPECT_THROW(format_utc(TimePoint(std::chrono::seconds(400'000'000'000))), Error);
}

TEST(Provenance, as_text_names_everything_and_the_cautions) {
  const std::string text = provenance_text(example());
  for (const char* part :
       {"Sweepwright 0.1.0", "2026-07-14T12:05:09Z", "sweepwright plan \"a b\".json -o out",
        "a b.json (SHA-256 00ff)", "WGS 84", "true north"}) {
    EXPECT_THAT(text, HasSubstr(part));
  }
  for (const std::string_view caution : kCautions) {
    EXPECT_THAT(text, HasSubstr(std::string(caution)));
  }
}

TEST(Provenance, as_json_holds_the_same) {
  const auto json = nlohmann::json::parse(provenance_json(example()).text);
  EXPECT_EQ(json.at("program"), "Sweepwright");
  EXPECT_EQ(json.at("version"), "0.1.0");
  EXPECT_EQ(json.at("command"), "sweepwright plan \"a b\".json -o out");
  EXPECT_EQ(json.at("stamp"), "2026-07-14T12:05:09Z");
  EXPECT_EQ(json.at("inputs").at(0).at("sha256"), "00ff");
  EXPECT_EQ(json.at("reference_system"), "WGS 84");
  EXPECT_EQ(json.at("north"), "true north");
  EXPECT_EQ(json.at("cautions").size(), kCautions.size());
}

// The wording that everything a crew may act on must carry, whatever it is made into.
TEST(Cautions, say_what_they_must) {
  std::string all;
  for (const std::string_view caution : kCautions) all += std::string(caution) + "\n";
  for (const char* part : {"Planning aid", "Not for navigation", "charts", "notices", "terrain",
                           "weather", "Local rules", "in command decides"}) {
    EXPECT_THAT(all, HasSubstr(part));
  }
}

}  // namespace
}  // namespace sweepwright::formats
