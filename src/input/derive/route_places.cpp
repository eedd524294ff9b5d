#include "input/derive/route_places.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "input/derive/derived_nodes.hpp"
#include "input/derive/end_ports.hpp"
#include "input/derive/frame_plane.hpp"
#include "input/derive/part_surface.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/derive/surface_choice.hpp"
#include "input/field_words.hpp"
#include "input/keys/place_keys.hpp"
#include "input/keys/route_keys.hpp"
#include "input/keys/structure_keys.hpp"

namespace linewright {

namespace {

/// More supports than this between two points are a slip of units.
constexpr double most_spaced = 1000;

constexpr std::array<const KeySpec*, 3> axis_keys{&fs_key, &bl_key, &wl_key};

bool is_reference(std::string_view key) {
  return std::any_of(on_part_keys.begin(), on_part_keys.end(),
                     [&](const KeySpec& each) { return each.name == key; });
}

/// A point of the route, or one of its ends, while places are worked out.
struct Stop {
  YamlNode* node = nullptr;  ///< none of an end
  std::optional<Vec3> at;
  bool off_line = false;  ///< a pulley given by its spindle: the line does not go through it
  bool failed = false;    ///< reported
};

struct Plane {
  Vec3 at;
  Vec3 normal;
  std::string words;  ///< "FS 190.000"
};

class RoutePlacer {
 public:
  RoutePlacer(ProjectItem& route, Derivation& derivation)
      : route_(route), node_(*route.node), derivation_(derivation) {}

  void place() {
    const bool straight = is_straight();
    YamlNode* points = node_.find("points");
    if (points != nullptr && points->kind != YamlNode::Kind::sequence) points = nullptr;
    gather(points);
    for (Stop& stop : stops_) place_alone(stop, straight);
    begin_at_ports();
    for (std::size_t i = 0; i < stops_.size(); ++i) place_beside_others(i);
    begin_at_ports();
    if (straight)
      for (std::size_t i = 0; i < stops_.size(); ++i) place_on_line(i);
    remove_key(node_, "straight");
    if (points != nullptr) write(*node_.find("points"));
  }

  /// Ends and points that have a place of their own, or get one without this route's lines.
  std::vector<Stop> known_stops() {
    YamlNode* points = node_.find("points");
    gather(points != nullptr && points->kind == YamlNode::Kind::sequence ? points : nullptr);
    for (Stop& stop : stops_)
      if (stop.node != nullptr) stop.at = quiet_place(stop.node->find("at"), route_.bare);
    begin_at_ports();
    return stops_;
  }

 private:
  bool is_straight() {
    const YamlNode* flag = node_.find("straight");
    if (flag == nullptr) return false;
    if (flag->kind == YamlNode::Kind::scalar && (flag->text == "true" || flag->text == "false"))
      return flag->text == "true";
    derivation_.error(flag->where, "'straight' must be true or false");
    return false;
  }

  void gather(YamlNode* points) {
    stops_.push_back({nullptr, derivation_.node_at(quiet_text(node_, "from"))});
    if (points != nullptr) {
      for (YamlNode& point : points->items) {
        Stop stop{&point, std::nullopt};
        stop.off_line = quiet_text(point, "given") == "centre";
        stops_.push_back(stop);
      }
    }
    stops_.push_back({nullptr, derivation_.node_at(quiet_text(node_, "to"))});
  }

  /// Where a node has ports, the line begins at the face of the one that leads on.
  void begin_at_ports() {
    const auto next = [&](std::size_t index, bool forward) -> std::optional<Vec3> {
      while (index > 0 && index + 1 < stops_.size()) {
        if (stops_[index].at) return stops_[index].at;
        index = forward ? index + 1 : index - 1;
      }
      return derivation_.node_at(quiet_text(node_, forward ? "to" : "from"));
    };
    if (const auto at = next(1, true))
      stops_.front().at = end_of_route(route_, "from", *at, derivation_);
    if (const auto at = next(stops_.size() - 2, false))
      stops_.back().at = end_of_route(route_, "to", *at, derivation_);
  }

