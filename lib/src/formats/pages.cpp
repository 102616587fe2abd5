#include "formats/pages.hpp"

#include <algorithm>
#include <utility>

namespace sweepwright::formats {
namespace {

/// The number of strips from `from` on that must stand together: titles with what they name.
std::size_t inseparable(const Strips& strips, std::size_t from) {
  std::size_t end = from + 1;
  while (end < strips.size() && strips[end - 1].with_next) ++end;
  return end;
}

}  // namespace

Pages::Pages(Frame frame) : frame_(std::move(frame)) {
  bottom_mm_ = frame_.size.height_mm - frame_.margin_mm - height_mm(frame_.foot);
  begin_page();
}

void Pages::begin_page() {
  pages_.push_back({frame_.size, frame_.title, frame_.description, {}});
  y_mm_ = frame_.size.height_mm - frame_.margin_mm - height_mm(frame_.foot);
  for (const Strip& strip : frame_.foot) {
    put_at(strip, frame_.margin_mm, y_mm_);
    y_mm_ += strip.height_mm;
  }
  y_mm_ = frame_.margin_mm;
  for (const Strip& strip : frame_.head(pages_.size(), width_mm())) {
    put_at(strip, frame_.margin_mm, y_mm_);
    y_mm_ += strip.height_mm;
  }
}

void Pages::put_at(const Strip& strip, double x_mm, double y_mm) {
  for (Element element : strip.elements) {
    shift(element, {x_mm, y_mm});
    pages_.back().elements.push_back(std::move(element));
  }
}

void Pages::put(const Strips& strips, const Strips& again) {
  for (std::size_t from = 0; from < strips.size();) {
    const std::size_t to = inseparable(strips, from);
    double height = 0;
    for (std::size_t i = from; i < to; ++i) height += strips[i].height_mm;
    if (height > left_mm()) {
      begin_page();
      for (const Strip& strip : again) {
        put_at(strip, frame_.margin_mm, y_mm_);
        y_mm_ += strip.height_mm;
      }
    }
    for (; from < to; ++from) {
      put_at(strips[from], frame_.margin_mm, y_mm_);
      y_mm_ += strips[from].height_mm;
    }
  }
}

void Pages::put_columns(const std::vector<std::pair<double, Strips>>& columns) {
  std::vector<std::size_t> next(columns.size(), 0);
  for (bool fresh_page = false;; fresh_page = true) {
    const double top = y_mm_;
    double lowest = top;
    bool all = true;
    for (std::size_t c = 0; c < columns.size(); ++c) {
      const Strips& strips = columns[c].second;
      double y = top;
      while (next[c] < strips.size()) {
        const std::size_t to = inseparable(strips, next[c]);
        double height = 0;
        for (std::size_t i = next[c]; i < to; ++i) height += strips[i].height_mm;
        // What is taller than a whole page stands on one all the same.
        if (y + height > bottom_mm_ && !(fresh_page && y == top)) break;
        for (; next[c] < to; ++next[c]) {
          put_at(strips[next[c]], frame_.margin_mm + columns[c].first, y);
          y += strips[next[c]].height_mm;
        }
      }
      lowest = std::max(lowest, y);
      all = all && next[c] == strips.size();
    }
    y_mm_ = lowest;
    if (all) return;
    begin_page();
  }
}

void Pages::put_drawing(const Drawing& drawing, PaperPoint at) {
  Group group;
  for (Element element : drawing.elements) {
    shift(element, at);
    group.elements.push_back(std::move(element));
  }
  pages_.back().elements.push_back({std::move(group)});
}

std::vector<Drawing> Pages::take() {
  return std::move(pages_);
}

}  // namespace sweepwright::formats
