#include "commands/watch/file_watch.hpp"

#include <algorithm>
#include <set>

namespace linewright {

namespace {

namespace fs = std::filesystem;
using std::chrono::steady_clock;

constexpr std::chrono::milliseconds look_interval{1000};

/// The folder itself, or the nearest one above it that is there: that one will tell of its coming.
fs::path nearest_folder(fs::path folder) {
  std::error_code ignored;
  while (!fs::is_directory(folder, ignored) && folder.has_relative_path())
    folder = folder.parent_path();
  return folder;
}

}  // namespace

bool FileWatch::cover(const std::vector<fs::path>& files) {
  std::map<fs::path, Look> looks;
  std::set<fs::path> folders;
  bool any_new = false;
  for (const fs::path& file : files) {
    folders.insert(nearest_folder(file.parent_path()));
    const auto known = looks_.find(file);
    any_new = any_new || known == looks_.end();
    looks.emplace(file, known == looks_.end() ? look_at(file) : known->second);
  }
  events_.watch(folders);
  looks_ = std::move(looks);
  return any_new;
}

Woken FileWatch::wait(Waitable stop) {
  SaveSettling save;
  auto next_look = steady_clock::now();
  while (true) {
    const auto over_at = save.over_at();
    if (wait_until(stop, events_.descriptor(), over_at.value_or(next_look))) return Woken::by_stop;
    note_events(save);
    const auto now = steady_clock::now();
    if (!save.over_at() && now >= next_look) {
      note_looks(save);
      next_look = now + look_interval;
    }
    if (over_at && save.over_at() <= now) break;
  }
  for (auto& [file, look] : looks_) look = look_at(file);
  return Woken::by_save;
}

FileWatch::Look FileWatch::look_at(const fs::path& file) {
  std::error_code missing;
  const std::uintmax_t bytes = fs::file_size(file, missing);
  if (missing) return {};
  const fs::file_time_type time = fs::last_write_time(file, missing);
  return missing ? Look{} : Look{true, bytes, time};
}

void FileWatch::note_events(SaveSettling& save) {
  for (const FolderEvent& event : events_.take())
    if (std::any_of(looks_.begin(), looks_.end(),
                    [&](const auto& entry) { return concerns(event.path, entry.first); }))
      save.note(event.path, event.sign, steady_clock::now());
}

void FileWatch::note_looks(SaveSettling& save) {
  for (const auto& [file, known] : looks_) {
    const Look look = look_at(file);
    if (look == known) continue;
    save.note(file, look.there ? FileSign::complete : FileSign::begun, steady_clock::now());
  }
}

}  // namespace linewright
