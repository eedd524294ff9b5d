#pragma once

#include <filesystem>
#include <system_error>

namespace linewright {

/// The one path of what `path` leads to: absolute, links followed, and where names that differ in
/// case alone are one, in the case that the folder has. What is not there stays as it is written.
std::filesystem::path true_path(const std::filesystem::path& path, std::error_code& failure);

}  // namespace linewright
