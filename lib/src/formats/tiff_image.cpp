#include "formats/tiff_image.hpp"

#include <fmt/format.h>
#include <tiffio.h>

#include <algorithm>
#include <cstdarg>
#include <cstdio>
#include <cstring>
#include <limits>
#include <span>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/terrain/elevation_tile.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::uint32_t kKeyDirectory = 34735;
constexpr std::uint32_t kGapText = 42113;
constexpr tmsize_t kLargestAllocation = 1'000'000'000;

/// The file in memory, as libtiff reads it; and what libtiff complained of.
struct Source {
  std::string_view bytes;
  std::size_t at = 0;
  std::string complaint;
};

Source& source(thandle_t handle) {
  return *static_cast<Source*>(handle);
}

tmsize_t read_some(thandle_t handle, void* out, tmsize_t size) {
  Source& from = source(handle);
  const std::size_t left = from.bytes.size() - std::min(from.at, from.bytes.size());
  const std::size_t count = std::min(left, static_cast<std::size_t>(std::max<tmsize_t>(size, 0)));
  if (count > 0) std::memcpy(out, from.bytes.data() + from.at, count);
  from.at += count;
  return static_cast<tmsize_t>(count);
}

tmsize_t write_nothing(thandle_t, void*, tmsize_t) {
  return -1;
}

toff_t seek_to(thandle_t handle, toff_t offset, int whence) {
  Source& in = source(handle);
  if (whence == SEEK_CUR) offset += in.at;
  if (whence == SEEK_END) offset += in.bytes.size();
  in.at = static_cast<std::size_t>(offset);
  return offset;
}

int close_nothing(thandle_t) {
  return 0;
}

toff_t size_of(thandle_t handle) {
  return source(handle).bytes.size();
}

int keep_complaint(TIFF*, void* data, const char*, const char* format, std::va_list arguments) {
  char text[256];
  std::vsnprintf(text, sizeof text, format, arguments);
  Source& in = *static_cast<Source*>(data);
  if (in.complaint.empty()) in.complaint = text;
  return 1;
}

int ignore_warning(TIFF*, void*, const char*, const char*, std::va_list) {
  return 1;
}

template <typename Number>
float to_float(const unsigned char* at) {
  Number value{};
  std::memcpy(&value, at, sizeof value);
  return static_cast<float>(value);
}

using ToFloat = float (*)(const unsigned char*);

/// How to read one number of the file; none for kinds that are not read.
ToFloat reader_of(std::uint16_t format, std::uint16_t bits) {
  if (format == SAMPLEFORMAT_IEEEFP && bits == 32) return to_float<float>;
  if (format == SAMPLEFORMAT_IEEEFP && bits == 64) return to_float<double>;
  if (format == SAMPLEFORMAT_INT && bits == 8) return to_float<std::int8_t>;
  if (format == SAMPLEFORMAT_INT && bits == 16) return to_float<std::int16_t>;
  if (format == SAMPLEFORMAT_INT && bits == 32) return to_float<std::int32_t>;
  if (format == SAMPLEFORMAT_UINT && bits == 8) return to_float<std::uint8_t>;
  if (format == SAMPLEFORMAT_UINT && bits == 16) return to_float<std::uint16_t>;
  if (format == SAMPLEFORMAT_UINT && bits == 32) return to_float<std::uint32_t>;
  return nullptr;
}

}  // namespace

struct TiffImage::File {
  Source source;
  TIFF* tiff = nullptr;

  [[noreturn]] void fail(std::string_view what) const {
    throw Error(ErrorCode::input,
                source.complaint.empty() ? std::string(what)
                                         : fmt::format("{}: {}", what, printable(source.complaint)),
                "is the file damaged?");
  }

  /// Values of a tag that libtiff knows nothing of but its type; none when it is absent or of
  /// another type.
  template <typename Value>
  std::span<const Value> values(std::uint32_t tag, TIFFDataType type) const {
    const TIFFField* known = TIFFFindField(tiff, tag, TIFF_ANY);
    if (known == nullptr || TIFFFieldDataType(known) != type || TIFFFieldPassCount(known) == 0) {
      return {};
    }
    const Value* first = nullptr;
    // The width of the count is the field's own choice.
    std::uint16_t few = 0;
    std::uint32_t many = 0;
    const bool wide = TIFFFieldReadCount(known) == TIFF_VARIABLE2;
    const int found =
        wide ? TIFFGetField(tiff, tag, &many, &first) : TIFFGetField(tiff, tag, &few, &first);
    if (found == 0 || first == nullptr) return {};
    return {first, wide ? many : few};
  }

  template <typename Value>
  Value field(std::uint32_t tag) const {
    Value value{};
    TIFFGetFieldDefaulted(tiff, tag, &value);
    return value;
  }
};

