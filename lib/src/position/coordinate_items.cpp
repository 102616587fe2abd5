#include "position/coordinate_items.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <string>

#include "sweepwright/base/text.hpp"

namespace sweepwright::detail {
namespace {

constexpr int kMostDigits = 18;

struct Word {
  std::string_view text;
  enum Kind { north, south, east, west, latitude, longitude, degree, minute, second, filler } kind;
};

// Longest first where one word begins another, so that `DEGN` is a degree sign and a north.
constexpr std::array<Word, 28> kWords{{
    {"NORTH", Word::north},
    {"SOUTH", Word::south},
    {"EAST", Word::east},
    {"WEST", Word::west},
    {"LATITUDE", Word::latitude},
    {"LAT", Word::latitude},
    {"LONGITUDE", Word::longitude},
    {"LONG", Word::longitude},
    {"LON", Word::longitude},
    {"LNG", Word::longitude},
    {"DEGREES", Word::degree},
    {"DEGREE", Word::degree},
    {"DEGS", Word::degree},
    {"DEG", Word::degree},
    {"MINUTES", Word::minute},
    {"MINUTE", Word::minute},
    {"MINS", Word::minute},
    {"MIN", Word::minute},
    {"SECONDS", Word::second},
    {"SECOND", Word::second},
    {"SECS", Word::second},
    {"SEC", Word::second},
    {"AND", Word::filler},
    {"N", Word::north},
    {"E", Word::east},
    {"W", Word::west},
    {"D", Word::degree},
    {"M", Word::minute},
}};

constexpr std::array<std::string_view, 10> kLongWords{"north",    "south",     "east",    "west",
                                                      "latitude", "longitude", "degrees", "minutes",
                                                      "seconds",  "and"};

bool is_digit_at(std::string_view text, std::size_t i) {
  return i < text.size() && is_ascii_digit(text[i]);
}

unsigned separator(char c) {
  switch (c) {
    case ' ':
      return kSpace;
    case '-':
    case '_':
      return kDash;
    case ':':
    case '=':
      return kColon;
    case ',':
      return kComma;
    case '/':
      return kSlash;
    case ';':
      return kSemicolon;
    case '|':
      return kBar;
    default:
      return 0;
  }
}

class Scanner {
 public:
  Scanner(const PlainText& source, Comma comma)
      : source_(source), text_(source.text()), comma_(comma) {}

  std::variant<std::vector<Item>, TextFailure> scan() {
    while (at_ < text_.size() && !failure_) take_one();
    if (failure_) return *failure_;
    settle_seconds();
    return std::move(items_);
  }

 private:
  void fail(std::size_t at, std::string message, std::string hint = {}) {
    failure_ = TextFailure{source_.character(at), std::move(message), std::move(hint)};
  }

  void take_one() {
    const char c = text_[at_];
    if (is_ascii_digit(c) || (c == '.' && is_digit_at(text_, at_ + 1) && number_may_start())) {
      take_number('\0');
    } else if ((c == '-' || c == '+') && is_sign()) {
      ++at_;
      take_number(c);
    } else if (c == kDegreeSign) {
      take_mark(Unit::degree, false, 1);
    } else if (c == '\'') {
      const bool twice = at_ + 1 < text_.size() && text_[at_ + 1] == '\'';
      take_mark(twice ? Unit::second : Unit::minute, false, twice ? 2 : 1);
    } else if (c == '"') {
      take_mark(Unit::second, false, 1);
    } else if (is_ascii_letter(c)) {
      take_word();
    } else if (c == '.') {  // ends an abbreviation, a whole number or the sentence
      gap_ |= kSpace;
      ++at_;
    } else if (const unsigned bit = separator(c); bit != 0) {
      gap_ |= bit;
      local_gap_ |= bit;
      ++at_;
    } else if (c == kUnreadable) {
      fail(at_, "a character that no position is written with");
    } else {
      fail(at_, fmt::format("'{}' has no meaning in a latitude or longitude", c));
    }
  }

  /// A decimal point may begin a number only where nothing else touches it.
  bool number_may_start() const { return at_ == 0 || local_gap_ != 0; }

