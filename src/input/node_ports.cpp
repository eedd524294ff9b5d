#include "input/node_ports.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "model/angle.hpp"

namespace linewright {

namespace {

/// A branch may be stated this far off its fitting's own angle, as a protractor reads
/// [common practice, no source]. What counts then is the fitting's.
constexpr double branch_slip_deg = 5;

/// Insertions that exceed their room by less are rounding.
constexpr double insertion_slip_in = 1e-6;
/// Ports that point away from each other within 5 degrees, on axes this near to each other, are of
/// one bore [common practice, no source].
const double opposite_cosine = std::cos(radians_of(5));
constexpr double one_axis_in = 0.1;

constexpr std::array<const char*, 3> port_names{"a", "b", "c"};

/// `branch` turned in its plane with `direction` until it stands at the angle. Both of unit length,
/// neither along the other.
Vec3 at_angle(Vec3 direction, Vec3 branch, double angle_deg) {
  const Vec3 across = unit(branch - direction * dot(branch, direction));
  const double angle = radians_of(angle_deg);
  return direction * std::cos(angle) + across * std::sin(angle);
}

/// How far `branch` is off the angle at which the fitting has it.
double branch_slip(const Fitting& fitting, Vec3 direction, Vec3 branch) {
  return std::abs(angle_between_rad(unit(direction), unit(branch)) * degrees_per_radian -
                  *branch_angle_deg(fitting.kind));
}

/// The ways that the fitting's ports point, `a` first; nothing where `branch` is not as it must be.
std::vector<Vec3> ways_of(const Fitting& fitting, Vec3 aimed, std::optional<Vec3> branch) {
  const Vec3 direction = unit(aimed);
  const auto angle_deg = branch_angle_deg(fitting.kind);
  if (angle_deg.has_value() != branch.has_value()) return {};
  if (!angle_deg) return {direction, direction * -1.0};
  if (branch_slip(fitting, aimed, *branch) > branch_slip_deg) return {};
  const Vec3 true_branch = at_angle(direction, unit(*branch), *angle_deg);
  if (fitting.kind == FittingKind::tee) return {direction, direction * -1.0, true_branch};
  return {direction, true_branch};
}

/// Says why the fitting is not turned one way only; false where it is.
bool says_why_not(const Fitting& fitting, const AimedFitting& aim, ProjectDraft& draft) {
  const auto angle_deg = branch_angle_deg(fitting.kind);
  const std::string_view port = fitting.kind == FittingKind::tee ? "c" : "b";
  if (!aim.direction)
    draft.add_error(aim.where, "a node with a fitting needs 'direction', the way its port a points",
                    "direction: [1, 0, 0] is straight aft");
  else if (!angle_deg && aim.branch)
    draft.add_error(aim.branch_where,
                    fmt::format("{} runs straight: it has no 'branch'", quoted_text(fitting.name)),
                    "leave it out");
  else if (angle_deg && !aim.branch)
    draft.add_error(aim.where, fmt::format("{} needs 'branch', the way its port {} points",
                                           quoted_text(fitting.name), port));
  else if (angle_deg && branch_slip(fitting, *aim.direction, *aim.branch) > branch_slip_deg)
    draft.add_error(aim.branch_where,
                    fmt::format("port {} of {} points {:g} degrees off the way of port a: 'branch' "
                                "is {:.1f} degrees off 'direction'",
                                port, quoted_text(fitting.name), *angle_deg,
                                angle_between_rad(unit(*aim.direction), unit(*aim.branch)) *
                                    degrees_per_radian));
  else
    return false;
  return true;
}

/// Of its bores, from the middle to each face.
double bore_volume_in3(const Fitting& fitting) {
  double length = 0;
  for (const SourcedValue& each : fitting.take_up_in) length += each.value;
  return std::numbers::pi / 4 * fitting.bore_in->value * fitting.bore_in->value * length;
}

bool joins_lines(NodeKind kind) {
  return kind == NodeKind::tee || kind == NodeKind::union_fitting || kind == NodeKind::bulkhead;
}

/// Past where the axes meet no tube goes: there is the other one.
void check_insertion(const Node& node, const Port& port, ProjectDraft& draft) {
  if (!joins_lines(node.kind) || node.ports.size() < 2 || port.insertion_in <= 0) return;
  const double to_middle = std::max(0.0, dot(port.at - node.at, port.direction));
  if (port.insertion_in <= to_middle + insertion_slip_in) return;
  draft.add_error(
      port.where,
      fmt::format("insertion: the tube at port {} would go past the middle of {}, where tubes "
                  "meet: it goes in {:.4g} in, and from the face to there it is {:.4g} in",
                  quoted_text(port.name), quoted_text(node.name), port.insertion_in, to_middle));
}

/// Two tubes that come from opposite sides along one axis go no farther than to each other.
void check_opposite(const Node& node, const Port& first, const Port& second, ProjectDraft& draft) {
  if (dot(first.direction, second.direction) > -opposite_cosine) return;
  const Vec3 way = first.at - second.at;
  const double between = dot(way, first.direction);
  if (norm(way - first.direction * between) > one_axis_in || between < 0) return;
  const double both = first.insertion_in + second.insertion_in;
  if (both <= between + insertion_slip_in) return;
  draft.add_error(
      second.where,
      fmt::format("insertion: the tubes at ports {} and {} of {} would meet: they go in {:.4g} in "
                  "together, and from face to face it is {:.4g} in",
                  quoted_text(first.name), quoted_text(second.name), quoted_text(node.name), both,
                  between));
}

}  // namespace

std::vector<Port> ports_of_fitting(const Fitting& fitting, Vec3 at, Vec3 direction,
                                   std::optional<Vec3> branch) {
  std::vector<Port> ports;
  const std::vector<Vec3> ways = ways_of(fitting, direction, branch);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    Port port;
    port.name = port_names[i];
    port.at = at + ways[i] * fitting.take_up_in[i].value;
    port.direction = ways[i];
    port.insertion_in = fitting.insertion_in ? fitting.insertion_in->value : 0;
    ports.push_back(std::move(port));
  }
  return ports;
}

void give_nodes_their_ports(ProjectDraft& draft) {
  for (const AimedFitting& aim : draft.aimed_fittings) {
    Node& node = draft.project.nodes[aim.node];
    const Fitting* fitting = draft.project.catalogue.find_fitting(node.fitting);
    if (fitting == nullptr) continue;
    if (!says_why_not(*fitting, aim, draft))
      node.ports = ports_of_fitting(*fitting, node.at, *aim.direction, aim.branch);
    for (Port& port : node.ports) port.where = aim.where;
    node.body = FittingBody{fitting->body_diameter_in.value / 2,
                            fitting->nut_in ? fitting->nut_in->value : 0};
    if (!node.volume_in3 && fitting->bore_in) node.volume_in3 = bore_volume_in3(*fitting);
  }
}

void check_insertions(ProjectDraft& draft) {
  for (const Node& node : draft.project.nodes) {
    // A fitting's own figures are checked where it is read.
    if (!node.fitting.empty()) continue;
    for (std::size_t i = 0; i < node.ports.size(); ++i) {
      const std::size_t before = draft.errors.list.size();
      check_insertion(node, node.ports[i], draft);
      if (draft.errors.list.size() > before) continue;
      for (std::size_t j = 0; j < i; ++j) check_opposite(node, node.ports[j], node.ports[i], draft);
    }
  }
}

}  // namespace linewright
