#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "commands/commands.hpp"

namespace linewright {

/// Sheets for looking at the aeroplane: what to see and measure on every route, or on the one
/// called `only_route`.
Outcome walk_round(const std::filesystem::path& path, const std::optional<std::string>& only_route,
                   const ResultForm& form);

}  // namespace linewright