  /// A dash is a minus when a digit follows at once and no number or letter touches it in front.
  bool is_sign() const {
    const bool number_follows =
        is_digit_at(text_, at_ + 1) ||
        (at_ + 1 < text_.size() && text_[at_ + 1] == '.' && is_digit_at(text_, at_ + 2));
    if (text_[at_] == '+') return true;
    const bool free_in_front = items_.empty() ||
                               (local_gap_ & ~static_cast<unsigned>(kDash)) != 0 ||
                               items_.back().label();
    return number_follows && free_in_front && (local_gap_ & kDash) == 0;
  }

  std::size_t digits_end(std::size_t from) const {
    while (is_digit_at(text_, from)) ++from;
    return from;
  }

  bool is_decimal_sign(std::size_t at) const {
    return at < text_.size() &&
           (text_[at] == '.' || (text_[at] == ',' && comma_ == Comma::decimal)) &&
           is_digit_at(text_, at + 1);
  }

  void take_number(char sign) {
    const std::size_t start = at_;
    const std::size_t whole_end = digits_end(start);
    std::size_t end = whole_end;
    if (is_decimal_sign(whole_end)) end = digits_end(whole_end + 1);
    // 38.15.30: with more than one point, points separate.
    const bool pointed = end != whole_end && text_[whole_end] == '.' && end < text_.size() &&
                         text_[end] == '.' && is_digit_at(text_, end + 1);
    if (pointed || after_point_) end = whole_end;
    if (start == end) return fail(start, "a sign without a number");
    if (end - start > static_cast<std::size_t>(kMostDigits)) {
      return fail(start, fmt::format("a number of more than {} digits", kMostDigits));
    }
    Number number;
    number.sign = sign;
    number.whole_digits = static_cast<int>(whole_end - start);
    number.has_decimals = end != whole_end;
    number.decimal_comma = number.has_decimals && text_[whole_end] == ',';
    number.before = gap_;
    std::string digits(text_.substr(start, end - start));
    std::replace(digits.begin(), digits.end(), ',', '.');
    std::from_chars(digits.data(), digits.data() + digits.size(), number.value,
                    std::chars_format::fixed);
    add(sign == '\0' ? start : start - 1, number, end);
    gap_ = 0;
    after_point_ = end < text_.size() && text_[end] == '.' && is_digit_at(text_, end + 1);
    if (after_point_) {
      gap_ = kDot;
      ++at_;
    }
  }

  template <typename T>
  void add(std::size_t start, T item, std::size_t end) {
    items_.push_back({start, item});
    local_gap_ = 0;
    at_ = end;
  }

  /// Gives the number just read its unit.
  void take_mark(Unit unit, bool letter, std::size_t size) {
    Number* number = items_.empty() ? nullptr : std::get_if<Number>(&items_.back().is);
    if (number == nullptr) return fail(at_, fmt::format("{} without a number", unit_name(unit)));
    if (number->unit != Unit::unmarked) {
      return fail(at_, fmt::format("{} after a number that is marked already", unit_name(unit)));
    }
    number->unit = unit;
    number->letter_mark = letter;
    local_gap_ = 0;
    after_point_ = false;
    at_ += size;
  }

  static std::string_view unit_name(Unit unit) {
    return unit == Unit::degree   ? "a degree sign"
           : unit == Unit::minute ? "a minute sign"
                                  : "a second sign";
  }

  void take_word() {
    std::size_t end = at_;
    while (end < text_.size() && is_ascii_letter(text_[end])) ++end;
    const std::string_view run = text_.substr(at_, end - at_);
    if (run.front() == 'S' && !run.starts_with("SEC") && run != "SOUTH") return take_s(run);
    for (const Word& word : kWords) {
      if (!run.starts_with(word.text)) continue;
      // A unit may touch the hemisphere, as in 38DEGN; nothing else may touch.
      const std::string_view rest = run.substr(word.text.size());
      const bool mark = word.kind >= Word::degree && word.kind <= Word::second;
      if (!rest.empty() && !(mark && is_hemisphere_run(rest))) continue;
      return take_known(word);
    }
    unknown(run);
  }

