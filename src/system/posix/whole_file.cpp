#include "system/whole_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <optional>
#include <system_error>

#include "system/file_words.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

namespace fs = std::filesystem;

/// The text in the folder of its final place, without a name where the file system can do that, so
/// that nothing of it is left whenever the program is killed; else under a passing name. Gone again
/// unless published.
class StagedFile {
 public:
  explicit StagedFile(fs::path target) : target_(std::move(target)) {}
  StagedFile(const StagedFile&) = delete;
  StagedFile& operator=(const StagedFile&) = delete;
  ~StagedFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!staged_.empty()) ::unlink(staged_.c_str());
  }

  /// A file that is replaced gives its permissions, whatever a new one would be denied.
  std::string stage(std::string_view text, std::optional<mode_t> permissions) {
    if (!open_new()) return cannot_write_words(target_, errno);
    int error = write_all(descriptor_, text);
    if (error == 0 && permissions && ::fchmod(descriptor_, *permissions) != 0) error = errno;
    if (error == 0 && ::fsync(descriptor_) != 0 && errno != EINVAL) error = errno;
    return error == 0 ? std::string() : cannot_write_words(target_, error);
  }

  std::string publish_new() {
    if (link_to(target_)) return {};
    if (errno == EEXIST) return already_there_words(target_);
    if (staged_.empty()) return cannot_write_words(target_, errno);
    // Some file systems, on memory sticks for one, have no hard links.
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(target_, ignored))) return already_there_words(target_);
    return publish_over();
  }

  std::string publish_over() {
    if (staged_.empty() && !with_passing_name([&](const fs::path& path) { return link_to(path); }))
      return cannot_write_words(target_, errno);
    if (::rename(staged_.c_str(), target_.c_str()) != 0) return cannot_write_words(target_, errno);
    staged_.clear();
    return {};
  }

 private:
  bool open_new() {
    constexpr mode_t usual_mode = 0666;
    const fs::path folder = target_.parent_path().empty() ? path_of(".") : target_.parent_path();
    descriptor_ = ::open(folder.c_str(), O_WRONLY | O_TMPFILE | O_CLOEXEC, usual_mode);
    if (descriptor_ >= 0) return true;
    if (errno != EOPNOTSUPP && errno != EISDIR && errno != EINVAL) return false;
    return with_passing_name([&](const fs::path& path) {
      descriptor_ = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, usual_mode);
      return descriptor_ >= 0;
    });
  }

  /// Gives what has no name yet a name, or what is staged another one.
  bool link_to(const fs::path& path) const {
    if (!staged_.empty()) return ::link(staged_.c_str(), path.c_str()) == 0;
    const std::string open_file = fmt::format("/proc/self/fd/{}", descriptor_);
    return ::linkat(AT_FDCWD, open_file.c_str(), AT_FDCWD, path.c_str(), AT_SYMLINK_FOLLOW) == 0;
  }

  /// True where `takes` takes one of the names that nothing in the folder has.
  template <typename Takes>
  bool with_passing_name(Takes takes) {
    for (int attempt = 0; attempt < 100; ++attempt) {
      const fs::path name = path_of(fmt::format(".linewright-{}-{}.part", ::getpid(), attempt));
      const fs::path path = target_.parent_path() / name;
      if (takes(path)) {
        staged_ = path;
        return true;
      }
      if (errno != EEXIST) return false;
    }
    return false;
  }

  static int write_all(int descriptor, std::string_view text) {
    while (!text.empty()) {
      const ssize_t written = ::write(descriptor, text.data(), text.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) return errno;
      text.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
  }

  fs::path target_;
  fs::path staged_;
  int descriptor_ = -1;
};

}  // namespace

std::string write_whole_file(const NewFile& file, bool overwrite) {
  struct stat present {};
  const bool exists = ::stat(file.path.c_str(), &present) == 0;
  if (exists && !overwrite) return already_there_words(file.path);
  if (exists && !S_ISREG(present.st_mode)) return not_regular_words(file.path);
  std::error_code unresolved;
  const fs::path target = exists ? fs::canonical(file.path, unresolved) : file.path;
  if (unresolved) return cannot_write_words(file.path, unresolved.value());
  StagedFile staged(target);
  std::optional<mode_t> permissions;
  if (exists) permissions = present.st_mode & mode_t{0777};
  const std::string error = staged.stage(file.text, permissions);
  if (!error.empty()) return error;
  return exists ? staged.publish_over() : staged.publish_new();
}

}  // namespace linewright
