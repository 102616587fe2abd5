// A million cells as GeoJSON and KML, streamed, beside the raw write of the same bytes and beside
// GDAL: its command ogr2ogr, which reads the cells from FlatGeobuf, its quickest format. The last
// row, from FlatGeobuf to FlatGeobuf, is more than what it needs to read them.
#include <benchmark/benchmark.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

#include "sweepwright/formats/cell_writer.hpp"
#include "sweepwright/grid/systems.hpp"

namespace {

using sweepwright::Angle;
using namespace sweepwright::formats;

/// Counts bytes and hands them to a temporary file.
class TemporaryFile : public Sink {
 public:
  TemporaryFile() : file_(std::tmpfile()) {}
  ~TemporaryFile() override { std::fclose(file_); }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  void write(std::string_view bytes) override {
    std::fwrite(bytes.data(), 1, bytes.size(), file_);
    bytes_ += bytes.size();
  }
  std::size_t bytes() const { return bytes_; }

 private:
  std::FILE* file_;
  std::size_t bytes_ = 0;
};

/// 1,000 by 1,000 cells of one minute.
void visit_million(const sweepwright::grid::CellSink& sink) {
  const sweepwright::grid::Grid& grid = sweepwright::grid::grid("georef");
  const sweepwright::grid::LatLonBox box{Angle::degrees(20), Angle::degrees(20 + 1000 / 60.0),
                                         Angle::degrees(10), Angle::degrees(10 + 1000 / 60.0)};
  grid.visit(box, grid.level("1min"), sweepwright::grid::Selection::touching, sink);
}

std::size_t write_million(CellFormat format, Sink& sink) {
  const auto writer = make_cell_writer(sink, {.format = format}, Provenance{});
  std::size_t cells = 0;
  visit_million([&](const sweepwright::grid::Cell& cell) {
    writer->cell(cell);
    ++cells;
  });
  writer->finish();
  return cells;
}

void write_cells(benchmark::State& state, CellFormat format) {
  for (auto _ : state) {
    TemporaryFile file;
    const std::size_t cells = write_million(format, file);
    if (cells != 1'000'000) state.SkipWithError("not a million cells");
    state.counters["MB"] = static_cast<double>(file.bytes()) / 1e6;
  }
}

void raw_write(benchmark::State& state, CellFormat format) {
  StringSink text;
  write_million(format, text);
  for (auto _ : state) {
    std::FILE* file = std::tmpfile();
    std::fwrite(text.text().data(), 1, text.text().size(), file);
    std::fflush(file);
    std::fclose(file);
  }
}

/// A folder that is gone at the end, with the million cells as FlatGeobuf.
class GdalFolder {
 public:
  GdalFolder()
      : folder_(std::filesystem::temp_directory_path() /
                ("bench_cells." + std::to_string(getpid()))) {
    std::filesystem::create_directories(folder_);
    StringSink text;
    write_million(CellFormat::geojson, text);
    std::FILE* file = std::fopen((folder_ / "cells.geojson").c_str(), "wb");
    std::fwrite(text.text().data(), 1, text.text().size(), file);
    std::fclose(file);
    convert("FlatGeobuf", "cells.fgb", "cells.geojson");
  }
  ~GdalFolder() { std::filesystem::remove_all(folder_); }
  GdalFolder(const GdalFolder&) = delete;
  GdalFolder& operator=(const GdalFolder&) = delete;

  /// Throws when ogr2ogr fails.
  void convert(const std::string& format, const std::string& to,
               const std::string& from = "cells.fgb") const {
    const std::string command = "cd '" + folder_.string() + "' && rm -f " + to +
                                " && OGR_GEOJSON_MAX_OBJ_SIZE=0 ogr2ogr -f " + format + " " + to +
                                " " + from;
    if (std::system(command.c_str()) != 0) throw std::runtime_error("ogr2ogr failed: " + command);
  }

 private:
  std::filesystem::path folder_;
};

void by_gdal(benchmark::State& state, const std::string& format, const std::string& to) {
  static const GdalFolder folder;
  for (auto _ : state) folder.convert(format, to);
}

void GeoJsonByGdal(benchmark::State& state) {
  by_gdal(state, "GeoJSON", "out.geojson");
}
void KmlByGdal(benchmark::State& state) {
  by_gdal(state, "KML", "out.kml");
}
void FlatGeobufByGdal(benchmark::State& state) {
  by_gdal(state, "FlatGeobuf", "out.fgb");
}
void GeoJsonCells(benchmark::State& state) {
  write_cells(state, CellFormat::geojson);
}
void GeoJsonRawWrite(benchmark::State& state) {
  raw_write(state, CellFormat::geojson);
}
void KmlCells(benchmark::State& state) {
  write_cells(state, CellFormat::kml);
}
void KmlRawWrite(benchmark::State& state) {
  raw_write(state, CellFormat::kml);
}
void VisitOnly(benchmark::State& state) {
  for (auto _ : state) {
    std::size_t cells = 0;
    visit_million([&](const sweepwright::grid::Cell&) { ++cells; });
    benchmark::DoNotOptimize(cells);
  }
}

BENCHMARK(VisitOnly)->Unit(benchmark::kMillisecond);
BENCHMARK(GeoJsonCells)->Unit(benchmark::kMillisecond);
BENCHMARK(GeoJsonRawWrite)->Unit(benchmark::kMillisecond);
BENCHMARK(KmlCells)->Unit(benchmark::kMillisecond);
BENCHMARK(KmlRawWrite)->Unit(benchmark::kMillisecond);
BENCHMARK(GeoJsonByGdal)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);
BENCHMARK(KmlByGdal)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);
BENCHMARK(FlatGeobufByGdal)->Unit(benchmark::kMillisecond)->UseRealTime()->Iterations(1);

}  // namespace
