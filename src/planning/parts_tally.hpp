#pragma once
// Things to buy, counted as they are met.

#include <optional>
#include <string>
#include <vector>

#include "model/project.hpp"
#include "planning/parts.hpp"

namespace linewright {

/// What is added up: everything of one item and size is one row.
struct Purchase {
  std::string item;
  std::string size;
  std::string standard = {};
  std::string unit = "each";
};

class PartsTally {
 public:
  /// `project` must outlive the tally.
  PartsTally(const Project& project, const PartsOptions& options);

  /// The first closure over any of the places.
  std::optional<std::string> closure_over(const std::vector<Vec3>& places) const;
  void add(const Purchase& kind, double quantity, const std::string& used_for,
           const std::optional<std::string>& needed_before);

  /// In the order in which they were met, by closure where that is asked for; spares added.
  std::vector<PartRow> rows() const;
  const PartsOptions& options() const { return options_; }

 private:
  std::size_t rank_of(const std::optional<std::string>& closure) const;

  const Project& project_;
  PartsOptions options_;
  std::vector<std::string> closures_;  ///< in order
  std::vector<PartRow> rows_;
};

}  // namespace linewright
