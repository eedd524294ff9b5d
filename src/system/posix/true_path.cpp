#include "system/true_path.hpp"

namespace linewright {

std::filesystem::path true_path(const std::filesystem::path& path, std::error_code& failure) {
  return std::filesystem::weakly_canonical(path, failure);
}

}  // namespace linewright
