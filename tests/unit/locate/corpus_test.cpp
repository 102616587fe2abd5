// Every written form of tests/checks/locate/corpus.csv, read or refused as the row says.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <sstream>

#include "support/check_table.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::locate {
namespace {

using test::CheckRow;

// 2 mm on the ground: rows have nine decimals of a degree.
constexpr double kToleranceDegrees = 2e-8;
// Other readings are listed with six decimals.
constexpr double kListedDegrees = 1e-6;

Options corpus_options() {
  Options options;
  options.points = {{"ABC", Position::at(Angle::degrees(38.25), Angle::minutes(-7022.5))},
                    {"DUB", Position::at(Angle::degrees(53.5), Angle::degrees(-6.25))}};
  options.variation = [](Position) { return Angle::degrees(12); };
  return options;
}

bool is_near(Position position, double latitude, double longitude, double tolerance) {
  const double turn = std::remainder(position.longitude().degrees() - longitude, 360.0);
  return std::abs(position.latitude().degrees() - latitude) <= tolerance &&
         std::abs(turn) * std::cos(position.latitude().radians()) <= tolerance;
}

/// "5.5 6.5; 7 8" as pairs.
std::vector<std::pair<double, double>> listed_pairs(const std::string& text) {
  std::vector<std::pair<double, double>> pairs;
  std::istringstream list(text);
  for (std::string item; std::getline(list, item, ';');) {
    std::istringstream numbers(item);
    std::pair<double, double> pair;
    numbers >> pair.first >> pair.second;
    pairs.push_back(pair);
  }
  return pairs;
}

class Corpus : public ::testing::TestWithParam<CheckRow> {};

TEST_P(Corpus, IsReadOrRefusedAsTheRowSays) {
  const CheckRow& row = GetParam();
  if (!row.empty("fails_at")) {
    try {
      const Reading reading = read_position(row.text("text"), corpus_options());
      FAIL() << "read as " << reading.read_as;
    } catch (const Error& error) {
      EXPECT_EQ(error.where(), "character " + row.text("fails_at")) << error.what();
      EXPECT_THAT(error.message(), ::testing::HasSubstr(row.text("message")));
    }
    return;
  }
  const Reading reading = read_position(row.text("text"), corpus_options());
  EXPECT_TRUE(is_near(reading.position, row.number("latitude_deg"), row.number("longitude_deg"),
                      kToleranceDegrees))
      << reading.position.latitude().degrees() << " " << reading.position.longitude().degrees();
  EXPECT_THAT(reading.read_as, ::testing::HasSubstr(row.text("read_as")));
  const auto others = listed_pairs(row.text("other_readings"));
  ASSERT_EQ(reading.other_readings.size(), others.size());
  for (std::size_t i = 0; i < others.size(); ++i) {
    EXPECT_TRUE(is_near(reading.other_readings[i].position, others[i].first, others[i].second,
                        kListedDegrees))
        << reading.other_readings[i].read_as;
  }
}

std::vector<CheckRow> corpus() {
  return test::check_rows("locate/corpus.csv", {"text", "latitude_deg", "longitude_deg", "read_as",
                                                "other_readings", "fails_at", "message", "source"});
}

INSTANTIATE_TEST_SUITE_P(Rows, Corpus, ::testing::ValuesIn(corpus()), test::RowName());

/// P2: with Options::strict a text with other readings is refused, all others are read the same.
TEST(CorpusAsAWhole, StrictRefusesExactlyWhatIsAmbiguous) {
  Options strict = corpus_options();
  strict.strict = true;
  for (const CheckRow& row : corpus()) {
    if (row.empty("fails_at") && row.empty("other_readings")) {
      EXPECT_EQ(read_position(row.text("text"), strict).position,
                read_position(row.text("text"), corpus_options()).position)
          << row.place();
    } else {
      EXPECT_THROW(read_position(row.text("text"), strict), Error) << row.place();
    }
  }
}

TEST(CorpusAsAWhole, IsAsLargeAsPromised) {
  int malformed = 0;
  std::set<std::string> texts;
  for (const CheckRow& row : corpus()) {
    malformed += row.empty("fails_at") ? 0 : 1;
    EXPECT_TRUE(texts.insert(row.text("text")).second) << row.place() << ": stands twice";
  }
  EXPECT_GE(texts.size(), 400u);
  EXPECT_GE(malformed, 100);
}

}  // namespace
}  // namespace sweepwright::locate
