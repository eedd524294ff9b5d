#pragma once
// Ctrl-C and its like, as something that can be waited for together with other things.

#include <memory>

#include "system/waiting.hpp"

namespace linewright {

/// While one of these exists, the first SIGINT or SIGTERM ends nothing but makes `descriptor` tell
/// of it; a second one ends the program at once. There can be one at a time. Throws
/// std::system_error where the system has no means left for it.
class StopSignal {
 public:
  StopSignal();
  ~StopSignal();
  StopSignal(const StopSignal&) = delete;
  StopSignal& operator=(const StopSignal&) = delete;

  Waitable descriptor() const;

 private:
  struct Handling;
  std::unique_ptr<Handling> handling_;
};

}  // namespace linewright
