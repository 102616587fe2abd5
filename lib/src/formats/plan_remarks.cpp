#include "formats/plan_remarks.hpp"

#include <algorithm>

namespace sweepwright::formats {

std::vector<std::string> plan_remarks(const plan::Plan& plan) {
  std::vector<std::string> lines = plan.remarks;
  std::vector<std::string> told;
  for (const plan::Assignment& first : plan.assignments) {
    for (const std::string& remark : first.remarks) {
      if (std::find(told.begin(), told.end(), remark) != told.end()) continue;
      told.push_back(remark);
      std::string sectors;
      for (const plan::Assignment& other : plan.assignments) {
        const auto& remarks = other.remarks;
        if (std::find(remarks.begin(), remarks.end(), remark) == remarks.end()) continue;
        sectors += (sectors.empty() ? "" : " ") + other.sector_name;
      }
      lines.push_back(sectors + ": " + remark);
    }
  }
  return lines;
}

}  // namespace sweepwright::formats
