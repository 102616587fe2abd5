#include "position/coordinate.hpp"

#include <fmt/format.h>

#include <cmath>

namespace sweepwright::detail {
namespace {

std::string_view name(Axis axis) {
  return axis == Axis::latitude ? "latitude" : "longitude";
}

double most_degrees(Axis axis) {
  return axis == Axis::latitude ? 90 : 180;
}

Form form_of(int parts, bool decimals) {
  if (parts == 1) return decimals ? Form::decimal_degrees : Form::whole_degrees;
  if (parts == 2) return decimals ? Form::decimal_minutes : Form::whole_minutes;
  return Form::seconds;
}

/// The parts of a coordinate, without a sign. One division keeps whole minutes and seconds exact.
Angle sum(double degrees, double minutes, double seconds) {
  if (minutes == 0 && seconds == 0) return Angle::degrees(degrees);
  if (seconds == 0) return Angle::degrees((degrees * 60 + minutes) / 60);
  return Angle::degrees(((degrees * 60 + minutes) * 60 + seconds) / 3600);
}

/// Reads the numbers of one group, remembering the first failure.
class Evaluation {
 public:
  Evaluation(const PlainText& source, const Group& group, Axis axis)
      : source_(source), group_(group), axis_(axis) {}

  std::variant<Coordinate, TextFailure> evaluate() {
    const Number& first = number(0);
    const bool one_number = group_.numbers.size() == 1 && first.unit == Unit::unmarked;
    check_signs();
    if (!failure_ && one_number && first.whole_digits > 3) {
      from_compact(first);
    } else if (!failure_) {
      from_parts();
    }
    if (!failure_) check_range();
    if (failure_) return *failure_;
    const bool negative =
        group_.letter ? (letter() == 'S' || letter() == 'W') : number(0).sign == '-';
    if (negative) result_.angle = -result_.angle;
    return result_;
  }

 private:
  const Number& number(std::size_t i) const { return *group_.numbers[i].number(); }
  char letter() const { return group_.letter->hemisphere()->letter; }

  void fail(std::size_t at, std::string message, std::string hint = {}) {
    if (!failure_) {
      failure_ = TextFailure{source_.character(at), std::move(message), std::move(hint)};
    }
  }

  void check_signs() {
    for (std::size_t i = 1; i < group_.numbers.size(); ++i) {
      if (number(i).sign == '\0') continue;
      fail(group_.numbers[i].at, fmt::format("a sign inside the {}", name(axis_)),
           "write the sign once, before the degrees");
    }
    if (group_.letter && number(0).sign != '\0') {
      fail(group_.numbers[0].at,
           fmt::format("both a sign and the letter {} for one {}", letter(), name(axis_)),
           "write either the sign or the letter");
    }
  }

  void from_compact(const Number& first) {
    if (!group_.letter && first.sign == '\0') {
      return fail(group_.numbers[0].at,
                  fmt::format("a number of {} digits is not a {} in degrees", first.whole_digits,
                              name(axis_)),
                  "degrees and minutes without separators need hemisphere letters: 3815N11702W");
    }
    const std::optional<Coordinate> compact = compact_coordinate(first, axis_);
    if (!compact) {
      const bool latitude = axis_ == Axis::latitude;
      return fail(
          group_.numbers[0].at,
          fmt::format("{} digits without separators are not a {}", first.whole_digits, name(axis_)),
          latitude ? "a latitude has 2 digits of degrees, then 2 of minutes, 2 of seconds"
                   : "a longitude has 3 digits of degrees, then 2 of minutes, 2 of seconds: "
                     "fill up with zeros");
    }
    result_ = *compact;
    check_sixty(first, result_);
  }

  void check_sixty(const Number& digits, const Coordinate& compact) {
    // 3860N would come out as 39 degrees: look at the digits themselves.
    const auto whole = static_cast<long long>(digits.value);
    const bool seconds = compact.form == Form::seconds;
    const long long last = whole % 100;
    const long long before = seconds ? whole / 100 % 100 : 0;
    if (before >= 60) fail(group_.numbers[0].at, too_many(static_cast<double>(before), "minutes"));
    if (last >= 60) {
      fail(group_.numbers[0].at,
           too_many(static_cast<double>(last), seconds ? "seconds" : "minutes"));
    }
  }

