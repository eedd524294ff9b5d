#pragma once
// Two projects side by side, or one and a change to it.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "render/report.hpp"

namespace linewright {

struct Comparison {
  const Report& a;
  const Report& b;
  std::string a_path;  ///< as the user wrote it
  std::string b_path;
};

/// A route or system of the one, the other or both, known again by its name.
template <typename Part>
struct SidesOf {
  const Part* a = nullptr;
  const Part* b = nullptr;
};

/// True where the second has a fail or an unknown that the first has not, or where nothing was
/// judged in it but something in the first.
bool is_worse(const Comparison& comparison);

/// Routes in the order of the second, then those that only the first has.
std::vector<SidesOf<RouteCut>> routes_beside(const Comparison& comparison);
std::vector<SidesOf<SystemCut>> systems_beside(const Comparison& comparison);

}  // namespace linewright