  static bool is_hemisphere_run(std::string_view run) {
    return run == "N" || run == "S" || run == "E" || run == "W" || run == "NORTH" ||
           run == "SOUTH" || run == "EAST" || run == "WEST";
  }

  void unknown(std::string_view run) {
    fail(at_, fmt::format("'{}' is not a word of a latitude or longitude", printable(run)),
         run.size() >= 3 && !nearest_spellings(run, kLongWords).empty()
             ? spelling_hint(run, kLongWords)
             : std::string());
  }

  void take_known(const Word& word) {
    const std::size_t end = at_ + word.text.size();
    switch (word.kind) {
      case Word::north:
        return add(at_, Hemisphere{'N'}, end);
      case Word::south:
        return add(at_, Hemisphere{'S'}, end);
      case Word::east:
        return add(at_, Hemisphere{'E'}, end);
      case Word::west:
        return add(at_, Hemisphere{'W'}, end);
      case Word::latitude:
        return add(at_, Label{Axis::latitude}, end);
      case Word::longitude:
        return add(at_, Label{Axis::longitude}, end);
      case Word::degree:
        if (word.text == "D" && end == text_.size() && !has_letter_marks()) return unknown("D");
        return take_mark(Unit::degree, true, word.text.size());
      case Word::minute:
        return take_mark(Unit::minute, true, word.text.size());
      case Word::second:
        return take_mark(Unit::second, true, word.text.size());
      case Word::filler:
        gap_ |= kSpace;
        local_gap_ |= kSpace;
        at_ = end;
    }
  }

  bool has_letter_marks() const {
    return std::any_of(items_.begin(), items_.end(), [](const Item& item) {
      return item.number() != nullptr && item.number()->letter_mark;
    });
  }

  /// S is south, or the mark of seconds in 38D15M00S; settle_seconds() decides when all is read.
  void take_s(std::string_view run) {
    if (run != "S" && !is_hemisphere_run(run.substr(1))) return unknown(run);
    const std::size_t count = items_.size();
    const Number* last = count == 0 ? nullptr : items_.back().number();
    const Number* minutes = count < 2 ? nullptr : items_[count - 2].number();
    const bool maybe_mark = last != nullptr && last->unit == Unit::unmarked && minutes != nullptr &&
                            minutes->unit == Unit::minute && minutes->letter_mark;
    if (run != "S" && !maybe_mark) return unknown(run);
    add(at_, Hemisphere{'S', maybe_mark}, at_ + 1);
  }

  void settle_seconds() {
    int marks = 0;
    int letters = 0;
    for (const Item& item : items_) {
      if (item.hemisphere() != nullptr) ++(item.hemisphere()->maybe_second_mark ? marks : letters);
    }
    const bool all_marks = letters == 0 && marks == 2;
    std::vector<Item> settled;
    for (std::size_t i = 0; i < items_.size(); ++i) {
      const Hemisphere* letter = items_[i].hemisphere();
      const bool letter_follows = i + 1 < items_.size() && items_[i + 1].hemisphere() != nullptr;
      if (letter != nullptr && letter->maybe_second_mark && (letter_follows || all_marks)) {
        std::get<Number>(settled.back().is).unit = Unit::second;
      } else {
        settled.push_back(items_[i]);
      }
    }
    items_ = std::move(settled);
  }

  const PlainText& source_;
  std::string_view text_;
  Comma comma_;
  std::size_t at_ = 0;
  unsigned gap_ = 0;        ///< separators since the last number
  unsigned local_gap_ = 0;  ///< separators since the last item
  bool after_point_ = false;
  std::vector<Item> items_;
  std::optional<TextFailure> failure_;
};

}  // namespace

std::variant<std::vector<Item>, TextFailure> coordinate_items(const PlainText& text, Comma comma) {
  return Scanner(text, comma).scan();
}

bool has_comma_between_digits(std::string_view text) {
  for (std::size_t i = 1; i + 1 < text.size(); ++i) {
    if (text[i] == ',' && is_ascii_digit(text[i - 1]) && is_ascii_digit(text[i + 1])) return true;
  }
  return false;
}

}  // namespace sweepwright::detail
