#pragma once
// Names of controls, which builders write as they please.

#include <algorithm>
#include <string_view>

#include "model/letters.hpp"

namespace linewright {

/// True for one control written twice: `Rudder` and `rudder`. Letters beyond ASCII count as they
/// are.
constexpr bool is_same_control(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower_letter(x) == lower_letter(y); });
}

}  // namespace linewright