TiffImage::TiffImage(std::string_view bytes) : file_(std::make_unique<File>()) {
  file_->source.bytes = bytes;
  TIFFOpenOptions* options = TIFFOpenOptionsAlloc();
  TIFFOpenOptionsSetMaxSingleMemAlloc(options, kLargestAllocation);
  TIFFOpenOptionsSetErrorHandlerExtR(options, keep_complaint, &file_->source);
  TIFFOpenOptionsSetWarningHandlerExtR(options, ignore_warning, nullptr);
  // `m`: not mapped; `O`: strip offsets as they are needed.
  file_->tiff = TIFFClientOpenExt("image", "rmO", &file_->source, read_some, write_nothing, seek_to,
                                  close_nothing, size_of, nullptr, nullptr, options);
  TIFFOpenOptionsFree(options);
  if (file_->tiff == nullptr) file_->fail("the TIFF cannot be read");
}

TiffImage::~TiffImage() {
  if (file_->tiff != nullptr) TIFFClose(file_->tiff);
}

std::uint32_t TiffImage::width() const {
  return file_->field<std::uint32_t>(TIFFTAG_IMAGEWIDTH);
}

std::uint32_t TiffImage::height() const {
  return file_->field<std::uint32_t>(TIFFTAG_IMAGELENGTH);
}

std::vector<double> TiffImage::doubles(std::uint32_t tag) const {
  const std::span<const double> values = file_->values<double>(tag, TIFF_DOUBLE);
  return {values.begin(), values.end()};
}

std::vector<std::uint16_t> TiffImage::keys() const {
  const auto values = file_->values<std::uint16_t>(kKeyDirectory, TIFF_SHORT);
  return {values.begin(), values.end()};
}

std::string TiffImage::gap() const {
  const std::span<const char> text = file_->values<char>(kGapText, TIFF_ASCII);
  const auto end = std::find(text.begin(), text.end(), '\0');
  return std::string(trimmed(std::string(text.begin(), end)));
}

std::vector<float> TiffImage::numbers() const {
  TIFF* tiff = file_->tiff;
  if (file_->field<std::uint16_t>(TIFFTAG_SAMPLESPERPIXEL) != 1) {
    throw Error(ErrorCode::input, "the image has several bands, and heights are one",
                "is it a picture?");
  }
  const auto bits = file_->field<std::uint16_t>(TIFFTAG_BITSPERSAMPLE);
  const ToFloat number = reader_of(file_->field<std::uint16_t>(TIFFTAG_SAMPLEFORMAT), bits);
  if (number == nullptr) {
    throw Error(ErrorCode::input,
                fmt::format("the image has numbers of {} bits of a kind that is not read", bits),
                "turn it into 16 bit whole or 32 bit floating numbers");
  }
  const std::size_t columns = width();
  const std::size_t rows = height();
  if (columns == 0 || rows == 0 || columns > terrain::kMostPosts / rows) {
    throw Error(
        ErrorCode::input, fmt::format("the image has {} rows of {} numbers", rows, columns),
        fmt::format("at most {} million heights are read", terrain::kMostPosts / 1'000'000));
  }
  const bool tiled = TIFFIsTiled(tiff) != 0;
  const std::size_t block_columns =
      tiled ? file_->field<std::uint32_t>(TIFFTAG_TILEWIDTH) : columns;
  const std::size_t block_rows =
      tiled ? file_->field<std::uint32_t>(TIFFTAG_TILELENGTH)
            : std::min<std::size_t>(file_->field<std::uint32_t>(TIFFTAG_ROWSPERSTRIP), rows);
  const tmsize_t block_bytes = tiled ? TIFFTileSize(tiff) : TIFFStripSize(tiff);
  const std::size_t bytes = bits / 8U;
  if (block_columns == 0 || block_rows == 0 || block_bytes <= 0 ||
      block_bytes > kLargestAllocation ||
      static_cast<std::size_t>(block_bytes) / bytes / block_columns < block_rows) {
    file_->fail("the image is cut into pieces of no size");
  }
  std::vector<unsigned char> block(static_cast<std::size_t>(block_bytes));
  std::vector<float> all(columns * rows);
  std::uint32_t index = 0;
  for (std::size_t top = 0; top < rows; top += block_rows) {
    for (std::size_t left = 0; left < columns; left += block_columns, ++index) {
      const tmsize_t got = tiled ? TIFFReadEncodedTile(tiff, index, block.data(), block_bytes)
                                 : TIFFReadEncodedStrip(tiff, index, block.data(), block_bytes);
      const std::size_t height_here = std::min(block_rows, rows - top);
      const std::size_t width_here = std::min(block_columns, columns - left);
      const std::size_t needed = ((height_here - 1) * block_columns + width_here) * bytes;
      if (got < 0 || static_cast<std::size_t>(got) < needed) file_->fail("the image is cut off");
      for (std::size_t row = 0; row < height_here; ++row) {
        for (std::size_t column = 0; column < width_here; ++column) {
          all[(top + row) * columns + left + column] =
              number(block.data() + (row * block_columns + column) * bytes);
        }
      }
    }
  }
  return all;
}

}  // namespace sweepwright::formats
