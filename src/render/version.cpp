#include "render/version.hpp"

namespace linewright {

std::string_view version() {
  return LINEWRIGHT_VERSION;
}

}  // namespace linewright
