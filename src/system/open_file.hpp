#pragma once
// Regular files opened with care.

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "model/expected.hpp"

namespace linewright {

/// How large a file is, and when it was last written, in nanoseconds.
struct FileState {
  std::uint64_t size = 0;
  std::int64_t written_ns = 0;
  bool operator==(const FileState&) const = default;
};

/// A regular file open for reading; closed when this is gone.
class OpenFile {
 public:
  OpenFile(int descriptor, FileState state) : descriptor_(descriptor), state_(state) {}
  OpenFile(OpenFile&& other) noexcept;
  OpenFile& operator=(OpenFile&& other) = delete;
  ~OpenFile();

  /// Bytes it had when it was opened.
  std::uint64_t size() const { return state_.size; }
  /// True where the file has been written since it was opened: what was read may be half of what
  /// it was and half of what it is.
  bool changed() const;

  /// Reads up to `count` bytes from `offset` on into `into`. Returns how many there were, fewer
  /// only at the file's end, or why it cannot be read. May be called from several threads.
  Expected<std::size_t, std::string> read(std::uint64_t offset, void* into,
                                          std::size_t count) const;

 private:
  int descriptor_;
  FileState state_;
};

/// What is wrong with a file that changed.
inline constexpr std::string_view changed_words =
    "the file changed while it was read: try again when it is saved";

/// The file, or why not: missing, a folder or device, unreadable, larger than `most_bytes`.
Expected<OpenFile, std::string> open_file(const std::filesystem::path& path,
                                          std::uint64_t most_bytes);

/// Why a file of `bytes` is too large.
std::string too_large_words(std::uint64_t bytes, std::uint64_t most_bytes);

}  // namespace linewright
