#pragma once
// The page of the manual that has every key of project files.

#include <string>

namespace linewright {

/// Markdown, written from the tables by which keys are read: a table for each map.
std::string keys_page();

}  // namespace linewright
