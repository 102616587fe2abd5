#include "sweepwright/formats/digest.hpp"

#include <sys/types.h>

extern "C" {
#include <sha2.h>
}

#include <array>
#include <cstdint>
#include <istream>

namespace sweepwright::formats {
namespace {

void update(SHA2_CTX& context, std::string_view bytes) {
  SHA256Update(&context, reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

std::string finished(SHA2_CTX& context) {
  std::array<std::uint8_t, SHA256_DIGEST_LENGTH> digest{};
  SHA256Final(digest.data(), &context);

  constexpr std::string_view kDigits = "0123456789abcdef";
  std::string text;
  for (const std::uint8_t byte : digest) {
    text += kDigits[byte >> 4];
    text += kDigits[byte & 15];
  }
  return text;
}

}  // namespace

std::string sha256(std::string_view bytes) {
  SHA2_CTX context;
  SHA256Init(&context);
  update(context, bytes);
  return finished(context);
}

std::string sha256(std::istream& stream) {
  SHA2_CTX context;
  SHA256Init(&context);
  std::array<char, 65536> piece{};
  while (stream.read(piece.data(), piece.size()), stream.gcount() > 0) {
    update(context, {piece.data(), static_cast<std::size_t>(stream.gcount())});
  }
  return finished(context);
}

}  // namespace sweepwright::formats
