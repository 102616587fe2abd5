#include "sweepwright/base/error.hpp"

#include <utility>

namespace sweepwright {
namespace {

std::string joined(const std::string& where, const std::string& message, const std::string& hint) {
  std::string text = where.empty() ? message : where + ": " + message;
  if (!hint.empty()) text += "; " + hint;
  return text;
}

}  // namespace

std::string_view name(ErrorCode code) {
  switch (code) {
    case ErrorCode::usage:
      return "usage";
    case ErrorCode::input:
      return "input";
    case ErrorCode::value:
      return "value";
    case ErrorCode::geometry:
      return "geometry";
    case ErrorCode::impossible:
      return "impossible";
    case ErrorCode::unreadable:
      return "unreadable";
    case ErrorCode::unwritable:
      return "unwritable";
  }
  return "unknown";
}

Error::Error(ErrorCode code, std::string message, std::string hint, std::string where)
    : std::runtime_error(joined(where, message, hint)),
      code_(code),
      message_(std::move(message)),
      hint_(std::move(hint)),
      where_(std::move(where)) {}

Error Error::at(std::string_view outer) const {
  std::string place(outer);
  if (!where_.empty()) place += ": " + where_;
  return Error(code_, message_, hint_, place);
}

}  // namespace sweepwright
