#include "system/whole_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace linewright {

namespace {

namespace fs = std::filesystem;

std::string failure(const fs::path& path, int error) {
  return fmt::format("cannot write '{}': {}", path.string(),
                     std::generic_category().message(error));
}

std::string already_there(const fs::path& path) {
  return fmt::format("'{}' is already there and is not overwritten", path.string());
}

/// The text under a passing name in the folder of its final place; gone again unless published.
class StagedFile {
 public:
  explicit StagedFile(fs::path target) : target_(std::move(target)) {}
  StagedFile(const StagedFile&) = delete;
  StagedFile& operator=(const StagedFile&) = delete;
  ~StagedFile() {
    if (!staged_.empty()) ::unlink(staged_.c_str());
  }

  std::string stage(std::string_view text, mode_t mode) {
    const int descriptor = open_new(mode);
    if (descriptor < 0) return failure(target_, errno);
    int error = write_all(descriptor, text);
    if (error == 0 && ::fsync(descriptor) != 0 && errno != EINVAL) error = errno;
    if (::close(descriptor) != 0 && error == 0) error = errno;
    return error == 0 ? std::string() : failure(target_, error);
  }

  std::string publish_new() {
    if (::link(staged_.c_str(), target_.c_str()) == 0) return {};
    if (errno == EEXIST) return already_there(target_);
    // Some file systems, on memory sticks for one, have no hard links.
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(target_, ignored))) return already_there(target_);
    return publish_over();
  }

  std::string publish_over() {
    if (::rename(staged_.c_str(), target_.c_str()) != 0) return failure(target_, errno);
    staged_.clear();
    return {};
  }

 private:
  int open_new(mode_t mode) {
    for (int attempt = 0; attempt < 100; ++attempt) {
      const fs::path name = fmt::format(".linewright-{}-{}.part", ::getpid(), attempt);
      const fs::path path = target_.parent_path() / name;
      const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
      if (descriptor < 0 && errno == EEXIST) continue;
      if (descriptor >= 0) staged_ = path;
      return descriptor;
    }
    errno = EEXIST;
    return -1;
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
};

}  // namespace

std::string write_whole_file(const NewFile& file, bool overwrite) {
  constexpr mode_t usual_mode = 0666;
  struct stat present {};
  const bool exists = ::stat(file.path.c_str(), &present) == 0;
  if (exists && !overwrite) return already_there(file.path);
  if (exists && !S_ISREG(present.st_mode))
    return fmt::format("'{}' is not a regular file and is not replaced", file.path.string());
  std::error_code unresolved;
  const fs::path target = exists ? fs::canonical(file.path, unresolved) : file.path;
  if (unresolved) return failure(file.path, unresolved.value());
  StagedFile staged(target);
  const std::string error =
      staged.stage(file.text, exists ? present.st_mode & mode_t{0777} : usual_mode);
  if (!error.empty()) return error;
  return exists ? staged.publish_over() : staged.publish_new();
}

std::string write_all_or_none(const std::vector<NewFile>& files) {
  std::error_code ignored;
  for (const NewFile& file : files)
    if (fs::exists(fs::symlink_status(file.path, ignored))) return already_there(file.path);
  std::vector<fs::path> written;
  std::string error;
  for (const NewFile& file : files) {
    error = write_whole_file(file, false);
    if (!error.empty()) break;
    written.push_back(file.path);
  }
  if (error.empty()) return {};
  for (const fs::path& path : written) fs::remove(path, ignored);
  return error;
}

}  // namespace linewright
