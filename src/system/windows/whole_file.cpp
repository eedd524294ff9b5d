#include "system/whole_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

#include "system/file_words.hpp"
#include "system/path_text.hpp"
#include "system/windows/windows.hpp"

namespace linewright {

namespace {

namespace fs = std::filesystem;

/// The text under a passing name in the folder of its final place. Gone again unless published.
class StagedFile {
 public:
  explicit StagedFile(fs::path target) : target_(std::move(target)) {}
  StagedFile(const StagedFile&) = delete;
  StagedFile& operator=(const StagedFile&) = delete;
  ~StagedFile() {
    if (!staged_.empty()) ::DeleteFileW(staged_.c_str());
  }

  std::string stage(std::string_view text) {
    const HANDLE file = open_new();
    if (file == INVALID_HANDLE_VALUE) return failure();
    const bool written = write_all(file, text) && ::FlushFileBuffers(file);
    const DWORD error = ::GetLastError();
    ::CloseHandle(file);
    return written ? std::string() : cannot_write_words(target_, error_number(error));
  }

  std::string publish_new() {
    if (::MoveFileExW(staged_.c_str(), target_.c_str(), MOVEFILE_WRITE_THROUGH)) return done();
    const DWORD error = ::GetLastError();
    if (error_number(error) == EEXIST) return already_there_words(target_);
    return failure();
  }

  /// What is replaced gives its permissions, and its other attributes.
  std::string publish_over() {
    if (::ReplaceFileW(target_.c_str(), staged_.c_str(), nullptr, 0, nullptr, nullptr))
      return done();
    // Some file systems, on memory sticks for one, have no permissions to give.
    constexpr DWORD how = MOVEFILE_REPLACE_EXISTING | MOVEFILE_WRITE_THROUGH;
    if (::MoveFileExW(staged_.c_str(), target_.c_str(), how)) return done();
    return failure();
  }

 private:
  std::string failure() const {
    return cannot_write_words(target_, error_number(::GetLastError()));
  }

  std::string done() {
    staged_.clear();
    return {};
  }

  HANDLE open_new() {
    HANDLE file = INVALID_HANDLE_VALUE;
    for (int attempt = 0; attempt < 100 && file == INVALID_HANDLE_VALUE; ++attempt) {
      const fs::path name =
          path_of(fmt::format(".linewright-{}-{}.part", ::GetCurrentProcessId(), attempt));
      const fs::path path = target_.parent_path() / name;
      file = ::CreateFileW(path.c_str(), GENERIC_WRITE, 0, nullptr, CREATE_NEW,
                           FILE_ATTRIBUTE_NORMAL, nullptr);
      if (file != INVALID_HANDLE_VALUE)
        staged_ = path;
      else if (error_number(::GetLastError()) != EEXIST)
        break;
    }
    return file;
  }

  static bool write_all(HANDLE file, std::string_view text) {
    constexpr std::size_t most_at_once = 1 << 30;
    while (!text.empty()) {
      DWORD written = 0;
      const auto wanted = static_cast<DWORD>(std::min(text.size(), most_at_once));
      if (!::WriteFile(file, text.data(), wanted, &written, nullptr)) return false;
      text.remove_prefix(written);
    }
    return true;
  }

  fs::path target_;
  fs::path staged_;
};

}  // namespace

std::string write_whole_file(const NewFile& file, bool overwrite) {
  std::error_code unknown;
  const fs::file_status present = fs::status(file.path, unknown);
  const bool exists = fs::exists(present);
  if (exists && !overwrite) return already_there_words(file.path);
  if (exists && !fs::is_regular_file(present)) return not_regular_words(file.path);
  StagedFile staged(file.path);
  const std::string error = staged.stage(file.text);
  if (!error.empty()) return error;
  return exists ? staged.publish_over() : staged.publish_new();
}

}  // namespace linewright
