#pragma once
// A value that stands for one run in place of what a project's files say.

#include <string>

#include "model/source.hpp"

namespace linewright {

struct SetValue {
  std::string path;      ///< "routes.static-left.line"
  std::string value;     ///< as written
  std::string was;       ///< in the files; empty: they do not state it
  SourceLocation where;  ///< of what was there; line 0 for nothing
};

}  // namespace linewright
