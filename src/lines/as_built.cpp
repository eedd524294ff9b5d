#include "lines/as_built.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "lines/free_passage.hpp"
#include "lines/prepare.hpp"
#include "model/support_name.hpp"

namespace linewright {

namespace {

/// Closer than this is the same place.
constexpr double same_place_in = 1e-6;

std::string place_words(Vec3 at) {
  return fmt::format("FS {:.4g} BL {:.4g} WL {:.4g}", at.x, at.y, at.z);
}

std::string when_words(const Measurement& measured) {
  return fmt::format("on {} at {}:{}", measured.on, measured.where.file, measured.where.line);
}

std::string_view node_of(const Route& route, int end) {
  return end == Measurement::from_node ? route.from : route.to;
}

/// "clamp on S3L of static-left", "port-left", "static-left 12.5 in from port-left".
std::string what_words(const Route& route, const Measurement& measured, int of) {
  if (of == Measurement::from_node || of == Measurement::to_node)
    return std::string(node_of(route, of));
  const std::string name =
      of >= 0 ? support_name(route.points[static_cast<std::size_t>(of)]) : std::string();
  if (name.empty())
    return fmt::format("{} {:.4g} in from {}", route.name, *measured.distance_in, route.from);
  return name + " of " + route.name;
}

/// The nearest place along the line at which it has a station; nothing where it never has.
std::optional<double> distance_at_station(const Centreline& line, double fs_in, double near_in) {
  std::optional<double> best;
  for (const PathChord& chord : line.chords(0, line.length_in())) {
    const double low = std::min(chord.from.x, chord.to.x);
    const double high = std::max(chord.from.x, chord.to.x);
    if (fs_in < low - same_place_in || fs_in > high + same_place_in) continue;
    const double part = (fs_in - chord.from.x) / (chord.to.x - chord.from.x);
    const double here =
        high - low < same_place_in
            ? std::clamp(near_in, chord.start_in, chord.end_in)
            : chord.start_in + std::clamp(part, 0.0, 1.0) * (chord.end_in - chord.start_in);
    if (!best || std::abs(here - near_in) < std::abs(*best - near_in)) best = here;
  }
  return best;
}

/// One route with what was measured of it.
class MeasuredRoute {
 public:
  MeasuredRoute(const Project& project, Route& route, std::vector<MeasureFault>& faults)
      : project_(project),
        route_(route),
        line_(drawn_centreline(project, route)),
        drawn_in_(drawn_distances(line_)),
        faults_(faults) {}

  /// Notes a measure, and gives back the node it is of, with its place.
  std::optional<std::pair<std::string, Vec3>> take(Measurement& measured) {
    if (!find_distance(measured)) return std::nullopt;
    taken_.push_back(&measured);
    if (measured.gap_in) {
      note_gap(measured);
      return std::nullopt;
    }
    std::optional<Vec3> at = place_of(measured);
    if (!at) return std::nullopt;
    const bool is_of_line = measured.of == Measurement::a_distance;
    const int of = measured.of == Measurement::a_distance ? near_place(measured) : measured.of;
    if (of == Measurement::a_distance && is_taut()) {
      fault(measured,
            fmt::format("{} runs straight from guide to guide: nothing is to be measured "
                        "{:.4g} in from {}",
                        route_.name, *measured.distance_in, route_.from),
            "measure the guides before and after it, or a gap");
      return std::nullopt;
    }
    if (measured.at && is_pulley_by_its_corner(of)) {
      fault(measured,
            fmt::format("{} is drawn by the corner of its cable, and what is measured of a pulley "
                        "is its centre",
                        what_words(route_, measured, of)),
            "draw it by its centre, `given: centre`, or measure a gap");
      return std::nullopt;
    }
    measured.of = of;
    if (of == Measurement::from_node || of == Measurement::to_node) {
      // What was measured is the line there, which begins at the face of a port: its node is as far
      // off as the line is.
      const std::string node(node_of(route_, of));
      if (is_of_line) at = project_.find_node(node)->at + (*at - line_.at(*measured.distance_in));
      return std::pair(node, *at);
    }
    if (of >= 0)
      note_place(moved_, of, measured, *at);
    else
      note_place(added_, *measured.distance_in, measured, *at);
    return std::nullopt;
  }

