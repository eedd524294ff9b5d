#pragma once
// One thing wrong with the input: where, what, what was expected, and what may have been meant.

#include <string>
#include <vector>

#include "model/source.hpp"

namespace linewright {

struct Diagnostic {
  SourceLocation where;     ///< line 0: the file as a whole
  std::string message;      ///< "expected a length, found a force: '30 lbf'"
  std::string suggestion;   ///< "did you mean 'clearance'?"; empty for none
  std::string source_line;  ///< the text of that line, for the caret; empty where there is none

  friend bool operator==(const Diagnostic&, const Diagnostic&) = default;
};

}  // namespace linewright
