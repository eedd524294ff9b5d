#include "system/waiting.hpp"

#include <poll.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <system_error>

namespace linewright {

using std::chrono::steady_clock;

bool wait_until(Waitable stop, Waitable events, steady_clock::time_point until) {
  const auto left = std::chrono::ceil<std::chrono::milliseconds>(until - steady_clock::now());
  std::array<pollfd, 2> watched{pollfd{static_cast<int>(stop), POLLIN, 0},
                                pollfd{static_cast<int>(events), POLLIN, 0}};
  const int timeout = static_cast<int>(std::max<std::int64_t>(0, left.count()));
  if (::poll(watched.data(), watched.size(), timeout) < 0 && errno != EINTR)
    throw std::system_error(errno, std::generic_category(), "cannot wait for saves");
  return watched[0].revents != 0;
}

}  // namespace linewright