  static std::string too_many(double value, std::string_view unit) {
    return fmt::format("{} {}, where {} run from 0 to less than 60", value, unit, unit);
  }

  void from_parts() {
    double parts[3] = {0, 0, 0};
    int last_unit = -1;
    for (std::size_t i = 0; i < group_.numbers.size(); ++i) {
      const Number& part = number(i);
      const std::size_t at = group_.numbers[i].at;
      const int unit = part.unit == Unit::unmarked ? last_unit + 1 : unit_index(part.unit);
      if (unit > 2) {
        return fail(at, fmt::format("a fourth number in the {}", name(axis_)),
                    "degrees, minutes and seconds are three");
      }
      if (unit <= last_unit) {
        return fail(at, fmt::format("{} do not follow {}", kUnits[unit], kUnits[last_unit]),
                    "the order is degrees, minutes, seconds");
      }
      if (i == 0 && unit != 0) {
        return fail(at, fmt::format("{} without degrees", kUnits[unit]), "begin with the degrees");
      }
      if (i > 0 && number(i - 1).has_decimals) {
        return fail(at, fmt::format("{} after decimals", kUnits[unit]),
                    "only the last number of a latitude or longitude has decimals");
      }
      if (unit > 0 && part.value >= 60) return fail(at, too_many(part.value, kUnits[unit]));
      parts[unit] = part.value;
      last_unit = unit;
    }
    result_.angle = sum(parts[0], parts[1], parts[2]);
    result_.form = form_of(last_unit + 1, number(group_.numbers.size() - 1).has_decimals);
  }

  static int unit_index(Unit unit) {
    return unit == Unit::degree ? 0 : unit == Unit::minute ? 1 : 2;
  }

  void check_range() {
    if (result_.angle.degrees() <= most_degrees(axis_)) return;
    fail(group_.numbers[0].at,
         fmt::format("{}{:.9g} degrees is not a {}, which ends at {}",
                     number(0).sign == '-' ? "-" : "", result_.angle.degrees(), name(axis_),
                     most_degrees(axis_)));
  }

  static constexpr std::string_view kUnits[] = {"degrees", "minutes", "seconds"};

  const PlainText& source_;
  const Group& group_;
  Axis axis_;
  Coordinate result_;
  std::optional<TextFailure> failure_;
};

}  // namespace

std::string_view in_words(Form form) {
  switch (form) {
    case Form::whole_degrees:
      return "whole degrees";
    case Form::decimal_degrees:
      return "decimal degrees";
    case Form::whole_minutes:
      return "degrees and minutes";
    case Form::decimal_minutes:
      return "degrees and decimal minutes";
    case Form::seconds:
      break;
  }
  return "degrees, minutes and seconds";
}

std::variant<Coordinate, TextFailure> coordinate(const PlainText& source, const Group& group,
                                                 Axis axis) {
  return Evaluation(source, group, axis).evaluate();
}

std::optional<Coordinate> compact_coordinate(const Number& number, Axis axis) {
  const int degree_digits = axis == Axis::latitude ? 2 : 3;
  const int more = number.whole_digits - degree_digits;
  if (more != 0 && more != 2 && more != 4) return std::nullopt;
  const double whole = std::trunc(number.value);
  const double decimals = number.value - whole;
  Coordinate result;
  result.compact = more != 0;
  result.form = form_of(1 + more / 2, number.has_decimals);
  if (more == 0) {
    result.angle = sum(number.value, 0, 0);
  } else if (more == 2) {
    result.angle = sum(std::trunc(whole / 100), std::fmod(whole, 100) + decimals, 0);
  } else {
    const double degrees = std::trunc(whole / 10000);
    const double minutes = std::trunc(std::fmod(whole, 10000) / 100);
    result.angle = sum(degrees, minutes, std::fmod(whole, 100) + decimals);
  }
  return result;
}

}  // namespace sweepwright::detail