  /// Moves the points, and adds those that were measured between them.
  void apply() {
    for (const auto& [of, place] : moved_) {
      RoutePoint& point = route_.points[static_cast<std::size_t>(of)];
      point.drawn_at = point.at;
      point.at = place.at;
    }
    for (FreeFairlead& free : route_.free_fairleads) {
      const double at_in = free_passage(line_, free, nullptr).distance_in;
      free.leg += static_cast<int>(std::distance(added_.begin(), added_.lower_bound(at_in)));
    }
    std::vector<RoutePoint> points;
    std::vector<double> distances{drawn_in_.front()};
    std::vector<int> moved_to;
    auto next = added_.begin();
    const auto add_before = [&](double distance_in) {
      for (; next != added_.end() && next->first < distance_in; ++next) {
        next->second.index = static_cast<int>(points.size());
        distances.push_back(next->first);
        points.push_back(new_point(next->first, next->second));
      }
    };
    for (std::size_t i = 0; i < route_.points.size(); ++i) {
      add_before(drawn_in_[i + 1]);
      moved_to.push_back(static_cast<int>(points.size()));
      distances.push_back(drawn_in_[i + 1]);
      points.push_back(std::move(route_.points[i]));
    }
    add_before(drawn_in_.back());
    distances.push_back(drawn_in_.back());
    for (Measurement* each : taken_)
      if (each->of >= 0)
        each->of = moved_to[static_cast<std::size_t>(each->of)];
      else if (each->of == Measurement::a_distance && each->is_place())
        each->of = added_.at(*each->distance_in).index;
    route_.points = std::move(points);
    route_.drawn_in = std::move(distances);
  }

 private:
  struct Place {
    Vec3 at;
    const Measurement* measured = nullptr;
    int index = 0;  ///< of a point that was added
  };

  RoutePoint new_point(double distance_in, const Place& place) const {
    RoutePoint point;
    point.at = place.at;
    point.drawn_at = line_.at(distance_in);
    point.where = place.measured->where;
    return point;
  }

  static std::vector<double> drawn_distances(const Centreline& line) {
    std::vector<double> distances;
    for (std::size_t i = 0; i < line.corners().size(); ++i)
      distances.push_back(line.corner_distance_in(static_cast<int>(i)));
    return distances;
  }

  void fault(const Measurement& measured, std::string words, std::string suggestion = {}) {
    faults_.push_back({measured.where, std::move(words), std::move(suggestion)});
  }

  /// True for what has a place only where it is guided.
  bool is_taut() const {
    return route_.system == SystemKind::cable || route_.system == SystemKind::rod;
  }

  bool is_pulley_by_its_corner(int of) const {
    if (of < 0) return false;
    const RoutePoint& point = route_.points[static_cast<std::size_t>(of)];
    return point.hold == HoldKind::pulley && point.given == PointGiven::corner;
  }

  bool find_distance(Measurement& measured) {
    if (measured.of == Measurement::to_node) measured.distance_in = line_.length_in();
    if (measured.of == Measurement::from_node) measured.distance_in = 0;
    if (measured.of >= 0)
      measured.distance_in = drawn_in_[static_cast<std::size_t>(measured.of) + 1];
    if (*measured.distance_in <= line_.length_in() + same_place_in) return true;
    fault(measured,
          fmt::format("{:.4g} in from {} is off the line: {} is {:.4g} in long as drawn",
                      *measured.distance_in, route_.from, route_.name, line_.length_in()),
          "measure from the other end, or name the `support`");
    return false;
  }

  std::optional<Vec3> place_of(const Measurement& measured) {
    if (measured.at) return measured.at;
    const std::optional<double> along =
        distance_at_station(line_, *measured.fs_in, *measured.distance_in);
    if (along) return line_.at(*along);
    fault(measured, fmt::format("{} has no FS {:.4g} as drawn", route_.name, *measured.fs_in),
          "state the whole place: at: [FS, BL, WL]");
    return std::nullopt;
  }

  /// The point or node that a place measured at a distance is of; `a_distance` for none.
  int near_place(const Measurement& measured) const {
    const auto away = [&](double in) { return std::abs(in - *measured.distance_in); };
    const auto nearest = std::min_element(drawn_in_.begin(), drawn_in_.end(),
                                          [&](double a, double b) { return away(a) < away(b); });
    if (away(*nearest) > at_support_in) return Measurement::a_distance;
    if (nearest == drawn_in_.begin()) return Measurement::from_node;
    if (nearest + 1 == drawn_in_.end()) return Measurement::to_node;
    return static_cast<int>(nearest - drawn_in_.begin()) - 1;
  }

  template <typename Key>
  void note_place(std::map<Key, Place>& places, Key key, const Measurement& measured, Vec3 at) {
    const auto [known, is_new] = places.try_emplace(key, Place{at, &measured, 0});
    if (is_new || distance(known->second.at, at) < same_place_in) return;
    fault(measured,
          fmt::format("{} was measured twice: {} {}, and {} {}",
                      what_words(route_, measured, measured.of), place_words(known->second.at),
                      when_words(*known->second.measured), place_words(at), when_words(measured)),
          "leave out the one that does not hold");
  }

