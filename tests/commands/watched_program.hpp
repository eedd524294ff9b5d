#pragma once
// `linewright watch` as a program of its own, listened to while it runs. No wait is without end.

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <optional>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

#include "built_program.hpp"

namespace linewright::test {

/// Far longer than anything takes, so that a busy machine fails no test.
inline constexpr std::chrono::seconds patience{60};

class WatchedProgram {
 public:
  explicit WatchedProgram(std::vector<std::string> words) {
    words.insert(words.begin(), {built_program(), "watch"});
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    std::array<int, 2> ends{};
    if (::pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
    ::fcntl(ends[0], F_SETFD, FD_CLOEXEC);
    output_ = ends[0];
    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    ::posix_spawn_file_actions_adddup2(&actions, ends[1], STDERR_FILENO);
    ::posix_spawn_file_actions_addclose(&actions, ends[1]);
    const int error =
        ::posix_spawn(&process_, arguments[0], &actions, nullptr, arguments.data(), environ);
    ::posix_spawn_file_actions_destroy(&actions);
    ::close(ends[1]);
    if (error != 0) throw std::runtime_error("cannot run " + words[0]);
  }
  WatchedProgram(const WatchedProgram&) = delete;
  WatchedProgram& operator=(const WatchedProgram&) = delete;
  ~WatchedProgram() {
    if (!code_) {
      ::kill(process_, SIGKILL);
      ::waitpid(process_, nullptr, 0);
    }
    ::close(output_);
  }

  /// Waits until the program says this, after what it was asked for before.
  bool says(const std::string& text) {
    const auto until = std::chrono::steady_clock::now() + patience;
    while (true) {
      if (const std::size_t found = said_.find(text, heard_); found != std::string::npos) {
        heard_ = found + text.size();
        return true;
      }
      if (std::chrono::steady_clock::now() > until || !listen()) return false;
    }
  }

  /// Everything said so far, output and errors together.
  const std::string& said() const { return said_; }

  /// The exit code after this signal; -1 where the program does not end, or ends otherwise.
  int code_after(int signal) {
    ::kill(process_, signal);
    const auto until = std::chrono::steady_clock::now() + patience;
    while (!code_ && std::chrono::steady_clock::now() < until) {
      int status = 0;
      if (::waitpid(process_, &status, WNOHANG) == process_)
        code_ = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
      else
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    while (code_ && listen()) {
    }
    return code_.value_or(-1);
  }

 private:
  /// Takes in what is there, after a second at most. False once nothing more can come.
  bool listen() {
    pollfd ready{output_, POLLIN, 0};
    if (::poll(&ready, 1, 1000) <= 0) return true;
    std::array<char, 4096> block{};
    const ssize_t count = ::read(output_, block.data(), block.size());
    if (count > 0) said_.append(block.data(), static_cast<std::size_t>(count));
    return count > 0;
  }

  pid_t process_ = -1;
  int output_ = -1;
  std::string said_;
  std::size_t heard_ = 0;
  std::optional<int> code_;
};

}  // namespace linewright::test
