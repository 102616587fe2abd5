// The runner of .clitest files is tested here: a runner that lets a mistake pass is worse than
// none.
#include "cli/clitest.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stdexcept>

#include "support/files.hpp"

namespace sweepwright::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::ThrowsMessage;
using Lines = std::vector<std::string>;

TEST(ClitestFile, is_read_case_by_case) {
  const auto cases = parse_clitest(
      "# comment\n"
      "$ first one\n"
      "> out\n"
      ">\n"
      "! err\n"
      "= 2\n"
      "\n"
      "$ second\n",
      "x.clitest");
  ASSERT_EQ(cases.size(), 2u);
  EXPECT_EQ(cases[0].line, 2);
  EXPECT_EQ(cases[0].command, "first one");
  EXPECT_THAT(cases[0].standard_output, ElementsAre("out", ""));
  EXPECT_THAT(cases[0].standard_error, ElementsAre("err"));
  EXPECT_EQ(cases[0].status, 2);
  EXPECT_EQ(cases[1].command, "second");
  EXPECT_THAT(cases[1].standard_output, IsEmpty());
  EXPECT_EQ(cases[1].status, 0);
}

TEST(ClitestFile, keeps_blanks_after_the_first) {
  EXPECT_THAT(parse_clitest("$ a\n>   two more \n", "x")[0].standard_output,
              ElementsAre("  two more "));
}

struct BadFile {
  const char* text;
  const char* message;
};

class ClitestMistake : public testing::TestWithParam<BadFile> {};

TEST_P(ClitestMistake, is_refused_with_its_place) {
  EXPECT_THAT([] { parse_clitest(GetParam().text, "x.clitest"); },
              ThrowsMessage<std::runtime_error>(HasSubstr(GetParam().message)));
}

INSTANTIATE_TEST_SUITE_P(
    All, ClitestMistake,
    testing::Values(BadFile{"", "x.clitest: no command"},
                    BadFile{"# only a comment\n", "x.clitest: no command"},
                    BadFile{"> out\n", "x.clitest:1: an expectation before the first command"},
                    BadFile{"$ a\nout\n", "x.clitest:2: no blank after the first character"},
                    BadFile{"$ a\n? out\n", "x.clitest:2: a line starts with one of"},
                    BadFile{"$ a\n>out\n", "x.clitest:2: no blank after the first character"},
                    BadFile{"$\n", "x.clitest:1: no command after $"},
                    BadFile{"$ a\n= two\n", "x.clitest:2: no number after ="},
                    BadFile{"$ a\n=\n", "x.clitest:2: no number after ="},
                    BadFile{"$ a\n= 1\n= 1\n", "x.clitest:3: a second exit status"},
                    BadFile{"$ a\n> ~(\n", "x.clitest:2: not a regular expression"},
                    BadFile{"$ a\n> out", "x.clitest:3: no blank after the first character"}),
    [](const auto& bad) { return "case_" + std::to_string(bad.index); });

TEST(ClitestOutput, shows_a_missing_line_end) {
  EXPECT_THAT(lines_of(""), IsEmpty());
  EXPECT_THAT(lines_of("a\n\nb\n"), ElementsAre("a", "", "b"));
  EXPECT_THAT(lines_of("a\nb"), ElementsAre("a", "b", "(no line end)"));
  EXPECT_THAT(lines_of("\n"), ElementsAre(""));
}

TEST(ClitestOutput, shows_what_cannot_be_seen) {
  EXPECT_THAT(lines_of("a\r\n\x1B[1mb\n"), ElementsAre("a\\r", "\\e[1mb"));
}

TEST(ClitestMatch, is_exact_without_signs) {
  EXPECT_TRUE(lines_match({}, {}));
  EXPECT_TRUE(lines_match({"a", "b"}, {"a", "b"}));
  EXPECT_FALSE(lines_match({"a"}, {}));
  EXPECT_FALSE(lines_match({}, {"a"}));
  EXPECT_FALSE(lines_match({"a"}, {"a", "b"}));
  EXPECT_FALSE(lines_match({"a", "b"}, {"b", "a"}));
  EXPECT_FALSE(lines_match({"a"}, {"a "}));
  EXPECT_FALSE(lines_match({"a.c"}, {"abc"}));
}

