#include "input/derive/stretched_surface.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <vector>

#include "input/derive/frame_plane.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/key_spec.hpp"
#include "input/structure_reader.hpp"

namespace linewright {

namespace {

/// Two corners of a frame, which a panel runs from.
using FrameEdge = std::array<Vec3, 2>;

constexpr int most_newton_steps = 40;
constexpr double found_within_in = 1e-9;
/// A place on the rim is of the bay.
constexpr double bay_rim = 1e-9;

std::optional<FrameEdge> frame_edge(std::string_view frame_name, const YamlNode& corners,
                                    Derivation& derivation) {
  ProjectItem* frame = derivation.find(Named::part, frame_name);
  if (frame == nullptr || !derivation.work_out(*frame) || corners.items.size() != 2)
    return std::nullopt;
  const auto plane = frame_plane(*frame->node, frame->bare);
  const auto outline = quiet_plane_points(frame->node->find("outline"), frame->bare);
  if (!plane || !outline) return std::nullopt;
  FrameEdge edge;
  for (std::size_t i = 0; i < 2; ++i) {
    const std::string& text = corners.items[i].text;
    std::size_t corner = 0;
    std::from_chars(text.data(), text.data() + text.size(), corner);
    if (corner < 1 || corner > outline->size()) return std::nullopt;
    edge[i] = plane->in_space((*outline)[corner - 1]);
  }
  return edge;
}

/// From one frame's edge to the next, evenly warped between them: `s` from frame to frame, `t` from
/// corner to corner.
struct Bay {
  FrameEdge first;
  FrameEdge second;

  Vec3 at(double s, double t) const {
    return (first[0] * (1 - t) + first[1] * t) * (1 - s) +
           (second[0] * (1 - t) + second[1] * t) * s;
  }
  Vec3 along_s(double t) const {
    return (second[0] - first[0]) * (1 - t) + (second[1] - first[1]) * t;
  }
  Vec3 along_t(double s) const {
    return (first[1] - first[0]) * (1 - s) + (second[1] - second[0]) * s;
  }
};

struct OnBay {
  Vec3 at;
  Vec3 normal;
};

/// By Newton's steps from the middle, which a bay that does not cross itself needs few of.
std::optional<OnBay> place_on_bay(const Bay& bay, std::array<std::size_t, 2> axes,
                                  std::array<double, 2> stated_in) {
  double s = 0.5;
  double t = 0.5;
  for (int step = 0; step < most_newton_steps; ++step) {
    const Vec3 at = bay.at(s, t);
    const Vec3 by_s = bay.along_s(t);
    const Vec3 by_t = bay.along_t(s);
    const double off_first = stated_in[0] - component(at, axes[0]);
    const double off_second = stated_in[1] - component(at, axes[1]);
    if (std::hypot(off_first, off_second) < found_within_in) {
      const bool inside = s >= -bay_rim && s <= 1 + bay_rim && t >= -bay_rim && t <= 1 + bay_rim;
      const Vec3 normal = cross(by_s, by_t);
      if (!inside || norm(normal) < smallest_length_in) return std::nullopt;
      return OnBay{at, unit(normal)};
    }
    const double first_by_s = component(by_s, axes[0]);
    const double first_by_t = component(by_t, axes[0]);
    const double second_by_s = component(by_s, axes[1]);
    const double second_by_t = component(by_t, axes[1]);
    const double determinant = first_by_s * second_by_t - second_by_s * first_by_t;
    if (determinant == 0) return std::nullopt;
    s += (off_first * second_by_t - off_second * first_by_t) / determinant;
    t += (first_by_s * off_second - second_by_s * off_first) / determinant;
  }
  return std::nullopt;
}

}  // namespace

Expected<PartSurface, std::string> stretched_surface(const ProjectItem& panel, const OnPart& where,
                                                     Derivation& derivation) {
  const YamlNode* over = panel.node->find("over");
  const YamlNode* corners = panel.node->find("corners");
  if (over == nullptr || corners == nullptr) return std::string();
  std::vector<std::size_t> axes;
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (where.at_in[axis]) axes.push_back(axis);
  const double thickness_in =
      quiet_length_in(*panel.node, "thickness", panel.bare).value_or(usual_panel_thickness_in);
  // What is wrong with the coordinates is said of a stretched sheet as of any other.
  if (axes.size() != 2 || where.along_in)
    return sheet_surface(panel, {}, {1, 0, 0}, thickness_in, where);
  std::optional<FrameEdge> before;
  for (const YamlNode& name : over->items) {
    const auto edge = frame_edge(name.text, *corners, derivation);
    if (!edge) return std::string();
    if (before)
      if (const auto found = place_on_bay({*before, *edge}, {axes[0], axes[1]},
                                          {*where.at_in[axes[0]], *where.at_in[axes[1]]}))
        return sheet_surface(panel, found->at, found->normal, thickness_in, where);
    before = edge;
  }
  return fmt::format("panel '{}' does not come to {} {:.3f}, {} {:.3f}, or not in one place",
                     panel.name, axis_words[axes[0]], *where.at_in[axes[0]], axis_words[axes[1]],
                     *where.at_in[axes[1]]);
}

}  // namespace linewright
