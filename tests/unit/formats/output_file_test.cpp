#include "sweepwright/formats/output_file.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <functional>

#include "support/files.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class OutputFileTest : public testing::Test {
 protected:
  std::vector<std::string> names() const {
    std::vector<std::string> found;
    for (const auto& entry : fs::directory_iterator(folder_.path())) {
      found.push_back(entry.path().filename().string());
    }
    return found;
  }

  void expect_error(const fs::path& path, const std::string& part,
                    const std::function<void()>& call) const {
    try {
      call();
      FAIL() << "no error: " << part;
    } catch (const Error& error) {
      EXPECT_EQ(error.code(), ErrorCode::unwritable);
      EXPECT_EQ(error.where(), path.string());
      EXPECT_THAT(error.what(), HasSubstr(part));
    }
  }

  void expect_refused(const fs::path& path, const std::string& part,
                      Existing existing = Existing::replace) const {
    expect_error(path, part, [&] { OutputFile(path, existing); });
  }

  test::TemporaryFolder folder_;
  fs::path path_ = folder_.path() / "area.kml";
};

TEST_F(OutputFileTest, appears_on_commit_and_not_before) {
  OutputFile file(path_, Existing::refuse);
  file.write("half");
  EXPECT_FALSE(fs::exists(path_));
  file.write(" and half");
  file.commit();
  EXPECT_THAT(names(), ElementsAre("area.kml"));
  EXPECT_EQ(test::read_file(path_), "half and half");
}

TEST_F(OutputFileTest, leaves_nothing_behind_without_commit) {
  {
    OutputFile file(path_, Existing::refuse);
    file.write("half");
    EXPECT_EQ(names().size(), 1u);
  }
  EXPECT_THAT(names(), IsEmpty());
}

TEST_F(OutputFileTest, keeps_the_old_file_until_commit) {
  test::write_file(path_, "old");
  {
    OutputFile file(path_, Existing::replace);
    file.write("new");
  }
  EXPECT_EQ(test::read_file(path_), "old");
  write_text_file(path_, "new", Existing::replace);
  EXPECT_EQ(test::read_file(path_), "new");
  EXPECT_THAT(names(), ElementsAre("area.kml"));
}

TEST_F(OutputFileTest, refuses_an_existing_file_unless_told_otherwise) {
  test::write_file(path_, "old");
  expect_refused(path_, "already there", Existing::refuse);
  EXPECT_EQ(test::read_file(path_), "old");
}

TEST_F(OutputFileTest, refuses_a_file_that_came_meanwhile) {
  OutputFile file(path_, Existing::refuse);
  test::write_file(path_, "somebody else's");
  expect_error(path_, "already there", [&] { file.commit(); });
  EXPECT_EQ(test::read_file(path_), "somebody else's");
  EXPECT_THAT(names(), ElementsAre("area.kml"));
}

TEST_F(OutputFileTest, has_the_permissions_of_any_new_file) {
  const mode_t before = ::umask(022);
  write_text_file(path_, "x", Existing::refuse);
  ::umask(before);
  EXPECT_EQ(fs::status(path_).permissions(), fs::perms(0644));
}

TEST_F(OutputFileTest, follows_a_link_and_keeps_it) {
  fs::create_directory(folder_.path() / "real");
  test::write_file(folder_.path() / "real/area.kml", "old");
  fs::create_symlink("real/area.kml", path_);
  write_text_file(path_, "new", Existing::replace);
  EXPECT_TRUE(fs::is_symlink(path_));
  EXPECT_EQ(test::read_file(folder_.path() / "real/area.kml"), "new");
}

TEST_F(OutputFileTest, says_what_is_wrong_with_the_place) {
  expect_refused(folder_.path() / "missing" / "a.kml", "folder it should go into does not exist");
  expect_refused(folder_.path(), "this is a folder");
  test::write_file(path_, "x");
  expect_refused(path_ / "a.kml", "folder it should go into does not exist");
  expect_refused(folder_.path() / (std::string(300, 'a') + ".kml"), "cannot write");
  expect_refused("", "names no file");
}

TEST_F(OutputFileTest, says_that_a_folder_may_not_be_written_to) {
  const fs::path closed = folder_.path() / "closed";
  fs::create_directory(closed);
  fs::permissions(closed, fs::perms(0555));
  fs::permissions(folder_.path(), fs::perms(0755));
  // Root may write everywhere, so the test steps down to a user who may not.
  const bool root = ::geteuid() == 0;
  constexpr uid_t kNobody = 65534;
  ASSERT_EQ(root ? ::seteuid(kNobody) : 0, 0);
  expect_refused(closed / "a.kml", "not allowed");
  ASSERT_EQ(root ? ::seteuid(0) : 0, 0);
}

// Linux's /dev/full is a disk that is always full.
TEST_F(OutputFileTest, notices_a_full_disk) {
  const fs::path full = "/dev/full";
  expect_error(full, "disk is full", [&] { write_text_file(full, "text", Existing::replace); });
  expect_error(full, "disk is full",
               [&] { write_text_file(full, std::string(1 << 20, 'x'), Existing::replace); });
}

TEST_F(OutputFileTest, writes_straight_to_what_is_no_ordinary_file) {
  write_text_file("/dev/null", "text", Existing::refuse);
  EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

TEST(StreamSinkTest, notices_a_full_disk) {
  std::FILE* const full = std::fopen("/dev/full", "wb");
  ASSERT_NE(full, nullptr);
  StreamSink sink(full, "standard output");
  sink.write("text");
  EXPECT_THROW(sink.flush(), Error);
  std::fclose(full);
}

}  // namespace
}  // namespace sweepwright::formats
