#pragma once
// Regular files opened with care.

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>

#include "model/expected.hpp"

namespace linewright {

/// A regular file open for reading; closed when this is gone.
class OpenFile {
 public:
  OpenFile(int descriptor, std::uint64_t size) : descriptor_(descriptor), size_(size) {}
  OpenFile(OpenFile&& other) noexcept;
  OpenFile& operator=(OpenFile&& other) = delete;
  ~OpenFile();

  /// Bytes it had when it was opened.
  std::uint64_t size() const { return size_; }

  /// Reads up to `count` bytes from `offset` on into `into`. Returns how many there were, fewer
  /// only at the file's end, or why it cannot be read. May be called from several threads.
  Expected<std::size_t, std::string> read(std::uint64_t offset, void* into,
                                          std::size_t count) const;

 private:
  int descriptor_;
  std::uint64_t size_;
};

/// The file, or why not: missing, a folder or device, unreadable, larger than `most_bytes`.
Expected<OpenFile, std::string> open_file(const std::filesystem::path& path,
                                          std::uint64_t most_bytes);

/// Why a file of `bytes` is too large.
std::string too_large_words(std::uint64_t bytes, std::uint64_t most_bytes);

}  // namespace linewright
