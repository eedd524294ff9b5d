#include "input/derive/part_surface.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "input/derive/frame_plane.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/keys/structure_keys.hpp"
#include "input/structure_reader.hpp"
#include "model/channel_legs.hpp"

namespace linewright {

namespace {

struct Side {
  std::string_view word;
  Vec3 direction;
};

constexpr std::array<Side, 6> sides{{{"up", {0, 0, 1}},
                                     {"down", {0, 0, -1}},
                                     {"left", {0, -1, 0}},
                                     {"right", {0, 1, 0}},
                                     {"forward", {-1, 0, 0}},
                                     {"aft", {1, 0, 0}}}};

/// A sheet whose corners lie farther than this from one plane is not flat.
constexpr double flat_within_in = 0.01;

struct OnPath {
  Vec3 at;
  std::size_t leg = 0;
};

std::vector<OnPath> by_coordinate(const std::vector<Vec3>& path, std::size_t axis, double at_in) {
  std::vector<OnPath> found;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const double from = component(path[i], axis) - at_in;
    const double to = component(path[i + 1], axis) - at_in;
    if (from == to || from * to > 0) continue;
    // A corner belongs to the leg that begins there, and the last one to the last leg.
    if (to == 0 && i + 2 < path.size()) continue;
    const Vec3 leg = path[i + 1] - path[i];
    found.push_back({path[i] + leg * (from / (from - to)), i});
  }
  return found;
}

std::vector<OnPath> by_distance(const std::vector<Vec3>& path, double along_in) {
  double left_in = along_in;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    const Vec3 leg = path[i + 1] - path[i];
    const double length_in = norm(leg);
    const bool last = i + 2 == path.size();
    if (left_in < length_in || (last && left_in <= length_in + 1e-9))
      return {{path[i] + leg * (left_in / length_in), i}};
    left_in -= length_in;
  }
  return {};
}

double length_of(const std::vector<Vec3>& path) {
  double length_in = 0;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) length_in += distance(path[i], path[i + 1]);
  return length_in;
}

/// The one coordinate that is stated, or nothing.
std::optional<std::size_t> only_axis(const OnPart& where) {
  std::optional<std::size_t> found;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (!where.at_in[axis]) continue;
    if (found) return std::nullopt;
    found = axis;
  }
  return found;
}

Expected<OnPath, std::string> place_on_path(const ProjectItem& part, const std::vector<Vec3>& path,
                                            const OnPart& where) {
  const std::optional<std::size_t> axis = only_axis(where);
  if (axis.has_value() == where.along_in.has_value())
    return std::string("a place on a channel is given by one of 'fs', 'bl', 'wl' and 'along'");
  const auto places =
      axis ? by_coordinate(path, *axis, *where.at_in[*axis]) : by_distance(path, *where.along_in);
  if (places.size() == 1) return places.front();
  if (!axis)
    return fmt::format("channel '{}' is {:.3f} in long: there is no place {:.3f} in along it",
                       part.name, length_of(path), *where.along_in);
  if (places.size() > 1)
    return fmt::format("channel '{}' is at {} {:.3f} in {} places: use 'along'", part.name,
                       axis_words[*axis], *where.at_in[*axis], places.size());
  const auto by_axis = [&](Vec3 a, Vec3 b) { return component(a, *axis) < component(b, *axis); };
  const auto [least, greatest] = std::minmax_element(path.begin(), path.end(), by_axis);
  return fmt::format("channel '{}' goes from {} {:.3f} to {:.3f}: there is none of it at {:.3f}",
                     part.name, axis_words[*axis], component(*least, *axis),
                     component(*greatest, *axis), *where.at_in[*axis]);
}

Expected<PartSurface, std::string> channel_surface(const ProjectItem& part, const OnPart& where) {
  const auto path = quiet_places(part.node->find("path"), part.bare);
  const auto section = quiet_plane_points(part.node->find("section"), part.bare);
  const auto thickness = quiet_length_in(*part.node, "thickness", part.bare);
  if (!path || !section || !thickness || path->size() < 2 || section->size() < 2)
    return std::string();
  const auto place = place_on_path(part, *path, where);
  if (!place) return place.error();
  const std::vector<ChannelLeg> legs = channel_legs(*path);
  if (legs.empty()) return std::string();
  const ChannelLeg& leg = legs[place->leg];
  PartSurface surface;
  surface.along = leg.along;
  for (std::size_t i = 0; i + 1 < section->size(); ++i) {
    const Vec3 from = place->at + leg.square((*section)[i]);
    const Vec3 to = place->at + leg.square((*section)[i + 1]);
    const Vec3 across = cross(leg.along, to - from);
    if (norm(across) < smallest_length_in) continue;
    const Vec3 outward = unit(across);
    const Vec3 middle = (from + to) * 0.5;
    const Vec3 half = outward * (*thickness / 2);
    surface.faces.push_back({middle + half, outward});
    surface.faces.push_back({middle - half, -outward});
  }
  return surface;
}

