#include "system/open_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <optional>
#include <utility>

#include "system/file_words.hpp"

namespace linewright {
namespace {

/// Why what was opened cannot be read as a file, or nothing.
std::optional<std::string> refusal(const struct stat& status, std::uint64_t most_bytes) {
  if (S_ISDIR(status.st_mode)) return "expected a file, found a folder";
  if (!S_ISREG(status.st_mode)) return "expected a regular file, found a device, pipe or socket";
  const auto bytes = static_cast<std::uint64_t>(status.st_size);
  if (bytes > most_bytes) return too_large_words(bytes, most_bytes);
  return std::nullopt;
}

FileState state_of(const struct stat& status) {
  constexpr std::int64_t ns_per_s = 1'000'000'000;
  return {static_cast<std::uint64_t>(status.st_size),
          status.st_mtim.tv_sec * ns_per_s + status.st_mtim.tv_nsec};
}

}  // namespace

OpenFile::OpenFile(OpenFile&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), state_(other.state_) {}

OpenFile::~OpenFile() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

bool OpenFile::changed() const {
  struct stat status {};
  return ::fstat(descriptor_, &status) != 0 || state_of(status) != state_;
}

Expected<std::size_t, std::string> OpenFile::read(std::uint64_t offset, void* into,
                                                  std::size_t count) const {
  std::size_t filled = 0;
  while (filled < count) {
    const ssize_t got = ::pread(descriptor_, static_cast<char*>(into) + filled, count - filled,
                                static_cast<off_t>(offset + filled));
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return cannot_read_words(errno);
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
  }
  return filled;
}

// Opened first and looked at through the descriptor, so that what is checked is what is read; not
// blocking, so that a pipe without a writer is refused instead of waited for.
Expected<OpenFile, std::string> open_file(const std::filesystem::path& path,
                                          std::uint64_t most_bytes) {
  if (path.native().find('\0') != std::string::npos)
    return "there is no such file: the name holds a NUL character";
  const int descriptor = ::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
  if (descriptor < 0) return cannot_read_words(errno);
  struct stat status {};
  const bool known = ::fstat(descriptor, &status) == 0;
  const int error = errno;
  OpenFile file(descriptor, state_of(status));
  if (!known) return cannot_read_words(error);
  if (auto reason = refusal(status, most_bytes)) return std::move(*reason);
  return file;
}

}  // namespace linewright