  void fail(Stop& stop, const SourceLocation& where, std::string message,
            std::string suggestion = {}) {
    stop.failed = true;
    derivation_.error(where, std::move(message), std::move(suggestion));
  }

  void set_place(Stop& stop, Vec3 at, std::string note) {
    stop.at = at;
    set_value(*stop.node, "at", place_node(at, stop.node->where, route_.bare, std::move(note)));
  }

  /// What the point says by itself.
  void place_alone(Stop& stop, bool straight) {
    if (stop.node == nullptr || stop.node->kind != YamlNode::Kind::map) return;
    YamlNode& point = *stop.node;
    const YamlNode* at = point.find("at");
    if (at != nullptr) {
      stop.at = quiet_place(at, route_.bare);
      stop.failed = !stop.at;
      for (const YamlEntry& entry : point.entries) {
        if (!is_reference(entry.key) && entry.key != "spaced") continue;
        fail(stop, entry.key_where,
             fmt::format("'at' says where the point is, and so does '{}'", entry.key),
             "leave one of them out");
        return;
      }
      return;
    }
    if (point.find("spaced") != nullptr || point.find("on") != nullptr) return;
    if (straight) return;
    const YamlNode* through = point.find("through");
    const bool has_key = is_placed_by_reference(point);
    if (has_key || through == nullptr) {
      stop.failed = true;
      if (is_misspelt(point, point_map, has_key ? "on" : "at")) return;
      fail(stop, point.where,
           has_key ? "the point needs 'on', the part that it is on" : "a point needs 'at'",
           has_key ? "or the route 'straight: true'"
                   : "or the part it is 'on', or the hole it goes 'through'");
      return;
    }
    if (const auto middle = derivation_.hole_at(through->text))
      set_place(stop, *middle, fmt::format("middle of hole {}", through->text));
    else
      stop.failed = true;
  }

  std::vector<Vec3> beside(std::size_t index) const {
    std::vector<Vec3> places;
    for (std::size_t i = index; i-- > 0;) {
      if (!stops_[i].at) continue;
      places.push_back(*stops_[i].at);
      break;
    }
    for (std::size_t i = index + 1; i < stops_.size(); ++i) {
      if (!stops_[i].at) continue;
      places.push_back(*stops_[i].at);
      break;
    }
    return places;
  }

  void place_beside_others(std::size_t index) {
    Stop& stop = stops_[index];
    if (stop.node == nullptr || stop.at || stop.failed) return;
    YamlNode& point = *stop.node;
    if (point.find("on") == nullptr) return;
    if (const YamlNode* spaced = point.find("spaced"))
      return fail(stop, spaced->where, "'spaced' supports lie on the line between two points",
                  "say 'to' instead of 'on'");
    if (const YamlNode* through = point.find("through"))
      return fail(stop, through->where,
                  "'on' says where the point is, and the hole that it goes 'through' does, too",
                  "leave one of them out");
    if (const YamlNode* to = point.find("to"))
      return fail(stop, to->where, "'on' is the part that the support is fixed to, and so is 'to'",
                  "leave 'to' out");
    std::string note;
    const auto at = place_on_part(point, route_.bare, beside(index),
                                  clamp_height_in(route_, point, derivation_), derivation_, note);
    if (at)
      set_place(stop, *at, note);
    else
      stop.failed = true;
  }

