#include "cli/clitest.hpp"

#include <charconv>
#include <regex>
#include <stdexcept>

#include "support/command.hpp"
#include "support/files.hpp"

namespace sweepwright::test {
namespace {

constexpr std::string_view kAnyLines = "...";

bool is_regex(std::string_view expected) {
  return expected.starts_with('~');
}

std::regex to_regex(const std::string& expected) {
  return std::regex(expected.substr(1), std::regex::ECMAScript);
}

bool line_matches(const std::string& expected, const std::string& actual) {
  if (is_regex(expected)) return std::regex_match(actual, to_regex(expected));
  return expected == actual;
}

void replace_all(std::string& text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at)) {
    text.replace(at, what.size(), with);
    at += with.size();
  }
}

std::string block(char mark, const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) {
    text += mark;
    if (!line.empty()) text += ' ' + line;
    text += '\n';
  }
  return text.empty() ? "(nothing)\n" : text;
}

std::string difference(std::string_view what, const std::string& expected,
                       const std::string& actual) {
  return std::string(what) + " expected:\n" + expected + std::string(what) + " found:\n" + actual;
}

}  // namespace

std::vector<std::string> lines_of(std::string_view output) {
  std::vector<std::string> lines;
  while (!output.empty()) {
    const std::size_t end = output.find('\n');
    lines.emplace_back(output.substr(0, end));
    replace_all(lines.back(), "\r", "\\r");
    replace_all(lines.back(), "\x1B", "\\e");
    if (end == std::string_view::npos) {
      lines.emplace_back("(no line end)");
      break;
    }
    output.remove_prefix(end + 1);
  }
  return lines;
}

std::vector<CommandCase> parse_clitest(std::string_view text, const std::string& file) {
  std::vector<CommandCase> cases;
  int number = 0;
  const auto refuse = [&](const std::string& why) {
    throw std::runtime_error(file + ":" + std::to_string(number) + ": " + why);
  };
  const std::vector<std::string> lines = lines_of(text);
  bool has_status = false;
  for (const std::string& line : lines) {
    ++number;
    if (line.empty() || line.front() == '#') continue;
    const char kind = line.front();
    if (line.size() > 1 && line[1] != ' ') refuse("no blank after the first character");
    const std::string rest = line.size() > 2 ? line.substr(2) : "";
    if (kind == '$') {
      if (rest.empty()) refuse("no command after $");
      cases.push_back({number, rest, {}, {}, 0});
      has_status = false;
      continue;
    }
    if (kind != '>' && kind != '!' && kind != '=') refuse("a line starts with one of # $ > ! =");
    if (cases.empty()) refuse("an expectation before the first command");
    if (kind == '=') {
      const char* const end = rest.data() + rest.size();
      const auto parsed = std::from_chars(rest.data(), end, cases.back().status);
      if (parsed.ec != std::errc() || parsed.ptr != end) refuse("no number after =");
      if (has_status) refuse("a second exit status");
      has_status = true;
      continue;
    }
    try {
      if (is_regex(rest)) static_cast<void>(to_regex(rest));
    } catch (const std::regex_error& error) {
      refuse(std::string("not a regular expression: ") + error.what());
    }
    (kind == '>' ? cases.back().standard_output : cases.back().standard_error).push_back(rest);
  }
  if (cases.empty()) throw std::runtime_error(file + ": no command");
  return cases;
}

bool lines_match(const std::vector<std::string>& expected, const std::vector<std::string>& actual) {
  // reachable[a]: the first `a` actual lines can be what the expected lines so far stand for.
  std::vector<bool> reachable(actual.size() + 1, false);
  reachable[0] = true;
  for (const std::string& line : expected) {
    std::vector<bool> next(actual.size() + 1, false);
    for (std::size_t a = 0; a <= actual.size(); ++a) {
      if (line == kAnyLines) {
        next[a] = reachable[a] || (a > 0 && next[a - 1]);
      } else if (a > 0) {
        next[a] = reachable[a - 1] && line_matches(line, actual[a - 1]);
      }
    }
    reachable = next;
  }
  return reachable[actual.size()];
}

std::string failures(const std::vector<CommandCase>& cases, const std::string& file,
                     const CommandPlaces& places) {
  const TemporaryFolder folder;
  const std::map<std::string, std::string> environment{
      {"PATH", places.program_folder.string() + ":/usr/local/bin:/usr/bin:/bin"},
      {"LC_ALL", "C"},
      {"TZ", "UTC"},
      {"SOURCE_DATE_EPOCH", "0"},
      {"HOME", folder.path().string()},
      {"DATA", places.data.string()},
      {"DEMOS", places.demos.string()}};
  std::string report;
  for (const CommandCase& one : cases) {
    CommandResult result = run_command(one.command, folder.path(), environment);
    for (std::string* text : {&result.standard_output, &result.standard_error}) {
      replace_all(*text, places.data.string(), "$DATA");
      replace_all(*text, places.demos.string(), "$DEMOS");
      replace_all(*text, folder.path().string(), "$PWD");
    }
    const std::vector<std::string> output = lines_of(result.standard_output);
    const std::vector<std::string> error = lines_of(result.standard_error);
    std::string wrong;
    if (!lines_match(one.standard_output, output)) {
      wrong += difference("standard output", block('>', one.standard_output), block('>', output));
    }
    if (!lines_match(one.standard_error, error)) {
      wrong += difference("standard error", block('!', one.standard_error), block('!', error));
    }
    if (one.status != result.status) {
      wrong += difference("exit status", "= " + std::to_string(one.status) + '\n',
                          "= " + std::to_string(result.status) + '\n');
    }
    if (!wrong.empty()) {
      report += file + ":" + std::to_string(one.line) + ": $ " + one.command + '\n' + wrong + '\n';
    }
  }
  return report;
}

}  // namespace sweepwright::test
