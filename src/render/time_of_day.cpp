#include "render/time_of_day.hpp"

#include <fmt/format.h>

namespace linewright {

std::string time_of_day(std::time_t time) {
  std::tm local{};
  if (::localtime_r(&time, &local) == nullptr) return "--:--:--";
  return fmt::format("{:02}:{:02}:{:02}", local.tm_hour, local.tm_min, local.tm_sec);
}

}  // namespace linewright
