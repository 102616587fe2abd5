#include "sweepwright/sector/sectors.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sector {
namespace {

using test::at;
using testing::HasSubstr;

Region box(Position place) {
  return test::rectangle(place, TrueDirection::degrees(30), Length::nautical_miles(40),
                         Length::nautical_miles(15));
}

std::string message_of(const std::vector<SharedGround>& grounds) {
  try {
    make_sectors(grounds, "A");
  } catch (const Error& error) {
    return error.what();
  }
  return {};
}

TEST(MakeSectors, NamesNumbersAndShares) {
  const std::vector<SharedGround> grounds{{box(at(38, -117)), {{"Kestrel 1", 1}, {"Tern 2", 3}}},
                                          {box(at(38, -115)), {{"Plover 3", 5}}}};
  const std::vector<Sector> sectors = make_sectors(grounds, "B");
  ASSERT_EQ(sectors.size(), 3u);
  EXPECT_EQ(sectors[0].name, "B1");
  EXPECT_EQ(sectors[1].name, "B2");
  EXPECT_EQ(sectors[2].name, "B3");
  EXPECT_EQ(sectors[1].unit, "Tern 2");
  // Two rectangles of the same size: the first is shared 1 to 3, the second has one unit.
  EXPECT_NEAR(sectors[0].share, 0.125, 1e-6);
  EXPECT_NEAR(sectors[1].share, 0.375, 1e-6);
  EXPECT_NEAR(sectors[2].share, 0.5, 1e-6);
  EXPECT_NEAR(sectors[0].share + sectors[1].share + sectors[2].share, 1, 1e-12);
  EXPECT_NEAR(sectors[2].area.square_nautical_miles(), 600, 0.1);
  EXPECT_NEAR(sectors[2].long_side.degrees(), 30, 0.3);
  EXPECT_EQ(sectors[2].legs, sectors[2].long_side);
}

TEST(MakeSectors, TakesTheDirectionAskedFor) {
  const std::vector<SharedGround> grounds{{box(at(38, -117)), {{"One", 1}, {"Two", 1}}}};
  for (const Sector& sector : make_sectors(grounds, "A", TrueDirection::degrees(75))) {
    EXPECT_EQ(sector.legs, TrueDirection::degrees(75));
  }
}

TEST(MakeSectors, RefusesWhatMakesNoSense) {
  EXPECT_THAT(message_of({{box(at(38, -117)), {}}}), HasSubstr("no search unit"));
  EXPECT_THAT(message_of({{box(at(38, -117)), {{"One", 1}, {"One", 1}}}}),
              HasSubstr("two units are called 'One'"));
  EXPECT_THAT(message_of({{box(at(38, -117)), {{"One", 1}, {"Two", 0}}}}),
              HasSubstr("can cover no ground"));
  std::vector<UnitShare> crowd;
  for (int i = 0; i < 201; ++i) crowd.push_back({std::to_string(i), 1});
  EXPECT_THAT(message_of({{box(at(38, -117)), crowd}}), HasSubstr("201 search units"));
}

TEST(Overlaps, AreFoundBetweenUnitsGroundsAndNotAlongSeams) {
  const std::vector<Sector> divided =
      make_sectors(std::vector<SharedGround>{{box(at(38, 179.9)), {{"One", 1}, {"Two", 1}}}}, "A");
  EXPECT_TRUE(overlaps(divided).empty());

  const std::vector<SharedGround> crossing{{box(at(38, -117)), {{"One", 1}}},
                                           {box(at(38.1, -117)), {{"Two", 1}}},
                                           {box(at(-38, 63)), {{"Three", 1}}}};
  const auto pairs = overlaps(make_sectors(crossing, "A"));
  ASSERT_EQ(pairs.size(), 1u);
  EXPECT_EQ(pairs[0], std::make_pair(std::size_t{0}, std::size_t{1}));
}

TEST(ParseDayLetter, TakesOneOrTwoCapitals) {
  EXPECT_EQ(parse_day_letter("A"), "A");
  EXPECT_EQ(parse_day_letter("AB"), "AB");
  for (const char* wrong : {"", "a", "ABC", "1", "A1", "Ä"}) {
    EXPECT_THROW(parse_day_letter(wrong), Error) << wrong;
  }
}

}  // namespace
}  // namespace sweepwright::sector