  /// The plane in which the line passes the point: a hole's frame, a frame, or one coordinate.
  std::optional<Plane> plane_of(Stop& stop) {
    YamlNode& point = *stop.node;
    std::vector<std::pair<std::string_view, Plane>> planes;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const KeySpec& key = *axis_keys[axis];
      if (point.find(key.name) == nullptr) continue;
      const auto coordinate_in = derivation_.length_in(point, key, route_.bare);
      if (!coordinate_in) {
        stop.failed = true;
        return std::nullopt;
      }
      const Vec3 normal{axis == 0 ? 1.0 : 0.0, axis == 1 ? 1.0 : 0.0, axis == 2 ? 1.0 : 0.0};
      planes.push_back({key.name,
                        {normal * *coordinate_in, normal,
                         fmt::format("{} {:.3f}", axis_words[axis], *coordinate_in)}});
    }
    if (const YamlNode* through = point.find("through")) {
      ProjectItem* hole = derivation_.find(Named::hole, through->text);
      if (hole == nullptr || hole->holder == nullptr) {
        stop.failed = true;
        return std::nullopt;
      }
      if (auto plane = frame_plane(*hole->holder->node, hole->holder->bare))
        planes.push_back(
            {"through", {plane->origin, plane->normal, "the web of " + hole->holder->name}});
    }
    if (const YamlNode* to = point.find("to"); to != nullptr && planes.empty()) {
      ProjectItem* part = derivation_.find(Named::part, to->text);
      if (part == nullptr) {
        stop.failed = true;
        return std::nullopt;
      }
      if (part->map == &frame_map)
        if (auto plane = frame_plane(*part->node, part->bare))
          planes.push_back({"to", {plane->origin, plane->normal, "the web of " + part->name}});
    }
    if (planes.size() == 1) return planes.front().second;
    if (planes.empty())
      fail(stop, point.where, "a point on a straight line needs one thing that says how far along",
           "'through' a frame's hole, 'to' a frame, or one of 'fs', 'bl', 'wl'");
    else
      fail(stop, point.where,
           fmt::format("'{}' says where on the straight line the point is, and so does '{}'",
                       planes[0].first, planes[1].first),
           "leave one of them out");
    return std::nullopt;
  }

  const Stop* placed_before(std::size_t index) const {
    for (std::size_t i = index; i-- > 0;)
      if (own_[i] && (stops_[i].at || stops_[i].failed)) return &stops_[i];
    return nullptr;
  }

  const Stop* placed_after(std::size_t index) const {
    for (std::size_t i = index + 1; i < stops_.size(); ++i)
      if (own_[i] && (stops_[i].at || stops_[i].failed)) return &stops_[i];
    return nullptr;
  }

  /// Marks, once, what had a place before the lines between them gave any.
  void note_own() {
    if (!own_.empty()) return;
    for (const Stop& stop : stops_) own_.push_back(stop.node == nullptr || stop.at.has_value());
  }

  void place_on_line(std::size_t index) {
    note_own();
    Stop& stop = stops_[index];
    if (stop.node == nullptr || stop.at || stop.failed) return;
    if (stop.node->kind != YamlNode::Kind::map || stop.node->find("spaced") != nullptr) return;
    const std::optional<Plane> plane = plane_of(stop);
    if (!plane) return;
    const Stop* before = placed_before(index);
    const Stop* after = placed_after(index);
    if (before == nullptr || after == nullptr || !before->at || !after->at) {
      stop.failed = true;
      return;
    }
    if (before->off_line || after->off_line)
      return fail(stop, stop.node->where,
                  "the straight line here ends at a pulley that is given by its spindle",
                  "give the point its 'at'");
    const Vec3 leg = *after->at - *before->at;
    const double across = dot(leg, plane->normal);
    const double along = dot(plane->at - *before->at, plane->normal);
    if (across == 0 || !(along / across >= 0 && along / across <= 1))
      return fail(
          stop, stop.node->where,
          fmt::format("the straight line from {} to {} does not come to {}",
                      place_in_words(*before->at), place_in_words(*after->at), plane->words));
    set_place(stop, *before->at + leg * (along / across),
              fmt::format("on the straight line, at {}", plane->words));
  }

  /// The supports that a `spaced` point stands for.
  std::vector<YamlNode> spaced(std::size_t index) {
    Stop& stop = stops_[index];
    YamlNode point = *stop.node;
    const SourceLocation where = point.find("spaced")->where;
    const auto most_in = derivation_.length_in(point, *point_map.find("spaced"), route_.bare);
    const std::vector<Vec3> ends = beside(index);
    if (!most_in) {
      stop.failed = true;
    } else if (is_spaced(index + 1)) {
      stop.failed = true;
    } else if (is_spaced(index - 1)) {
      fail(stop, where, "two runs of 'spaced' supports follow each other",
           "give the corner between them its place");
    } else if (ends.size() == 2) {
      const double length_in = distance(ends[0], ends[1]);
      const double bays = std::ceil(length_in / *most_in - 1e-9);
      if (bays <= most_spaced) return between(point, ends[0], ends[1], static_cast<int>(bays));
      fail(stop, where, fmt::format("'spaced' would give {} supports", bays - 1),
           "are the units right?");
    }
    remove_key(point, "spaced");
    set_value(point, "at", unread_node(where));
    return {point};
  }

