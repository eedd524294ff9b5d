#include "rules/words/neighbour_words.hpp"

#include <cmath>

#include "lines/edge_guard.hpp"

namespace linewright {

namespace {

std::string part_words(const Part& part) {
  switch (part.kind) {
    case PartKind::frame:
      return "frame " + part.name;
    case PartKind::channel:
      return "channel " + part.name;
    case PartKind::panel:
      return "panel " + part.name;
    case PartKind::solid:
      return part.name;
    case PartKind::mover:
      return "moving part " + part.name;
    case PartKind::pulley:
      return part.name;
    case PartKind::fitting:
      return "the " + part.name;
    case PartKind::mesh:
      return "mesh " + part.name;
  }
  return part.name;
}

}  // namespace

std::string obstacle_words(const Part& part, const Obstacle& obstacle, const Phrasing& phrasing) {
  if (part.kind == PartKind::mesh) {
    const std::string piece =
        obstacle.hole.empty() || obstacle.hole == part.name ? "" : " (" + obstacle.hole + ")";
    return (obstacle.feature == Feature::face ? "" : "an edge of ") + part_words(part) + piece;
  }
  const std::string edge = "the " + edge_words(obstacle.guard, obstacle.edge_radius_in, phrasing);
  switch (obstacle.feature) {
    case Feature::face:
      return part_words(part);
    case Feature::free_edge:
      return edge + " of " + part_words(part);
    case Feature::hole_edge:
      return edge + " of hole " + obstacle.hole;
  }
  return part_words(part);
}

std::string edge_words(EdgeGuard guard, std::optional<double> radius_in, const Phrasing& phrasing,
                       bool say_bare) {
  if (guards(guard) || (guard == EdgeGuard::bare && !say_bare)) return "edge";
  const std::string kind = guard_word(guard) + " edge";
  return radius_in ? kind + " (" + phrasing.length(*radius_in) + " radius)" : kind;
}

std::string frame_words(const Frame& frame, const Phrasing& phrasing) {
  const bool across = std::abs(frame.plane.normal.x) == 1;
  return "frame " + frame.name + (across ? "" : " at " + phrasing.stand(frame.plane));
}

std::string guard_word(EdgeGuard guard) {
  switch (guard) {
    case EdgeGuard::bare:
      return "bare";
    case EdgeGuard::rolled:
      return "rolled";
    case EdgeGuard::flanged:
      return "flanged";
    case EdgeGuard::edge_trim:
      return "edge trim";
    case EdgeGuard::grommet:
      return "grommet";
    case EdgeGuard::bushing:
      return "bushing";
  }
  return {};
}

std::string sawn_words(const PreparedRoute& route, EdgeGuard guard) {
  if (!guards(guard) || guards_line(guard, route)) return {};
  return ", whose " + guard_word(guard) + " does not guard a " +
         (route.line->kind == LineKind::rod ? "rod " : "cable ") +
         (route.moves ? "that moves" : "whose travel is not stated");
}

std::string attachment_words(const PreparedRoute& route, double distance_in) {
  const Attachment* attachment = route.attachment_at(distance_in);
  return attachment ? "with its " + attachment->kind + " " : std::string();
}

std::string direction_words(Vec3 direction) {
  if (norm(direction) < 1e-6) return {};
  const Vec3 step = unit(direction);
  const double along = std::abs(step.x);
  const double across = std::abs(step.y);
  const double up = std::abs(step.z);
  if (up >= across && up >= along) return step.z > 0 ? ", mainly up" : ", mainly down";
  if (across >= along) return step.y > 0 ? ", mainly to the right" : ", mainly to the left";
  return step.x > 0 ? ", mainly aft" : ", mainly forward";
}

}  // namespace linewright
