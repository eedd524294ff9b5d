#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "system/whole_file.hpp"

namespace linewright {
namespace {

using test::CommandRun;
using test::contains;
using test::run;
using test::TempFolder;
namespace fs = std::filesystem;

std::size_t entries(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

TEST(Output, GoesToAFileInsteadOfTheTerminal) {
  const TempFolder folder;
  const CommandRun result = run({"rules", "--output", folder / "rules.txt"});
  EXPECT_EQ(result.code, 0);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, "wrote"));
  EXPECT_EQ(test::read(folder / "rules.txt"), run({"rules"}).out);
  EXPECT_EQ(entries(folder.path()), 1u);
}

TEST(Output, TheFilesNameCannotSteerTheTerminal) {
  const TempFolder folder;
  const std::string name = folder / "a\x1B[31m\u202Eb\n.txt";
  const std::string shown = folder / "a?[31m?b .txt";
  EXPECT_EQ(run({"rules", "--output", name}).err, "linewright: wrote " + shown + "\n");
  EXPECT_EQ(run({"rules", "--output", name}).err, "linewright: error: '" + shown +
                                                      "' is already there and is not overwritten; "
                                                      "--force replaces it\n");
}

TEST(Output, QuietSaysNothingOfTheFile) {
  const TempFolder folder;
  EXPECT_EQ(run({"rules", "--quiet", "--output", folder / "rules.txt"}).err, "");
}

TEST(Output, IsNotOverwrittenWithoutForce) {
  const TempFolder folder;
  test::write(folder / "rules.txt", "mine");
  const CommandRun refused = run({"rules", "--output", folder / "rules.txt"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_TRUE(contains(refused.err, "rules.txt' is already there"));
  EXPECT_EQ(test::read(folder / "rules.txt"), "mine");
  EXPECT_EQ(run({"rules", "--output", folder / "rules.txt", "--force"}).code, 0);
  EXPECT_EQ(test::read(folder / "rules.txt"), run({"rules"}).out);
  EXPECT_EQ(entries(folder.path()), 1u);
}

TEST(Output, ForceKeepsALinkAndPermissions) {
  const TempFolder folder;
  test::write(folder / "real.txt", "mine");
  fs::permissions(folder / "real.txt", fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink(folder / "real.txt", folder / "link.txt");
  ASSERT_EQ(write_whole_file({folder / "link.txt", "new"}, true), "");
  EXPECT_TRUE(fs::is_symlink(folder / "link.txt"));
  EXPECT_EQ(test::read(folder / "real.txt"), "new");
  EXPECT_EQ(fs::status(folder / "real.txt").permissions(),
            fs::perms::owner_read | fs::perms::owner_write);
}

TEST(Output, OnlyRegularFilesAreReplaced) {
  const TempFolder folder;
  EXPECT_EQ(write_whole_file({folder.path(), "text"}, true),
            "'" + folder.path().string() + "' is not a regular file and is not replaced");
  EXPECT_EQ(write_whole_file({"/dev/null", "text"}, true),
            "'/dev/null' is not a regular file and is not replaced");
  EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

TEST(Output, ADanglingLinkIsNotWrittenThrough) {
  const TempFolder folder;
  fs::create_symlink(folder / "nowhere.txt", folder / "link.txt");
  EXPECT_TRUE(contains(write_whole_file({folder / "link.txt", "text"}, false), "is already there"));
  EXPECT_FALSE(fs::exists(folder / "nowhere.txt"));
}

TEST(Output, AMissingFolderIsAClearError) {
  const TempFolder folder;
  const CommandRun result = run({"rules", "--output", folder / "no/such/rules.txt"});
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err, "cannot write"));
  EXPECT_EQ(entries(folder.path()), 0u);
}

TEST(Output, AFailedCheckStillGivesOneWhenWrittenToAFile) {
  const test::StarterCopy project;
  project.bend_too_tightly();
  const CommandRun result =
      run({"check", project.root(), "--format", "json", "--output", project.file("out.json")});
  EXPECT_EQ(result.code, 1);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(nlohmann::json::parse(test::read(project.file("out.json"))).contains("checks"));
}

TEST(Output, BadInputWritesNoFile) {
  const TempFolder folder;
  EXPECT_EQ(run({"check", folder / "nowhere", "--output", folder / "out.txt"}).code, 2);
  EXPECT_EQ(entries(folder.path()), 0u);
}

TEST(WholeFiles, AllOrNone) {
  const TempFolder folder;
  test::write(folder / "second.yaml", "mine");
  EXPECT_TRUE(
      contains(write_all_or_none({{folder / "first.yaml", "a"}, {folder / "second.yaml", "b"}}),
               "second.yaml' is already there"));
  EXPECT_FALSE(fs::exists(folder / "first.yaml"));
  EXPECT_TRUE(
      contains(write_all_or_none({{folder / "first.yaml", "a"}, {folder / "no/third.yaml", "b"}}),
               "no/third.yaml': No such file"));
  EXPECT_FALSE(fs::exists(folder / "first.yaml"));
  EXPECT_EQ(test::read(folder / "second.yaml"), "mine");
}

}  // namespace
}  // namespace linewright
