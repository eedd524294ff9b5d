#include "system/open_file.hpp"

#include <fmt/format.h>

namespace linewright {

std::string too_large_words(std::uint64_t bytes, std::uint64_t most_bytes) {
  return fmt::format("the file is too large: {:.1f} MiB; at most {} MiB are read",
                     static_cast<double>(bytes) / (1 << 20), most_bytes >> 20);
}

}  // namespace linewright
