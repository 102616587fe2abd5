#include "sweepwright/formats/sink.hpp"

#include <cerrno>
#include <cstring>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

[[noreturn]] void fail(const std::string& name) {
  throw Error(ErrorCode::unwritable, std::string("cannot write: ") + std::strerror(errno), {},
              name);
}

}  // namespace

void StreamSink::write(std::string_view bytes) {
  if (std::fwrite(bytes.data(), 1, bytes.size(), stream_) != bytes.size()) fail(name_);
}

void StreamSink::flush() {
  if (std::fflush(stream_) != 0) fail(name_);
}

}  // namespace sweepwright::formats
