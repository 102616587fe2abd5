#include "position/coordinate_groups.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace sweepwright::detail {
namespace {

Axis axis_of(char letter) {
  return letter == 'N' || letter == 'S' ? Axis::latitude : Axis::longitude;
}

/// How strongly a gap parts two numbers.
int strength(unsigned gap) {
  if ((gap & (kSemicolon | kBar)) != 0) return 4;
  if ((gap & (kComma | kSlash)) != 0) return 3;
  if ((gap & kSpace) != 0) return 2;
  return 1;
}

class Sharing {
 public:
  Sharing(const PlainText& source, const std::vector<Item>& items) : source_(source) {
    for (const Item& item : items) {
      if (item.number() != nullptr) {
        numbers_.push_back(item);
      } else if (item.hemisphere() != nullptr) {
        letters_.push_back({item, numbers_.size()});
      } else {
        labels_.push_back({item, numbers_.size()});
      }
    }
  }

  std::variant<GroupPair, TextFailure> share() {
    check_counts();
    if (!failure_) find_split();
    if (!failure_) check_gaps();
    if (failure_) return *failure_;
    GroupPair pair;
    const auto middle = numbers_.begin() + static_cast<std::ptrdiff_t>(split_);
    pair.groups[0].numbers.assign(numbers_.begin(), middle);
    pair.groups[1].numbers.assign(middle, numbers_.end());
    if (!labels_.empty()) pair.axes = {label(0), label(1)};
    for (std::size_t i = 0; i < letters_.size(); ++i) pair.groups[i].letter = letters_[i].item;
    if (letters_.size() == 2) pair.axes = {letter_axis(0), letter_axis(1)};
    return pair;
  }

 private:
  /// A letter or label, and how many numbers stand before it.
  struct Placed {
    Item item;
    std::size_t numbers_before;
  };

  void fail(std::size_t at, std::string message, std::string hint = {}) {
    if (!failure_) {
      failure_ = TextFailure{source_.character(at), std::move(message), std::move(hint)};
    }
  }

  Axis letter_axis(std::size_t i) const { return axis_of(letters_[i].item.hemisphere()->letter); }
  Axis label(std::size_t i) const { return labels_[i].item.label()->axis; }
  const Number& number(std::size_t i) const { return *numbers_[i].number(); }
  std::size_t end() const { return source_.text().size(); }

  void check_counts() {
    if (numbers_.empty()) {
      return fail(letters_.empty() && labels_.empty() ? 0 : end(), "no number",
                  "write a position such as 38-15.00N 117-02.50W");
    }
    if (letters_.size() > 2) {
      return fail(letters_[2].item.at, "a third hemisphere letter",
                  "a position has one latitude and one longitude");
    }
    if (letters_.size() == 2 && letter_axis(0) == letter_axis(1)) {
      return fail(letters_[1].item.at, fmt::format("two {}s", axis_word(letter_axis(0))),
                  "a position has one latitude and one longitude");
    }
    if (!labels_.empty()) check_labels();
    if (!failure_ && letters_.size() == 1) check_lone_letter();
    if (!failure_ && numbers_.size() == 1 && letters_.size() != 2) {
      fail(end(), "only one coordinate", "write latitude and longitude");
    }
  }

  void check_lone_letter() {
    const Axis axis = letter_axis(0);
    if (numbers_.size() <= 3 && labels_.empty() &&
        letters_[0].numbers_before % numbers_.size() == 0 && !splits_by_itself()) {
      return fail(end(), fmt::format("only a {}", axis_word(axis)), "write latitude and longitude");
    }
    fail(letters_[0].item.at,
         fmt::format("a {} with a hemisphere letter, but a {} without", axis_word(axis),
                     axis == Axis::latitude ? "longitude" : "latitude"),
         axis == Axis::latitude ? "add E or W" : "add N or S");
  }

  /// True when the numbers cannot all belong to one coordinate.
  bool splits_by_itself() const {
    for (std::size_t i = 1; i < numbers_.size(); ++i) {
      if (number(i).sign != '\0' || number(i - 1).has_decimals || number(i).value >= 60)
        return true;
    }
    return false;
  }

  void check_labels() {
    if (labels_[0].numbers_before != 0) {
      return fail(labels_[0].item.at, "a label after the numbers",
                  "write the label first: lat 38.25 lon -117.04");
    }
    if (labels_.size() != 2 || label(0) == label(1)) {
      return fail(labels_.back().item.at, "labels for one coordinate only",
                  "label both: lat 38.25 lon -117.04");
    }
    for (std::size_t i = 0; i < letters_.size(); ++i) {
      if (letters_.size() == 2 && letter_axis(i) != label(i)) {
        return fail(letters_[i].item.at,
                    fmt::format("the letter {} with a label that says {}",
                                letters_[i].item.hemisphere()->letter, axis_word(label(i))));
      }
    }
  }

  static std::string_view axis_word(Axis axis) {
    return axis == Axis::latitude ? "latitude" : "longitude";
  }

