#pragma once
// What names in a project file stand for.

#include <string_view>

namespace linewright {

/// What a name stands for. Names are distinct within a kind.
/// `step` is a closure or a task, which share their names.
enum class Named { part, hole, node, route, closure, task, step, attitude, line, bundle, fitting };

/// The kind in words: "node".
constexpr std::string_view kind_word(Named kind) {
  switch (kind) {
    case Named::part:
      return "part";
    case Named::hole:
      return "hole";
    case Named::node:
      return "node";
    case Named::route:
      return "route";
    case Named::closure:
      return "closure";
    case Named::task:
      return "task";
    case Named::step:
      return "closure or task";
    case Named::attitude:
      return "attitude";
    case Named::line:
      return "line";
    case Named::bundle:
      return "bundle";
    case Named::fitting:
      return "fitting";
  }
  return "name";
}

}  // namespace linewright
