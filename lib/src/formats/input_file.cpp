#include "sweepwright/formats/input_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>

#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/digest.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

Error too_large(const std::string& size, std::size_t most_bytes) {
  return Error(ErrorCode::input,
               fmt::format("the file is too large: {}, and at most {:.1f} MB are read", size,
                           static_cast<double>(most_bytes) / 1e6),
               "is it the right file?");
}

std::string megabytes(std::uintmax_t bytes) {
  return fmt::format("{:.1f} MB", static_cast<double>(bytes) / 1e6);
}

struct Close {
  void operator()(std::FILE* stream) const { std::fclose(stream); }
};

Error unreadable(int reason) {
  return Error(ErrorCode::unreadable, "cannot be read: " + std::generic_category().message(reason));
}

std::string read_stream(std::FILE* stream, std::size_t most_bytes) {
  std::string text;
  std::array<char, 65536> piece{};
  while (const std::size_t count = std::fread(piece.data(), 1, piece.size(), stream)) {
    text.append(piece.data(), count);
    if (text.size() > most_bytes) {
      throw too_large("more than " + megabytes(most_bytes), most_bytes);
    }
  }
  if (std::ferror(stream)) throw unreadable(errno);
  return text;
}

std::string read_bytes(const std::string& path, std::size_t most_bytes) {
  if (path == "-") return read_stream(stdin, most_bytes);

  std::error_code reason;
  const fs::file_status status = fs::status(path, reason);
  if (status.type() == fs::file_type::not_found) {
    throw Error(ErrorCode::unreadable, "there is no such file", "check its name and folder");
  }
  if (reason) throw unreadable(reason.value());
  if (fs::is_directory(status)) {
    throw Error(ErrorCode::unreadable, "this is a folder, and a file is wanted",
                "name the file in it");
  }
  if (fs::is_regular_file(status)) {
    const std::uintmax_t size = fs::file_size(path, reason);
    if (!reason && size > most_bytes) throw too_large(megabytes(size), most_bytes);
  }
  const std::unique_ptr<std::FILE, Close> stream(std::fopen(path.c_str(), "rb"));
  if (!stream) throw unreadable(errno);
  return read_stream(stream.get(), most_bytes);
}

/// Where the text stops being UTF-8.
std::size_t first_broken_byte(std::string_view text) {
  std::size_t at = 0;
  while (const std::size_t length = character_length(text.substr(at))) at += length;
  return at;
}

Error not_utf8(std::string_view bytes) {
  if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF")) {
    return Error(ErrorCode::input, "the file is in UTF-16", "save it again as UTF-8");
  }
  const std::size_t at = first_broken_byte(bytes);
  const auto line =
      1 + std::count(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(at), '\n');
  return Error(ErrorCode::input,
               fmt::format("the file is not UTF-8 text: byte {} (0x{:02X}) on line {}", at + 1,
                           static_cast<unsigned char>(bytes[at]), line),
               "save it again as UTF-8");
}

InputBytes read_some_bytes(const std::string& path, std::size_t most_bytes) {
  InputBytes input{read_bytes(path, most_bytes), {}};
  if (input.bytes.empty()) throw Error(ErrorCode::input, "the file is empty");
  input.digest = {path, sha256(input.bytes)};
  return input;
}

InputText read(const std::string& path, std::size_t most_bytes) {
  auto [bytes, digest] = read_some_bytes(path, most_bytes);
  if (bytes.starts_with("PK\x03\x04")) {
    throw Error(ErrorCode::input, "this is a ZIP archive and no text",
                "a KMZ is one too: unpack it, and give the KML file that is in it");
  }
  if (!is_utf8(bytes)) throw not_utf8(bytes);
  InputText input{{}, std::move(digest)};
  if (bytes.starts_with(kByteOrderMark)) bytes.erase(0, kByteOrderMark.size());
  input.text = std::move(bytes);
  return input;
}

template <typename Read>
auto placed(const std::string& path, const Read& read) {
  try {
    return read();
  } catch (const Error& error) {
    throw error.at(path == "-" ? "standard input" : shown_path(path));
  }
}

}  // namespace

InputText read_text_file(const std::string& path, std::size_t most_bytes) {
  return placed(path, [&] { return read(path, most_bytes); });
}

InputBytes read_binary_file(const std::string& path, std::size_t most_bytes) {
  return placed(path, [&] { return read_some_bytes(path, most_bytes); });
}

}  // namespace sweepwright::formats
