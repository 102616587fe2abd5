// Parts of a page that sheets, the planner's board and the debrief share; private to the formats
// room.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "formats/setting.hpp"
#include "sweepwright/formats/report_table.hpp"
#include "sweepwright/formats/sheet.hpp"

namespace sweepwright::formats {

inline Strip gap(double height_mm) {
  return {height_mm, {}, false};
}

void append(Strips& strips, Strips more);
/// Puts strips under each other onto one, from a place of it.
void append(Strip& strip, Strips more, PaperPoint at);

/// An empty frame.
Element frame_element(const PaperBox& box, double line_mm);
/// One bold line that begins there.
Element big_text(std::string text, PaperPoint at, double size_mm);

Strips set_fields(const std::vector<SheetField>& fields, double width_mm, double names_mm,
                  const TextLook& look);

/// What is needed at a glance, in boxes, so many across; values that are too long are set smaller.
Strips set_key_figures(const std::vector<SheetField>& figures, std::size_t across, double width_mm,
                       double name_mm, double value_mm);

inline constexpr double kGapAfterTable = 2;  // mm

/// Title, heads, rows, note; the first two strips are what a further page repeats when there are
/// rows.
Strips set_table(const ReportTable& table, double width_mm, double text_mm);

/// Nothing for no lines.
Strips set_list(std::string_view title, const std::vector<std::string>& lines, double width_mm,
                double text_mm);

/// The head of the second page and those after it.
Strips later_head(std::string_view title, std::size_t page, double width_mm, double text_mm);

/// Cautions in a frame, and by what the page was made: the foot of every page.
Strips set_foot(const std::vector<std::string>& cautions, const std::string& origin,
                double width_mm, double text_mm);

}  // namespace sweepwright::formats
