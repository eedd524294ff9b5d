#pragma once
// What the system announces of the files in some folders. Folders are watched, not files, because
// most editors put a new file in the place of the old one.

#include <filesystem>
#include <map>
#include <set>
#include <vector>

#include "system/waiting.hpp"

namespace linewright {

/// What was seen of a file.
enum class FileSign {
  begun,     ///< it went away, came to be, or was written into: more may follow
  complete,  ///< a writer closed it, or a whole file took its place
  touched,   ///< its permissions changed
};

struct FolderEvent {
  std::filesystem::path path;  ///< a file, or a folder itself; empty: anything may have happened
  FileSign sign = FileSign::touched;
};

/// Linux announces changes; where the system does not, or has run out of means for it, there are
/// simply no events.
class FolderEvents {
 public:
  FolderEvents();
  ~FolderEvents();
  FolderEvents(const FolderEvents&) = delete;
  FolderEvents& operator=(const FolderEvents&) = delete;

  /// Becomes readable when there are events; -1 where there never will be any.
  Waitable descriptor() const { return descriptor_; }

  /// Watches these folders from now on, and no others.
  void watch(const std::set<std::filesystem::path>& folders);

  /// What has happened since; does not wait.
  std::vector<FolderEvent> take();

 private:
  int descriptor_ = -1;
  /// Two folders of one watch are two names of the same one.
  std::map<int, std::vector<std::filesystem::path>> folders_of_;
};

}  // namespace linewright
