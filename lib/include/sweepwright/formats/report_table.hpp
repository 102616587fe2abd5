// A table of a report as plain texts, written as HTML and set on paper from the same values.
//
// Conventions: columns share the width; figures stand on the right.
// Source: own layout.
#pragma once

#include <string>
#include <vector>

namespace sweepwright::formats {

struct ReportColumn {
  std::string head;
  double share = 1;      ///< of the width, beside the others
  bool is_text = false;  ///< set from the left
};

struct ReportTable {
  std::string title;
  std::vector<ReportColumn> columns;
  std::vector<std::vector<std::string>> rows;  ///< a text for each column
  std::string note;                            ///< may be empty
};

}  // namespace sweepwright::formats
