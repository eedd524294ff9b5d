#pragma once
// The lines themselves: nodes, routes between them and what the builder has accepted.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/closure.hpp"
#include "model/control_cable.hpp"
#include "model/control_name.hpp"
#include "model/fitting.hpp"
#include "model/source.hpp"
#include "model/vector.hpp"

namespace linewright {

enum class NodeKind {
  static_port,
  pitot_probe,
  instrument,
  drain,
  tee,
  union_fitting,
  bulkhead,
  cap,
  valve,
  end,
  horn,
  pedal,
};

/// True for what a control cable or a rod ends at, and moves with.
constexpr bool takes_cable(NodeKind kind) {
  return kind == NodeKind::horn || kind == NodeKind::pedal;
}

/// The arm of a horn or pedal that the end of a cable or rod goes round on.
struct Arm {
  Vec3 pivot;
  Vec3 axis;  ///< direction of the turning axis, not necessarily of unit length

  friend bool operator==(const Arm&, const Arm&) = default;
};

/// A sector, quadrant or drum that a cable's end lies on. The node's `at` is where the cable leaves
/// it with the controls neutral.
struct Sector {
  double radius_in = 0;            ///< of the groove, to the middle of the cable
  std::optional<double> wrap_deg;  ///< of cable on it with the controls neutral

  friend bool operator==(const Sector&, const Sector&) = default;
};

/// Where routes join or end.
struct Node {
  std::string name;
  NodeKind kind = NodeKind::end;
  Vec3 at;
  std::optional<double> volume_in3;
  std::optional<bool> fixed;  ///< the builder's word on whether structure holds it
  SourceLocation where;
  std::optional<Arm> arm = {};           ///< horn, pedal: what it turns on
  std::optional<Sector> sector = {};     ///< horn, pedal: what its cable lies on
  std::optional<bool> on_engine = {};    ///< it shakes with the engine, on its mounts
  std::optional<LooseEnd> loose = {};    ///< the line ends here for now
  std::optional<bool> connector = {};    ///< wires end at a connector, terminal block, panel or box
  std::string fitting = {};              ///< catalogue name; empty for none
  std::vector<Port> ports = {};          ///< where tubes begin; empty: at the node itself
  std::optional<FittingBody> body = {};  ///< absent: nothing is known of its size
  std::optional<Vec3> drawn_at = {};     ///< set where `at` was measured: where it is drawn

  /// The port called `name`, or nullptr.
  const Port* find_port(std::string_view wanted) const {
    for (const Port& port : ports)
      if (port.name == wanted) return &port;
    return nullptr;
  }

  /// True when structure holds the node sideways. Ports, probes, instruments, drains, valves,
  /// bulkhead unions, horns and pedals are mounted; tees, unions, caps and open ends hang on their
  /// lines unless `fixed` says otherwise.
  bool held() const {
    if (fixed) return *fixed;
    return kind != NodeKind::tee && kind != NodeKind::union_fitting && kind != NodeKind::cap &&
           kind != NodeKind::end;
  }

  friend bool operator==(const Node&, const Node&) = default;
};

/// What carries what: a pressure, a control cable, current, a pushrod or a push-pull control.
enum class SystemKind { static_air, pitot, alpha, vent, cable, wire, rod, push_pull };

/// True for systems that hold air and are judged as one pressure.
constexpr bool is_air(SystemKind kind) {
  return kind != SystemKind::cable && kind != SystemKind::wire && kind != SystemKind::rod &&
         kind != SystemKind::push_pull;
}

enum class HoldKind { clamp, grommet, bushing, fairlead, pulley };

/// What a route point's `at` is. A pulley given by its centre needs its diameter and axis, and the
/// cable turns about the axis by the right-hand rule.
enum class PointGiven { corner, centre };

/// A corner or support of a route, between its two nodes.
struct RoutePoint {
  Vec3 at;
  std::optional<double> bend_in;  ///< bend radius to centreline
  std::optional<HoldKind> hold;
  std::string to;                     ///< the part a clamp is fixed to; empty for none
  std::string through;                ///< the hole it passes; empty for none
  std::optional<double> diameter_in;  ///< pulley: groove diameter
  std::optional<Vec3> axis;           ///< pulley: direction of its spindle
  std::optional<double> bore_in;      ///< fairlead, grommet, bushing: inner diameter
  PointGiven given = PointGiven::corner;
  SourceLocation where;
  std::optional<int> guards = {};           ///< pulley: how many pins keep the cable in the groove
  std::optional<double> guard_gap_in = {};  ///< pulley: between its flange and a pin
  std::optional<double> outside_in = {};    ///< pulley: diameter over its flanges
  std::optional<double> width_in = {};      ///< pulley: over its flanges
  std::optional<Vec3> drawn_at = {};        ///< set where `at` was measured: where it is drawn

  /// True where a grommet, bushing or fairlead goes all round the line.
  bool is_bored_guide() const {
    return hold == HoldKind::grommet || hold == HoldKind::bushing || hold == HoldKind::fairlead;
  }

  friend bool operator==(const RoutePoint&, const RoutePoint&) = default;
};

/// A fairlead that the cable is to pass free. It neither bends the path nor holds the cable.
struct FreeFairlead {
  RoutePoint fairlead;  ///< `at` is the middle of its bore; its bore is stated
  int leg = 0;          ///< how many of the route's points come before it