TEST(ClitestMatch, dots_stand_for_any_number_of_lines) {
  EXPECT_TRUE(lines_match({"..."}, {}));
  EXPECT_TRUE(lines_match({"..."}, {"a", "b"}));
  EXPECT_TRUE(lines_match({"a", "...", "z"}, {"a", "z"}));
  EXPECT_TRUE(lines_match({"a", "...", "z"}, {"a", "z", "b", "z"}));
  EXPECT_TRUE(lines_match({"...", "m", "..."}, {"a", "m", "z"}));
  EXPECT_FALSE(lines_match({"a", "...", "z"}, {"a", "z", "b"}));
  EXPECT_FALSE(lines_match({"...", "m", "..."}, {"a", "z"}));
}

TEST(ClitestMatch, tilde_is_a_regular_expression_for_a_whole_line) {
  EXPECT_TRUE(lines_match({"~[0-9]+ cells"}, {"12 cells"}));
  EXPECT_TRUE(lines_match({"~~a"}, {"~a"}));
  EXPECT_TRUE(lines_match({"~\\.\\.\\."}, {"..."}));
  EXPECT_FALSE(lines_match({"~[0-9]+"}, {"12 cells"}));
  EXPECT_FALSE(lines_match({"~[0-9]+"}, {}));
  EXPECT_TRUE(lines_match({"...", "~b+", "..."}, {"a", "bb", "c"}));
}

class ClitestRun : public testing::Test {
 protected:
  std::string run(const std::string& text) {
    return failures(parse_clitest(text, "x.clitest"), "x.clitest",
                    {program_folder_.path(), "/the data", "/the demos"});
  }
  TemporaryFolder program_folder_;
};

TEST_F(ClitestRun, passes_when_all_three_are_as_expected) {
  EXPECT_EQ(run("$ echo out; echo err >&2; exit 3\n> out\n! err\n= 3\n"), "");
  EXPECT_EQ(run("$ true\n"), "");
}

TEST_F(ClitestRun, compares_output_error_and_status) {
  EXPECT_EQ(run("$ echo out\n"),
            "x.clitest:1: $ echo out\n"
            "standard output expected:\n(nothing)\nstandard output found:\n> out\n\n");
  EXPECT_EQ(run("$ echo err >&2\n! other\n"),
            "x.clitest:1: $ echo err >&2\n"
            "standard error expected:\n! other\nstandard error found:\n! err\n\n");
  EXPECT_EQ(run("# c\n$ exit 3\n"),
            "x.clitest:2: $ exit 3\nexit status expected:\n= 0\nexit status found:\n= 3\n\n");
  EXPECT_THAT(run("$ true\n= 1\n"), HasSubstr("= 0"));
}

TEST_F(ClitestRun, keeps_the_folder_between_commands_and_starts_empty) {
  EXPECT_EQ(run("$ ls\n$ echo kept >f\n$ cat f\n> kept\n"), "");
}

TEST_F(ClitestRun, goes_on_after_a_failure) {
  const std::string report = run("$ false\n$ echo b\n> a\n");
  EXPECT_THAT(report, HasSubstr("x.clitest:1:"));
  EXPECT_THAT(report, HasSubstr("x.clitest:2:"));
}

TEST_F(ClitestRun, fixes_the_environment) {
  EXPECT_EQ(run("$ echo $LC_ALL $TZ $SOURCE_DATE_EPOCH\n> C UTC 0\n"), "");
  EXPECT_EQ(run("$ cat\n"), "");  // nothing on standard input
  EXPECT_EQ(run("$ echo \"$DATA/a $DEMOS/b $PWD/c\"\n> $DATA/a $DEMOS/b $PWD/c\n"), "");
}

TEST_F(ClitestRun, finds_the_command_under_test_first) {
  const auto program = program_folder_.path() / "sweepwright";
  write_file(program, "#!/bin/sh\necho \"under test: $1\"\n");
  std::filesystem::permissions(program, std::filesystem::perms::owner_all);
  EXPECT_EQ(run("$ sweepwright 'a b'\n> under test: a b\n"), "");
}

TEST_F(ClitestRun, reports_a_signal) {
  EXPECT_EQ(run("$ kill -9 $$\n= 137\n"), "");
}

}  // namespace
}  // namespace sweepwright::test
