#pragma once
// A thread that ends before what it works on is gone. Not every library has std::jthread.

#include <thread>
#include <utility>

namespace linewright {

/// Runs `work` beside its maker, which waits for it to end where this goes out of scope. Throws
/// std::system_error where no thread is to be had.
class JoinedThread {
 public:
  JoinedThread() = default;
  template <typename Work>
  explicit JoinedThread(Work work) : thread_(std::move(work)) {}
  JoinedThread(JoinedThread&&) = default;
  JoinedThread& operator=(JoinedThread&& other) noexcept {
    join();
    thread_ = std::move(other.thread_);
    return *this;
  }
  ~JoinedThread() { join(); }

  /// Waits for the end of the work, if there is any.
  void join() {
    if (thread_.joinable()) thread_.join();
  }

 private:
  std::thread thread_;
};

}  // namespace linewright
