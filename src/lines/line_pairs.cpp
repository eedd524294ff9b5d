#include "lines/line_pairs.hpp"

#include <algorithm>

namespace linewright {

namespace {

/// Distance along the line from its end at the node, or of the nearer where both of them are there.
double from_node_in(const PreparedRoute& route, const Node* node, double along_in) {
  const double from_to_in = route.length_in() - along_in;
  if (route.from == node && route.to == node) return std::min(along_in, from_to_in);
  return route.from == node ? along_in : from_to_in;
}

bool is_soft(const PreparedRoute& route) {
  return route.line->kind == LineKind::plastic_tube || route.line->kind == LineKind::hose;
}

}  // namespace

bool are_soft(const PreparedRoute& first, const PreparedRoute& second) {
  return is_soft(first) && is_soft(second);
}

double parting_zone_in(const PreparedRoute& route, const Node* node, bool both_soft) {
  if (!both_soft) return shared_node_zone_in;
  double first_support_in = soft_node_zone_in;
  for (const Support& support : route.supports)
    if (support.point >= 0)
      first_support_in = std::min(first_support_in, from_node_in(route, node, support.distance_in));
  return std::max(shared_node_zone_in, first_support_in);
}

double fitting_reach_in(const PreparedRoute& route) {
  return 0.25 + 4 * route.line->largest_radius_in();
}

Sharing sharing_at(const PreparedRoute& first, double first_in, const PreparedRoute& second,
                   double second_in) {
  Sharing sharing = Sharing::none;
  const bool soft = are_soft(first, second);
  for (const Node* node : {first.from, first.to}) {
    if (node != second.from && node != second.to) continue;
    const double first_away = from_node_in(first, node, first_in);
    const double second_away = from_node_in(second, node, second_in);
    if (first_away > parting_zone_in(first, node, soft) ||
        second_away > parting_zone_in(second, node, soft))
      continue;
    const bool in_fitting =
        first_away <= fitting_reach_in(first) && second_away <= fitting_reach_in(second);
    sharing = std::max(sharing, in_fitting ? Sharing::in_fitting : Sharing::parting);
  }
  return sharing;
}

}  // namespace linewright
