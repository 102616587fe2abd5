// The built-in tables against the reference tables, cell by cell, as sweep_width() uses them.
#include "sweepwright/sweep/tables.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/search_object.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::sweep {
namespace {

constexpr int kVisibilities[] = {3, 5, 10, 15, 20};  // NM, the columns of both width tables
constexpr double kRounding = 1e-12;

std::vector<std::string> width_columns(std::vector<std::string> first) {
  for (const int v : kVisibilities) first.push_back("wu_nm_vis_" + std::to_string(v) + "nm");
  first.emplace_back("how");
  return first;
}

/// The uncorrected width equals the cell; where the manual prints nothing, it is refused.
void expect_cell(const test::CheckRow& row, int visibility, Request request) {
  const std::string column = "wu_nm_vis_" + std::to_string(visibility) + "nm";
  request.visibility = Length::nautical_miles(visibility);
  if (row.empty(column)) {
    try {
      sweep_width(request);
      ADD_FAILURE() << column << ": no error";
    } catch (const Error& error) {
      EXPECT_EQ(error.code(), ErrorCode::impossible) << error.what();
    }
    return;
  }
  EXPECT_NEAR(sweep_width(request).uncorrected.nautical_miles(), row.number(column), kRounding)
      << column;
}

class LandTable : public testing::TestWithParam<test::CheckRow> {};

TEST_P(LandTable, CellsComeBack) {
  for (const Platform platform : {Platform::fixed_wing, Platform::helicopter}) {
    for (const int visibility : kVisibilities) {
      expect_cell(GetParam(), visibility,
                  {.platform = platform,
                   .object = GetParam().text("search_object"),
                   .height = Length::feet(GetParam().number("altitude_ft_agl")),
                   .terrain = Terrain::open});
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Reference, LandTable,
                         testing::ValuesIn(test::check_rows("sweep/sweep_width_land.csv",
                                                            width_columns({"search_object",
                                                                           "altitude_ft_agl"}))),
                         test::RowName());

class VesselTable : public testing::TestWithParam<test::CheckRow> {};

TEST_P(VesselTable, CellsComeBack) {
  for (const int visibility : kVisibilities) {
    expect_cell(GetParam(), visibility,
                {.platform = Platform::vessel, .object = GetParam().text("search_object")});
  }
}

INSTANTIATE_TEST_SUITE_P(Reference, VesselTable,
                         testing::ValuesIn(test::check_rows("sweep/sweep_width_merchant_vessel.csv",
                                                            width_columns({"search_object"}))),
                         test::RowName());

class TerrainFactors : public testing::TestWithParam<test::CheckRow> {};

TEST_P(TerrainFactors, Correct) {
  const auto factor = [](Terrain terrain) {
    const SweepWidth found = sweep_width({.platform = Platform::helicopter,
                                          .object = GetParam().text("search_object"),
                                          .visibility = Length::nautical_miles(10),
                                          .height = Length::feet(500),
                                          .terrain = terrain});
    return found.width / found.uncorrected;
  };
  EXPECT_NEAR(factor(Terrain::open), 1, kRounding);
  EXPECT_NEAR(factor(Terrain::hilly), GetParam().number("veg_15_60pct_or_hilly"), kRounding);
  EXPECT_NEAR(factor(Terrain::mountainous), GetParam().number("veg_60_85pct_or_mountainous"),
              kRounding);
  EXPECT_NEAR(factor(Terrain::dense_vegetation), GetParam().number("veg_over_85pct"), kRounding);
}

INSTANTIATE_TEST_SUITE_P(
    Reference, TerrainFactors,
    testing::ValuesIn(test::check_rows("sweep/terrain_correction.csv",
                                       {"search_object", "veg_15_60pct_or_hilly",
                                        "veg_60_85pct_or_mountainous", "veg_over_85pct", "how"})),
    test::RowName());

/// The factor of one correction for a width of 1 NM that the planner gives.
double factor_over_water(Request request) {
  request.uncorrected = Length::nautical_miles(1);
  return sweep_width(request).width.nautical_miles();
}

class WeatherFactors : public testing::TestWithParam<test::CheckRow> {};

TEST_P(WeatherFactors, CorrectEachObjectOfTheClass) {
  const std::string& source = GetParam().text("source");
  const bool us = source.starts_with("US National SAR Manual");
  const std::string key = us                                     ? "us-1991"
                          : source.starts_with("IAMSAR Vol III") ? "iamsar-vessel"
                                                                 : "iamsar";
  const std::vector<WeatherTable>& tables = built_in_tables().weather;
  const auto table = std::find_if(tables.begin(), tables.end(),
                                  [&](const WeatherTable& each) { return each.key == key; });
  ASSERT_NE(table, tables.end());
  const auto row = std::find_if(table->rows.begin(), table->rows.end(), [](const WeatherRow& each) {
    return each.class_name == GetParam().text("object_class");
  });
  ASSERT_NE(row, table->rows.end());
  ASSERT_FALSE(row->objects.empty());
  EXPECT_EQ(table->info.status == TableStatus::seen, GetParam().text("how").starts_with("seen"));

  const double light = GetParam().number("calm_or_light");
  const double moderate = GetParam().number("wind_over_15kt_or_seas_moderate");
  const double high = GetParam().number("wind_over_25kt_or_seas_high");
  for (const std::string& object : row->objects) {
    const auto factor = [&](double wind_knots, Length sea) {
      return factor_over_water({.platform = Platform::vessel,
                                .object = object,
                                .wind = Speed::knots(wind_knots),
                                .sea = sea,
                                .weather_table = key});
    };
    // The limits of the column sea_limits.
    const Length moderate_sea = us ? Length::feet(2) : Length::metres(1);
    const Length high_sea = us ? Length::feet(4) : Length::metres(1.5);
    EXPECT_NEAR(factor(0, Length()), light, kRounding) << object;
    EXPECT_NEAR(factor(15, moderate_sea * 0.99), light, kRounding) << object;
    EXPECT_NEAR(factor(15.1, Length()), moderate, kRounding) << object;
    EXPECT_NEAR(factor(25, Length()), moderate, kRounding) << object;
    EXPECT_NEAR(factor(0, moderate_sea), moderate, kRounding) << object;
    EXPECT_NEAR(factor(0, high_sea), moderate, kRounding) << object;
    EXPECT_NEAR(factor(25.1, Length()), high, kRounding) << object;
    EXPECT_NEAR(factor(0, high_sea * 1.01), high, kRounding) << object;
    // Both columns apply: the right-hand one counts.
    EXPECT_NEAR(factor(16, high_sea * 1.01), high, kRounding) << object;
  }
}

INSTANTIATE_TEST_SUITE_P(
    Reference, WeatherFactors,
    testing::ValuesIn(test::check_rows("sweep/weather_correction.csv",
                                       {"source", "object_class", "calm_or_light",
                                        "wind_over_15kt_or_seas_moderate",
                                        "wind_over_25kt_or_seas_high", "sea_limits", "how"})),
    test::RowName());

class SpeedFactors : public testing::TestWithParam<test::CheckRow> {};

TEST_P(SpeedFactors, StandInTheTableAndCorrect) {
  struct Column {
    const char* name;
    Platform platform;
    double knots;
  };
  constexpr Column kColumns[] = {{"fixed_wing_150kt_or_less", Platform::fixed_wing, 150},
                                 {"fixed_wing_150kt_or_less", Platform::fixed_wing, 80},
                                 {"fixed_wing_180kt", Platform::fixed_wing, 180},
                                 {"fixed_wing_210kt", Platform::fixed_wing, 210},
                                 {"helicopter_60kt_or_less", Platform::helicopter, 60},
                                 {"helicopter_60kt_or_less", Platform::helicopter, 40},
                                 {"helicopter_90kt", Platform::helicopter, 90},
                                 {"helicopter_120kt", Platform::helicopter, 120},
                                 {"helicopter_140kt", Platform::helicopter, 140}};
  const std::vector<SpeedRow>& rows = built_in_tables().speed.rows;
  const auto row = std::find_if(rows.begin(), rows.end(), [](const SpeedRow& each) {
    return each.class_name == GetParam().text("search_object");
  });
  ASSERT_NE(row, rows.end());
  for (const Column& column : kColumns) {
    const std::vector<SpeedFactor>& factors =
        column.platform == Platform::helicopter ? row->helicopter : row->fixed_wing;
    const double wanted = GetParam().number(column.name);
    // A speed below the first column takes the first factor.
    const auto at = std::find_if(factors.begin(), factors.end(), [&](const SpeedFactor& factor) {
      return factor.speed.knots() >= column.knots - kRounding;
    });
    ASSERT_NE(at, factors.end());
    EXPECT_EQ(at->factor, wanted) << column.name;
    for (const std::string& object : row->objects) {
      EXPECT_NEAR(factor_over_water({.platform = column.platform,
                                     .object = object,
                                     .ground_speed = Speed::knots(column.knots)}),
                  wanted, kRounding)
          << object << ", " << column.name;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Reference, SpeedFactors,
                         testing::ValuesIn(test::check_rows(
                             "sweep/speed_correction.csv",
                             {"search_object", "fixed_wing_150kt_or_less", "fixed_wing_180kt",
                              "fixed_wing_210kt", "helicopter_60kt_or_less", "helicopter_90kt",
                              "helicopter_120kt", "helicopter_140kt", "how"})),
                         test::RowName());

TEST(TablesPromise2, CitationsOfTablesFromMemoryWarn) {
  const auto warns = [](const TableInfo& info) {
    return citation(info).find("from memory, unconfirmed") != std::string::npos;
  };
  const Tables& tables = built_in_tables();
  for (const WidthTable& table : tables.widths) EXPECT_TRUE(warns(table.info));
  EXPECT_TRUE(warns(tables.terrain.info));
  EXPECT_TRUE(warns(tables.speed.info));
  EXPECT_TRUE(warns(tables.weather.at(0).info));
  EXPECT_FALSE(warns(tables.weather.at(2).info));  // Joint Pub 3-50, Table D-1: seen
  EXPECT_EQ(weather_table_keys(tables),
            (std::vector<std::string>{"iamsar", "iamsar-vessel", "us-1991"}));
}

TEST(Tables, EveryWaterObjectHasADefaultWeatherClassAndASpeedClass) {
  for (const SearchObject& object : search_objects()) {
    if (object.surface != Surface::water) continue;
    EXPECT_EQ(factor_over_water({.platform = Platform::fixed_wing,
                                 .object = object.name,
                                 .wind = Speed::knots(5),
                                 .sea = Length::metres(0.5),
                                 .ground_speed = Speed::knots(180)}),
              1)
        << object.name;
  }
}

}  // namespace
}  // namespace sweepwright::sweep
