#pragma once
// Finds the nodes of a project by name, without a look at each.

#include <string_view>
#include <unordered_map>

#include "model/project.hpp"

namespace linewright {

/// The project must outlive it, its nodes unchanged.
class NodesByName {
 public:
  explicit NodesByName(const Project& project) {
    for (const Node& node : project.nodes) nodes_.emplace(node.name, &node);
  }
  /// As `Project::find_node` has it: of several the first, nullptr for none.
  const Node* find(std::string_view name) const {
    const auto found = nodes_.find(name);
    return found == nodes_.end() ? nullptr : found->second;
  }

 private:
  std::unordered_map<std::string_view, const Node*> nodes_;
};

}  // namespace linewright
