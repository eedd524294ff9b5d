#pragma once
// What to buy: lines, what holds and guards them, fittings, and what cables end in.

#include <optional>
#include <string>
#include <vector>

#include "lines/prepared.hpp"
#include "words/phrasing.hpp"

namespace linewright {

struct PartsOptions {
  double spares_share = 0;  ///< of each quantity, rounded up to whole ones: 0.1 is a tenth
  bool by_closure = false;  ///< a row for each closure that things are needed before
  Phrasing phrasing = {};   ///< of the sizes
};

/// One thing to buy, of one material and size.
struct PartRow {
  std::string item;
  std::string size;
  std::string standard;       ///< empty where none is known
  double quantity = 0;        ///< without spares
  std::string unit = "each";  ///< else "in", or "length": as it is sold
  double spares = 0;
  std::vector<std::string> used_for = {};         ///< routes, nodes or holes
  std::optional<std::string> needed_before = {};  ///< the first closure over any of it
};

struct PartsList {
  std::string project_name;
  std::vector<PartRow> rows;
  std::vector<std::string> notes;  ///< how lengths are cut, and what the project does not say
  std::vector<std::string> assumptions;
};

PartsList parts_list(const PreparedProject& prepared, const PartsOptions& options);

/// A self-locking nut that was undone grips no more and is replaced: one, and one for each time
/// that the joint comes apart again.
constexpr int self_locking_nuts(int comes_apart_again) {
  return 1 + comes_apart_again;
}

}  // namespace linewright