  bool is_spaced(std::size_t index) const {
    return index < stops_.size() && stops_[index].node != nullptr &&
           stops_[index].node->find("spaced") != nullptr;
  }

  std::vector<YamlNode> between(YamlNode point, Vec3 from, Vec3 to, int bays) const {
    remove_key(point, "spaced");
    std::vector<YamlNode> points;
    for (int i = 1; i < bays; ++i) {
      const Vec3 at = from + (to - from) * (static_cast<double>(i) / bays);
      set_value(point, "at",
                place_node(at, point.where, route_.bare,
                           fmt::format("{} of {} evenly spaced", i, bays - 1)));
      points.push_back(point);
    }
    return points;
  }

  void write(YamlNode& points) {
    std::vector<YamlNode> written;
    for (std::size_t i = 1; i + 1 < stops_.size(); ++i) {
      YamlNode& point = *stops_[i].node;
      if (point.kind == YamlNode::Kind::map && point.find("spaced") != nullptr &&
          !stops_[i].failed) {
        for (YamlNode& each : spaced(i)) written.push_back(std::move(each));
        continue;
      }
      if (point.find("on") != nullptr && point.find("to") == nullptr) rename_key(point, "on", "to");
      remove_references(point);
      remove_key(point, "spaced");
      if (point.kind == YamlNode::Kind::map && point.find("at") == nullptr)
        set_value(point, "at", unread_node(point.where));
      written.push_back(point);
    }
    points.items = std::move(written);
  }

  ProjectItem& route_;
  YamlNode& node_;
  Derivation& derivation_;
  std::vector<Stop> stops_;
  std::vector<bool> own_;
};

}  // namespace

bool is_placed_by_reference(const YamlNode& point) {
  return std::any_of(point.entries.begin(), point.entries.end(),
                     [](const YamlEntry& entry) { return is_reference(entry.key); });
}

void remove_references(YamlNode& point) {
  for (const KeySpec& key : on_part_keys) remove_key(point, key.name);
}

void place_points(ProjectItem& route, Derivation& derivation) {
  RoutePlacer(route, derivation).place();
}

std::optional<Vec3> where_route_meets(ProjectItem& route, const ProjectItem& frame,
                                      const SourceLocation& where, Derivation& derivation) {
  if (!derivation.work_out(route)) return std::nullopt;
  const auto plane = frame_plane(*frame.node, frame.bare);
  if (!plane || route.node->kind != YamlNode::Kind::map) return std::nullopt;
  const std::vector<Stop> stops = RoutePlacer(route, derivation).known_stops();
  std::vector<Vec3> found;
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    if (!stops[i].at || !stops[i + 1].at) return std::nullopt;
    const double from = dot(*stops[i].at - plane->origin, plane->normal);
    const double to = dot(*stops[i + 1].at - plane->origin, plane->normal);
    if (from == to || from * to > 0) continue;
    const Vec3 at = *stops[i].at + (*stops[i + 1].at - *stops[i].at) * (from / (from - to));
    if (!found.empty() && distance(found.back(), at) < 1e-6) continue;
    found.push_back(at);
    if (stops[i].off_line || stops[i + 1].off_line) {
      derivation.error(where,
                       fmt::format("{} meets {} beside a pulley that is given by its spindle",
                                   route.name, frame.name),
                       "give the hole its centre in two lengths");
      return std::nullopt;
    }
  }
  if (found.size() == 1) return found.front();
  derivation.error(where,
                   fmt::format("route '{}' meets the web of '{}' {}", route.name, frame.name,
                               found.empty() ? "nowhere" : fmt::format("{} times", found.size())),
                   "give the hole its centre in two lengths");
  return std::nullopt;
}

}  // namespace linewright
