#include "system/open_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <optional>
#include <system_error>
#include <utility>

namespace linewright {
namespace {

std::string error_words(int error) {
  switch (error) {
    case ENOENT:
      return "there is no such file";
    case ENOTDIR:
      return "there is no such file: a part of its path is not a folder";
    case EACCES:
      return "cannot read the file: permission denied";
    case ELOOP:
      return "cannot read the file: its symbolic links go round in a circle";
    case ENAMETOOLONG:
      return "there is no such file: the name is too long";
    default:
      return "cannot read the file: " + std::generic_category().message(error);
  }
}

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
    if (got < 0) return error_words(errno);
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
  if (descriptor < 0) return error_words(errno);
  struct stat status {};
  const bool known = ::fstat(descriptor, &status) == 0;
  const int error = errno;
  OpenFile file(descriptor, state_of(status));
  if (!known) return error_words(error);
  if (auto reason = refusal(status, most_bytes)) return std::move(*reason);
  return file;
}

std::string too_large_words(std::uint64_t bytes, std::uint64_t most_bytes) {
  return fmt::format("the file is too large: {:.1f} MiB; at most {} MiB are read",
                     static_cast<double>(bytes) / (1 << 20), most_bytes >> 20);
}

}  // namespace linewright
