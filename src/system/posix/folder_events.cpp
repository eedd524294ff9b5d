#include "system/folder_events.hpp"

#ifdef __linux__
#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string>
#endif

namespace linewright {

#ifdef __linux__

namespace {

constexpr std::uint32_t begun = IN_MODIFY | IN_CREATE | IN_DELETE | IN_MOVED_FROM;
constexpr std::uint32_t complete = IN_CLOSE_WRITE | IN_MOVED_TO;
constexpr std::uint32_t folder_gone = IN_DELETE_SELF | IN_MOVE_SELF | IN_UNMOUNT | IN_IGNORED;
constexpr std::uint32_t watched = begun | complete | IN_ATTRIB | IN_DELETE_SELF | IN_MOVE_SELF;

FileSign sign_of(std::uint32_t mask) {
  if (mask & complete) return FileSign::complete;
  return mask & (begun | folder_gone) ? FileSign::begun : FileSign::touched;
}

/// The name that follows an event: padded with NULs, and absent where the folder itself is meant.
std::string name_after(const char* event, const inotify_event& head) {
  if (head.len == 0) return {};
  return std::string(event + sizeof(inotify_event));
}

}  // namespace

FolderEvents::FolderEvents() : descriptor_(::inotify_init1(IN_NONBLOCK | IN_CLOEXEC)) {}

FolderEvents::~FolderEvents() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

void FolderEvents::watch(const std::set<std::filesystem::path>& folders) {
  std::map<int, std::vector<std::filesystem::path>> wanted;
  for (const std::filesystem::path& folder : folders) {
    const int watch = ::inotify_add_watch(descriptor_, folder.c_str(), watched | IN_ONLYDIR);
    if (watch >= 0) wanted[watch].push_back(folder);
  }
  for (const auto& [watch, paths] : folders_of_)
    if (!wanted.contains(watch)) ::inotify_rm_watch(descriptor_, watch);
  folders_of_ = std::move(wanted);
}

std::vector<FolderEvent> FolderEvents::take() {
  std::vector<FolderEvent> events;
  std::array<char, 16384> block{};
  while (true) {
    const ssize_t count = ::read(descriptor_, block.data(), block.size());
    if (count <= 0) return events;
    for (std::size_t at = 0; at < static_cast<std::size_t>(count);) {
      inotify_event head{};
      std::memcpy(&head, block.data() + at, sizeof head);
      const std::string name = name_after(block.data() + at, head);
      if (head.mask & IN_Q_OVERFLOW) events.push_back({{}, FileSign::touched});
      if (const auto found = folders_of_.find(head.wd); found != folders_of_.end())
        for (const std::filesystem::path& folder : found->second)
          events.push_back({name.empty() ? folder : folder / name, sign_of(head.mask)});
      at += sizeof head + head.len;
    }
  }
}

#else

FolderEvents::FolderEvents() = default;
FolderEvents::~FolderEvents() = default;
void FolderEvents::watch(const std::set<std::filesystem::path>&) {}
std::vector<FolderEvent> FolderEvents::take() {
  return {};
}

#endif

}  // namespace linewright
