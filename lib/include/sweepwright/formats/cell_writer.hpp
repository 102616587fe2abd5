// Writes the cells of a grid in any of the open formats, one after the other, in constant memory.
//
// Conventions: each cell carries at least its name, system and level: as GeoJSON properties, as KML
//   name and data, as CSV columns, as JSON members. A cell cut to an area is handed in with its
//   part of the ground in place of its own.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"
#include "sweepwright/grid/cell.hpp"

namespace sweepwright::formats {

enum class CellFormat { geojson, kml, csv, json };

class CellWriter {
 public:
  virtual ~CellWriter() = default;
  /// `more`: one value for each of CellFile::more.
  virtual void cell(const grid::Cell& cell, std::span<const PropertyValue> more) = 0;
  void cell(const grid::Cell& cell) { this->cell(cell, {}); }
  /// Ends the file. Without it the text is unfinished.
  virtual void finish() = 0;

 protected:
  CellWriter() = default;
  CellWriter(const CellWriter&) = delete;
  CellWriter& operator=(const CellWriter&) = delete;
};

struct CellFile {
  CellFormat format = CellFormat::geojson;
  /// A point at the middle of each cell, with its name: for GeoJSON and KML.
  bool labels = false;
  /// Names of further values that each cell carries.
  std::vector<std::string> more = {};
  /// What stands beside the cells, after the provenance: in GeoJSON and JSON.
  std::vector<Property> members = {};
};

/// The sink must outlive the writer.
std::unique_ptr<CellWriter> make_cell_writer(Sink& sink, const CellFile& file,
                                             const Provenance& provenance);

}  // namespace sweepwright::formats
