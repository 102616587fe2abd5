#include "sweepwright/magnetic/model.hpp"

#include <fmt/format.h>

#include <cmath>
#include <vector>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::magnetic {
namespace {

constexpr std::string_view kHint = "give a coefficient file of the World Magnetic Model (WMM.COF)";
// No coefficient of the Earth's field comes near it, and sums of such numbers stay finite.
constexpr double kLargest = 1e6;

Error wrong(std::string message) {
  return Error(ErrorCode::input, std::move(message), std::string(kHint));
}

std::vector<std::string_view> words_of(std::string_view line) {
  std::vector<std::string_view> words;
  while (!(line = trimmed(line)).empty()) {
    words.push_back(line.substr(0, line.find_first_of(" \t")));
    line.remove_prefix(words.back().size());
  }
  return words;
}

double number(std::string_view word, std::string_view what) {
  const double value = parse_number(word, what);
  if (std::abs(value) > kLargest) {
    throw wrong(fmt::format("{} is {}, which no magnetic model has", what, printable(word)));
  }
  return value;
}

/// Reads a model line by line.
class ModelReader {
 public:
  /// False when the line ends the model.
  bool read(std::string_view line) {
    if (trimmed(line).empty() || trimmed(line).starts_with('#')) return true;
    if (!has_header_) {
      read_header(line);
    } else if (trimmed(line).find_first_not_of('9') == std::string_view::npos) {
      return false;
    } else {
      read_coefficient(line);
    }
    return true;
  }

  Model finish() const {
    if (!has_header_) throw wrong("the model is empty");
    if (degree_ <= kDegree) {
      throw wrong(fmt::format("the model ends before degree {} order {}", degree_, order_));
    }
    return model_;
  }

 private:
  void read_header(std::string_view line) {
    const std::vector<std::string_view> words = words_of(line);
    if (words.size() != 3) {
      throw wrong(
          fmt::format("expected epoch, name and date of release, found '{}'", printable(line)));
    }
    model_.epoch = DecimalYear(number(words[0], "the epoch"));
    if (model_.epoch < DecimalYear(1900) || model_.epoch > DecimalYear(2200)) {
      throw wrong(fmt::format("the epoch is {}, not a year", printable(words[0])));
    }
    model_.name = printable(words[1]);
    model_.released = printable(words[2]);
    has_header_ = true;
  }

  void read_coefficient(std::string_view line) {
    if (degree_ > kDegree) {
      throw wrong(fmt::format("expected the line of nines after degree {}, found '{}'", kDegree,
                              printable(line)));
    }
    const std::vector<std::string_view> words = words_of(line);
    if (words.size() != 6) {
      throw wrong(fmt::format("expected degree, order and four numbers, found '{}'",
                              printable(trimmed(line))));
    }
    if (words[0] != std::to_string(degree_) || words[1] != std::to_string(order_)) {
      throw wrong(fmt::format("expected degree {} order {}, found degree {} order {}", degree_,
                              order_, printable(words[0]), printable(words[1])));
    }
    Coefficient& read = model_.coefficients[index(degree_, order_)];
    read = {number(words[2], "g"), number(words[3], "h"), number(words[4], "the change of g"),
            number(words[5], "the change of h")};
    if (order_ == 0 && (read.h != 0 || read.h_rate != 0)) {
      throw wrong("order 0 has no h: both of its numbers must be 0");
    }
    if (++order_ > degree_) {
      ++degree_;
      order_ = 0;
    }
  }

  Model model_;
  bool has_header_ = false;
  int degree_ = 1;  // of the coefficient expected next
  int order_ = 0;
};

}  // namespace

Model parse_model(std::string_view text, std::string_view where) {
  ModelReader reader;
  int number = 0;
  try {
    for (bool more = true; more && !text.empty();) {
      ++number;
      const std::size_t end = text.find('\n');
      more = reader.read(text.substr(0, end));
      text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    return reader.finish();
  } catch (const Error& error) {
    // Whatever was wrong with a value, to the caller it is a model that cannot be read.
    throw Error(ErrorCode::input, error.message(), error.hint(),
                fmt::format("{}:{}", where, number));
  }
}

}  // namespace sweepwright::magnetic
