// What the readers of logs share: rows that are counted, lines of bounded length, times.
#pragma once

#include <istream>
#include <string>
#include <string_view>

#include "sweepwright/formats/track_reader.hpp"

namespace sweepwright::formats {

/// Hands fixes on and counts what cannot be read.
class LogRows {
 public:
  LogRows(TrackFormat format, const TrackReadOptions& options, const RawFixSink& sink)
      : options_(options), sink_(sink) {
    report_.format = format;
  }
  const TrackReadOptions& options() const { return options_; }
  void fix(const track::Fix& fix, long row, int part);
  void bad(long row, std::string_view what);
  /// Once each.
  void remark(std::string_view text);
  void name(std::string_view text);
  LogReport report() const { return report_; }

 private:
  const TrackReadOptions& options_;
  const RawFixSink& sink_;
  LogReport report_;
};

/// Lines of a text, without their ends; longer ones than kLongestLine are cut.
class LogLines {
 public:
  explicit LogLines(std::istream& stream) : stream_(stream) {}
  /// False at the end.
  bool next();
  std::string_view text() const { return text_; }
  long number() const { return number_; }
  bool cut() const { return cut_; }

 private:
  std::istream& stream_;
  std::string text_;
  long number_ = 0;
  bool cut_ = false;
};
inline constexpr std::size_t kLongestLine = 4096;

/// A point in time as RFC 3339 and its relaxed kin write it, with fractions of a second; without a
/// zone it is `offset` ahead of UTC, and `no_zone` becomes true. None for anything else.
std::optional<Instant> parse_instant(std::string_view text, std::chrono::minutes offset,
                                     bool& no_zone);
/// `hh:mm:ss.sss` or `hhmmss.sss`.
std::optional<std::chrono::milliseconds> parse_time_of_day(std::string_view text);
std::optional<std::chrono::year_month_day> parse_day(std::string_view text);

/// The whole text as a number with a decimal point; none for anything else.
std::optional<double> parse_number(std::string_view text);
/// None outside latitudes -90 to 90 and longitudes -180 to 360.
std::optional<Position> position_of(std::optional<double> latitude,
                                    std::optional<double> longitude);

/// Times of day become points in time: past midnight the day goes on, also where the log forgets
/// to say so.
class DayClock {
 public:
  void set_day(std::chrono::year_month_day day);
  bool has_day() const { return day_.has_value(); }
  Instant at(std::chrono::milliseconds time_of_day);
  /// True when midnight was passed and no new date had been read.
  bool rolled_over() const { return rolled_over_; }

 private:
  std::optional<std::chrono::sys_days> day_;
  std::optional<Instant> last_;
  std::chrono::days added_{0};
  bool rolled_over_ = false;
};

// Each reads one format to its end.
void read_gpx_log(std::istream& stream, LogRows& rows);
void read_kml_log(std::istream& stream, LogRows& rows);
void read_geojson_log(std::istream& stream, LogRows& rows);
void read_igc_log(std::istream& stream, LogRows& rows);
void read_nmea_log(std::istream& stream, LogRows& rows);
void read_csv_log(std::istream& stream, LogRows& rows);

}  // namespace sweepwright::formats
