#pragma once
// Waiting for what the system tells of.

#include <chrono>
#include <cstdint>

namespace linewright {

/// What can be waited for: a descriptor that can be read, or a handle; -1 for nothing.
using Waitable = std::intptr_t;

/// Waits until one of the two has something to tell, at most until `until`. True where `stop` has.
/// Throws std::system_error where the system cannot wait.
bool wait_until(Waitable stop, Waitable events, std::chrono::steady_clock::time_point until);

}  // namespace linewright
