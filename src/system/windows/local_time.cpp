#include "system/local_time.hpp"

namespace linewright {

std::optional<std::tm> local_time(std::time_t time) {
  std::tm local{};
  if (::localtime_s(&local, &time) != 0) return std::nullopt;
  return local;
}

}  // namespace linewright
