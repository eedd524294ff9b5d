#include "render/time_of_day.hpp"

#include <fmt/format.h>

#include "system/local_time.hpp"

namespace linewright {

std::string time_of_day(std::time_t time) {
  const std::optional<std::tm> local = local_time(time);
  if (!local) return "--:--:--";
  return fmt::format("{:02}:{:02}:{:02}", local->tm_hour, local->tm_min, local->tm_sec);
}

std::string date_of(std::time_t time) {
  const std::optional<std::tm> local = local_time(time);
  if (!local) return "----------";
  return fmt::format("{:04}-{:02}-{:02}", local->tm_year + 1900, local->tm_mon + 1, local->tm_mday);
}

}  // namespace linewright
