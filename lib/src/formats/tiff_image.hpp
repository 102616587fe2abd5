// TiffImage: a TIFF file in memory as numbers and GeoTIFF tags, through libtiff; private to the
// formats room.
//
// Errors: Error(input) with libtiff's own words.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace sweepwright::formats {

class TiffImage {
 public:
  /// The bytes must outlive the image.
  explicit TiffImage(std::string_view bytes);
  ~TiffImage();
  TiffImage(const TiffImage&) = delete;
  TiffImage& operator=(const TiffImage&) = delete;

  std::uint32_t width() const;
  std::uint32_t height() const;
  /// Values of a tag of doubles (33550, 33922, 34264, 34736); empty when it is absent.
  std::vector<double> doubles(std::uint32_t tag) const;
  /// The key directory, tag 34735.
  std::vector<std::uint16_t> keys() const;
  /// GDAL's tag 42113: the number that marks a gap, as text.
  std::string gap() const;
  /// All numbers, row by row from the top. Refuses several bands and other kinds of numbers.
  std::vector<float> numbers() const;

 private:
  struct File;
  std::unique_ptr<File> file_;
};

}  // namespace sweepwright::formats
