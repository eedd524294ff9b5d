#include "planning/joint_doubt.hpp"

namespace linewright {

double joint_doubt(LineKind line, NodeKind node) {
  // What is pushed on or squeezed lets go sooner than what is flared; a joint that is undone for
  // every inspection, sooner than one that is left alone.
  const double held = line == LineKind::hose ? 3 : line == LineKind::plastic_tube ? 2 : 1;
  const bool disturbed = node == NodeKind::instrument || node == NodeKind::drain;
  return disturbed ? 1.5 * held : held;
}

double node_doubt(NodeKind node) {
  switch (node) {
    case NodeKind::drain:
    case NodeKind::valve:
      return 3;
    case NodeKind::instrument:
      return 2;
    case NodeKind::static_port:
    case NodeKind::pitot_probe:
      return 1;
    default:
      return 0.25;
  }
}

double line_doubt(LineKind line) {
  return line == LineKind::rigid_tube ? 0.1 : 0.25;
}

int trouble_to_open(LineKind line, NodeKind node) {
  const int grip = line == LineKind::hose ? 1 : line == LineKind::plastic_tube ? 2 : 3;
  const bool in_the_skin = node == NodeKind::static_port || node == NodeKind::pitot_probe;
  return in_the_skin ? grip + 2 : grip;
}

}  // namespace linewright
