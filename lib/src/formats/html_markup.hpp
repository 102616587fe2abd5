// Writes the HTML of sheets, of the planner's board and of the debrief, well-formed XML too;
// private to the formats room.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/report_table.hpp"
#include "sweepwright/formats/sheet.hpp"

namespace sweepwright::formats {

class Html {
 public:
  /// `<tag class="name">`, closed when the object goes.
  class Open {
   public:
    Open(std::string& out, std::string_view tag, std::string_view name);
    Open(const Open&) = delete;
    Open& operator=(const Open&) = delete;
    ~Open();

   private:
    std::string& out_;
    std::string_view tag_;
  };

  [[nodiscard]] Open open(std::string_view tag, std::string_view name = {}) {
    return Open(out_, tag, name);
  }
  void element(std::string_view tag, std::string_view text, std::string_view name = {});
  /// Mark-up made elsewhere.
  void raw(std::string_view markup) { out_ += markup; }
  /// Names with what belongs to them.
  void fields(const std::vector<SheetField>& fields);
  /// The same, at a glance.
  void key_figures(const std::vector<SheetField>& figures);
  void table(const ReportTable& table);
  /// Nothing for no lines.
  void list(std::string_view title, const std::vector<std::string>& lines);
  /// In a box of that class.
  void drawing(std::string_view name, const Drawing& drawing);
  /// From the document's beginning to the end of its head.
  void head(std::string_view title, std::string_view style);
  /// Cautions and origin.
  void end_of_page(const std::vector<std::string>& cautions, std::string_view origin);
  /// Ends the document.
  std::string take();

 private:
  std::string out_;
};

/// The look of reports: pages of tables and drawings.
std::string_view report_style();

}  // namespace sweepwright::formats
