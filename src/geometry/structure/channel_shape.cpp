#include "geometry/structure/channel_shape.hpp"

#include <algorithm>

#include "geometry/structure/obstacles.hpp"
#include "model/channel_legs.hpp"

namespace linewright {

namespace {

/// How far trim on the two ends of a length reaches over it.
struct Lips {
  double start_in = 0;
  double end_in = 0;
};

/// Part of a length, as fractions of it.
struct Share {
  double from = 0;
  double to = 1;
  bool trimmed = false;
};

/// A length cut where its lips end; `meet`: whole, as the two meet on it or on what lies beside it.
std::vector<Share> shares(double length_in, const Lips& lips, bool meet) {
  if (meet) return {{0, 1, lips.start_in + lips.end_in > 0}};
  const double first = lips.start_in / length_in;
  const double last = 1 - lips.end_in / length_in;
  std::vector<Share> found;
  if (lips.start_in > 0) found.push_back({0, first, true});
  found.push_back({first, last, false});
  if (lips.end_in > 0) found.push_back({last, 1, true});
  return found;
}

bool do_meet(double length_in, const Lips& lips) {
  return lips.start_in + lips.end_in >= length_in;
}

/// Part of a wall of the section.
struct WallPiece {
  Vec2 from;
  Vec2 to;
  bool trimmed = false;
};

/// The section from corner to corner, with trim of `lip_in` on both of its ends.
std::vector<WallPiece> wall_pieces(const std::vector<Vec2>& section, double lip_in) {
  std::vector<WallPiece> pieces;
  for (std::size_t i = 0; i + 1 < section.size(); ++i) {
    const Vec2 wall = section[i + 1] - section[i];
    const Lips lips{i == 0 ? lip_in : 0, i + 2 == section.size() ? lip_in : 0};
    const double length_in = norm(wall);
    for (const Share& share : shares(length_in, lips, do_meet(length_in, lips)))
      pieces.push_back(
          {section[i] + wall * share.from, section[i] + wall * share.to, share.trimmed});
  }
  return pieces;
}

/// What a corner of the section draws on the leg.
Segment3 drawn_by(Vec2 corner, const ChannelLeg& leg) {
  return {leg.start_of(corner), leg.end_of(corner)};
}

void add_wall(const WallPiece& wall, const ChannelLeg& leg, const Lips& lips,
              std::vector<ChannelWall>& walls) {
  const Segment3 first = drawn_by(wall.from, leg);
  const Segment3 second = drawn_by(wall.to, leg);
  const double first_in = distance(first.a, first.b);
  const double second_in = distance(second.a, second.b);
  const bool meet = do_meet(std::min(first_in, second_in), lips);
  const auto of_first = shares(first_in, lips, meet);
  const auto of_second = shares(second_in, lips, meet);
  for (std::size_t i = 0; i < of_first.size(); ++i)
    walls.push_back(
        {{between(first.a, first.b, of_first[i].from), between(first.a, first.b, of_first[i].to),
          between(second.a, second.b, of_second[i].to),
          between(second.a, second.b, of_second[i].from)},
         wall.trimmed || of_first[i].trimmed});
}

}  // namespace

ChannelShape channel_shape(const Channel& channel) {
  ChannelShape shape;
  const std::vector<Vec2>& section = channel.section;
  const std::vector<ChannelLeg> legs = channel_legs(channel.path);
  if (legs.empty() || section.empty()) return shape;
  const double lip_in = guards(channel.edge) ? trim_lip_in : 0;
  const std::vector<WallPiece> pieces = wall_pieces(section, lip_in);
  for (std::size_t i = 0; i < legs.size(); ++i)
    for (const WallPiece& piece : pieces)
      add_wall(piece, legs[i], {i == 0 ? lip_in : 0, i + 1 == legs.size() ? lip_in : 0},
               shape.walls);
  for (const Vec2 corner : {section.front(), section.back()})
    for (const ChannelLeg& leg : legs) shape.edges.push_back(drawn_by(corner, leg));
  for (std::size_t i = 0; i + 1 < section.size(); ++i)
    shape.edges.push_back(
        {legs.front().start_of(section[i]), legs.front().start_of(section[i + 1])});
  for (std::size_t i = 0; i + 1 < section.size(); ++i)
    shape.edges.push_back({legs.back().end_of(section[i]), legs.back().end_of(section[i + 1])});
  return shape;
}

}  // namespace linewright
