#include "formats/board_parts.hpp"
#include "sweepwright/formats/findings.hpp"

namespace sweepwright::formats {

ReportTable findings_table(const plan::Plan& plan) {
  ReportTable table;
  table.title = "What the checks found, worst first";
  table.columns = {{"Severity", 11, true}, {"Sector", 6, true}, {"Callsign", 11, true}, {"Leg", 4},
                   {"Found", 44, true},    {"Cure", 24, true}};
  for (const hazard::Finding& finding : plan.findings) {
    table.rows.push_back({std::string(severity_label(finding.severity)), finding.sector,
                          finding.crew, finding.leg ? std::to_string(*finding.leg) : std::string(),
                          finding.text, finding.cure});
  }
  return table;
}

}  // namespace sweepwright::formats