  /// Sets split_, the number that begins the second coordinate.
  void find_split() {
    if (!labels_.empty() && labels_[1].numbers_before > 0) {  // lat 38 15, lon 117 02
      split_ = labels_[1].numbers_before;
      return check_split(labels_[1].item.at);
    }
    if (letters_.size() == 2) return split_at_letters();
    split_at_numbers();
  }

  void check_split(std::size_t at) {
    if (split_ == 0 || split_ >= numbers_.size()) {
      fail(split_ == 0 ? at : end(), "a coordinate without a number");
    }
  }

  void split_at_letters() {
    const std::size_t first = letters_[0].numbers_before;
    const std::size_t second = letters_[1].numbers_before;
    const std::size_t count = numbers_.size();
    if (first == 0 && second == count) {  // N 38 15 117 02 W
      split_at_numbers();
    } else if (first == 0) {  // N 38 15 W 117 02
      split_ = second;
    } else if (second == count) {  // 38 15 N 117 02 W
      split_ = first;
    } else if (first == 1 && second > first) {  // 38 N 15, 117 W 02
      split_ = second - 1;
      if (split_ == 1) {
        fail(numbers_[second].at, "a number after the last hemisphere letter",
             "write both letters after their numbers: 38-15N 117-02W");
      }
    } else {
      fail(letters_[1].item.at, "it is not clear to which numbers this letter belongs",
           "write both letters after their numbers: 38-15N 117-02W");
    }
    check_split(letters_[1].item.at);
  }

  /// Without letters: at a sign, a degree sign, the one strongest gap, or half way.
  void split_at_numbers() {
    std::vector<std::size_t> signs;
    std::vector<std::size_t> degrees;
    std::vector<std::size_t> strongest;
    int most = 0;
    for (std::size_t i = 1; i < numbers_.size(); ++i) {
      if (number(i).sign != '\0') signs.push_back(i);
      if (number(i).unit == Unit::degree) degrees.push_back(i);
      const int here = strength(number(i).before);
      if (here > most) strongest.clear();
      most = std::max(most, here);
      if (here == most) strongest.push_back(i);
    }
    const std::size_t half = numbers_.size() / 2;
    const bool even = numbers_.size() % 2 == 0;
    if (signs.size() == 1) {
      split_ = signs[0];
    } else if (signs.size() > 1) {
      fail(numbers_[signs[1]].at, "a second sign inside the position",
           "write each sign once, before the degrees");
    } else if (degrees.size() == 1) {
      split_ = degrees[0];
    } else if (strongest.size() == 1) {
      split_ = strongest[0];
    } else if (even && std::find(strongest.begin(), strongest.end(), half) != strongest.end()) {
      split_ = half;
    } else {
      fail(numbers_.back().at,
           fmt::format("{} numbers, and nothing that parts latitude from longitude",
                       numbers_.size()),
           "put a comma or hemisphere letters between latitude and longitude");
    }
  }

  /// 38:15 and 38 deg 15 are degrees and minutes of one coordinate.
  void check_parted() {
    const Number& second = number(split_);
    const bool degrees_then_bare =
        number(split_ - 1).unit == Unit::degree && second.unit == Unit::unmarked;
    const int wanted = degrees_then_bare ? 3 : 2;
    const bool dash = (second.before & kDash) != 0;  // check_gaps() tells about dashes
    if (second.sign != '\0' || second.unit == Unit::degree || dash ||
        strength(second.before) >= wanted) {
      return;
    }
    fail(numbers_[split_].at, "it is not clear that a second coordinate begins here",
         "put a comma between latitude and longitude");
  }

  /// Dashes and commas must mean one thing only.
  void check_gaps() {
    const unsigned between = number(split_).before;
    if (letters_.empty() && labels_.empty()) check_parted();
    if (letters_.empty() && labels_.empty() && (between & kDash) != 0) {
      return fail(numbers_[split_].at, "a dash before this number may be a minus or a separator",
                  "write hemisphere letters, or a comma and a minus");
    }
    const bool decimal_commas =
        number(split_ - 1).decimal_comma || numbers_.back().number()->decimal_comma;
    const bool both = number(split_ - 1).decimal_comma && numbers_.back().number()->decimal_comma;
    if (between == kComma && decimal_commas && !both) {  // 1,2,3
      return fail(numbers_[split_].at, "a comma before this number may be decimal or a separator",
                  "put a blank after commas that separate");
    }
    for (std::size_t i = 1; i < numbers_.size(); ++i) {
      const unsigned gap = number(i).before;
      if (i != split_ && (gap & kComma) != 0 && gap != between) {
        return fail(numbers_[i].at, "a comma inside a coordinate",
                    "use a decimal point, and one kind of separator throughout");
      }
    }
  }

  const PlainText& source_;
  std::vector<Item> numbers_;
  std::vector<Placed> letters_;
  std::vector<Placed> labels_;
  std::size_t split_ = 0;
  std::optional<TextFailure> failure_;
};

}  // namespace

std::variant<GroupPair, TextFailure> share_out(const PlainText& source,
                                               const std::vector<Item>& items) {
  return Sharing(source, items).share();
}

}  // namespace sweepwright::detail
