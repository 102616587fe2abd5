// How positions are written, and that what is written is read back.
#include "sweepwright/position/position_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <map>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright {
namespace {

using test::at;

const std::map<std::string, Notation> kNotations{
    {"decimal", Notation::decimal_degrees},         {"minutes", Notation::degrees_minutes},
    {"seconds", Notation::degrees_minutes_seconds}, {"compact", Notation::compact_seconds},
    {"icao_minutes", Notation::icao_minutes},       {"icao_degrees", Notation::icao_degrees},
};

class Written : public testing::TestWithParam<test::CheckRow> {};

TEST_P(Written, IsRoundedAndFilledUp) {
  const test::CheckRow& row = GetParam();
  const Position position = at(row.number("latitude_deg"), row.number("longitude_deg"));
  EXPECT_EQ(format_position(position, kNotations.at(row.text("notation")),
                            static_cast<int>(row.number("decimals"))),
            row.text("written"))
      << row.text("why");
}

INSTANTIATE_TEST_SUITE_P(ByHand, Written,
                         testing::ValuesIn(test::check_rows(
                             "position/written.csv", {"latitude_deg", "longitude_deg", "notation",
                                                      "decimals", "written", "why"})),
                         test::RowName());

TEST(PositionText, aircrew_get_degrees_and_decimal_minutes) {
  EXPECT_EQ(format_position(at(38.25, -117.125)), "38-15.00N 117-07.50W");
}

TEST(PositionText, decimals_have_limits) {
  EXPECT_THROW(format_position({}, Notation::degrees_minutes, -1), Error);
  EXPECT_THROW(format_position({}, Notation::degrees_minutes, 10), Error);
  EXPECT_THROW(format_position({}, Notation::icao_minutes, 1), Error);
}

PositionReading first_reading(const std::string& text) {
  const PositionOutcome outcome = parse_latitude_longitude(PlainText(text));
  const auto* readings = std::get_if<std::vector<PositionReading>>(&outcome);
  if (readings == nullptr) {
    throw Error(ErrorCode::value, text + ": " + std::get<TextFailure>(outcome).message);
  }
  return readings->front();
}

/// Degrees of the last place written.
double last_place(Notation notation, int decimals) {
  const double unit =
      notation == Notation::decimal_degrees || notation == Notation::icao_degrees   ? 1
      : notation == Notation::degrees_minutes || notation == Notation::icao_minutes ? 1.0 / 60
                                                                                    : 1.0 / 3600;
  return unit * std::pow(10, -decimals);
}

/// A place anywhere: often on or next to the equator, a pole, Greenwich or the antimeridian, or on
/// a whole minute, or with a value that rounds up to the next degree.
Position any_place() {
  const auto coordinate = [](int most) {
    const double limit = most;
    switch (*rc::gen::inRange(0, 5)) {
      case 0:
        return *rc::gen::inRange(-most * 60, most * 60 + 1) / 60.0;
      case 1:
        return *rc::gen::element(-limit, -1e-9, 0.0, 1e-9, limit, limit - 1e-9, 1e-9 - limit);
      case 2:
        return *rc::gen::inRange(-most, most) + 0.99999999;
      default:
        return *rc::gen::inRange(-most * 10000000, most * 10000000 + 1) / 1e7;
    }
  };
  return at(coordinate(90), coordinate(180));
}

/// P1 and P2: 60 minutes or seconds would be refused.
RC_GTEST_PROP(PositionText, what_is_written_is_read_back, ()) {
  const Position position = any_place();
  for (const auto& [name, notation] : kNotations) {
    const bool icao = notation == Notation::icao_minutes || notation == Notation::icao_degrees;
    const int decimals = icao ? 0 : *rc::gen::inRange(0, 10);
    const std::string text = format_position(position, notation, decimals);
    RC_LOG() << text << std::endl;
    const Position back = first_reading(text).position;
    const double most = last_place(notation, decimals) / 2 + 1e-13;
    RC_ASSERT(std::abs(back.latitude().degrees() - position.latitude().degrees()) <= most);
    RC_ASSERT(std::abs(std::remainder(back.longitude().degrees() - position.longitude().degrees(),
                                      360.0)) <= most);
  }
}

/// Whole minutes and seconds come to the nearest double, so they lie on the edges of grids.
RC_GTEST_PROP(PositionText, whole_minutes_and_seconds_are_exact, ()) {
  const int degrees = *rc::gen::inRange(0, 90);
  const int minutes = *rc::gen::inRange(0, 60);
  const int seconds = *rc::gen::inRange(0, 60);
  const auto text = [&](bool with_seconds) {
    std::string value = std::to_string(degrees) + "-" + std::to_string(minutes);
    if (with_seconds) value += "-" + std::to_string(seconds);
    return value + "N " + value + "W";
  };
  const double in_minutes = (degrees * 60 + minutes) / 60.0;
  const double in_seconds = ((degrees * 60 + minutes) * 60 + seconds) / 3600.0;
  RC_ASSERT(first_reading(text(false)).position == at(in_minutes, -in_minutes));
  RC_ASSERT(first_reading(text(true)).position == at(in_seconds, -in_seconds));
}

}  // namespace
}  // namespace sweepwright
