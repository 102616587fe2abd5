// Any bytes as crew reports: read, with what is left out named, or refused with an Error. A report
// that is read says whose it is.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/crew_report_reader.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace sweepwright;
  plan::Incident incident;
  incident.operational_period = {TimePoint(std::chrono::hours(500000)),
                                 TimePoint(std::chrono::hours(500010))};
  try {
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-reinterpret-cast): bytes are the text
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    for (const debrief::CrewReport& report : formats::parse_crew_reports(text, incident).reports) {
      if (report.sector.empty() && report.callsign.empty()) std::abort();
    }
  } catch (const Error&) {
  }
  return 0;
}
