// Reads filled debrief forms: JSON or CSV, one or many crews in a file.
//
// Problem: forms are typed in by tired people. A bad field must not lose the rest of the form, nor
//   pass unseen.
// Conventions: JSON: an object for a form, or a list of them, alone or under `reports`. CSV: a line
//   of column names, then a line for each entry of a form; the columns are those of the JSON
//   fields, with `cloud_from` and `cloud_to` for a time above cloud, and `sighting_time`,
//   `sighting_position`, `seen` and `done` for a sighting. Lines of the same crew are one form,
//   unless their times on task differ. Times carry their offset (2026-06-14T07:05:00-06:00), or are
//   those of the clocks at the incident (07:05): then the day is the one that brings them nearest
//   to the middle of the operational period. docs/reference/formats.md has every field.
// Domain: files up to 16 MB; a period of at most a day for times without a date.
// Errors: Error(input) for what is neither JSON nor a table with a column `sector` or `callsign`. A
//   field or form that cannot be used is left out and named with its line; the rest is used.
// Promises: P1 each field is in a report or named in `problems` (crew_report_reader_test.cpp).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/debrief/crew_report.hpp"
#include "sweepwright/formats/input_file.hpp"

namespace sweepwright::formats {

struct CrewReports {
  std::vector<debrief::CrewReport> reports;  ///< one for each form, in the order of the file
  std::vector<std::string> problems;         ///< one for each thing left out, with its place
};

CrewReports parse_crew_reports(std::string_view text, const plan::Incident& incident);

struct CrewReportFile {
  CrewReports content;  ///< problems with the file's name in front
  InputDigest digest;
};
CrewReportFile read_crew_reports(const std::string& path, const plan::Incident& incident);

}  // namespace sweepwright::formats
