#include "terrain/corridor_scan.hpp"

#include <algorithm>
#include <cmath>

#include "terrain/cover.hpp"

namespace sweepwright::terrain {
namespace {

long whole_below(double value) {
  return static_cast<long>(std::floor(value));
}

struct Cells {
  long first = 0;
  long last = -1;
  bool any() const { return first <= last; }
};

/// The cells of a row that the shape touches; a cell reaches from its number plus `from` to 1 more,
/// in both directions.
Cells cells_in(const Shape& shape, long row, double from, Run whole) {
  const double v = static_cast<double>(row) + from;
  const std::optional<Run> run = columns_of(shape, {v, v + 1}, whole);
  if (!run) return {};
  return {whole_below(run->least - from), whole_below(run->most - from)};
}

}  // namespace

CorridorScanner::CorridorScanner(const ElevationModel& model) : layers_(model.layers()) {
  for (const Layer& layer : layers_) extents_.push_back(extent(layer));
}

Scan CorridorScanner::scan(const Stretch& stretch, Length half_width) {
  top_.reset();
  Scan result;
  for (std::size_t i = 0; i < layers_.size(); ++i) {
    const auto shapes = corridor_shapes(layers_[i].frame, stretch, half_width);
    if (!shapes) continue;
    // What one layer knows all of, or the others know where it does not, is known.
    result.known = scan_layer(i, *shapes) || result.known;
  }
  if (top_) {
    result.highest = HighGround{Length::metres(static_cast<double>(top_->height_m)),
                                top_->layer->frame.to_position({static_cast<double>(top_->column),
                                                                static_cast<double>(top_->row)})};
  }
  return result;
}

bool CorridorScanner::scan_layer(std::size_t index, const std::vector<Shape>& shapes) {
  bool known = true;
  for (const Shape& shape : shapes) known = scan_shape(index, shape) && known;
  return known;
}

bool CorridorScanner::scan_shape(std::size_t index, const Shape& shape) {
  const Layer& layer = layers_[index];
  const Run whole{static_cast<double>(extents_[index].first_column),
                  layer.columns_round != 0
                      ? static_cast<double>(extents_[index].first_column + layer.columns_round)
                      : static_cast<double>(extents_[index].last_column)};
  const Run rows = rows_of(shape);
  bool known = true;
  // A row's posts bound the cells to its north and to its south.
  Cells north = cells_in(shape, whole_below(rows.least) - 1, 0, whole);
  for (long row = whole_below(rows.least); row <= whole_below(rows.most) + 1; ++row) {
    const Cells south = cells_in(shape, row, 0, whole);
    Posts posts{south.first, south.last + 1};
    if (north.any() && south.any()) {
      posts = {std::min(north.first, south.first), std::max(north.last, south.last) + 1};
    } else if (north.any()) {
      posts = {north.first, north.last + 1};
    }
    north = south;
    if (posts.last <= posts.first) continue;
    Posts wanted = posts;
    if (layer.posts == PostKind::area) {
      const Cells own = cells_in(shape, row, -0.5, whole);
      wanted = {own.first, own.last};
    }
    known = scan_row(index, row, posts, wanted) && known;
  }
  return known;
}

bool CorridorScanner::scan_row(std::size_t index, long row, Posts posts, Posts must_be_known) {
  const Layer& layer = layers_[index];
  row_.resize(static_cast<std::size_t>(posts.last - posts.first + 1));
  read_row(layer, row, posts.first, row_);
  bool known = true;
  for (std::size_t i = 0; i < row_.size(); ++i) {
    const float height = row_[i];
    const long column = posts.first + static_cast<long>(i);
    if (std::isnan(height)) {
      const bool wanted = column >= must_be_known.first && column <= must_be_known.last;
      if (known && wanted) known = others_know(index, row, column);
    } else if (!top_ || height > top_->height_m) {
      top_ = Top{height, &layer, row, column};
    }
  }
  return known;
}

bool CorridorScanner::others_know(std::size_t index, long row, long column) const {
  if (layers_.size() == 1) return false;
  const Layer& layer = layers_[index];
  std::vector<const Layer*> others;
  for (std::size_t i = 0; i < layers_.size(); ++i) {
    if (i != index) others.push_back(&layers_[i]);
  }
  return all_known(others, ground_box(layer, ground_of_post(layer, row, column)));
}

}  // namespace sweepwright::terrain
