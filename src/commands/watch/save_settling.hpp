#pragma once
// When a save is over. Editors write in place, or move the old file away and write a new one, or
// write beside it and move that over it; a file that is looked at in the middle is cut short or
// missing.

#include <chrono>
#include <filesystem>
#include <optional>
#include <set>

#include "system/folder_events.hpp"

namespace linewright {

/// True where a sign of `changed` concerns `file`: it is the file, or a folder above it. The empty
/// path stands for anything at all.
bool concerns(const std::filesystem::path& changed, const std::filesystem::path& file);

/// Gathers the signs of one save.
class SaveSettling {
 public:
  using Time = std::chrono::steady_clock::time_point;

  /// Quiet after the last sign when no file is left half written.
  static constexpr std::chrono::milliseconds quiet{10};
  /// Quiet after the last sign when one may be: it stays away, or its writer has stopped.
  static constexpr std::chrono::milliseconds patience{300};
  /// A file that is written to without end is looked at all the same.
  static constexpr std::chrono::milliseconds longest{2000};

  void note(const std::filesystem::path& file, FileSign sign, Time now);

  /// When the save counts as over, unless another sign comes; nothing before the first sign.
  std::optional<Time> over_at() const;

 private:
  std::set<std::filesystem::path> begun_;
  std::optional<Time> first_;
  Time last_;
};

}  // namespace linewright
