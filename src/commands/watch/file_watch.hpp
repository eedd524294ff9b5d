#pragma once
// Waits for saves of a set of files.

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <map>
#include <vector>

#include "commands/watch/save_settling.hpp"
#include "system/folder_events.hpp"
#include "system/waiting.hpp"

namespace linewright {

/// Why a wait ended.
enum class Woken { by_save, by_stop };

/// The system's announcements make it quick. A look at sizes and times every second makes it sure:
/// on drives shared over a network, and where nothing is announced.
class FileWatch {
 public:
  /// Looks at these files, absolute, from now on and at no others. True where some were not looked
  /// at until now: those may have changed unseen since they were read.
  bool cover(const std::vector<std::filesystem::path>& files);

  /// Waits until a save is over, or until `stop` has something to tell, which goes first.
  /// Saves since the last wait count.
  Woken wait(Waitable stop);

 private:
  /// How a file looks from outside. A missing one looks like none that is there.
  struct Look {
    bool there = false;
    std::uintmax_t bytes = 0;
    std::filesystem::file_time_type time;

    friend bool operator==(const Look&, const Look&) = default;
  };
  static Look look_at(const std::filesystem::path& file);

  void note_events(SaveSettling& save);
  void note_looks(SaveSettling& save);

  FolderEvents events_;
  std::map<std::filesystem::path, Look> looks_;
};

}  // namespace linewright
