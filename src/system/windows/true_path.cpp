#include "system/true_path.hpp"

#include <string>

#include "system/windows/windows.hpp"

namespace linewright {

namespace {

namespace fs = std::filesystem;

/// The path of what is there, as its folders have it written; empty where nothing is.
fs::path path_as_stored(const fs::path& path) {
  constexpr DWORD shared = FILE_SHARE_READ | FILE_SHARE_WRITE | FILE_SHARE_DELETE;
  const HANDLE file = ::CreateFileW(path.c_str(), 0, shared, nullptr, OPEN_EXISTING,
                                    FILE_FLAG_BACKUP_SEMANTICS, nullptr);
  if (file == INVALID_HANDLE_VALUE) return {};
  std::wstring found(512, L'\0');
  DWORD size = ::GetFinalPathNameByHandleW(file, found.data(), static_cast<DWORD>(found.size()), 0);
  if (size > found.size()) {
    found.resize(size);
    size = ::GetFinalPathNameByHandleW(file, found.data(), size, 0);
  }
  ::CloseHandle(file);
  found.resize(size < found.size() ? size : 0);
  const std::wstring network = L"\\\\?\\UNC\\";
  const std::wstring local = L"\\\\?\\";
  if (found.starts_with(network)) return L"\\\\" + found.substr(network.size());
  return found.starts_with(local) ? found.substr(local.size()) : found;
}

}  // namespace

fs::path true_path(const fs::path& path, std::error_code& failure) {
  const fs::path whole = fs::absolute(path, failure).lexically_normal();
  if (failure) return {};
  fs::path missing;
  for (fs::path there = whole; there.has_relative_path(); there = there.parent_path()) {
    if (const fs::path stored = path_as_stored(there); !stored.empty())
      return missing.empty() ? stored : stored / missing;
    missing = missing.empty() ? there.filename() : there.filename() / missing;
  }
  return whole;
}

}  // namespace linewright
