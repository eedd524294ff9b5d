#include "lines/line_pairs.hpp"

namespace linewright {

namespace {

/// True where the place is within the zone of the route's end at that node.
bool near_node(const PreparedRoute& route, const Node* node, double along_in) {
  return (route.from == node && along_in <= shared_node_zone_in) ||
         (route.to == node && along_in >= route.length_in() - shared_node_zone_in);
}

}  // namespace

bool at_shared_node(const PreparedRoute& first, double first_in, const PreparedRoute& second,
                    double second_in) {
  for (const Node* node : {first.from, first.to})
    if ((node == second.from || node == second.to) && near_node(first, node, first_in) &&
        near_node(second, node, second_in))
      return true;
  return false;
}

}  // namespace linewright
