#pragma once
// What was found wrong so far.

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "input/diagnostic.hpp"
#include "input/quantity.hpp"

namespace linewright {

/// Errors kept of one run. A file that is wrong throughout (a mesh, say) needs no longer list.
inline constexpr std::size_t most_errors = 1000;

struct ErrorList {
  std::vector<Diagnostic> list;
  bool left_out = false;  ///< there are more

  /// Adds an error; beyond `most_errors` only the fact that there are more is kept.
  void add(Diagnostic error) {
    if (list.size() < most_errors)
      list.push_back(std::move(error));
    else
      left_out = true;
  }
};

/// What the reader of a value needs to know, and where it says what is wrong.
struct ValueContext {
  ErrorList& errors;
  BareLength bare = BareLength::inch;
  /// Numbers without a unit, of what millimetres do not say it of: newtons and degrees Celsius may
  /// be meant, and were not taken.
  int taken_beside_mm = 0;

  void error(const SourceLocation& where, std::string message, std::string suggestion = {}) {
    errors.add({where, std::move(message), std::move(suggestion), {}});
  }
};

}  // namespace linewright
