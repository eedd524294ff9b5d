#include "input/text_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <optional>
#include <system_error>
#include <utility>

#include "input/yaml_document.hpp"

namespace linewright {
namespace {

/// Closes its file descriptor.
class OpenFile {
 public:
  explicit OpenFile(int descriptor) : descriptor_(descriptor) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  int descriptor() const { return descriptor_; }

 private:
  int descriptor_;
};

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

/// Why what was opened cannot be a project's file, or nothing.
std::optional<std::string> refusal(const struct stat& status) {
  if (S_ISDIR(status.st_mode)) return "expected a file, found a folder";
  if (!S_ISREG(status.st_mode)) return "expected a regular file, found a device, pipe or socket";
  if (status.st_size > static_cast<off_t>(largest_file_bytes))
    return fmt::format("the file is too large: {:.1f} MiB; at most {} MiB are read",
                       static_cast<double>(status.st_size) / (1 << 20), largest_file_bytes >> 20);
  return std::nullopt;
}

}  // namespace

// Opened first and looked at through the descriptor, so that what is checked is what is read; not
// blocking, so that a pipe without a writer is refused instead of waited for.
std::variant<std::string, Diagnostic> read_text_file(const std::filesystem::path& path,
                                                     const std::string& shown_name) {
  const auto failure = [&](std::string message) {
    return Diagnostic{{shown_name, 0, 0}, std::move(message), "", ""};
  };
  if (path.native().find('\0') != std::string::npos)
    return failure("there is no such file: the name holds a NUL character");
  const OpenFile file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY));
  if (file.descriptor() < 0) return failure(error_words(errno));
  struct stat status {};
  if (::fstat(file.descriptor(), &status) != 0) return failure(error_words(errno));
  if (const auto reason = refusal(status)) return failure(*reason);

  // The size is only a hint: the file may grow meanwhile, and some report none.
  std::string bytes(static_cast<std::size_t>(status.st_size) + 1, '\0');
  std::size_t filled = 0;
  while (true) {
    if (filled == bytes.size()) bytes.resize(bytes.size() * 2 + 4096);
    const ssize_t got = ::read(file.descriptor(), bytes.data() + filled, bytes.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return failure(error_words(errno));
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
    if (filled > largest_file_bytes)
      return failure(fmt::format("the file is too large: more than {} MiB are not read",
                                 largest_file_bytes >> 20));
  }
  bytes.resize(filled);
  return bytes;
}

}  // namespace linewright