  friend bool operator==(const FreeFairlead&, const FreeFairlead&) = default;
};

/// A guard tube over part of a route, between two distances along it from its `from` node.
struct Sleeve {
  double from_in = 0;
  double to_in = 0;
  std::optional<double> bore_in;
  std::optional<double> outside_in;
  SourceLocation where;
  std::string line = {};  ///< catalogue name of the tube it is cut from; empty for none
  std::optional<SourcedValue> minimum_bend_radius_in = {};  ///< to its centreline

  friend bool operator==(const Sleeve&, const Sleeve&) = default;
};

/// A turnbuckle, terminal, splice or stop fixed to a cable, centred `at_in` along it.
struct Attachment {
  std::string kind;
  double at_in = 0;
  double length_in = 0;
  double diameter_in = 0;
  SourceLocation where;
  std::optional<Adjustment> adjustment = {};  ///< turnbuckles
  CableEnds ends = {};                        ///< turnbuckles: what takes hold of each side

  bool is_turnbuckle() const { return kind == "turnbuckle"; }
  /// A turnbuckle screwed out as far as it goes, where that is stated; else the length.
  double longest_in() const { return adjustment ? adjustment->longest_in : length_in; }

  friend bool operator==(const Attachment&, const Attachment&) = default;
};

struct Tension {
  double rigged_lbf = 0;
  std::optional<double> limit_load_lbf;
  SourceLocation where;

  friend bool operator==(const Tension&, const Tension&) = default;
};

/// How far a cable moves along itself from neutral, inches, both ways. Of a rod: how far its `from`
/// end goes, measured along the rod as drawn. Of a push-pull control: how far its wire moves in the
/// casing, forward where it goes toward smaller FS at the route's `from`.
struct Travel {
  double forward_in = 0;
  double aft_in = 0;
  SourceLocation where;

  friend bool operator==(const Travel&, const Travel&) = default;
};

/// How far the wire of a push-pull control stands out of its casing at the two ends, with the
/// control at neutral, to the middle of the pin or ball that it works.
struct RunOut {
  double from_in = 0;
  double to_in = 0;
  SourceLocation where;
  std::optional<Arm> from_arm = {};  ///< what the pin goes round on; absent: it runs straight out
  std::optional<Arm> to_arm = {};
  std::optional<double> swivel_deg = {};  ///< the most that the wire may leave the casing's line

  friend bool operator==(const RunOut&, const RunOut&) = default;
};

/// One line between two nodes.
struct Route {
  std::string name;
  SystemKind system = SystemKind::static_air;
  std::string system_name;  ///< as written: "static" or "static: alternate"
  std::string line;         ///< catalogue name
  std::string from;
  std::string to;
  std::string from_port = {};  ///< of the node, where that has ports; empty otherwise
  std::string to_port = {};
  std::vector<RoutePoint> points;
  std::vector<FreeFairlead> free_fairleads;
  std::optional<double> length_in;  ///< hose: free length as cut, where the builder states it
  /// "rudder", "elevator"…; empty for none. In all routes as the first of them writes it.
  std::string control;
  bool primary = true;  ///< a primary flight control
  std::optional<Tension> tension;
  std::optional<Travel> travel;
  std::optional<double> rod_end_angle_deg;  ///< rods: the most that a rod end's bearing can tilt
  std::optional<RunOut> run_out;            ///< push-pull controls
  std::vector<Sleeve> sleeves;
  std::vector<Attachment> attached;
  CableEnds ends;  ///< cables: what takes hold of each node
  std::optional<ControlLever> lever;
  std::optional<ControlGrip> worked_by;  ///< what the pilot holds, where a stick or wheel would do
  std::vector<std::string> supports_on;  ///< the only parts that `suggest` may clamp it to
  bool in_millimetres = false;           ///< bare lengths of the file that it is in
  std::optional<bool> tied;  ///< wires: a tie holds the bundle together between supports
  /// Force that brings the structure at the two ends of a cable an inch nearer to each other.
  std::optional<double> airframe_stiffness_lbf_per_in;
  /// Set where anything of it was measured: distances along it as drawn, of its `from`, of each of
  /// its points and of its `to`.
  std::vector<double> drawn_in = {};
  SourceLocation where;
  SourceLocation line_where;
  SourceLocation from_where;
  SourceLocation to_where;
  SourceLocation from_port_where = {};
  SourceLocation to_port_where = {};

  /// True for a cable that a primary flight control hangs on.
  bool is_primary_control() const {
    return system == SystemKind::cable && primary && !is_same_control(control, "trim");
  }

  friend bool operator==(const Route&, const Route&) = default;
};

/// Lines tied to each other along a stretch of the first of them.
struct Bundle {
  std::string name;
  std::vector<std::string> routes;  ///< two or more, each once
  double from_in = 0;               ///< along the first route, from its `from`
  double to_in = 0;
  double ties_in = 0;  ///< from tie to tie
  SourceLocation where;

  friend bool operator==(const Bundle&, const Bundle&) = default;
};

/// A finding the builder has accepted, with the reason.
struct Waiver {
  std::string rule;
  std::string route;
  std::optional<Vec3> near;
  double within_in = 0;  ///< only with `near`
  std::string reason;
  SourceLocation where;

  friend bool operator==(const Waiver&, const Waiver&) = default;
};

}  // namespace linewright
