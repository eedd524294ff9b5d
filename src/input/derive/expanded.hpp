#pragma once
// A whole project as one file, with everything that was worked out written down.

#include <string>
#include <vector>

#include "input/parsed_file.hpp"

namespace linewright {

/// The trees of a project's files, after `derive` and without errors, as the text of one project
/// file. Files of other units keep their numbers, with the unit beside each. What was worked out
/// has a comment on what it came from; comments of the files themselves are not kept.
std::string expanded(const std::vector<ParsedFile>& files);

}  // namespace linewright
