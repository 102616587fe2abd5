#include "sweepwright/terrain/corridor.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "terrain/corridor_scan.hpp"

namespace sweepwright::terrain {
namespace {

constexpr Length kMostHalfWidth = Length::kilometres(100);
constexpr Length kShortestPiece = Length::metres(100);
constexpr double kPiecesOfAPath = 200;

Length piece_length(Length whole, const CorridorOptions& options) {
  if (options.piece > Length()) return options.piece;
  return std::clamp(whole / kPiecesOfAPath, kShortestPiece,
                    std::max(kShortestPiece, options.half_width));
}

void check(const Path& path, Length whole, const CorridorOptions& options) {
  if (path.size() < 2 || !(whole > Length())) {
    throw Error(ErrorCode::value, "the line has no length", "give two places that differ");
  }
  if (!(options.half_width >= Length()) || options.half_width > kMostHalfWidth) {
    throw Error(
        ErrorCode::value,
        fmt::format("a corridor of {:.1f} km to each side", options.half_width.kilometres()),
        fmt::format("give a half-width of 0 to {:.0f} km", kMostHalfWidth.kilometres()));
  }
  if (!(options.piece >= Length())) {
    throw Error(ErrorCode::value, "pieces of less than no length", "leave their length out");
  }
  if (whole / piece_length(whole, options) + static_cast<double>(path.size()) > kMostPieces) {
    throw Error(ErrorCode::value,
                fmt::format("a line of {:.0f} km is too long for pieces of {:.0f} m",
                            whole.kilometres(), piece_length(whole, options).metres()),
                "give longer pieces, or a shorter line");
  }
}

class Surveyor {
 public:
  Surveyor(const ElevationModel& model, Length half_width, Length piece)
      : scanner_(model), piece_(piece) {
    corridor_.half_width = half_width;
  }

  void add_leg(int leg, Position from, Position to) {
    const GeodesicLine line = geodesic(from, to);
    const int count = std::max(1, static_cast<int>(std::ceil(line.length / piece_)));
    const auto place = [&](double pieces) {
      return travel(from, line.start_track, line.length * (pieces / count)).position;
    };
    Position start = from;
    for (int i = 0; i < count; ++i) {
      const Position end = i + 1 == count ? to : place(i + 1);
      const Stretch stretch{start,  place(i + 0.5), end, line.length / count,
                            i == 0, i + 1 == count};
      CorridorPiece piece;
      piece.leg = leg;
      piece.from = done_ + line.length * (static_cast<double>(i) / count);
      piece.to = done_ + line.length * (static_cast<double>(i + 1) / count);
      piece.start = start;
      piece.end = end;
      piece.below = scanner_.scan(stretch, Length()).highest;
      const Scan scan = scanner_.scan(stretch, corridor_.half_width);
      piece.highest = scan.highest;
      piece.known = scan.known;
      corridor_.pieces.push_back(piece);
      start = end;
    }
    done_ += line.length;
  }

  Corridor corridor() { return std::move(corridor_); }

 private:
  CorridorScanner scanner_;
  Length piece_;
  Length done_;
  Corridor corridor_;
};

}  // namespace

Corridor make_corridor(const ElevationModel& model, const Path& path,
                       const CorridorOptions& options) {
  const Length whole = length(path);
  check(path, whole, options);
  Surveyor surveyor(model, options.half_width, piece_length(whole, options));
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    surveyor.add_leg(static_cast<int>(i), path[i], path[i + 1]);
  }
  return surveyor.corridor();
}

Length length(const Corridor& corridor) {
  return corridor.pieces.back().to;
}

std::optional<HighGround> highest(const Corridor& corridor) {
  std::optional<HighGround> top;
  for (const CorridorPiece& piece : corridor.pieces) {
    if (piece.highest && (!top || piece.highest->height > top->height)) top = piece.highest;
  }
  return top;
}

bool known(const Corridor& corridor) {
  return std::all_of(corridor.pieces.begin(), corridor.pieces.end(),
                     [](const CorridorPiece& piece) { return piece.known; });
}

}  // namespace sweepwright::terrain
