// Provenance: where an output came from, so that it can be made again and told from another.
//
// Conventions: the stamp is handed in, never read from a clock: the same stamp gives the same
//   bytes.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/formats/property.hpp"

namespace sweepwright::formats {

/// A file that was read, and the digest of its bytes.
struct InputDigest {
  std::string name;    ///< as the user wrote it
  std::string sha256;  ///< as sha256() writes it
  bool operator==(const InputDigest&) const = default;
};

struct Provenance {
  std::string version;  ///< of Sweepwright: `0.1.0`
  std::string command;  ///< the command line
  TimePoint stamp{};
  std::vector<InputDigest> inputs;
  bool operator==(const Provenance&) const = default;
};

/// `Sweepwright 0.1.0`.
std::string creator(const Provenance& provenance);

/// One fact a line, without a line end after the last: program, command, stamp, inputs, reference
/// system; then the cautions. For people to read.
std::string provenance_text(const Provenance& provenance);

/// The same as a JSON object, the cautions included: `{"program":"Sweepwright",...}`.
RawJson provenance_json(const Provenance& provenance);

}  // namespace sweepwright::formats
