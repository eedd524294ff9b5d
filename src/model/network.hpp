#pragma once
// The lines themselves: nodes, routes between them and what the builder has accepted.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

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
  end,
  horn,
  pedal,
};

/// Where routes join or end.
struct Node {
  std::string name;
  NodeKind kind = NodeKind::end;
  Vec3 at;
  std::optional<double> volume_in3;
  std::optional<bool> fixed;  ///< the builder's word on whether structure holds it
  SourceLocation where;

  /// True when structure holds the node sideways. Ports, probes, instruments, drains, bulkhead
  /// unions, horns and pedals are mounted; tees, unions, caps and open ends hang on their lines
  /// unless `fixed` says otherwise.
  bool held() const {
    if (fixed) return *fixed;
    return kind != NodeKind::tee && kind != NodeKind::union_fitting && kind != NodeKind::cap &&
           kind != NodeKind::end;
  }
};

/// What carries what: a pressure, a control cable or current.
enum class SystemKind { static_air, pitot, alpha, vent, cable, wire };

/// True for systems that hold air and are judged as one pressure.
constexpr bool is_air(SystemKind kind) {
  return kind != SystemKind::cable && kind != SystemKind::wire;
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
};

/// A guard tube over part of a route, between two distances along it from its `from` node.
struct Sleeve {
  double from_in = 0;
  double to_in = 0;
  std::optional<double> bore_in;
  std::optional<double> outside_in;
  SourceLocation where;
};

/// A turnbuckle, terminal, splice or stop fixed to a cable, centred `at_in` along it.
struct Attachment {
  std::string kind;
  double at_in = 0;
  double length_in = 0;
  double diameter_in = 0;
  SourceLocation where;
};

struct Tension {
  double rigged_lbf = 0;
  std::optional<double> limit_load_lbf;
  SourceLocation where;
};

/// How far a cable moves along itself from neutral, inches, both ways.
struct Travel {
  double forward_in = 0;
  double aft_in = 0;
  SourceLocation where;
};

/// One line between two nodes.
struct Route {
  std::string name;
  SystemKind system = SystemKind::static_air;
  std::string system_name;  ///< as written: "static" or "static: alternate"
  std::string line;         ///< catalogue name
  std::string from;
  std::string to;
  std::vector<RoutePoint> points;
  std::optional<double> length_in;  ///< hose: free length as cut, where the builder states it
  std::string control;              ///< "rudder", "elevator"…; empty for none
  bool primary = true;              ///< a primary flight control
  std::optional<Tension> tension;
  std::optional<Travel> travel;
  std::vector<Sleeve> sleeves;
  std::vector<Attachment> attached;
  SourceLocation where;
  SourceLocation line_where;
  SourceLocation from_where;
  SourceLocation to_where;
};

/// A finding the builder has accepted, with the reason.
struct Waiver {
  std::string rule;
  std::string route;
  std::optional<Vec3> near;
  double within_in = 0;  ///< only with `near`
  std::string reason;
  SourceLocation where;
};

}  // namespace linewright
