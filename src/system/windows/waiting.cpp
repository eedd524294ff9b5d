#include "system/waiting.hpp"

#include <algorithm>
#include <array>
#include <system_error>

#include "system/windows/windows.hpp"

namespace linewright {

using std::chrono::steady_clock;

bool wait_until(Waitable stop, Waitable events, steady_clock::time_point until) {
  const auto left = std::chrono::ceil<std::chrono::milliseconds>(until - steady_clock::now());
  const std::array<HANDLE, 2> watched{reinterpret_cast<HANDLE>(stop),
                                      reinterpret_cast<HANDLE>(events)};
  const auto timeout = static_cast<DWORD>(std::clamp<std::int64_t>(left.count(), 0, 86'400'000));
  const DWORD count = events == -1 ? 1 : 2;
  const DWORD woken = ::WaitForMultipleObjects(count, watched.data(), FALSE, timeout);
  if (woken == WAIT_FAILED)
    throw std::system_error(error_number(::GetLastError()), std::generic_category(),
                            "cannot wait for saves");
  return woken == WAIT_OBJECT_0;
}

}  // namespace linewright
