// SHA-256 digests, by which every output says exactly which inputs it was made from.
//
// Accuracy: exact; digest_test.cpp checks the examples of the standard.
// Source: NIST FIPS 180-4, Secure Hash Standard, through libmd.
#pragma once

#include <iosfwd>
#include <string>
#include <string_view>

namespace sweepwright::formats {

/// The digest of the bytes: 64 hexadecimal digits in small letters.
std::string sha256(std::string_view bytes);
/// The same of all that a stream still has, in constant memory.
std::string sha256(std::istream& stream);

}  // namespace sweepwright::formats
