// NMEA 0183: RMC has place, time and day, GGA place, time of day and altitude. Sentences of one
// time of day are one fix.
#include <fmt/format.h>

#include <vector>

#include "formats/log_reading.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

std::vector<std::string_view> fields_of(std::string_view text) {
  std::vector<std::string_view> fields;
  while (true) {
    const std::size_t comma = text.find(',');
    fields.push_back(text.substr(0, comma));
    if (comma == std::string_view::npos) return fields;
    text.remove_prefix(comma + 1);
  }
}

/// Degrees and minutes run together: `3814.5000`, and its letter.
std::optional<double> angle(std::string_view text, std::string_view letter,
                            std::string_view letters) {
  const auto value = parse_number(text);
  if (!value || *value < 0 || letter.size() != 1 ||
      letters.find(letter.front()) == std::string_view::npos) {
    return std::nullopt;
  }
  const auto degrees = static_cast<double>(static_cast<int>(*value / 100));
  const double minutes = *value - degrees * 100;
  if (minutes >= 60) return std::nullopt;
  const double angle = degrees + minutes / 60;
  return letter.front() == letters.front() ? angle : -angle;
}

/// ddmmyy
std::optional<std::chrono::year_month_day> day_of(std::string_view text) {
  const auto number = parse_number(text);
  if (text.size() != 6 || !number || *number < 0) return std::nullopt;
  const int all = static_cast<int>(*number);
  const int two = all % 100;
  const std::chrono::year_month_day day{std::chrono::year(two < 80 ? 2000 + two : 1900 + two),
                                        std::chrono::month(static_cast<unsigned>(all / 100 % 100)),
                                        std::chrono::day(static_cast<unsigned>(all / 10000))};
  if (!day.ok()) return std::nullopt;
  return day;
}

enum class Checksum { right, wrong, none };

/// Cuts the checksum off: the exclusive or of all bytes between `$` and `*`.
Checksum take_checksum(std::string_view& sentence) {
  const std::size_t star = sentence.rfind('*');
  if (star == std::string_view::npos) return Checksum::none;
  unsigned sum = 0;
  for (const char c : sentence.substr(0, star)) sum ^= static_cast<unsigned char>(c);
  const std::string stated = to_upper_ascii(trimmed(sentence.substr(star + 1)));
  sentence = sentence.substr(0, star);
  return stated == fmt::format("{:02X}", sum) ? Checksum::right : Checksum::wrong;
}

class NmeaLog {
 public:
  explicit NmeaLog(LogRows& rows) : rows_(rows) {
    if (rows.options().day) clock_.set_day(*rows.options().day);
  }

  void line(std::string_view text, long row) {
    // Some devices put their own stamp in front of each sentence.
    const std::size_t dollar = text.find('$');
    if (dollar == std::string_view::npos) {
      if (!trimmed(text).empty()) rows_.bad(row, "no sentence: " + printable(text));
      return;
    }
    std::string_view sentence = text.substr(dollar + 1);
    const std::string_view kind = sentence.substr(0, sentence.find(',')).size() == 5
                                      ? sentence.substr(2, 3)
                                      : std::string_view();
    if (kind != "RMC" && kind != "GGA") return;
    const Checksum checksum = take_checksum(sentence);
    if (checksum == Checksum::wrong) return rows_.bad(row, "the checksum is wrong");
    if (checksum == Checksum::none) rows_.remark("some sentences have no checksum: used unchecked");
    const std::vector<std::string_view> fields = fields_of(sentence);
    if (fields.size() < 10) return rows_.bad(row, "the sentence is cut off");
    if (kind == "RMC") {
      rmc(fields, row);
    } else {
      gga(fields, row);
    }
  }

  void finish() {
    emit();
    if (clock_.rolled_over()) {
      rows_.remark("the log passes midnight without a new date: later times are of the next day");
    }
  }

 private:
  struct Pending {
    std::chrono::milliseconds time_of_day{};
    std::optional<std::chrono::year_month_day> day;
    track::Fix fix;
    long row = 0;
  };

  void rmc(const std::vector<std::string_view>& fields, long row) {
    if (fields[2] != "A") return rows_.bad(row, "the receiver says that its fix is void");
    Pending* here = pending(fields[1], fields[3], fields[4], fields[5], fields[6], row);
    if (here == nullptr) return;
    here->day = day_of(fields[9]);
    if (!here->day) rows_.remark("some RMC sentences have no date");
  }

  void gga(const std::vector<std::string_view>& fields, long row) {
    if (fields[6] == "0") return rows_.bad(row, "the receiver has no fix");
    Pending* here = pending(fields[1], fields[2], fields[3], fields[4], fields[5], row);
    if (here == nullptr) return;
    if (const auto metres = parse_number(fields[9])) here->fix.altitude = Length::metres(*metres);
  }

  /// The fix of that time of day, new or the one before.
  Pending* pending(std::string_view time, std::string_view latitude, std::string_view north,
                   std::string_view longitude, std::string_view east, long row) {
    const auto time_of_day = parse_time_of_day(time);
    const auto place = position_of(angle(latitude, north, "NS"), angle(longitude, east, "EW"));
    if (!time_of_day || !place) {
      rows_.bad(row, "time or place cannot be read");
      return nullptr;
    }
    if (!pending_ || pending_->time_of_day != *time_of_day) {
      emit();
      pending_ = Pending{*time_of_day, {}, {*place, {}, {}}, row};
    }
    return &*pending_;
  }

  void emit() {
    if (!pending_) return;
    if (pending_->day) clock_.set_day(*pending_->day);
    if (clock_.has_day()) {
      pending_->fix.time = clock_.at(pending_->time_of_day);
      rows_.fix(pending_->fix, pending_->row, 0);
    } else {
      rows_.bad(pending_->row, "no sentence has said the day yet: state it");
    }
    pending_.reset();
  }

  LogRows& rows_;
  DayClock clock_;
  std::optional<Pending> pending_;
};

}  // namespace

void read_nmea_log(std::istream& stream, LogRows& rows) {
  NmeaLog log(rows);
  LogLines lines(stream);
  while (lines.next()) log.line(lines.text(), lines.number());
  log.finish();
}

}  // namespace sweepwright::formats
