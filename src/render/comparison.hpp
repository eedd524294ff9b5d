#pragma once
// Two projects side by side, or one and a change to it.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "planning/parts.hpp"
#include "render/report.hpp"

namespace linewright {

struct Comparison {
  const Report& a;
  const Report& b;
  std::string a_path;  ///< as the user wrote it
  std::string b_path;
  std::vector<PartRow> a_parts = {};  ///< what to buy for each, without spares
  std::vector<PartRow> b_parts = {};
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
/// Parts of which not as many are bought for both, known again by item, size and unit.
std::vector<SidesOf<PartRow>> parts_changed(const Comparison& comparison);

}  // namespace linewright
