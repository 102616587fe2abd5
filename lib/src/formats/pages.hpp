// Pages: the pages of a document while strips are put on them; private to the formats room.
//
// Conventions: every page has the document's head at its top and its foot at its bottom; what lies
//   between is filled from the top in one or more columns. A strip that does not fit begins the
//   next page.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "formats/setting.hpp"

namespace sweepwright::formats {

class Pages {
 public:
  /// `head` is set anew for each page, which it may name ("page 2"); `foot` is the same on all.
  struct Frame {
    PaperSize size;
    double margin_mm = 7;
    std::function<Strips(std::size_t page, double width_mm)> head;
    Strips foot;
    std::string title;
    std::string description;
  };

  explicit Pages(Frame frame);

  double width_mm() const { return frame_.size.width_mm - 2 * frame_.margin_mm; }
  /// What is still free on the page, from the cursor down.
  double left_mm() const { return bottom_mm_ - y_mm_; }
  void begin_page();
  void space(double height_mm) { y_mm_ += height_mm; }

  /// Puts strips under each other; `again` is put first on each further page that they need.
  void put(const Strips& strips, const Strips& again = {});
  /// Puts columns side by side, each {left edge, strips}; they begin at the cursor, which then
  /// stands under the longest. A column that does not fit goes on at the same place of the next
  /// page.
  void put_columns(const std::vector<std::pair<double, Strips>>& columns);
  /// Puts a drawing at a place of the page, as a whole.
  void put_drawing(const Drawing& drawing, PaperPoint at);
  double cursor_mm() const { return y_mm_; }
  double margin_mm() const { return frame_.margin_mm; }

  std::vector<Drawing> take();

 private:
  void put_at(const Strip& strip, double x_mm, double y_mm);

  Frame frame_;
  std::vector<Drawing> pages_;
  double y_mm_ = 0;
  double bottom_mm_ = 0;
};

}  // namespace sweepwright::formats
