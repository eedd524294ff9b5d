#include "commands/watch/file_watch.hpp"

#include <gtest/gtest.h>
#include <unistd.h>

#include <array>
#include <future>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using std::chrono::milliseconds;
using test::TempFolder;
using test::write;
namespace fs = std::filesystem;

/// Waits for a save; stops waiting after this time.
Woken woken(FileWatch& watch, milliseconds limit = std::chrono::seconds(60)) {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
  std::future<Woken> wait = std::async(std::launch::async, [&] { return watch.wait(ends[0]); });
  if (wait.wait_for(limit) != std::future_status::ready && ::write(ends[1], "", 1) != 1)
    throw std::runtime_error("cannot stop");
  const Woken why = wait.get();
  for (const int end : ends) ::close(end);
  return why;
}

constexpr milliseconds short_while{300};

TEST(FileWatch, FilesNotLookedAtBeforeMayHaveChangedUnseen) {
  const TempFolder folder;
  FileWatch watch;
  EXPECT_TRUE(watch.cover({folder / "a", folder / "b"}));
  EXPECT_FALSE(watch.cover({folder / "a", folder / "b"}));
  EXPECT_FALSE(watch.cover({folder / "b"}));
  EXPECT_TRUE(watch.cover({folder / "a", folder / "b"}));
}

TEST(FileWatch, EveryWayToSaveWakes) {
  const TempFolder folder;
  write(folder / "a", "one");
  FileWatch watch;
  watch.cover({folder / "a"});
  write(folder / "a", "twice");
  EXPECT_EQ(woken(watch), Woken::by_save);
  write(folder / "new", "the third time");
  fs::rename(folder / "new", folder / "a");
  EXPECT_EQ(woken(watch), Woken::by_save);
  fs::remove(folder / "a");
  EXPECT_EQ(woken(watch), Woken::by_save);
  write(folder / "a", "four");
  EXPECT_EQ(woken(watch), Woken::by_save);
}

TEST(FileWatch, OtherFilesDoNotWake) {
  const TempFolder folder;
  write(folder / "a", "one");
  FileWatch watch;
  watch.cover({folder / "a"});
  write(folder / "b", "two");
  write(folder / "a~", "two");
  EXPECT_EQ(woken(watch, short_while), Woken::by_stop);
}

TEST(FileWatch, OneSaveWakesOnce) {
  const TempFolder folder;
  write(folder / "a", "one");
  FileWatch watch;
  watch.cover({folder / "a"});
  fs::rename(folder / "a", folder / "a~");
  write(folder / "a", "two");
  fs::remove(folder / "a~");
  EXPECT_EQ(woken(watch), Woken::by_save);
  EXPECT_EQ(woken(watch, short_while), Woken::by_stop);
}

TEST(FileWatch, AFolderThatComesBackWakes) {
  const TempFolder folder;
  fs::create_directory(folder / "wing");
  write(folder / "wing/a", "one");
  FileWatch watch;
  watch.cover({folder / "wing/a"});
  fs::rename(folder / "wing", folder / "away");
  EXPECT_EQ(woken(watch), Woken::by_save);
  watch.cover({folder / "wing/a"});
  fs::rename(folder / "away", folder / "wing");
  EXPECT_EQ(woken(watch), Woken::by_save);
  watch.cover({folder / "wing/a"});
  write(folder / "wing/a", "twice");
  EXPECT_EQ(woken(watch), Woken::by_save);
}

TEST(FileWatch, ASaveThatNothingAnnouncesIsSeenByLooking) {
  const TempFolder folder;
  const TempFolder elsewhere;
  write(elsewhere / "real", "one");
  fs::create_symlink(elsewhere / "real", folder / "a");
  FileWatch watch;
  watch.cover({folder / "a"});
  write(elsewhere / "real", "longer");
  EXPECT_EQ(woken(watch), Woken::by_save);
}

TEST(FileWatch, AStopGoesBeforeASave) {
  const TempFolder folder;
  FileWatch watch;
  watch.cover({folder / "a"});
  write(folder / "a", "one");
  std::array<int, 2> ends{};
  ASSERT_EQ(::pipe(ends.data()), 0);
  ASSERT_EQ(::write(ends[1], "", 1), 1);
  EXPECT_EQ(watch.wait(ends[0]), Woken::by_stop);
  for (const int end : ends) ::close(end);
}

}  // namespace
}  // namespace linewright
