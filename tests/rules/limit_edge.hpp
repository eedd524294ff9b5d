#pragma once
// A row of a rule's limits at its edge: projects whose judged value is at the limit and so much on
// either side of it. Each subject has a table of its rows; `limit_edges_test` judges them.

#include <functional>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {

/// What a value at a limit is moved by to be off it: a hundred times what counts as nothing.
inline constexpr double off_limit = 1e-4;
/// The same of what is counted.
inline constexpr double one_off = 1;

struct LimitEdge {
  std::string rule;
  std::string row;
  /// As it holds in the project; empty where the row has no number there, or one that moves with
  /// the value.
  std::optional<double> limit = {};
  Verdict broken = Verdict::fail;
  std::string source;  ///< words of the row's source
  /// The rule's judgements where so much is to spare; less than nothing breaks the limit.
  std::function<std::vector<Judgement>(double spare)> judged;
  double step = off_limit;
  double let_pass = 0;     ///< beyond the limit, before the row is broken
  bool at_limit = true;    ///< false where the value cannot be put at the limit
  bool breakable = true;   ///< false for a row that lets everything pass
  bool listed = true;      ///< a pass is a judgement of the row
  bool measured = true;    ///< the judgement's margin is what was spared
  std::string cited = {};  ///< the row that the judgement rests on; empty for this one
};

inline std::ostream& operator<<(std::ostream& stream, const LimitEdge& edge) {
  return stream << edge.rule << " " << edge.row;
}

using LimitEdges = std::vector<LimitEdge>;

}  // namespace linewright
