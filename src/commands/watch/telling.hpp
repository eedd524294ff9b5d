#pragma once
// What is told of one check after another.

#include <ctime>
#include <filesystem>
#include <optional>
#include <string>

#include "commands/checked_report.hpp"
#include "commands/mesh_store.hpp"
#include "commands/open_project.hpp"
#include "commands/watch/page_server.hpp"
#include "commands/watch/watch.hpp"

namespace linewright {

/// Tells the first check whole, and of each later one what changed. A person is told what a change
/// of routes changes before everything has been judged anew, and then whether that was right. A
/// page, and what reads JSON, gets what is confirmed alone. `options` and `server` must outlive it.
class Telling {
 public:
  /// `server` may be nullptr: nothing is served.
  Telling(const WatchOptions& options, PageServer* server);

  /// What can be told at once of a project that was just read, or nothing. `of` comes after it.
  std::optional<Outcome> at_once(const OpenedProject& opened);
  /// What there is to tell of it when all is judged, and its pages are handed out.
  Outcome of(const OpenedProject& opened);

 private:
  Outcome told_of(const Report& report);
  Outcome told_of(Outcome refused) const;
  bool may_tell_at_once() const;
  Expected<std::string, Outcome> page_of(const OpenedProject& opened, const Report& shown);
  std::string hand_out(const OpenedProject& opened, const Expected<Report, Outcome>& report);

  const CheckOptions& options_;
  const std::optional<std::filesystem::path>& page_;
  PageServer* server_;
  bool replaces_;
  MeshStore meshes_;
  std::time_t now_ = 0;
  std::optional<Report> last_;           ///< told last, good
  std::optional<JudgedProject> judged_;  ///< by the last check, where that helps
  bool told_at_once_ = false;            ///< of the project that is being told of
  bool told_before_ = false;
};

}  // namespace linewright