Expected<PartSurface, std::string> panel_surface(const ProjectItem& part, const OnPart& where) {
  const auto corners = quiet_places(part.node->find("corners"), part.bare);
  if (!corners || corners->size() < 3) return std::string();
  const double thickness_in =
      quiet_length_in(*part.node, "thickness", part.bare).value_or(usual_panel_thickness_in);
  Vec3 normal;
  Vec3 middle;
  for (std::size_t i = 0; i < corners->size(); ++i) {
    normal = normal + cross((*corners)[i] - corners->front(),
                            (*corners)[(i + 1) % corners->size()] - corners->front());
    middle = middle + (*corners)[i] / static_cast<double>(corners->size());
  }
  if (norm(normal) < smallest_length_in) return std::string();
  normal = unit(normal);
  for (const Vec3 corner : *corners) {
    if (std::abs(dot(corner - middle, normal)) > flat_within_in)
      return fmt::format("panel '{}' is not flat: give the place by 'at'", part.name);
  }
  return sheet_surface(part, middle, normal, thickness_in, where);
}

Expected<PartSurface, std::string> frame_surface(const ProjectItem& part, const OnPart& where) {
  const auto plane = frame_plane(*part.node, part.bare);
  const auto thickness = quiet_length_in(*part.node, "thickness", part.bare);
  if (!plane || !thickness) return std::string();
  return sheet_surface(part, plane->origin, plane->normal, *thickness, where);
}

}  // namespace

Expected<PartSurface, std::string> sheet_surface(const ProjectItem& part, Vec3 at, Vec3 normal,
                                                 double thickness_in, const OnPart& where) {
  const auto stated =
      std::count_if(where.at_in.begin(), where.at_in.end(),
                    [](const std::optional<double>& each) { return each.has_value(); });
  if (stated != 2 || where.along_in)
    return std::string("a place on a sheet is given by two of 'fs', 'bl' and 'wl'");
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (!where.at_in[axis] && std::abs(component(normal, axis)) < 1e-3)
      return fmt::format("sheet '{}' lies along {}: state that, and leave out another", part.name,
                         axis_words[axis]);
  }
  PartSurface surface;
  surface.is_sheet = true;
  const Vec3 half = normal * (thickness_in / 2);
  surface.faces = {{at + half, normal}, {at - half, -normal}};
  return surface;
}

std::optional<Vec3> side_direction(std::string_view word) {
  const auto* side =
      std::find_if(sides.begin(), sides.end(), [&](const Side& each) { return each.word == word; });
  return side != sides.end() ? std::optional(side->direction) : std::nullopt;
}

std::string_view side_of(Vec3 outward) {
  const auto* side =
      std::max_element(sides.begin(), sides.end(), [&](const Side& a, const Side& b) {
        return dot(a.direction, outward) < dot(b.direction, outward);
      });
  return side->word;
}

Expected<PartSurface, std::string> surface_at(const ProjectItem& part, const OnPart& where) {
  if (part.map == &channel_map) return channel_surface(part, where);
  if (part.map == &panel_map) return panel_surface(part, where);
  if (part.map == &frame_map) return frame_surface(part, where);
  return fmt::format(
      "'on' takes a channel, a panel or a frame, and '{}' is none: give the place "
      "by 'at'",
      part.name);
}

Vec3 before_face(const PartSurface& surface, const Face& face, const OnPart& where, double off_in) {
  const Vec3 held = face.at + face.outward * off_in;
  if (surface.is_sheet) {
    std::array<double, 3> at{};
    const std::array<double, 3> outward{face.outward.x, face.outward.y, face.outward.z};
    double sum = dot(face.outward, held);
    std::size_t missing = 0;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      if (!where.at_in[axis]) missing = axis;
      at[axis] = where.at_in[axis].value_or(0);
      sum -= where.at_in[axis] ? outward[axis] * at[axis] : 0;
    }
    at[missing] = sum / outward[missing];
    return {at[0], at[1], at[2]};
  }
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (!where.at_in[axis]) continue;
    const double lead = component(*surface.along, axis);
    return held + *surface.along * ((*where.at_in[axis] - component(held, axis)) / lead);
  }
  return held;
}

}  // namespace linewright
