#include "sweepwright/formats/track_reader.hpp"

#include <fmt/format.h>

#include <array>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <system_error>

#include "formats/log_reading.hpp"
#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

/// The first bytes of a stream, which can be read again.
class PeekedBuffer : public std::streambuf {
 public:
  explicit PeekedBuffer(std::istream& stream) : stream_(stream) { underflow(); }
  std::string_view front() const { return {gptr(), static_cast<std::size_t>(egptr() - gptr())}; }

 protected:
  int_type underflow() override {
    stream_.read(bytes_.data(), static_cast<std::streamsize>(bytes_.size()));
    const auto count = stream_.gcount();
    if (count <= 0) return traits_type::eof();
    setg(bytes_.data(), bytes_.data(), bytes_.data() + count);
    return traits_type::to_int_type(*gptr());
  }

 private:
  std::istream& stream_;
  std::array<char, 65536> bytes_{};
};

bool is_rubbish(std::string_view front) {
  return front.find('\0') != std::string_view::npos;
}

/// An IGC file begins with its recorder's A record and has H records.
bool looks_like_igc(std::string_view front) {
  return front.starts_with('A') && (front.find("\nHF") != std::string_view::npos ||
                                    front.find("\nB") != std::string_view::npos);
}

TrackFormat told_by_content(std::string_view front) {
  if (front.empty()) throw Error(ErrorCode::input, "the file is empty");
  if (front.starts_with("PK\x03\x04")) {
    throw Error(ErrorCode::input, "this is a ZIP archive and no log",
                "a KMZ is one too: unpack it, and give the KML file that is in it");
  }
  if (is_rubbish(front)) {
    throw Error(ErrorCode::input, "this is no log: it has bytes that no text has",
                "save the track as GPX on the device, and give that file");
  }
  if (front.starts_with("\xEF\xBB\xBF")) front.remove_prefix(3);
  const std::string_view text = trimmed(front);
  if (text.starts_with('<')) {
    if (text.find("<gpx") != std::string_view::npos) return TrackFormat::gpx;
    if (text.find("<kml") != std::string_view::npos) return TrackFormat::kml;
    throw Error(ErrorCode::input, "this XML is neither GPX nor KML",
                "give a file whose first element is gpx or kml");
  }
  if (text.starts_with('{')) return TrackFormat::geojson;
  if (looks_like_igc(text)) return TrackFormat::igc;
  if (text.find("$G") != std::string_view::npos || text.starts_with('$')) return TrackFormat::nmea;
  return TrackFormat::csv;
}

void read_as(TrackFormat format, std::istream& stream, LogRows& rows) {
  switch (format) {
    case TrackFormat::gpx:
      return read_gpx_log(stream, rows);
    case TrackFormat::kml:
      return read_kml_log(stream, rows);
    case TrackFormat::geojson:
      return read_geojson_log(stream, rows);
    case TrackFormat::igc:
      return read_igc_log(stream, rows);
    case TrackFormat::nmea:
      return read_nmea_log(stream, rows);
    case TrackFormat::csv:
      return read_csv_log(stream, rows);
  }
}

void open(const std::string& path, std::ifstream& file) {
  std::error_code reason;
  if (std::filesystem::is_directory(path, reason)) {
    throw Error(ErrorCode::unreadable, "this is a folder, and a file is wanted",
                "name the file in it");
  }
  if (!std::filesystem::exists(path, reason)) {
    throw Error(ErrorCode::unreadable, "there is no such file", "check its name and folder");
  }
  file.open(path, std::ios::binary);
  if (!file) {
    throw Error(ErrorCode::unreadable, "cannot be read: " + std::generic_category().message(errno));
  }
}

std::string times(std::size_t count, std::string_view noun) {
  return fmt::format("{} {}{}", count, noun, count == 1 ? "" : "s");
}

}  // namespace

