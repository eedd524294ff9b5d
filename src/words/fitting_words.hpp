#pragma once
// Fittings as the builder calls them.

#include <string_view>

#include "model/fitting.hpp"

namespace linewright {

constexpr std::string_view fitting_kind_words(FittingKind kind) {
  switch (kind) {
    case FittingKind::straight_union:
      return "union";
    case FittingKind::bulkhead_union:
      return "bulkhead union";
    case FittingKind::elbow_90:
      return "elbow, 90 degrees";
    case FittingKind::elbow_45:
      return "elbow, 45 degrees";
    case FittingKind::tee:
      return "tee";
  }
  return "fitting";
}

}  // namespace linewright
