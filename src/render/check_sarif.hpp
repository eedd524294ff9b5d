#pragma once

#include <string>
#include <vector>

#include "render/report.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// The findings of a report as a log of SARIF 2.1.0 (OASIS Standard), passes left out, with all of
/// `rules` in its tool. An unknown is of kind "open"; what is waived has an accepted suppression.
/// What was taken or found on the way are notifications of its invocation. Files are relative to
/// the project's folder.
std::string check_sarif(const Report& report, const std::vector<const Rule*>& rules);

}  // namespace linewright