std::string_view name(TrackFormat format) {
  switch (format) {
    case TrackFormat::gpx:
      return "GPX";
    case TrackFormat::kml:
      return "KML";
    case TrackFormat::geojson:
      return "GeoJSON";
    case TrackFormat::igc:
      return "IGC";
    case TrackFormat::nmea:
      return "NMEA 0183";
    case TrackFormat::csv:
      break;
  }
  return "CSV";
}

LogReport read_log(std::istream& stream, const TrackReadOptions& options, const RawFixSink& sink) {
  PeekedBuffer buffer(stream);
  const TrackFormat format = options.format ? *options.format : told_by_content(buffer.front());
  std::istream peeked(&buffer);
  LogRows rows(format, options, sink);
  read_as(format, peeked, rows);
  LogReport report = rows.report();
  if (report.rows == report.bad_rows) {
    throw Error(ErrorCode::input,
                fmt::format("no fix could be read as {}{}", name(format),
                            report.first_bad_rows.empty()
                                ? std::string()
                                : "; the first trouble is on " + report.first_bad_rows.front()),
                "check that it is a log of positions, and state its format if it was told wrongly");
  }
  return report;
}

StreamedTrack stream_track_file(const std::string& path, const TrackReadOptions& options,
                                const track::CleaningOptions& cleaning,
                                const track::Cleaner::Sink& sink) {
  track::Cleaner cleaner(cleaning, sink);
  try {
    std::ifstream file;
    if (path != "-") open(path, file);
    const LogReport log = read_log(path == "-" ? std::cin : file, options,
                                   [&](const track::RawFix& raw) { cleaner.push(raw); });
    return {log, cleaner.finish()};
  } catch (const Error& error) {
    throw error.at(path == "-" ? "standard input" : shown_path(path));
  }
}

TrackFile read_track_file(const std::string& path, const TrackReadOptions& options,
                          const track::CleaningOptions& cleaning) {
  TrackFile result;
  StreamedTrack streamed =
      stream_track_file(path, options, cleaning, [&](const track::Fix& fix, bool begins) {
        if (begins) result.track.segments.emplace_back();
        result.track.segments.back().push_back(fix);
      });
  result.log = std::move(streamed.log);
  result.cleaning = streamed.cleaning;
  result.track.name = result.log.name;
  result.track.source = path;
  return result;
}

std::vector<std::string> statements(const LogReport& log, const track::CleaningReport& cleaning) {
  std::vector<std::string> said{fmt::format("{} log: {} read, {} kept in {}", name(log.format),
                                            times(log.rows, "row"), cleaning.kept,
                                            times(cleaning.segments, "segment"))};
  if (log.bad_rows > 0) {
    std::string text = times(log.bad_rows, "row") + " could not be read:";
    for (const std::string& row : log.first_bad_rows) text += " " + row + ";";
    if (log.bad_rows > log.first_bad_rows.size()) text += " and so on;";
    text.pop_back();
    said.push_back(text);
  }
  for (std::size_t i = 0; i < track::kDrops; ++i) {
    const track::DropCount& drops = cleaning.drops[i];
    if (drops.count == 0) continue;
    said.push_back(
        fmt::format("{} dropped: {}; the first on row {}",
                    fmt::format("{} {}", drops.count, drops.count == 1 ? "fix" : "fixes"),
                    track::name(static_cast<track::Drop>(i)), drops.first_row));
  }
  if (cleaning.gaps > 0) {
    std::string text = times(cleaning.gaps, "gap") + " left open";
    if (cleaning.longest_gap) {
      text += fmt::format(", the longest of {:.0f} s",
                          Duration(cleaning.longest_gap->to - cleaning.longest_gap->from).count());
    }
    said.push_back(text);
  }
  if (!cleaning.timed) said.emplace_back("the log has no times: fixes are taken in their order");
  said.insert(said.end(), log.remarks.begin(), log.remarks.end());
  return said;
}

}  // namespace sweepwright::formats
