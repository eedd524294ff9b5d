#include "planning/support_way.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "lines/part_gap.hpp"
#include "lines/prepare.hpp"
#include "model/sheet.hpp"

namespace linewright {

namespace {

/// A point this near to the straight between its neighbours makes no corner.
constexpr double on_straight_in = 0.001;
/// Places nearer to each other than this are one.
constexpr double same_place_in = 1e-6;
/// A new support stands no nearer to what holds the line already than this [common practice, no
/// source].
constexpr double from_supports_in = 1.0;
/// Parts farther from the line's surface are not asked for.
constexpr double farthest_part_in = 6.0;

double off_straight_in(Vec3 point, Vec3 from, Vec3 to) {
  const Vec3 along = to - from;
  const double squared = dot(along, along);
  const double t = squared > 0 ? std::clamp(dot(point - from, along) / squared, 0.0, 1.0) : 0;
  return distance(point, from + along * t);
}

bool is_clamp(const RoutePoint& point) {
  return point.hold == HoldKind::clamp && point.through.empty();
}

bool is_on_arc(const Centreline& line, double distance_in) {
  return std::any_of(line.pieces().begin(), line.pieces().end(), [&](const PathPiece& piece) {
    return piece.is_arc && distance_in > piece.start_in + same_place_in &&
           distance_in < piece.start_in + piece.length_in - same_place_in;
  });
}

std::vector<int> parts_allowed(const PreparedProject& prepared, const Route& route) {
  std::vector<int> allowed;
  const std::vector<Part>& parts = prepared.obstacles.parts();
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool usual = parts[i].kind == PartKind::channel || parts[i].kind == PartKind::frame;
    const bool named = std::find(route.supports_on.begin(), route.supports_on.end(),
                                 parts[i].name) != route.supports_on.end();
    if (route.supports_on.empty() ? usual : named) allowed.push_back(static_cast<int>(i));
  }
  return allowed;
}

class PlaceFinder {
 public:
  PlaceFinder(const PreparedProject& prepared, const PreparedRoute& bare)
      : prepared_(prepared), bare_(bare), allowed_(parts_allowed(prepared, *bare.route)) {}

  std::vector<SupportPlace> found(const std::vector<RoutePoint>& clamps) {
    add_what_stays();
    for (const RoutePoint& clamp : clamps) add_drawn(clamp);
    for (const Crossing& crossing : bare_.crossings) add_grommet(crossing);
    add_clamps();
    std::stable_sort(places_.begin(), places_.end(),
                     [](const auto& a, const auto& b) { return a.distance_in < b.distance_in; });
    const double length = bare_.length_in();
    if (places_.empty() || !places_.front().stays || places_.front().distance_in > same_place_in)
      places_.insert(places_.begin(), SupportPlace{0});
    if (!places_.back().stays || places_.back().distance_in < length - same_place_in)
      places_.push_back({length});
    return std::move(places_);
  }

 private:
  void add_what_stays() {
    for (const Support& support : bare_.supports) {
      SupportPlace place{support.distance_in};
      place.stays = true;
      places_.push_back(place);
    }
  }

  bool is_free(double along_in, double apart_in) const {
    return along_in > same_place_in && along_in < bare_.length_in() - same_place_in &&
           std::none_of(places_.begin(), places_.end(), [&](const SupportPlace& place) {
             const double apart = place.stays ? apart_in : same_place_in;
             return std::abs(place.distance_in - along_in) < apart;
           });
  }

  int corner_at(double along_in) const {
    for (std::size_t i = 0; i < bare_.point_distance_in.size(); ++i)
      if (std::abs(bare_.point_distance_in[i] - along_in) < same_place_in)
        return static_cast<int>(i);
    return -1;
  }

  /// A clamp keeps its own place, and the corner that it stood on.
  void add_drawn(const RoutePoint& clamp) {
    const auto& names = bare_.route->supports_on;
    if (!names.empty() && std::find(names.begin(), names.end(), clamp.to) == names.end()) return;
    SupportPlace place{nearest_distance_in(bare_.centreline, clamp.at), clamp, clamp.to};
    place.drawn = true;
    const auto& points = bare_.route->points;
    for (std::size_t i = 0; i < points.size(); ++i)
      if (points[i].at == clamp.at) place.corner = static_cast<int>(i);
    if (place.corner >= 0)
      place.distance_in = bare_.point_distance_in[static_cast<std::size_t>(place.corner)];
    else if (is_on_arc(bare_.centreline, place.distance_in))
      return;
    if (is_free(place.distance_in, same_place_in)) places_.push_back(place);
  }

