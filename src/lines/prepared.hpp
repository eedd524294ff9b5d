#pragma once
// The project made ready to judge: each route's centreline, supports, spans and frame crossings,
// and the structure as obstacles. Rules read this and nothing below it needs to be worked out
// twice.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/centreline.hpp"
#include "geometry/pulley_wrap.hpp"
#include "geometry/structure/obstacles.hpp"
#include "lines/cable_travel.hpp"
#include "lines/fitting_bodies.hpp"
#include "lines/free_passage.hpp"
#include "lines/pulleys.hpp"
#include "lines/wall.hpp"
#include "model/project.hpp"

namespace linewright {

/// Something that holds a line sideways.
struct Support {
  double distance_in = 0;  ///< along the route
  double play_in = 0;      ///< how far the line can still move sideways in it, or with it
  std::string name;        ///< "clamp on S3L", "grommet F4-a", "port-left"
  int point = -1;          ///< index into the route's points; -1 for its `from`, -2 for its `to`
  std::string to;          ///< part it is fixed to, where stated
  /// Ends that an arm swings: how far in along the line it can be with all of that play.
  double comes_in_in = 0;
  std::string missing = {};  ///< what `play_in` leaves out because it is not known; empty for none
};

/// The line between two neighbouring supports, or from a support to a free end.
struct Span {
  double start_in = 0;
  double end_in = 0;
  int first = -1;  ///< index into the route's supports; -1: a free end
  int last = -1;
  double length_in() const { return end_in - start_in; }
};

/// Where the centreline passes a frame's plane, inside the frame's outline, or goes through the
/// hole of a wall.
struct Crossing {
  const Frame* frame = nullptr;
  const Hole* hole = nullptr;  ///< nullptr: it goes through the web
  double distance_in = 0;
  Vec3 at;
  const Hole* runs_into = nullptr;  ///< another hole of the frame that the hole overlaps
  bool leaves_frame = false;        ///< the hole reaches outside the frame
  const Wall* wall = nullptr;       ///< what `frame` is drawn for where it is no frame

  /// What to call the hole by: its name, or its part's where none is described.
  const std::string& name() const { return wall && wall->implied ? frame->name : hole->name; }
  /// True where the hole is whole, so that something can be fitted in it.
  bool hole_is_whole() const { return !runs_into && !leaves_frame; }
  /// The place in the plane of the hole.
  Vec2 in_plane(Vec3 place) const { return frame->plane.seen(place); }
};

/// The part of a route that an attachment sweeps over in full travel; where the travel is not
/// stated, the part that it covers at neutral.
struct SweptPart {
  double from_in = 0;
  double to_in = 0;
  const Attachment* attachment = nullptr;
  double radius_in() const { return attachment->diameter_in / 2; }
};

/// A part of a line between two places that were both measured on the aeroplane, with none between
/// them that was not.
struct AsBuiltPart {
  double from_in = 0;
  double to_in = 0;
};

struct PreparedRoute {
  const Route* route = nullptr;
  const Line* line = nullptr;
  const Node* from = nullptr;
  const Node* to = nullptr;
  Centreline centreline;
  std::optional<Movement> moves =
      {};  ///< along itself; nothing where a cable's travel is not stated
  std::vector<double> point_distance_in = {};  ///< of each of the route's points
  std::vector<Support> supports = {};          ///< in order along the route
  std::vector<Span> spans = {};                ///< cover the route from end to end
  std::vector<Crossing> crossings = {};        ///< in order along the route
  /// Of each of the route's points: why the cable cannot go round the pulley given there.
  std::vector<std::optional<WrapFault>> wrap_faults = {};
  /// Guides of the route's points that are too wide to hold the line, or stand in a hole that is
  /// not whole, and clamps that hold nothing because they seize or saw it, in order along the
  /// route.
  std::vector<Support> loose_guides = {};
  std::vector<SweptPart> swept_by_attachments = {};  ///< one of each attachment
  std::vector<FreePassage> free_passages = {};       ///< one of each fairlead that it passes free
  const Port* from_port = nullptr;                   ///< of its nodes, where they have ports
  const Port* to_port = nullptr;
  std::vector<AsBuiltPart> as_built = {};  ///< in order along the route

