#pragma once

#include <filesystem>
#include <string>
#include <variant>

#include "commands/outcome.hpp"
#include "geometry/prepared.hpp"
#include "render/report.hpp"

namespace linewright {

/// The project, or a refusal that shows everything that is wrong with its files.
std::variant<Project, Outcome> open_project(const std::filesystem::path& path);

/// The project's name, routes, systems and assumptions; no judgements yet.
Report describe(const PreparedProject& prepared);

}  // namespace linewright
