#include "render/version.hpp"

namespace linewright {

std::string_view version() {
  return LINEWRIGHT_VERSION;
}

std::string_view build_words() {
  return LINEWRIGHT_BUILD_WORDS;
}

}  // namespace linewright
