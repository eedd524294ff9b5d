#pragma once

#include <optional>
#include <string>
#include <vector>

namespace linewright {

/// Values of the leak test's options as written.
struct LeakTestWords {
  std::string action;
  std::string system;
  std::string field_elevation;
  std::string altimeter_setting;
  std::string temperature;
  std::optional<std::string> drop;
  std::optional<std::string> airspeed;
  std::optional<std::string> syringe;
  std::optional<std::string> at;
  std::vector<std::string> caps;
  std::optional<std::string> gauge_volume;
  std::optional<std::string> readings;
  std::optional<std::string> record;
  std::optional<std::string> date;
};

}  // namespace linewright
