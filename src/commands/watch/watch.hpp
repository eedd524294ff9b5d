#pragma once

#include <functional>

#include "commands/commands.hpp"

namespace linewright {

/// Shows what a check came to, as the commands' outcomes are shown; false where it cannot.
using Show = std::function<bool(const Outcome&)>;

struct WatchOptions {
  CheckOptions check;
  std::optional<std::filesystem::path> report;  ///< page to write after each check
  bool replace_report = false;                  ///< also where it is there already
  bool serve = false;                           ///< the page at an address of this computer, too
};

/// Checks a project, shows the result, and then after every save of one of its files what changed
/// in the judgements; until SIGINT or SIGTERM. What comes back has nothing more to show but a
/// refusal to begin, and the exit code of the last check.
Outcome watch(const WatchOptions& options, const Show& show);

}  // namespace linewright
