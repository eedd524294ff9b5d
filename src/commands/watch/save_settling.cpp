#include "commands/watch/save_settling.hpp"

#include <algorithm>

namespace linewright {

bool concerns(const std::filesystem::path& changed, const std::filesystem::path& file) {
  return std::mismatch(changed.begin(), changed.end(), file.begin(), file.end()).first ==
         changed.end();
}

void SaveSettling::note(const std::filesystem::path& file, FileSign sign, Time now) {
  if (sign == FileSign::begun) begun_.insert(file);
  if (sign == FileSign::complete) begun_.erase(file);
  if (!first_) first_ = now;
  last_ = now;
}

std::optional<SaveSettling::Time> SaveSettling::over_at() const {
  if (!first_) return std::nullopt;
  return std::min(*first_ + longest, last_ + (begun_.empty() ? quiet : patience));
}

}  // namespace linewright
