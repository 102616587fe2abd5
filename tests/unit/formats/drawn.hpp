// What a Drawing holds, for the tests of maps, charts and pages.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::test {

template <typename Kind>
void collect(const std::vector<formats::Element>& elements, std::vector<Kind>& out) {
  for (const formats::Element& element : elements) {
    if (const Kind* found = std::get_if<Kind>(&element.what)) out.push_back(*found);
    if (const auto* group = std::get_if<formats::Group>(&element.what)) {
      collect(group->elements, out);
    }
  }
}

/// All elements of a kind, in the order drawn.
template <typename Kind>
std::vector<Kind> all(const formats::Drawing& drawing) {
  std::vector<Kind> out;
  collect(drawing.elements, out);
  return out;
}

inline std::multiset<std::string> words(const formats::Drawing& drawing) {
  std::multiset<std::string> out;
  for (const formats::Text& text : all<formats::Text>(drawing)) out.insert(text.text);
  return out;
}

inline bool are_apart(const formats::Text& first, const formats::Text& second) {
  const formats::PaperBox a = bounds(first);
  const formats::PaperBox b = bounds(second);
  return a.right_mm <= b.left_mm || b.right_mm <= a.left_mm || a.bottom_mm <= b.top_mm ||
         b.bottom_mm <= a.top_mm;
}

}  // namespace sweepwright::test
