// A disk that is full, a folder that may not be written, a program that is killed: a file is there
// whole or not at all, and nothing else is left.

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <functional>

#include "built_program.hpp"
#include "commands/command_run.hpp"
#include "system/whole_file.hpp"

namespace linewright {
namespace {

using test::contains;
using test::TempFolder;
namespace fs = std::filesystem;

constexpr std::size_t room_bytes = 100'000;
const std::string too_long(10 * room_bytes, 'x');

/// What became of a process of its own that does this and then ends with its result.
int ended(const std::function<int()>& work) {
  const pid_t child = ::fork();
  if (child == 0) ::_exit(work());
  int status = 0;
  ::waitpid(child, &status, 0);
  return status;
}

/// Files may then hold no more than `room_bytes`, as on a disk that is nearly full.
void leave_little_room() {
  const rlimit room{room_bytes, room_bytes};
  ::setrlimit(RLIMIT_FSIZE, &room);
}

/// True where the folder's file system has files without a name; others leave what a killed program
/// was writing.
bool has_nameless_files(const fs::path& folder) {
  const int descriptor = ::open(folder.c_str(), O_WRONLY | O_TMPFILE, 0600);
  if (descriptor >= 0) ::close(descriptor);
  return descriptor >= 0;
}

TEST(WriteFaults, NoRoomIsAnErrorAndLeavesNothing) {
  const TempFolder folder;
  const int status = ended([&] {
    std::signal(SIGXFSZ, SIG_IGN);
    leave_little_room();
    const std::string wrong = write_whole_file({folder / "page.html", too_long}, false);
    return contains(wrong, "page.html': File too large") ? 0 : 1;
  });
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  EXPECT_TRUE(fs::is_empty(folder.path()));
}

TEST(WriteFaults, NoRoomKeepsWhatWasToBeReplaced) {
  const TempFolder folder;
  test::write(folder / "page.html", "mine");
  ended([&] {
    std::signal(SIGXFSZ, SIG_IGN);
    leave_little_room();
    return write_whole_file({folder / "page.html", too_long}, true).empty() ? 1 : 0;
  });
  EXPECT_EQ(test::read(folder / "page.html"), "mine");
}

// The signal of a file that grows too large ends the program in the middle of writing.
TEST(WriteFaults, KilledHalfWayLeavesTheOldFileOrNone) {
  const TempFolder folder;
  test::write(folder / "old.html", "mine");
  for (const bool replaced : {false, true}) {
    const int status = ended([&] {
      leave_little_room();
      write_whole_file({folder / (replaced ? "old.html" : "new.html"), too_long}, replaced);
      return 0;
    });
    EXPECT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGXFSZ);
  }
  EXPECT_FALSE(fs::exists(folder / "new.html"));
  EXPECT_EQ(test::read(folder / "old.html"), "mine");
  if (!has_nameless_files(folder.path())) GTEST_SKIP() << "a part is left here";
  EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()), 1);
}

TEST(WriteFaults, AFolderThatMayNotBeWrittenIsAClearError) {
  const TempFolder folder;
  fs::create_directory(folder / "theirs");
  fs::permissions(folder / "theirs", fs::perms::owner_read | fs::perms::owner_exec);
  fs::permissions(folder.path(), fs::perms::all);
  const int status = ended([&] {
    constexpr uid_t nobody = 65534;
    if (::geteuid() == 0 && ::seteuid(nobody) != 0) return 2;
    const std::string wrong = write_whole_file({folder / "theirs/page.html", "text"}, false);
    return contains(wrong, "page.html': Permission denied") ? 0 : 1;
  });
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
}

TEST(WriteFaults, AReplacedFileKeepsPermissionsThatANewOneWouldNotGet) {
  const TempFolder folder;
  test::write(folder / "page.html", "mine");
  ::chmod((folder / "page.html").c_str(), 0664);
  const mode_t usual = ::umask(077);
  EXPECT_EQ(write_whole_file({folder / "page.html", "new"}, true), "");
  EXPECT_EQ(write_whole_file({folder / "other.html", "new"}, true), "");
  ::umask(usual);
  const auto bits = [&](const char* name) {
    return static_cast<unsigned>(fs::status(folder / name).permissions());
  };
  EXPECT_EQ(bits("page.html"), 0664u);
  EXPECT_EQ(bits("other.html"), 0600u);
}

/// What a shell's words end with, the program's path before them.
int shell_status(const std::string& words) {
  const int status = std::system(("'" + test::built_program() + "' " + words).c_str());
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

TEST(WriteFaults, AFullDeviceIsBadInputAndAReaderThatHasGoneIsNot) {
  const TempFolder folder;
  const std::string told = folder / "told.txt";
  EXPECT_EQ(shell_status("rules >/dev/full 2>'" + told + "'"), 2);
  EXPECT_TRUE(contains(test::read(told), "could not be written to standard output"));
  // The reader goes before anything is written: the program waits for it.
  const std::string project = "'" LINEWRIGHT_SOURCE_DIR "/routes/as-drawn.yaml'";
  const std::string status_file = folder / "status.txt";
  std::system(("{ sleep 0.2; '" + test::built_program() + "' check " + project + " 2>'" + told +
               "'; echo $? >'" + status_file + "'; } | true")
                  .c_str());
  for (int wait = 0; wait < 200 && test::read(status_file).empty(); ++wait) ::usleep(50'000);
  EXPECT_EQ(test::read(status_file), "1\n");
  EXPECT_EQ(test::read(told), "");
}

}  // namespace
}  // namespace linewright