  double length_in() const { return centreline.length_in(); }
  bool is_as_built(double distance_in) const;
  double as_built_in() const;  ///< how much of its length is
  /// Where the line that is judged has a place of the line as drawn, by distances along them: the
  /// same where nothing was measured.
  double built_distance_in(double drawn_distance_in) const;
  /// Sleeve that covers a place, or nullptr: of several the thickest.
  const Sleeve* sleeve_at(double distance_in) const;
  /// Place in the file of what is nearest along the line: a point of the route, fairleads that it
  /// passes free among them, or the route where an end node is nearer. At a frame's hole it is the
  /// point that names the hole, wherever that point stands.
  const SourceLocation& location_near(double distance_in) const;
  /// The point, or fairlead passed free, that names the hole; nullptr for none.
  const RoutePoint* point_through(const std::string& hole) const;
  /// Distance along to the nearest support, or the whole length where there is none.
  double to_nearest_support_in(double distance_in) const;
  /// True for a line that is known not to move along itself: a tube, hose or wire, or a cable whose
  /// travel is stated as none.
  bool stays() const { return moves && moves->toward_from_in <= 0 && moves->toward_to_in <= 0; }
  /// True where a clamp can hold the line: not about a bare cable that moves, or whose travel is
  /// not stated. About a sleeve that is under all of its width it holds the sleeve, which then
  /// stays while the cable slides in it.
  bool bears_clamp(double distance_in) const;
  /// Half the largest real diameter, or of the thickest sleeve there.
  double radius_in(double distance_in) const;
  /// The same, or half the diameter of an attachment that comes to the place in full travel.
  double girth_radius_in(double distance_in) const;
  /// The thickest attachment that comes to the place and stands out of line and sleeve; nullptr for
  /// none.
  const Attachment* attachment_at(double distance_in) const;
  /// The largest of these along the route.
  double thickest_radius_in() const;
};

struct PreparedProject {
  const Project* project = nullptr;
  std::vector<PreparedRoute> routes;
  Obstacles obstacles;                     ///< structure, fittings and pulleys
  Walls walls = {};                        ///< those with holes, described or implied
  std::vector<NodeFitting> fittings = {};  ///< of all nodes whose size is known
  std::vector<RoutePulley> pulleys = {};   ///< of all routes
  /// Of each of the project's nodes: the routes of the ends there, by their index, in order.
  std::vector<std::vector<std::size_t>> routes_of_nodes = {};

  /// The routes that end at one of the project's nodes, in order: twice what begins there, too.
  std::vector<const PreparedRoute*> routes_at(const Node& node) const;

  /// The fitting that is a part of the obstacles; nullptr for parts that are none.
  const NodeFitting* fitting_of(int part) const;
  /// The index into the obstacles' parts of one of `fittings`.
  int part_of(const NodeFitting& fitting) const;

  /// The pulley that is a part of the obstacles; nullptr for parts that are none.
  const RoutePulley* pulley_of(int part) const;

  const PreparedRoute* find_route(std::string_view name) const;

  /// How far a line may lie from where it is judged: what is measured, by less than what is drawn.
  /// This is of gaps between lines. In one to structure nobody knows whether line or structure is
  /// off the drawing: there the build tolerance counts, wherever the line was measured.
  double line_tolerance_in(bool as_built) const {
    return as_built ? project->measuring_tolerance_in : project->build_tolerance_in;
  }
};

/// A place this near to a support, along the line, is at it [common practice, no source].
inline constexpr double at_support_in = 1.0;

/// A clamp takes up so much of its line to both sides of its middle [common practice, no source:
/// half of the narrowest band].
inline constexpr double clamp_half_width_in = 0.25;

}  // namespace linewright
