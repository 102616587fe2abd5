// Reads the logs of GPS devices: GPX, KML, GeoJSON, IGC, NMEA 0183 and CSV.
//
// Problem: crews hand in whatever their device writes, often damaged, sometimes huge.
// Conventions: the format is told by the content, or stated. Fixes are handed on one by one, as
//   the file is read, so that a log of any length needs no more memory than a short one (GeoJSON
//   and the names of places excepted: at most kLargestTextBytes). Rows that cannot be read are
//   counted, the first ones are named, and the rest is used. Times without a zone are UTC unless
//   the options state an offset. What was assumed is in `remarks`.
// Domain: positions in WGS 84. XML with a document type is refused: no entity is ever expanded and
//   nothing outside the file is read. Lines of text up to 4096 bytes, names up to 200.
// Errors: Error(unreadable); Error(input): no known format, no fix at all, XML that was refused.
//   A file that ends too early or breaks midway gives what stands before, and says so.
// Source: GPX 1.1 Schema Documentation (TopoGrafix); OGC KML 2.2 and its gx:Track extension;
//   RFC 7946 with `coordTimes` and `times` as the common converters write them; FAI Sporting Code,
//   technical specification for GNSS flight recorders (IGC), A, H and B records (from memory);
//   NMEA 0183, RMC and GGA (from memory).
#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <iosfwd>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/track/cleaning.hpp"

namespace sweepwright::formats {

enum class TrackFormat { gpx, kml, geojson, igc, nmea, csv };
/// `GPX`, `KML`, ...
std::string_view name(TrackFormat format);

struct TrackReadOptions {
  std::optional<TrackFormat> format;  ///< told by the content when not given
  /// Of times without a zone: what the device's clock shows, less UTC.
  std::chrono::minutes offset_from_utc{0};
  /// The day of the log's beginning, for logs that have only times of day.
  std::optional<std::chrono::year_month_day> day;
  /// Of a CSV: what a column means (`time`, `date`, `latitude`, `longitude`, `altitude`) to its
  /// name in the file, where the reader does not know the name by itself.
  std::map<std::string, std::string> columns;
};

/// What a reader met on its way.
struct LogReport {
  TrackFormat format{};
  std::string name;      ///< of the track, as the log has it; may be empty
  std::size_t rows = 0;  ///< fixes and bad rows
  std::size_t bad_rows = 0;
  std::vector<std::string> first_bad_rows;  ///< at most kBadRowsNamed, each with its line
  std::vector<std::string> remarks;         ///< how odd things were read
};
inline constexpr std::size_t kBadRowsNamed = 5;

using RawFixSink = std::function<void(const track::RawFix&)>;

/// Reads all fixes of a log as they stand.
LogReport read_log(std::istream& stream, const TrackReadOptions& options, const RawFixSink& sink);

struct StreamedTrack {
  LogReport log;
  track::CleaningReport cleaning;
};

/// Reads and cleans a file fix by fix. `-` is standard input. Errors have the path in front.
StreamedTrack stream_track_file(const std::string& path, const TrackReadOptions& options,
                                const track::CleaningOptions& cleaning,
                                const track::Cleaner::Sink& sink);

struct TrackFile {
  track::Track track;
  LogReport log;
  track::CleaningReport cleaning;
};

/// The same, with all fixes in memory.
TrackFile read_track_file(const std::string& path, const TrackReadOptions& options = {},
                          const track::CleaningOptions& cleaning = {});

/// What was read, dropped and assumed, in sentences for a person.
std::vector<std::string> statements(const LogReport& log, const track::CleaningReport& cleaning);

}  // namespace sweepwright::formats
