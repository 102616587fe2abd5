#include "sweepwright/sweep/search_object.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweep/name_matching.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::sweep {

std::vector<SearchObject> search_objects(const Tables& tables) {
  std::vector<SearchObject> objects;
  for (const WidthTable& table : tables.widths) {
    for (const WidthRow& row : table.rows) {
      const bool known = std::any_of(
          objects.begin(), objects.end(),
          [&](const SearchObject& object) { return same_name(object.name, row.object); });
      if (!known) objects.push_back({row.object, table.surface, {}});
    }
  }
  for (const ObjectAliases& entry : tables.aliases) {
    for (SearchObject& object : objects) {
      if (!same_name(object.name, entry.object)) continue;
      object.aliases.insert(object.aliases.end(), entry.aliases.begin(), entry.aliases.end());
    }
  }
  return objects;
}

SearchObject parse_search_object(std::string_view text, const Tables& tables) {
  const std::vector<SearchObject> objects = search_objects(tables);
  for (const SearchObject& object : objects) {
    if (same_name(object.name, text) || holds_name(object.aliases, text)) return object;
  }
  std::vector<std::string_view> names;
  std::vector<std::string_view> all;
  for (const SearchObject& object : objects) {
    names.push_back(object.name);
    all.push_back(object.name);
    all.insert(all.end(), object.aliases.begin(), object.aliases.end());
  }
  // When no spelling is near, the full list names each object once, without its short names.
  const bool near = !nearest_spellings(text, all).empty();
  throw Error(ErrorCode::value,
              fmt::format("'{}' is not a search object of the sweep width tables", printable(text)),
              spelling_hint(text, near ? all : names));
}

}  // namespace sweepwright::sweep
