#include "sweepwright/formats/output_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <system_error>
#include <utility>

#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;

Error file_error(const fs::path& path, std::string message, std::string hint = {}) {
  return Error(ErrorCode::unwritable, std::move(message), std::move(hint),
               shown_path(path.string()));
}

Error already_there(const fs::path& path) {
  return file_error(path, "the file is already there",
                    "choose another name, or say that it may be overwritten");
}

/// Why the system refused, in words that say what to do.
Error refusal(const fs::path& path, int reason) {
  switch (reason) {
    case ENOENT:
    case ENOTDIR:
      return file_error(path, "the folder it should go into does not exist",
                        "make the folder first, or check its spelling");
    case EACCES:
    case EPERM:
    case EROFS:
      return file_error(path, "writing is not allowed here",
                        "choose a folder that you may write to");
    case ENOSPC:
    case EDQUOT:
      return file_error(path, "the disk is full", "free some space, or choose another folder");
    default:
      return file_error(path, "cannot write: " + std::generic_category().message(reason));
  }
}

/// A new hidden file beside `wanted`. Its name says whose it is, should it ever be left behind.
int open_beside(const fs::path& wanted, fs::path& temporary) {
  static std::atomic<unsigned> count = 0;
  for (;;) {
    const std::string name =
        fmt::format(".{}.{}-{}.part", wanted.filename().string(), ::getpid(), count++);
    temporary = wanted.parent_path() / name;
    const int file = ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file >= 0 || errno != EEXIST) return file;
  }
}

}  // namespace

OutputFile::OutputFile(const fs::path& path, Existing existing)
    : shown_(path), wanted_(path), existing_(existing) {
  std::error_code ignored;
  if (fs::is_symlink(path, ignored)) {
    const fs::path target = fs::weakly_canonical(path, ignored);
    if (!target.empty()) wanted_ = target;
  }
  const fs::file_status status = fs::status(wanted_, ignored);
  if (wanted_.empty() || !wanted_.has_filename()) {
    throw file_error(path, "this names no file", "add a file name");
  }
  if (fs::is_directory(status)) {
    throw file_error(path, "this is a folder, and a file is to be written", "add a file name");
  }
  const bool there = fs::exists(status);
  if (there && fs::is_regular_file(status) && existing == Existing::refuse) {
    throw already_there(shown_);
  }

  const bool ordinary = !there || fs::is_regular_file(status);
  const int file =
      ordinary ? open_beside(wanted_, temporary_) : ::open(wanted_.c_str(), O_WRONLY | O_CLOEXEC);
  if (file < 0) throw refusal(shown_, errno);
  stream_ = ::fdopen(file, "wb");
  if (stream_ == nullptr) {
    const int reason = errno;
    ::close(file);
    discard();
    throw refusal(shown_, reason);
  }
}

OutputFile::~OutputFile() {
  discard();
}

void OutputFile::write(std::string_view bytes) {
  if (std::fwrite(bytes.data(), 1, bytes.size(), stream_) != bytes.size()) fail_writing();
}

void OutputFile::commit() {
  if (std::fflush(stream_) != 0) fail_writing();
  std::FILE* const stream = std::exchange(stream_, nullptr);
  if (std::fclose(stream) != 0) fail_writing();
  if (temporary_.empty()) return;

  std::error_code reason;
  if (existing_ == Existing::refuse && fs::exists(wanted_, reason)) {
    discard();
    throw already_there(shown_);
  }
  fs::rename(temporary_, wanted_, reason);
  if (reason) {
    discard();
    throw refusal(shown_, reason.value());
  }
  temporary_.clear();
}

void OutputFile::fail_writing() {
  const int reason = errno;
  discard();
  throw refusal(shown_, reason);
}

void OutputFile::discard() noexcept {
  if (stream_ != nullptr) std::fclose(stream_);
  stream_ = nullptr;
  std::error_code ignored;
  if (!temporary_.empty()) fs::remove(temporary_, ignored);
  temporary_.clear();
}

void write_text_file(const fs::path& path, std::string_view text, Existing existing) {
  OutputFile file(path, existing);
  file.write(text);
  file.commit();
}

}  // namespace sweepwright::formats
