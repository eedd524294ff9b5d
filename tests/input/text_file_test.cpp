#include "input/text_file.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <filesystem>
#include <fstream>
#include <string>
#include <thread>

#include "input/yaml_document.hpp"
#include "system/open_file.hpp"

namespace linewright {
namespace {

namespace fs = std::filesystem;

/// A folder of its own for each test, removed afterwards.
class TextFile : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "linewright-text-file-XXXXXX").string();
    ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
  }
  void TearDown() override { fs::remove_all(folder_); }

  fs::path written(const std::string& name, const std::string& bytes) const {
    std::ofstream(folder_ / name, std::ios::binary) << bytes;
    return folder_ / name;
  }

  fs::path folder_;
};

std::string refusal(const fs::path& path) {
  const auto result = read_text_file(path, "shown.yaml");
  if (result) return "it was read";
  EXPECT_EQ(result.error().where, (SourceLocation{"shown.yaml", 0, 0}));
  return result.error().message;
}

TEST_F(TextFile, BytesComeBackUnchanged) {
  const std::string bytes("a: 1\r\n\0\xFF\n", 9);
  const auto result = read_text_file(written("a.yaml", bytes), "a.yaml");
  ASSERT_TRUE(result);
  EXPECT_EQ(*result, bytes);
}

TEST_F(TextFile, AnEmptyFileIsAnEmptyText) {
  const auto result = read_text_file(written("a.yaml", ""), "a.yaml");
  ASSERT_TRUE(result);
  EXPECT_EQ(*result, "");
}

TEST_F(TextFile, ALinkToAFileIsFollowed) {
  written("a.yaml", "a: 1\n");
  fs::create_symlink("a.yaml", folder_ / "link.yaml");
  const auto result = read_text_file(folder_ / "link.yaml", "link.yaml");
  ASSERT_TRUE(result);
  EXPECT_EQ(*result, "a: 1\n");
}

TEST_F(TextFile, AMissingFileIsSaidToBeMissing) {
  EXPECT_EQ(refusal(folder_ / "none.yaml"), "there is no such file");
  EXPECT_EQ(refusal(""), "there is no such file");
  const fs::path file = written("a.yaml", "a: 1\n");
  EXPECT_EQ(refusal(file / "b.yaml"), "there is no such file: a part of its path is not a folder");
}

TEST_F(TextFile, AFolderIsRefused) {
  EXPECT_EQ(refusal(folder_), "expected a file, found a folder");
}

TEST_F(TextFile, ADeviceThatNeverEndsIsRefused) {
  EXPECT_EQ(refusal("/dev/zero"), "expected a regular file, found a device, pipe or socket");
}

TEST_F(TextFile, APipeWithoutAWriterIsRefusedInsteadOfWaitedFor) {
  ASSERT_EQ(::mkfifo((folder_ / "pipe").c_str(), 0600), 0);
  EXPECT_EQ(refusal(folder_ / "pipe"), "expected a regular file, found a device, pipe or socket");
}

TEST_F(TextFile, ACircleOfLinksIsRefused) {
  fs::create_symlink("b", folder_ / "a");
  fs::create_symlink("a", folder_ / "b");
  EXPECT_EQ(refusal(folder_ / "a"),
            "cannot read the file: its symbolic links go round in a circle");
}

TEST_F(TextFile, ANameWithANulIsNotCutAtIt) {
  written("a.yaml", "a: 1\n");
  const std::string name = (folder_ / "a.yaml").string() + std::string("\0.txt", 5);
  EXPECT_EQ(refusal(name), "there is no such file: the name holds a NUL character");
}

TEST_F(TextFile, ANameTooLongForTheSystemIsRefused) {
  EXPECT_EQ(refusal(folder_ / std::string(5000, 'a')),
            "there is no such file: the name is too long");
}

TEST_F(TextFile, TheLargestFileIsReadAndOneByteMoreIsNot) {
  const fs::path path = written("a.yaml", "");
  fs::resize_file(path, largest_file_bytes);
  const auto result = read_text_file(path, "a.yaml");
  ASSERT_TRUE(result);
  EXPECT_EQ(result->size(), largest_file_bytes);
  fs::resize_file(path, largest_file_bytes + 1);
  EXPECT_EQ(refusal(path), "the file is too large: 16.0 MiB; at most 16 MiB are read");
}

TEST_F(TextFile, FiftyMegabytesAreRefusedBySizeAlone) {
  const fs::path path = written("a.yaml", "");
  fs::resize_file(path, 50'000'000);
  EXPECT_EQ(refusal(path), "the file is too large: 47.7 MiB; at most 16 MiB are read");
}

// Lengthened and shortened again and again by another thread, as a slow save would be seen:
// whatever is read must be one of the two, and sooner or later three readings are disturbed in
// turn.
TEST_F(TextFile, AFileThatChangesWhileItIsReadIsReadAgainOrToldOf) {
  const fs::path path = written("a.yaml", "");
  constexpr std::size_t bytes = 12u << 20;
  fs::resize_file(path, bytes);
  std::atomic<bool> done = false;
  std::thread saving([&] {
    while (!done) {
      fs::resize_file(path, bytes + 1);
      fs::resize_file(path, bytes);
    }
  });
  bool told = false;
  for (int reading = 0; reading < 2'000 && !told; ++reading) {
    const auto result = read_text_file(path, "a.yaml");
    told = !result && result.error().message ==
                          "the file changed while it was read: try again when it is saved";
  }
  done = true;
  saving.join();
  EXPECT_TRUE(told);
  EXPECT_TRUE(read_text_file(path, "a.yaml"));
}

TEST_F(TextFile, AnOpenFileKnowsThatItWasWritten) {
  const fs::path path = written("a.yaml", "a: 1\n");
  const auto file = open_file(path, largest_file_bytes);
  ASSERT_TRUE(file);
  EXPECT_FALSE(file->changed());
  std::ofstream(path, std::ios::app) << "b: 2\n";
  EXPECT_TRUE(file->changed());
}

TEST_F(TextFile, AFileThatReportsNoSizeIsReadToItsEnd) {
  const auto result = read_text_file("/proc/self/status", "status");
  ASSERT_TRUE(result);
  EXPECT_NE(result->find("Pid:"), std::string::npos);
}

}  // namespace
}  // namespace linewright
