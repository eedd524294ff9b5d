#pragma once
// Where everything that holds or guards a line goes, and what is drilled for it.

#include <optional>
#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// How the lists are put in order.
enum class ScheduleOrder { part, route, frame };

/// A support of a route: clamp, grommet, bushing, fairlead, pulley.
struct ScheduledSupport {
  std::string route;
  std::string hold;             ///< "clamp", "grommet", "bushing", "fairlead", "pulley"
  std::string to;               ///< the part it is fixed to; empty where none is named
  std::string through;          ///< the hole it stands in; empty for none
  Vec3 at;                      ///< on the line; a pulley given by its centre: that
  double distance_in = 0;       ///< along the route from its `from` node
  double from_previous_in = 0;  ///< from the support before, or from the node
  std::string clamp = {};       ///< "clamp-4"; empty where it is none or not known
  std::optional<double> hole_in =
      {};  ///< to drill; nothing where none is drilled or it is not known
  std::optional<double> size_in = {};        ///< bore of a guide, groove diameter of a pulley
  std::optional<int> guards = {};            ///< pulleys: pins that keep the cable in the groove
  std::optional<double> along_part_in = {};  ///< channels: along the part's path from its start
  bool is_holes_own = false;  ///< the grommet or bushing that its hole is listed with
};

/// A hole of a frame, or of a wall of a channel, a panel or a box.
struct ScheduledHole {
  std::string frame;                    ///< the frame, or the part that the wall is of
  std::string name;                     ///< its part's name where none is described
  Vec3 centre;                          ///< of an outline: of its extents
  std::optional<double> diameter_in;    ///< nothing for an outline
  EdgeGuard edge = EdgeGuard::bare;     ///< what guards it
  std::optional<double> bore_in = {};   ///< of the grommet or bushing
  std::vector<std::string> lines = {};  ///< routes that go through it
  /// From the hole's edge to the nearest other edge of the sheet, inches; negative where they
  /// overlap. In walls only other holes are looked at.
  std::optional<double> edge_distance_in = {};
  std::string nearest = {};  ///< the hole that is nearest, or the frame where its edge is
  double thickness_in = 0;   ///< of the sheet
  double round_in = 0;       ///< along its edge
  std::optional<double> along_part_in = {};
};

/// A route, for the head of its list.
struct ScheduledRoute {
  std::string name;
  std::string system;
  std::string line;
  std::string from;
  std::string to;
};

struct Schedule {
  std::string project_name;
  ScheduleOrder order = ScheduleOrder::route;
  std::vector<ScheduledRoute> routes;  ///< in file order
  std::vector<ScheduledSupport> supports;
  std::vector<ScheduledHole> holes;
  std::vector<std::string> assumptions;
};

/// By route: as the project has the routes, along each. By part: by the part's name in the order of
/// the structure, along a channel's path, else by place from the nose. By frame: the same, by place
/// from the left. What is fixed to no part comes last.
Schedule schedule(const PreparedProject& prepared, ScheduleOrder order);

}  // namespace linewright
