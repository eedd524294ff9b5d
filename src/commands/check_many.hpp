#pragma once
// Several projects in one run.

#include <filesystem>
#include <vector>

#include "commands/commands.hpp"

namespace linewright {

/// Judges each by the same options, whose own project does not count. One that is wrong keeps no
/// other from being judged, and the exit code is the worst of all. In text each stands under its
/// name; where `as_lines`, each is one line of JSON, those that are wrong too. Other forms hold one
/// project and are refused.
Outcome check_many(const CheckOptions& options, const std::vector<std::filesystem::path>& projects,
                   bool as_lines);

}  // namespace linewright
