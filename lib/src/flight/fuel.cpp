#include "sweepwright/flight/fuel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::flight {
namespace {

struct UnitInfo {
  FuelUnit unit;
  std::string_view symbol;
  std::string_view key;
  bool is_mass;
  double size;  ///< in kilograms or litres
};

constexpr std::array<UnitInfo, 5> kUnits{
    {{FuelUnit::kilogram, "kg", "kg", true, 1},
     {FuelUnit::pound, "lb", "lb", true, kKilogramsPerPound},
     {FuelUnit::litre, "L", "l", false, 1},
     {FuelUnit::us_gallon, "USgal", "usgal", false, kLitresPerUsGallon},
     {FuelUnit::imperial_gallon, "impgal", "impgal", false, kLitresPerImperialGallon}}};

constexpr std::string_view kWanted = "kg, lb, L, USgal or impgal";

const UnitInfo& info(FuelUnit unit) {
  return kUnits[static_cast<std::size_t>(unit)];
}

[[noreturn]] void refuse(std::string_view text, std::string_view why, std::string_view example) {
  throw Error(ErrorCode::value, fmt::format("'{}' {}", printable(text), why),
              fmt::format("write an amount in {}, such as {}", kWanted, example));
}

Fuel parse_amount(std::string_view text, std::string_view example) {
  const std::string_view whole = trimmed(text);
  const auto unit_start = std::find_if(whole.begin(), whole.end(), is_ascii_letter);
  const auto length = static_cast<std::size_t>(unit_start - whole.begin());
  const std::string_view number = trimmed(whole.substr(0, length));
  const std::string unit = to_lower_ascii(trimmed(whole.substr(length)));
  if (number.empty()) refuse(text, "does not start with a number", example);
  if (unit.empty()) refuse(text, "has no unit", example);
  if (unit == "gal") refuse(text, "does not say which gallon", example);
  for (const UnitInfo& known : kUnits) {
    if (unit == known.key) return {known.unit, parse_number(number, "the fuel")};
  }
  refuse(text, fmt::format("has the unknown unit '{}'", printable(unit)), example);
}

}  // namespace

std::string_view symbol(FuelUnit unit) {
  return info(unit).symbol;
}

std::string_view key(FuelUnit unit) {
  return info(unit).key;
}

Duration operator/(Fuel fuel, FuelFlow flow) {
  const UnitInfo& amount = info(fuel.unit);
  const UnitInfo& rate = info(flow.unit);
  if (amount.is_mass != rate.is_mass) {
    throw Error(
        ErrorCode::value,
        fmt::format("fuel in {} and a flow in {}/h do not go together", amount.symbol, rate.symbol),
        "give both as mass (kg, lb) or both as volume (L, USgal, impgal)");
  }
  return Duration(fuel.amount * amount.size / (flow.per_hour * rate.size) * 3600);
}

Fuel parse_fuel(std::string_view text) {
  const Fuel fuel = parse_amount(text, "40kg");
  if (fuel.amount < 0) refuse(text, "is less than none", "40kg");
  return fuel;
}

FuelFlow parse_fuel_flow(std::string_view text) {
  constexpr std::string_view example = "30kg/h";
  const std::string_view whole = trimmed(text);
  const std::size_t slash = whole.find('/');
  if (slash == std::string_view::npos || to_lower_ascii(trimmed(whole.substr(slash + 1))) != "h") {
    refuse(text, "is not an amount an hour", example);
  }
  const Fuel an_hour = parse_amount(whole.substr(0, slash), example);
  if (!(an_hour.amount > 0)) refuse(text, "is not above 0", example);
  return {an_hour.unit, an_hour.amount};
}

std::string format_fuel(Fuel fuel, int decimals) {
  return fmt::format("{:.{}f} {}", fuel.amount, decimals, symbol(fuel.unit));
}

std::string format_fuel_flow(FuelFlow flow, int decimals) {
  return format_fuel({flow.unit, flow.per_hour}, decimals) + "/h";
}

}  // namespace sweepwright::flight