  /// A small hole without a guard takes a grommet that holds the line.
  void add_grommet(const Crossing& crossing) {
    const auto& names = bare_.route->supports_on;
    if (!crossing.hole || crossing.wall || !crossing.hole_is_whole() ||
        crossing.hole->edge != EdgeGuard::bare)
      return;
    if (!names.empty() &&
        std::find(names.begin(), names.end(), crossing.frame->name) == names.end())
      return;
    const auto* circle = std::get_if<Circle>(&crossing.hole->shape);
    if (!circle) return;
    const double bore = circle->diameter_in - grommet_hole_over_bore_in;
    const double outside = bare_.line->outside_diameter_in;
    if (bore < bare_.line->largest_diameter_in() || bore > holding_bore_ratio * outside) return;
    if (is_on_arc(bare_.centreline, crossing.distance_in)) return;
    SupportPlace place{crossing.distance_in};
    place.corner = corner_at(crossing.distance_in);
    if (place.corner >= 0)
      place.point = bare_.route->points[static_cast<std::size_t>(place.corner)];
    else
      place.point.at = crossing.at;
    place.point.hold = HoldKind::grommet;
    place.point.through = crossing.hole->name;
    place.on = crossing.hole->name;
    if (is_free(place.distance_in, from_supports_in)) places_.push_back(place);
  }

  void add_clamps() {
    const double length = bare_.length_in();
    const double step = std::max(support_place_step_in, length / most_support_places);
    for (int i = 1; i * step < length; ++i) {
      const double along = i * step;
      if (is_on_arc(bare_.centreline, along) || !is_free(along, from_supports_in)) continue;
      SupportPlace place{along};
      place.point.at = bare_.centreline.at(along);
      place.point.hold = HoldKind::clamp;
      place.corner = corner_at(along);
      if (place.corner >= 0) continue;
      place.on = nearest_part(along);
      place.point.to = place.on;
      if (!place.on.empty()) places_.push_back(place);
    }
  }

  std::string nearest_part(double along_in) const {
    double least = farthest_part_in;
    std::string name;
    for (const int part : allowed_) {
      const double gap = gap_to_part_in(prepared_, bare_, along_in, part);
      if (gap >= least) continue;
      least = gap;
      name = prepared_.obstacles.parts()[static_cast<std::size_t>(part)].name;
    }
    return name;
  }

  const PreparedProject& prepared_;
  const PreparedRoute& bare_;
  std::vector<int> allowed_;
  std::vector<SupportPlace> places_;
};

}  // namespace

double nearest_distance_in(const Centreline& line, Vec3 at) {
  double least = 1e300;
  double found = 0;
  for (const PathChord& chord : line.chords(0, line.length_in())) {
    const Vec3 along = chord.to - chord.from;
    const double squared = dot(along, along);
    const double t = squared > 0 ? std::clamp(dot(at - chord.from, along) / squared, 0.0, 1.0) : 0;
    const double away = distance(at, chord.from + along * t);
    if (away >= least) continue;
    least = away;
    found = chord.start_in + (chord.end_in - chord.start_in) * t;
  }
  return found;
}

BareRoute without_clamps(const Route& route, Vec3 from, Vec3 to) {
  BareRoute bare{route, {}};
  bare.route.points.clear();
  std::vector<Vec3> dropped;
  std::vector<int> left_before{0};
  for (std::size_t i = 0; i < route.points.size(); ++i) {
    RoutePoint point = route.points[i];
    left_before.push_back(left_before.back() + 1);
    if (is_clamp(point)) {
      bare.clamps.push_back(point);
      point.hold.reset();
      point.to.clear();
      dropped.push_back(point.at);
      const Vec3 before = bare.route.points.empty() ? from : bare.route.points.back().at;
      const Vec3 after = i + 1 < route.points.size() ? route.points[i + 1].at : to;
      const bool straight = std::all_of(dropped.begin(), dropped.end(), [&](Vec3 each) {
        return off_straight_in(each, before, after) < on_straight_in;
      });
      if (straight) {
        --left_before.back();
        continue;
      }
    }
    dropped.clear();
    bare.route.points.push_back(std::move(point));
  }
  for (FreeFairlead& free : bare.route.free_fairleads)
    free.leg = left_before[static_cast<std::size_t>(free.leg)];
  return bare;
}

std::vector<SupportPlace> support_places(const PreparedProject& prepared, const PreparedRoute& bare,
                                         const std::vector<RoutePoint>& clamps) {
  return PlaceFinder(prepared, bare).found(clamps);
}

Route with_supports(const PreparedRoute& bare, const std::vector<SupportPlace>& chosen) {
  Route route = *bare.route;
  std::vector<std::pair<double, RoutePoint>> points;
  for (std::size_t i = 0; i < route.points.size(); ++i)
    points.emplace_back(bare.point_distance_in[i], route.points[i]);
  for (const SupportPlace& place : chosen)
    if (place.corner >= 0) points[static_cast<std::size_t>(place.corner)].second = place.point;
  for (const SupportPlace& place : chosen)
    if (place.corner < 0) points.emplace_back(place.distance_in, place.point);
  std::stable_sort(points.begin(), points.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (std::size_t i = 0; i < route.free_fairleads.size(); ++i)
    route.free_fairleads[i].leg =
        static_cast<int>(std::count_if(points.begin(), points.end(), [&](const auto& point) {
          return point.first < bare.free_passages[i].distance_in;
        }));
  route.points.clear();
  for (auto& [along, point] : points) route.points.push_back(std::move(point));
  return route;
}

}  // namespace linewright
