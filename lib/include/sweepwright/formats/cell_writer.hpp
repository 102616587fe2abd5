// Writes the cells of a grid in any of the open formats, one after the other, in constant memory.
//
// Conventions: each cell carries at least its name, system and level: as GeoJSON properties, as KML
//   name and data, as CSV columns, as JSON members.
#pragma once

#include <memory>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"
#include "sweepwright/grid/cell.hpp"

namespace sweepwright::formats {

enum class CellFormat { geojson, kml, csv, json };

class CellWriter {
 public:
  virtual ~CellWriter() = default;
  virtual void cell(const grid::Cell& cell) = 0;
  /// Ends the file. Without it the text is unfinished.
  virtual void finish() = 0;

 protected:
  CellWriter() = default;
  CellWriter(const CellWriter&) = delete;
  CellWriter& operator=(const CellWriter&) = delete;
};

/// The sink must outlive the writer.
std::unique_ptr<CellWriter> make_cell_writer(Sink& sink, CellFormat format,
                                             const Provenance& provenance);

}  // namespace sweepwright::formats
