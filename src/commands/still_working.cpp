#include "commands/still_working.hpp"

#include <fmt/format.h>

#include <utility>

namespace linewright {

StillWorking::StillWorking(Say say, std::chrono::milliseconds silence,
                           std::chrono::milliseconds step)
    : say_(std::move(say)), silence_(silence), step_(step), thread_([this] { run(); }) {}

StillWorking::~StillWorking() {
  {
    const std::lock_guard lock(mutex_);
    ended_ = true;
  }
  ends_.notify_one();
  thread_.join();
}

void StillWorking::run() {
  const auto start = std::chrono::steady_clock::now();
  std::unique_lock lock(mutex_);
  if (ends_.wait_for(lock, silence_, [this] { return ended_; })) return;
  do {
    const auto passed = std::chrono::steady_clock::now() - start;
    say_(fmt::format("\rlinewright: working, {} s",
                     std::chrono::duration_cast<std::chrono::seconds>(passed).count()));
  } while (!ends_.wait_for(lock, step_, [this] { return ended_; }));
  // Blanks over the words, whatever the terminal knows.
  say_(fmt::format("\r{:40}\r", ""));
}

}  // namespace linewright
