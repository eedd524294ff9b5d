#include "planning/air_sections.hpp"

#include <algorithm>

#include "planning/joint_doubt.hpp"

namespace linewright {

namespace {

std::size_t index(int value) {
  return static_cast<std::size_t>(value);
}

/// The network's links by node.
std::vector<std::vector<int>> links_at_nodes(const AirNetwork& network) {
  std::vector<std::vector<int>> at(network.nodes.size());
  for (std::size_t i = 0; i < network.links.size(); ++i) {
    at[index(network.links[i].from)].push_back(static_cast<int>(i));
    at[index(network.links[i].to)].push_back(static_cast<int>(i));
  }
  return at;
}

int other_end(const AirLink& link, int node) {
  return link.from == node ? link.to : link.from;
}

/// Which links part the network when they are taken out: those whose far side no other link joins
/// to what was met before. Depth-first, without recursion, so that long chains do no harm.
std::vector<bool> bridges(const AirNetwork& network, const std::vector<std::vector<int>>& at,
                          int root) {
  struct Visit {
    int node;
    int through;
    std::size_t next = 0;
  };
  std::vector<bool> parts(network.links.size());
  std::vector<int> met(network.nodes.size(), -1);
  std::vector<int> earliest(network.nodes.size(), -1);
  std::vector<Visit> path{{root, -1}};
  int clock = 0;
  met[index(root)] = earliest[index(root)] = clock++;
  while (!path.empty()) {
    Visit& here = path.back();
    const std::size_t node = index(here.node);
    if (here.next < at[node].size()) {
      const int link = at[node][here.next++];
      if (link == here.through) continue;
      const int far = other_end(network.links[index(link)], here.node);
      if (met[index(far)] >= 0) {
        earliest[node] = std::min(earliest[node], met[index(far)]);
      } else {
        met[index(far)] = earliest[index(far)] = clock++;
        path.push_back({far, link});
      }
      continue;
    }
    const Visit done = here;
    path.pop_back();
    if (path.empty()) break;
    const std::size_t before = index(path.back().node);
    earliest[before] = std::min(earliest[before], earliest[node]);
    if (earliest[node] > met[before]) parts[index(done.through)] = true;
  }
  return parts;
}

/// Takes sections off the network one by one, from the root outward.
class Builder {
 public:
  Builder(const AirSystem& system, int root)
      : system_(system),
        network_(system.network),
        at_(links_at_nodes(network_)),
        parts_(bridges(network_, at_, root)),
        node_taken_(network_.nodes.size()),
        link_taken_(network_.links.size()) {}

  SectionTree build(int root) {
    add_block(root, -1, -1);
    for (std::size_t i = 0; i < exits_.size(); ++i) {
      const Exit exit = exits_[i];
      const int far = other_end(network_.links[index(exit.link)], exit.node);
      add_block(far, add_route(exit), exit.link);
    }
    return std::move(tree_);
  }

 private:
  /// A route that leaves a block for good.
  struct Exit {
    int link;
    int node;
    int section;
  };

  int add_route(const Exit& exit) {
    Section section;
    section.name = route_name(exit.link);
    section.volume_in3 = system_.link_volume_in3[index(exit.link)];
    section.parent = exit.section;
    section.is_route = true;
    section.joint_route = section.name;
    section.joint_node = network_.nodes[index(exit.node)]->name;
    section.doubt = line_doubt(line_kind(exit.link)) + doubt_at(exit.link, exit.node);
    section.trouble = trouble_to_open(line_kind(exit.link), node_kind(exit.node));
    tree_.sections.push_back(section);
    return static_cast<int>(tree_.sections.size()) - 1;
  }

  /// A node with all that loops join to it.
  void add_block(int entry, int parent, int through) {
    Section section;
    section.parent = parent;
    section.node = entry;
    if (through >= 0) {
      section.joint_route = route_name(through);
      section.joint_node = network_.nodes[index(entry)]->name;
      section.doubt = doubt_at(through, entry);
      section.trouble = trouble_to_open(line_kind(through), node_kind(entry));
    }
    const int number = static_cast<int>(tree_.sections.size());
    std::vector<int> nodes{entry};
    std::vector<std::string> names;
    node_taken_[index(entry)] = true;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      section.volume_in3 += system_.node_volume_in3[index(nodes[i])];
      section.doubt += node_doubt(node_kind(nodes[i]));
      names.push_back(network_.nodes[index(nodes[i])]->name);
      for (const int link : at_[index(nodes[i])]) {
        if (link == through || link_taken_[index(link)]) continue;
        link_taken_[index(link)] = true;
        if (parts_[index(link)]) {
          exits_.push_back({link, nodes[i], number});
          continue;
        }
        section.volume_in3 += system_.link_volume_in3[index(link)];
        section.doubt += line_doubt(line_kind(link)) +
                         doubt_at(link, network_.links[index(link)].from) +
                         doubt_at(link, network_.links[index(link)].to);
        names.push_back(route_name(link));
        const int far = other_end(network_.links[index(link)], nodes[i]);
        if (node_taken_[index(far)]) continue;
        node_taken_[index(far)] = true;
        nodes.push_back(far);
      }
    }
    section.name = names.front();
    if (names.size() > 1) {
      section.name = "loop of";
      for (std::size_t i = 0; i < names.size(); ++i)
        section.name += (i == 0 ? " " : " + ") + names[i];
    }
    tree_.sections.push_back(section);
  }

  const std::string& route_name(int link) const {
    return network_.links[index(link)].route->route->name;
  }

  LineKind line_kind(int link) const { return network_.links[index(link)].route->line->kind; }
  NodeKind node_kind(int node) const { return network_.nodes[index(node)]->kind; }
  double doubt_at(int link, int node) const {
    return joint_doubt(line_kind(link), node_kind(node));
  }

  const AirSystem& system_;
  const AirNetwork& network_;
  std::vector<std::vector<int>> at_;
  std::vector<bool> parts_;
  std::vector<bool> node_taken_;
  std::vector<bool> link_taken_;
  std::vector<Exit> exits_;
  SectionTree tree_;
};

}  // namespace

SectionTree section_tree(const AirSystem& system, int root) {
  return Builder(system, root).build(root);
}

}  // namespace linewright
