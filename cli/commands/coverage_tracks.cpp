#include "commands/coverage_tracks.hpp"

#include <fmt/format.h>

#include <optional>

#include "common/output.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::cli {

void for_each_piece(const TrackOptions& tracks, Length sweep_width, bool tell_all,
                    const std::function<void(const debrief::SweptPiece&)>& sink) {
  const formats::TrackReadOptions reading = tracks.reading();
  const track::CleaningOptions cleaning = tracks.cleaning();
  for (const std::string& file : tracks.files()) {
    std::optional<Position> last;
    const formats::StreamedTrack read = formats::stream_track_file(
        file, reading, cleaning, [&](const track::Fix& fix, bool begins) {
          if (!begins && last) sink({*last, fix.position, sweep_width});
          last = fix.position;
        });
    if (!tell_all) continue;
    for (const std::string& statement : formats::statements(read.log, read.cleaning)) {
      tell(fmt::format("{}: {}", file, statement));
    }
  }
}

std::vector<formats::InputDigest> digests(const TrackOptions& tracks) {
  std::vector<formats::InputDigest> all;
  for (const std::string& file : tracks.files()) {
    if (file == "-") {
      throw Error(ErrorCode::usage, "a track on standard input cannot be read twice",
                  "write it to a file first", "--track");
    }
    all.push_back(track_digest(file));
  }
  return all;
}

}  // namespace sweepwright::cli
