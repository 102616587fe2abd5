#include "sweepwright/terrain/elevation_model.hpp"

#include <algorithm>

#include "terrain/layer.hpp"

namespace sweepwright::terrain {
struct ElevationModel::Content {
  std::vector<ElevationTile> tiles;
  std::vector<Layer> layers;
};

ElevationModel::ElevationModel(std::vector<ElevationTile> tiles) {
  for (const ElevationTile& tile : tiles) check(tile);
  const auto content = std::make_shared<Content>();
  content->tiles = std::move(tiles);
  content->layers = make_layers(content->tiles);
  content_ = content;
}

const std::vector<ElevationTile>& ElevationModel::tiles() const {
  return content_->tiles;
}

const std::vector<Layer>& ElevationModel::layers() const {
  return content_->layers;
}

std::optional<Length> height(const ElevationModel& model, Position position) {
  for (const Layer& layer : model.layers()) {
    if (const std::optional<Length> surface = surface_height(layer, position)) return surface;
  }
  return std::nullopt;
}

std::vector<std::string> vertical_references(const ElevationModel& model) {
  std::vector<std::string> references;
  for (const ElevationTile& tile : model.tiles()) {
    std::string reference =
        tile.vertical_reference.empty() ? "not stated" : tile.vertical_reference;
    if (std::find(references.begin(), references.end(), reference) == references.end()) {
      references.push_back(std::move(reference));
    }
  }
  return references;
}

}  // namespace sweepwright::terrain
