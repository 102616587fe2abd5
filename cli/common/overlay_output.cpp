#include "common/overlay_output.hpp"

#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::cli {
namespace {

formats::OverlayFormat overlay_format(const std::string& name) {
  if (name == "kml") return formats::OverlayFormat::kml;
  if (name == "gpx") return formats::OverlayFormat::gpx;
  return formats::OverlayFormat::geojson;
}

}  // namespace

std::vector<std::string> overlay_formats() {
  return {"geojson", "kml", "gpx", std::string(kPicture)};
}

void write_overlay_to(const OutputOptions& output, const formats::Overlay& overlay,
                      const formats::Provenance& provenance) {
  const std::string format = output.format();
  output.write([&](formats::Sink& sink) {
    if (format == kPicture) {
      sink.write(formats::write_svg(formats::draw_overlay(overlay, kPictureSize)));
    } else {
      formats::write_overlay(sink, overlay, overlay_format(format), provenance);
    }
  });
}

}  // namespace sweepwright::cli
