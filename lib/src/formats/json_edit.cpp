#include "formats/json_edit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

/// Where something stands: from the first byte to the one behind the last.
struct Extent {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// A member of an object, or an item of a list (then without a name).
struct Part {
  std::string name;
  Extent whole;  ///< name and value
  Extent value;
};

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  std::size_t skip_blanks(std::size_t at) const {
    while (at < text_.size() && std::string_view(" \t\r\n").find(text_[at]) != text_.npos) ++at;
    return at;
  }

  /// Behind the value that begins at `at`.
  std::size_t skip_value(std::size_t at) const {
    if (at >= text_.size()) refuse();
    if (text_[at] == '"') return skip_text(at);
    if (text_[at] != '{' && text_[at] != '[') {
      while (at < text_.size() && std::string_view(",]} \t\r\n").find(text_[at]) == text_.npos) {
        ++at;
      }
      return at;
    }
    int depth = 0;
    while (at < text_.size()) {
      const char c = text_[at];
      if (c == '"') {
        at = skip_text(at);
        continue;
      }
      if (c == '{' || c == '[') ++depth;
      if (c == '}' || c == ']') --depth;
      ++at;
      if (depth == 0) return at;
    }
    refuse();
  }

  /// The members of the object, or items of the list, that begins at `at`.
  std::vector<Part> parts(std::size_t at) const {
    if (at >= text_.size() || (text_[at] != '{' && text_[at] != '[')) refuse();
    const bool object = text_[at] == '{';
    const char close = object ? '}' : ']';
    std::vector<Part> found;
    at = skip_blanks(at + 1);
    while (at < text_.size() && text_[at] != close) {
      Part part;
      part.whole.begin = at;
      if (object) {
        const std::size_t end = skip_text(at);
        part.name = std::string(text_.substr(at + 1, end - at - 2));
        at = skip_blanks(end);
        if (at >= text_.size() || text_[at] != ':') refuse();
        at = skip_blanks(at + 1);
      } else {
        part.name = std::to_string(found.size());
      }
      part.value.begin = at;
      at = skip_value(at);
      part.value.end = part.whole.end = at;
      found.push_back(std::move(part));
      at = skip_blanks(at);
      if (at < text_.size() && text_[at] == ',') at = skip_blanks(at + 1);
    }
    return found;
  }

 private:
  std::size_t skip_text(std::size_t at) const {
    if (at >= text_.size() || text_[at] != '"') refuse();
    for (++at; at < text_.size(); ++at) {
      if (text_[at] == '\\') {
        ++at;
      } else if (text_[at] == '"') {
        return at + 1;
      }
    }
    refuse();
  }

  [[noreturn]] static void refuse() {
    throw Error(ErrorCode::input, "the text is no JSON object with that member");
  }

  std::string_view text_;
};

/// Where the innermost object of a path stands, its parts, and which of them the path names last.
struct Place {
  std::size_t object = 0;
  std::vector<Part> parts;
  std::optional<std::size_t> part;
};

std::optional<std::size_t> named(const std::vector<Part>& parts, const std::string& name) {
  const auto found =
      std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.name == name; });
  if (found == parts.end()) return std::nullopt;
  return static_cast<std::size_t>(found - parts.begin());
}

std::optional<Place> find(std::string_view text, const JsonPath& path) {
  const Scanner scanner(text);
  Place place;
  place.object = scanner.skip_blanks(0);
  for (std::size_t i = 0; i < path.size(); ++i) {
    place.parts = scanner.parts(place.object);
    place.part = named(place.parts, path[i]);
    if (i + 1 == path.size()) return place;
    if (!place.part) return std::nullopt;
    place.object = place.parts[*place.part].value.begin;
  }
  return std::nullopt;
}

std::string replaced(std::string_view text, Extent extent, std::string_view by) {
  return fmt::format("{}{}{}", text.substr(0, extent.begin), by, text.substr(extent.end));
}

}  // namespace

std::string with_member(std::string_view text, const JsonPath& path, std::string_view json) {
  const std::optional<Place> place = find(text, path);
  if (!place) {
    throw Error(ErrorCode::input, fmt::format("the text has nothing that holds '{}'",
                                              path.empty() ? "" : printable(path.back())));
  }
  if (place->part) return replaced(text, place->parts[*place->part].value, json);
  const std::string member = fmt::format("\"{}\": {}", path.back(), json);
  if (place->parts.empty()) {
    return replaced(text, {place->object + 1, place->object + 1}, member);
  }
  // What stands between the opening brace and the first member stands before this one too.
  const std::size_t first = place->parts.front().whole.begin;
  const std::string_view indent = text.substr(place->object + 1, first - place->object - 1);
  const std::size_t end = place->parts.back().whole.end;
  return replaced(text, {end, end}, fmt::format(",{}{}", indent, member));
}

std::string without_member(std::string_view text, const JsonPath& path) {
  const std::optional<Place> place = find(text, path);
  if (!place || !place->part) return std::string(text);
  const std::vector<Part>& parts = place->parts;
  const std::size_t i = *place->part;
  if (i + 1 < parts.size()) {
    return replaced(text, {parts[i].whole.begin, parts[i + 1].whole.begin}, "");
  }
  const std::size_t begin = i > 0 ? parts[i - 1].whole.end : parts[i].whole.begin;
  return replaced(text, {begin, parts[i].whole.end}, "");
}

}  // namespace sweepwright::formats
