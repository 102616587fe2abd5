#include "sweepwright/formats/input_file.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <chrono>
#include <fstream>
#include <thread>

#include "support/files.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/digest.hpp"

namespace sweepwright::formats {
namespace {

using testing::HasSubstr;

class InputFile : public testing::Test {
 protected:
  std::string path(const std::string& name) const { return (folder_.path() / name).string(); }

  std::string file(const std::string& bytes) const {
    test::write_file(folder_.path() / "file.txt", bytes);
    return path("file.txt");
  }

  void expect_error(const std::string& file, ErrorCode code, const std::string& part,
                    std::size_t limit = kLargestTextBytes) const {
    try {
      read_text_file(file, limit);
      FAIL() << "no error: " << part;
    } catch (const Error& error) {
      EXPECT_EQ(error.code(), code) << error.what();
      EXPECT_EQ(error.where(), file);
      EXPECT_THAT(error.what(), HasSubstr(part));
    }
  }

  test::TemporaryFolder folder_;
};

TEST_F(InputFile, is_read_whole_with_its_digest) {
  const InputText input = read_text_file(file("Fjällräven\n"));
  EXPECT_EQ(input.text, "Fjällräven\n");
  EXPECT_EQ(input.digest.name, path("file.txt"));
  EXPECT_EQ(input.digest.sha256, sha256("Fjällräven\n"));
}

TEST_F(InputFile, loses_its_byte_order_mark_but_not_in_the_digest) {
  const InputText input = read_text_file(file("\xEF\xBB\xBF{}"));
  EXPECT_EQ(input.text, "{}");
  EXPECT_EQ(input.digest.sha256, sha256("\xEF\xBB\xBF{}"));
}

TEST_F(InputFile, that_is_not_there_or_no_file) {
  expect_error(path("missing.json"), ErrorCode::unreadable, "no such file");
  expect_error(path("no/folder.json"), ErrorCode::unreadable, "no such file");
  expect_error(folder_.path().string(), ErrorCode::unreadable, "folder");
  file("x");
  expect_error(path("file.txt/inside"), ErrorCode::unreadable, "no such file");
  std::filesystem::create_symlink("loop", folder_.path() / "loop");
  expect_error(path("loop"), ErrorCode::unreadable, "cannot be read");
}

TEST_F(InputFile, that_may_not_be_read) {
  const std::string closed = file("x");
  ::chmod(closed.c_str(), 0);
  ::chmod(folder_.path().c_str(), 0755);
  // Root may read everything, so the test steps down to a user who may not.
  const bool root = ::geteuid() == 0;
  constexpr uid_t kNobody = 65534;
  ASSERT_EQ(root ? ::seteuid(kNobody) : 0, 0);
  expect_error(closed, ErrorCode::unreadable, "cannot be read");
  ASSERT_EQ(root ? ::seteuid(0) : 0, 0);
}

TEST_F(InputFile, that_is_empty) {
  expect_error(file(""), ErrorCode::input, "empty");
}

TEST_F(InputFile, of_a_gigabyte_is_refused_at_once) {
  const std::string huge = file("x");
  std::filesystem::resize_file(huge, 1'000'000'000);
  const auto before = std::chrono::steady_clock::now();
  expect_error(huge, ErrorCode::input, "1000.0 MB, and at most 67.1 MB");
  EXPECT_LT(std::chrono::steady_clock::now() - before, std::chrono::milliseconds(100));
}

TEST_F(InputFile, as_large_as_the_limit_is_read_and_one_byte_more_is_not) {
  EXPECT_EQ(read_text_file(file("12345"), 5).text, "12345");
  expect_error(file("123456"), ErrorCode::input, "too large", 5);
}

TEST_F(InputFile, without_end_is_refused_when_the_limit_is_reached) {
  expect_error("/dev/zero", ErrorCode::input, "more than 0.1 MB", 100'000);
}

TEST_F(InputFile, can_be_a_pipe) {
  const std::string pipe = path("pipe");
  ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
  std::thread writer([&] { std::ofstream(pipe) << "through a pipe"; });
  EXPECT_EQ(read_text_file(pipe).text, "through a pipe");
  writer.join();
}

TEST_F(InputFile, that_is_not_utf8_is_refused_with_byte_and_line) {
  expect_error(file("one\ntwo\xFFthree"), ErrorCode::input, "byte 8 (0xFF) on line 2");
  expect_error(file("a\xC3"), ErrorCode::input, "byte 2 (0xC3) on line 1");
  expect_error(file(std::string("\xFF\xFE{\0", 4)), ErrorCode::input, "UTF-16");
  expect_error(file("PK\x03\x04\x14\x00\xFF"), ErrorCode::input, "ZIP");
}

}  // namespace
}  // namespace sweepwright::formats
