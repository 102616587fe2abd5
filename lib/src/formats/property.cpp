#include "sweepwright/formats/property.hpp"

#include <fmt/format.h>

#include "formats/number_text.hpp"

namespace sweepwright::formats {
namespace {

struct PlainText {
  std::string operator()(std::monostate) const { return {}; }
  std::string operator()(bool value) const { return value ? "true" : "false"; }
  std::string operator()(std::int64_t value) const { return fmt::format_int(value).str(); }
  std::string operator()(double value) const {
    std::string out;
    append_number(out, value);
    return out;
  }
  std::string operator()(const std::string& value) const { return value; }
  std::string operator()(const RawJson& value) const { return value.text; }
  template <typename Entry>
  std::string operator()(const std::vector<Entry>& entries) const {
    std::string out;
    for (std::size_t i = 0; i < entries.size(); ++i) {
      if (i > 0) out += "; ";
      out += (*this)(entries[i]);
    }
    return out;
  }
};

}  // namespace

std::string to_text(const PropertyValue& value) {
  return std::visit(PlainText{}, value);
}

}  // namespace sweepwright::formats
