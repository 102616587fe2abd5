#include "formats/json_cursor.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {

void Mistakes::add(int line, const std::string& pointer, const Error& error) {
  const std::string place = fmt::format("line {}{}{}", line, pointer.empty() ? "" : " ", pointer);
  list_.push_back({line, error.at(place)});
}

std::vector<Mistakes::Mistake> Mistakes::by_line() const {
  std::vector<Mistake> sorted = list_;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Mistake& a, const Mistake& b) { return a.line < b.line; });
  return sorted;
}

std::vector<std::string> Mistakes::texts() const {
  std::vector<std::string> all;
  for (const Mistake& mistake : by_line()) all.emplace_back(mistake.error.what());
  return all;
}

void Mistakes::throw_if_any(std::string_view file) const {
  if (list_.empty()) return;
  const std::vector<Mistake> sorted = by_line();
  const Error& first = sorted.front().error;
  if (sorted.size() == 1) throw first.at(file);
  constexpr std::size_t kMostShown = 10;
  std::string message = fmt::format("{} mistakes", sorted.size());
  for (std::size_t i = 0; i < sorted.size() && i < kMostShown; ++i) {
    message += fmt::format("\n  {}", sorted[i].error.what());
  }
  if (sorted.size() > kMostShown) {
    message += fmt::format("\n  and {} more", sorted.size() - kMostShown);
  }
  throw Error(first.code(), message, {}, std::string(file));
}

JsonCursor JsonCursor::child(std::string_view part, const JsonValue& value) const {
  return JsonCursor(value, pointer_ + "/" + pointer_part(part), *mistakes_);
}

const std::string& JsonCursor::text(std::string_view wanted) const {
  if (value_->kind != JsonKind::text) {
    throw Error(ErrorCode::input, fmt::format("found {}", shown(*value_)),
                fmt::format("write {}", wanted));
  }
  return value_->text;
}

double JsonCursor::number(std::string_view wanted) const {
  if (value_->kind != JsonKind::number) {
    throw Error(ErrorCode::input, fmt::format("found {}", shown(*value_)),
                fmt::format("write {}", wanted));
  }
  return value_->number;
}

void JsonCursor::require_list(std::size_t least, std::size_t most) const {
  if (value_->kind != JsonKind::array) {
    throw Error(ErrorCode::input, fmt::format("found {}", shown(*value_)),
                "write a list in brackets [...]");
  }
  const std::size_t size = value_->items.size();
  if (size < least || size > most) {
    throw Error(ErrorCode::value, fmt::format("the list has {} items", size),
                fmt::format("write {} to {}", least, most));
  }
}

JsonObject::JsonObject(JsonCursor cursor)
    : cursor_(std::move(cursor)), mistakes_before_(cursor_.mistakes().count()) {
  if (cursor_.value().kind != JsonKind::object) {
    throw Error(ErrorCode::input, fmt::format("found {}", shown(cursor_.value())),
                "write an object, its fields between { and }");
  }
}

const JsonValue* JsonObject::find(std::string_view field) const {
  const std::vector<JsonMember>& members = cursor_.value().members;
  const auto found = std::find_if(members.begin(), members.end(),
                                  [&](const JsonMember& member) { return member.name == field; });
  return found == members.end() ? nullptr : &found->value;
}

void JsonObject::mistake(std::string_view field, const Error& error) const {
  const JsonValue* const value = find(field);
  (value == nullptr ? cursor_ : cursor_.child(field, *value)).mistake(error);
}

void JsonObject::finish() const {
  std::vector<std::string_view> misspelt;
  for (const JsonMember& member : cursor_.value().members) {
    if (std::find(known_.begin(), known_.end(), member.name) != known_.end()) continue;
    cursor_.child(member.name, member.value)
        .mistake(Error(ErrorCode::input,
                       fmt::format("the field '{}' is not known here", printable(member.name)),
                       spelling_hint(member.name, known_)));
    misspelt.push_back(member.name);
  }
  for (const std::string_view field : missing_) {
    // A misspelt field has been named already, with this spelling.
    const std::array<std::string_view, 1> spelling{field};
    const bool named = std::any_of(misspelt.begin(), misspelt.end(), [&](std::string_view word) {
      return !nearest_spellings(word, spelling).empty();
    });
    if (!named) {
      cursor_.mistake(Error(ErrorCode::input, fmt::format("the field '{}' is missing", field)));
    }
  }
}

}  // namespace sweepwright::formats
