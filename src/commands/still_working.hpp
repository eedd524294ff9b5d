#pragma once
// A sign of life while a command takes long.

#include <chrono>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <string_view>
#include <thread>

namespace linewright {

/// From its making on, and until it is gone, says every second how long the work has taken, once
/// that is longer than `silence`; then it wipes what it said. Says nothing in less time than that.
class StillWorking {
 public:
  /// Writes to a terminal, from a thread of its own.
  using Say = std::function<void(std::string_view)>;

  StillWorking(Say say, std::chrono::milliseconds silence, std::chrono::milliseconds step);
  ~StillWorking();
  StillWorking(const StillWorking&) = delete;
  StillWorking& operator=(const StillWorking&) = delete;

 private:
  void run();

  Say say_;
  std::chrono::milliseconds silence_;
  std::chrono::milliseconds step_;
  std::mutex mutex_;
  std::condition_variable ends_;
  bool ended_ = false;
  std::thread thread_;
};

}  // namespace linewright
