// A million cells as GeoJSON and KML, streamed, beside the raw write of the same bytes.
#include <benchmark/benchmark.h>

#include <cstdio>
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

}  // namespace
