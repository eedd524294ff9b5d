#pragma once
// Ctrl-C and its like, as something that can be waited for together with other things.

#include <csignal>

namespace linewright {

/// While one of these exists, the first SIGINT or SIGTERM ends nothing but makes `descriptor`
/// readable; a second one ends the program at once. There can be one at a time. Throws
/// std::system_error where the system has no means left for it.
class StopSignal {
 public:
  StopSignal();
  ~StopSignal();
  StopSignal(const StopSignal&) = delete;
  StopSignal& operator=(const StopSignal&) = delete;

  int descriptor() const { return read_end_; }

 private:
  int read_end_ = -1;
  struct sigaction before_interrupt_ {};
  struct sigaction before_terminate_ {};
};

}  // namespace linewright