  void note_gap(const Measurement& measured) {
    const auto same = std::find_if(gaps_.begin(), gaps_.end(), [&](const Measurement* each) {
      return each->to == measured.to &&
             std::abs(*each->distance_in - *measured.distance_in) < same_place_in;
    });
    if (same == gaps_.end()) {
      gaps_.push_back(&measured);
      return;
    }
    if (std::abs(*(*same)->gap_in - *measured.gap_in) < same_place_in) return;
    fault(
        measured,
        fmt::format("one gap of {} was measured twice: {:.4g} in {}, and {:.4g} in {}", route_.name,
                    *(*same)->gap_in, when_words(**same), *measured.gap_in, when_words(measured)),
        "leave out the one that does not hold");
  }

  const Project& project_;
  Route& route_;
  Centreline line_;
  std::vector<double> drawn_in_;  ///< of the route's ends and points
  std::vector<MeasureFault>& faults_;
  std::map<int, Place> moved_;     ///< by point
  std::map<double, Place> added_;  ///< by distance along
  std::vector<const Measurement*> gaps_;
  std::vector<Measurement*> taken_;
};

/// Where nodes were found; two routes may both say so.
class MeasuredNodes {
 public:
  void note(const std::string& name, Vec3 at, const Measurement& measured,
            std::vector<MeasureFault>& faults) {
    const auto [known, is_new] = found_.try_emplace(name, at, &measured);
    if (is_new || distance(known->second.first, at) < same_place_in) return;
    faults.push_back(
        {measured.where,
         fmt::format("{} was measured twice: {} {}, and {} {}", name,
                     place_words(known->second.first), when_words(*known->second.second),
                     place_words(at), when_words(measured)),
         "leave out the one that does not hold"});
  }

  void apply(std::vector<Node>& nodes, std::vector<MeasureFault>& faults) const {
    for (Node& node : nodes) {
      const auto found = found_.find(node.name);
      if (found == found_.end()) continue;
      node.drawn_at = node.at;
      node.at = found->second.first;
      // A fitting is found where it is, as it was made.
      for (Port& port : node.ports) port.at = port.at + (node.at - *node.drawn_at);
      if (node.arm && norm(cross(node.at - node.arm->pivot, unit(node.arm->axis))) < same_place_in)
        faults.push_back({found->second.second->where,
                          node.name + " was measured on the axis that its arm turns about",
                          "measure the middle of the pin, or the `pivot`"});
    }
  }

 private:
  std::map<std::string, std::pair<Vec3, const Measurement*>> found_;
};

/// A measured place that meets the one before it leaves the line no length between them.
void check_lengths(const Project& project, const Route& route, const Measurement& measured,
                   std::vector<MeasureFault>& faults) {
  std::vector<Vec3> places{project.find_node(route.from)->at};
  for (const RoutePoint& point : route.points) places.push_back(point.at);
  places.push_back(project.find_node(route.to)->at);
  for (std::size_t i = 0; i + 1 < places.size(); ++i)
    if (distance(places[i], places[i + 1]) < same_place_in) {
      faults.push_back({measured.where,
                        fmt::format("as measured, two places of {} are one, {}: the line has no "
                                    "length between them",
                                    route.name, place_words(places[i])),
                        "measure them again"});
      return;
    }
}

}  // namespace

std::vector<MeasureFault> take_measured(Project& project) {
  std::vector<MeasureFault> faults;
  if (project.built.empty()) return faults;
  MeasuredNodes nodes;
  std::vector<MeasuredRoute> routes;
  routes.reserve(project.routes.size());
  for (Route& route : project.routes) {
    const auto is_of = [&](const Measurement& each) { return each.route == route.name; };
    if (std::none_of(project.built.begin(), project.built.end(), is_of)) continue;
    MeasuredRoute& measured_route = routes.emplace_back(project, route, faults);
    for (Measurement& measured : project.built)
      if (is_of(measured))
        if (const auto node = measured_route.take(measured))
          nodes.note(node->first, node->second, measured, faults);
  }
  if (!faults.empty()) return faults;
  for (MeasuredRoute& route : routes) route.apply();
  nodes.apply(project.nodes, faults);
  for (const Route& route : project.routes)
    for (const Measurement& measured : project.built)
      if (measured.route == route.name) {
        check_lengths(project, route, measured, faults);
        break;
      }
  if (project.measuring_tolerance_in > project.build_tolerance_in) {
    project.assumptions.push_back(fmt::format(
        "build_tolerance, {:.4g} in, is less than measuring_tolerance: {:.4g} in was taken for "
        "both, for nothing is known better than it is measured",
        project.build_tolerance_in, project.measuring_tolerance_in));
    project.build_tolerance_in = project.measuring_tolerance_in;
  }
  return faults;
}

}  // namespace linewright
