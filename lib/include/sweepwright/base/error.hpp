// The one error type: what went wrong, where, and how to mend it.
//
// Every room throws Error and nothing else; failures of libraries underneath are turned into it at
// the room's edge. The command turns it into one message and one exit status (cli/main.cpp).
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace sweepwright {

/// The closed list of errors. docs/reference/errors.md describes each.
enum class ErrorCode {
  usage,       ///< the command line was wrong
  input,       ///< an input file or text could not be understood
  value,       ///< a value was understood but cannot be used (out of range, contradicts another)
  geometry,    ///< an area or line cannot be worked with (crosses itself, has no area, too large)
  impossible,  ///< the request is clear but cannot be met (no leg fits, endurance too short)
  unreadable,  ///< an input file is missing or cannot be read
  unwritable,  ///< an output cannot be written
};

/// The code's fixed name, as in JSON output and docs/reference/errors.md.
std::string_view name(ErrorCode code);

/// An error that a person can act on. what() joins all parts into one line.
class Error : public std::runtime_error {
 public:
  /// `message`: what was found and what was expected. `hint`: how to mend it (may be empty).
  /// `where`: file and line, JSON pointer, option or position (may be empty).
  Error(ErrorCode code, std::string message, std::string hint = {}, std::string where = {});

  ErrorCode code() const { return code_; }
  const std::string& message() const { return message_; }
  const std::string& hint() const { return hint_; }
  const std::string& where() const { return where_; }

  /// The same error, placed: `outer` is put before what `where` already says.
  Error at(std::string_view outer) const;

 private:
  ErrorCode code_;
  std::string message_;
  std::string hint_;
  std::string where_;
};

}  // namespace sweepwright
