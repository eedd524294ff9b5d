#include "system/local_time.hpp"

namespace linewright {

std::optional<std::tm> local_time(std::time_t time) {
  std::tm local{};
  if (::localtime_r(&time, &local) == nullptr) return std::nullopt;
  return local;
}

}  // namespace linewright
