// What a log holds, as JSON, and a cleaned track as CSV.
//
// Conventions: the CSV has `segment,time,latitude_deg,longitude_deg,altitude_m`, times in UTC with
//   milliseconds, positions with 7 decimals (1 cm); track_reader.hpp reads it back.
// Source: RFC 4180; RFC 3339.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"
#include "sweepwright/formats/track_reader.hpp"
#include "sweepwright/track/statistics.hpp"

namespace sweepwright::formats {

/// One log, read and cleaned.
struct TrackReport {
  std::string file;
  LogReport log;
  track::CleaningReport cleaning;
  track::TrackStatistics statistics;
  bool has_area = false;  ///< statistics.inside counts
};

/// `2026-07-14T12:00:00.250Z`; no fraction where there is none.
std::string format_instant(Instant time);

std::string track_report_json(const std::vector<TrackReport>& reports,
                              const Provenance& provenance);
/// Sentences for a person.
std::string track_report_text(const std::vector<TrackReport>& reports);

void write_track_csv_header(Sink& sink);
void write_track_csv_row(Sink& sink, const track::Fix& fix, std::size_t segment);

}  // namespace sweepwright::formats
