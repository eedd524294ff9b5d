#include "system/open_file.hpp"

#include <fcntl.h>
#include <io.h>

#include <algorithm>
#include <cerrno>
#include <optional>
#include <system_error>
#include <utility>

#include "system/file_words.hpp"
#include "system/windows/windows.hpp"

namespace linewright {
namespace {

HANDLE handle_of(int descriptor) {
  return reinterpret_cast<HANDLE>(::_get_osfhandle(descriptor));
}

/// Why a path cannot be opened: the system does not tell a folder that is missing from one that is
/// a file.
int opening_error(const std::filesystem::path& path, DWORD error) {
  if (error != ERROR_PATH_NOT_FOUND) return error_number(error);
  std::error_code ignored;
  for (auto above = path.parent_path(); above.has_relative_path(); above = above.parent_path())
    if (std::filesystem::is_regular_file(above, ignored)) return ENOTDIR;
  return ENOENT;
}

std::uint64_t whole(DWORD high, DWORD low) {
  return std::uint64_t{high} << 32 | low;
}

FileState state_of(const BY_HANDLE_FILE_INFORMATION& status) {
  // Windows counts tenths of a microsecond from 1601 on.
  constexpr std::int64_t ticks_to_1970 = 116'444'736'000'000'000;
  const FILETIME& written = status.ftLastWriteTime;
  const auto ticks =
      static_cast<std::int64_t>(whole(written.dwHighDateTime, written.dwLowDateTime));
  return {whole(status.nFileSizeHigh, status.nFileSizeLow), (ticks - ticks_to_1970) * 100};
}

/// Why what was opened cannot be read as a file, or nothing.
std::optional<std::string> refusal(HANDLE file, const BY_HANDLE_FILE_INFORMATION& status,
                                   std::uint64_t most_bytes) {
  if (status.dwFileAttributes & FILE_ATTRIBUTE_DIRECTORY) return "expected a file, found a folder";
  if (::GetFileType(file) != FILE_TYPE_DISK)
    return "expected a regular file, found a device, pipe or socket";
  const std::uint64_t bytes = state_of(status).size;
  if (bytes > most_bytes) return too_large_words(bytes, most_bytes);
  return std::nullopt;
}

}  // namespace

OpenFile::OpenFile(OpenFile&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), state_(other.state_) {}

OpenFile::~OpenFile() {
  if (descriptor_ >= 0) ::_close(descriptor_);
}

bool OpenFile::changed() const {
  BY_HANDLE_FILE_INFORMATION status{};
  return !::GetFileInformationByHandle(handle_of(descriptor_), &status) ||
         state_of(status) != state_;
}

Expected<std::size_t, std::string> OpenFile::read(std::uint64_t offset, void* into,
                                                  std::size_t count) const {
  constexpr std::size_t most_at_once = 1 << 30;
  std::size_t filled = 0;
  while (filled < count) {
    OVERLAPPED from{};
    from.Offset = static_cast<DWORD>(offset + filled);
    from.OffsetHigh = static_cast<DWORD>((offset + filled) >> 32);
    DWORD got = 0;
    const auto wanted = static_cast<DWORD>(std::min(count - filled, most_at_once));
    if (!::ReadFile(handle_of(descriptor_), static_cast<char*>(into) + filled, wanted, &got,
                    &from)) {
      const DWORD error = ::GetLastError();
      if (error == ERROR_HANDLE_EOF) break;
      return cannot_read_words(error_number(error));
    }
    if (got == 0) break;
    filled += got;
  }
  return filled;
}

// Opened first and looked at then, so that what is checked is what is read. Others may write,
// rename and delete meanwhile, as editors do.
Expected<OpenFile, std::string> open_file(const std::filesystem::path& path,
                                          std::uint64_t most_bytes) {
  if (path.native().find(L'\0') != std::wstring::npos)
    return "there is no such file: the name holds a NUL character";
  constexpr DWORD shared = FILE_SHARE_READ | FILE_SHARE_WRITE | FILE_SHARE_DELETE;
  const HANDLE handle = ::CreateFileW(path.c_str(), GENERIC_READ, shared, nullptr, OPEN_EXISTING,
                                      FILE_FLAG_BACKUP_SEMANTICS, nullptr);
  if (handle == INVALID_HANDLE_VALUE)
    return cannot_read_words(opening_error(path, ::GetLastError()));
  const int descriptor =
      ::_open_osfhandle(reinterpret_cast<std::intptr_t>(handle), _O_RDONLY | _O_BINARY);
  if (descriptor < 0) {
    ::CloseHandle(handle);
    return cannot_read_words(EMFILE);
  }
  BY_HANDLE_FILE_INFORMATION status{};
  const bool device = ::GetFileType(handle) != FILE_TYPE_DISK;
  const bool known = device || ::GetFileInformationByHandle(handle, &status);
  const DWORD error = known ? ERROR_SUCCESS : ::GetLastError();
  OpenFile file(descriptor, state_of(status));
  if (!known) return cannot_read_words(error_number(error));
  if (auto reason = refusal(handle, status, most_bytes)) return std::move(*reason);
  return file;
}

}  // namespace linewright
