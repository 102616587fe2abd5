#include "common/track_option.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <fstream>

#include "common/option_value.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/digest.hpp"
#include "sweepwright/formats/local_time.hpp"

namespace sweepwright::cli {
namespace {

constexpr std::array kFormats{formats::TrackFormat::gpx,     formats::TrackFormat::kml,
                              formats::TrackFormat::geojson, formats::TrackFormat::igc,
                              formats::TrackFormat::nmea,    formats::TrackFormat::csv};
const std::vector<std::string> kFormatNames{"gpx", "kml", "geojson", "igc", "nmea", "csv"};

/// `+05:30`, `-07:00` or `Z`: what local times write behind themselves.
std::chrono::minutes parse_offset(const std::string& text) {
  try {
    return formats::parse_local_time("2000-01-01T00:00" + text).offset_from_utc;
  } catch (const Error&) {
    throw Error(ErrorCode::value, fmt::format("'{}' is no offset from UTC", printable(text)),
                "write it as -07:00 or +05:30");
  }
}

std::chrono::year_month_day parse_day(const std::string& text) {
  try {
    const TimePoint time = formats::parse_local_time(text + "T00:00Z").time;
    return std::chrono::floor<std::chrono::days>(time);
  } catch (const Error&) {
    throw Error(ErrorCode::value, fmt::format("'{}' is no day", printable(text)),
                "write it as 2026-07-14");
  }
}

}  // namespace

void TrackOptions::add_to(CLI::App& command, bool file_option) {
  if (file_option) {
    command.add_option("--track", files_, "Log of a device: GPX, KML, GeoJSON, IGC, NMEA, CSV")
        ->type_name("FILE")
        ->required();
  }
  command.add_option("--track-format", format_, "Its format, where its content does not tell")
      ->type_name("FORMAT")
      ->check(CLI::IsMember(kFormatNames));
  command
      .add_option("--utc-offset", offset_, "Local time of the log less UTC (times without a zone)")
      ->type_name("+HH:MM");
  command.add_option("--day", day_, "Day of a log that has only times of day")->type_name("DATE");
  command
      .add_option("--column", columns_,
                  "A CSV column by its name: time=, date=, latitude=, longitude=, altitude=")
      ->type_name("MEANING=NAME");
  command.add_option("--fastest", fastest_, "Faster steps are jumps, and dropped")
      ->type_name("SPEED")
      ->capture_default_str();
  command.add_option("--longest-gap", longest_gap_, "Longer ones are left open")
      ->type_name("TIME")
      ->capture_default_str();
  command.add_option("--longest-step", longest_step_, "The same, in a log without times")
      ->type_name("LENGTH")
      ->capture_default_str();
}

formats::TrackReadOptions TrackOptions::reading() const {
  formats::TrackReadOptions options;
  if (!format_.empty()) {
    const auto found = std::find(kFormatNames.begin(), kFormatNames.end(), format_);
    options.format = kFormats[static_cast<std::size_t>(found - kFormatNames.begin())];
  }
  if (!offset_.empty())
    options.offset_from_utc = option_value("--utc-offset", offset_, parse_offset);
  options.day = optional_value("--day", day_, parse_day);
  for (const std::string& text : columns_) {
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos) {
      throw Error(ErrorCode::value, fmt::format("'{}' names no column", printable(text)),
                  "write its meaning and its name, such as time=gps_time", "--column");
    }
    options.columns[text.substr(0, equals)] = text.substr(equals + 1);
  }
  return options;
}

track::CleaningOptions TrackOptions::cleaning() const {
  return {.fastest = option_value("--fastest", fastest_, parse_speed),
          .longest_gap = option_value("--longest-gap", longest_gap_, parse_duration),
          .longest_step = option_value("--longest-step", longest_step_, parse_length)};
}

formats::InputDigest track_digest(const std::string& file) {
  std::ifstream stream(file, std::ios::binary);
  return {file, formats::sha256(stream)};
}

}  // namespace sweepwright::cli
