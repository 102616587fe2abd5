// Any bytes as a log in any format: read and cleaned, or refused with an Error; nothing is lost
// unseen.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <sstream>
#include <string>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/track_reader.hpp"

namespace {

using namespace sweepwright;

void read(const std::string& bytes, std::optional<formats::TrackFormat> format) {
  std::istringstream stream(bytes);
  formats::TrackReadOptions options;
  options.format = format;
  std::size_t kept = 0;
  track::Cleaner cleaner({}, [&](const track::Fix&, bool) { ++kept; });
  std::size_t read = 0;
  try {
    const formats::LogReport log =
        formats::read_log(stream, options, [&](const track::RawFix& raw) {
          ++read;
          cleaner.push(raw);
        });
    const track::CleaningReport report = cleaner.finish();
    if (log.rows != read + log.bad_rows || report.pushed != read || report.kept != kept) {
      std::abort();
    }
  } catch (const Error&) {
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are the text
  const std::string bytes(reinterpret_cast<const char*>(data), size);
  read(bytes, std::nullopt);
  for (const auto format :
       {formats::TrackFormat::gpx, formats::TrackFormat::kml, formats::TrackFormat::geojson,
        formats::TrackFormat::igc, formats::TrackFormat::nmea, formats::TrackFormat::csv}) {
    read(bytes, format);
  }
  return 0;
}
