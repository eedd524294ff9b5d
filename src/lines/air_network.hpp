#pragma once
// Air lines as graphs: which routes hang together, and how high each of their places lies when the
// aeroplane is tilted.

#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// False for what closes a line, leaves it open or moves a control: air does not go from one line
/// that ends there to another.
constexpr bool joins_air(NodeKind kind) {
  return kind != NodeKind::cap && kind != NodeKind::end && !takes_cable(kind);
}

/// One route of a network, by the indices of its two nodes there.
struct AirLink {
  const PreparedRoute* route = nullptr;
  int from = 0;
  int to = 0;
};

/// Air routes of one system's name that hang together at shared nodes. Where lines end at a node
/// that does not join them, a cap say, each of their networks has that node.
struct AirNetwork {
  SystemKind kind = SystemKind::static_air;
  std::vector<const Node*> nodes;  ///< each once, in the order the routes meet them
  std::vector<AirLink> links;      ///< in file order

  /// The place along a link's route of one of its nodes.
  static double distance_of_node(const AirLink& link, int node) {
    return node == link.from ? 0 : link.route->length_in();
  }
};

/// Every network of air lines, vents left out, in file order of its first route. The result points
/// into `prepared`.
std::vector<AirNetwork> air_networks(const PreparedProject& prepared);

/// The unit vector that points straight up, in (FS, BL, WL), when the aeroplane is rolled right
/// wing down about its own long axis and pitched nose up:
///   (-sin pitch, -sin roll cos pitch, cos roll cos pitch).
/// Without roll, height is WL cos pitch - FS sin pitch.
Vec3 up_in_attitude(double pitch_deg, double roll_deg);

/// A place along a line and its height.
struct HeightSample {
  double distance_in = 0;
  double height_in = 0;
};

/// Heights along a centreline, ends included, in order. Between neighbouring samples the height
/// runs straight to within Centreline::default_sagitta_in, and every highest and lowest place of
/// the line is a sample, solved exactly on its arcs.
std::vector<HeightSample> height_profile(const Centreline& centreline, Vec3 up);

/// Heights of the corners as drawn, before they are rounded.
std::vector<HeightSample> drawn_height_profile(const Centreline& centreline, Vec3 up);

}  // namespace linewright
