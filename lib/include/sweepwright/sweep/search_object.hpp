// The search objects that the sweep width tables know, and how a person may call them.
//
// Conventions: an object's name is that of its table row: "Person in water". When names are
//   compared, letter case does not count and blanks, `-` and `_` are the same.
// Domain: an unknown name is an error that offers the nearest spellings; nothing is guessed.
// Promises:
//   P1 every name and every short name of a listed object reads back as that object.
//   P2 no name or short name stands for two objects (search_object_test.cpp).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/sweep/tables.hpp"

namespace sweepwright::sweep {

struct SearchObject {
  std::string name;
  Surface surface{};
  std::vector<std::string> aliases;
};

/// All objects of the width tables, in their order: for help and for the mission file.
std::vector<SearchObject> search_objects(const Tables& tables = built_in_tables());

/// The object of that name or short name. Throws Error (value) with the nearest spellings.
SearchObject parse_search_object(std::string_view text, const Tables& tables = built_in_tables());

}  // namespace sweepwright::sweep
