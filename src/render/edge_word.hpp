#pragma once
// What guards an edge, as project files say it.

#include <string_view>

#include "model/structure.hpp"

namespace linewright {

constexpr std::string_view edge_word(EdgeGuard edge) {
  switch (edge) {
    case EdgeGuard::bare:
      return "bare";
    case EdgeGuard::rolled:
      return "rolled";
    case EdgeGuard::flanged:
      return "flanged";
    case EdgeGuard::edge_trim:
      return "edge-trim";
    case EdgeGuard::grommet:
      return "grommet";
    case EdgeGuard::bushing:
      return "bushing";
  }
  return {};
}

}  // namespace linewright
