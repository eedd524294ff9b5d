#include "geometry/centreline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <utility>

namespace linewright {
namespace {

/// How far tangents may overrun a leg before they count as not fitting, and the shortest straight
/// worth a piece of its own: rounding in the drawn coordinates, not a length of tube.
constexpr double length_tolerance_in = 1e-9;
/// Parts of pieces shorter than this are left out of a list of chords.
constexpr double shortest_chord_in = 1e-12;

struct Leg {
  Vec3 direction;
  double length_in = 0;
};

/// A corner between two legs, and the arc that rounds it.
struct CornerTurn {
  double angle_rad = 0;
  bool bends = false;
  bool reversal = false;
  bool slight = false;
  double drawn_radius_in = 0;
  double tangent_in = 0;
  double scale = 1;  ///< built over drawn radius
  bool fits = true;

  double built_radius_in() const { return reversal ? 0 : drawn_radius_in * scale; }
  double built_tangent_in() const { return tangent_in * scale; }
};

void require_usable(const std::vector<PathCorner>& corners) {
  if (corners.size() < 2) throw std::invalid_argument("a path needs two corners or more");
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec3 at = corners[i].at;
    if (!std::isfinite(at.x) || !std::isfinite(at.y) || !std::isfinite(at.z) ||
        !std::isfinite(corners[i].radius_in))
      throw std::invalid_argument("a path corner is not finite");
    if (i > 0 && !(distance(corners[i - 1].at, at) > 0))
      throw std::invalid_argument("two neighbouring path corners are the same point");
  }
}

std::vector<Leg> legs_between(const std::vector<PathCorner>& corners) {
  std::vector<Leg> legs;
  legs.reserve(corners.size() - 1);
  for (std::size_t i = 1; i < corners.size(); ++i) {
    const Vec3 along = corners[i].at - corners[i - 1].at;
    legs.push_back({unit(along), norm(along)});
  }
  return legs;
}

CornerTurn turn_between(Vec3 before, Vec3 after, const PathCorner& corner) {
  CornerTurn turn;
  turn.angle_rad = angle_between_rad(before, after);
  turn.bends = turn.angle_rad >= Centreline::straight_below_rad;
  if (!turn.bends) return turn;
  turn.slight = corner.slight;
  turn.drawn_radius_in = corner.slight ? 0 : std::max(corner.radius_in, 0.0);
  turn.reversal = turn.angle_rad > std::numbers::pi - Centreline::reversal_within_rad;
  // A reversal claims no straight: it cannot be built, so it takes nothing from its neighbours.
  if (!turn.reversal) turn.tangent_in = turn.drawn_radius_in * std::tan(turn.angle_rad / 2);
  turn.fits = !turn.reversal;
  return turn;
}

/// One turn a corner; the two ends do not turn.
std::vector<CornerTurn> turns_at(const std::vector<PathCorner>& corners,
                                 const std::vector<Leg>& legs) {
  std::vector<CornerTurn> turns(corners.size());
  for (std::size_t i = 1; i + 1 < corners.size(); ++i)
    turns[i] = turn_between(legs[i - 1].direction, legs[i].direction, corners[i]);
  return turns;
}

void fit_to_legs(std::vector<CornerTurn>& turns, const std::vector<Leg>& legs) {
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const double needed_in = turns[i].tangent_in + turns[i + 1].tangent_in;
    if (needed_in <= legs[i].length_in) continue;
    for (CornerTurn* turn : {&turns[i], &turns[i + 1]}) {
      if (turn->tangent_in <= 0) continue;
      turn->scale = std::min(turn->scale, legs[i].length_in / needed_in);
      if (needed_in > legs[i].length_in + length_tolerance_in) turn->fits = false;
    }
  }
}

PathPiece straight_piece(Vec3 from, Vec3 to, const Leg& leg, double length_in, double start_in) {
  PathPiece piece;
  piece.start_in = start_in;
  piece.length_in = length_in;
  piece.from = from;
  piece.to = to;
  piece.direction = leg.direction;
  return piece;
}

PathPiece arc_piece(Vec3 corner, const CornerTurn& turn, Vec3 before, Vec3 after, double start_in) {
  const Vec3 inward = unit(after - before * dot(before, after));
  PathPiece piece;
  piece.is_arc = true;
  piece.start_in = start_in;
  piece.radius_in = turn.built_radius_in();
  piece.length_in = piece.radius_in * turn.angle_rad;
  piece.from = corner - before * turn.built_tangent_in();
  piece.to = corner + after * turn.built_tangent_in();
  piece.direction = before;
  piece.centre = piece.from + inward * piece.radius_in;
  return piece;
}

/// The record of a turn whose arc starts `start_in` along the line; it is as long as `arc_in`.
Bend bend_record(std::size_t corner, const CornerTurn& turn, double start_in, double arc_in,
                 double straight_before_in) {
  Bend bend;
  bend.corner = static_cast<int>(corner);
  bend.angle_rad = turn.angle_rad;
  bend.drawn_radius_in = turn.drawn_radius_in;
  bend.tangent_in = turn.tangent_in;
  bend.built_radius_in = turn.built_radius_in();
  bend.start_in = start_in;
  bend.end_in = start_in + arc_in;
  bend.straight_before_in = straight_before_in;
  bend.fits = turn.fits;
  bend.slight = turn.slight;
  return bend;
}

Vec3 point_on(const PathPiece& piece, double along_in) {
  if (along_in >= piece.length_in) return piece.to;
  if (!piece.is_arc) return piece.from + piece.direction * along_in;
  const double angle_rad = along_in / piece.radius_in;
  return piece.centre + (piece.from - piece.centre) * std::cos(angle_rad) +
         piece.direction * (piece.radius_in * std::sin(angle_rad));
}

Vec3 tangent_on(const PathPiece& piece, double along_in) {
  if (!piece.is_arc) return piece.direction;
  const double angle_rad = std::min(along_in, piece.length_in) / piece.radius_in;
  const Vec3 outward = (piece.from - piece.centre) / piece.radius_in;
  return unit(piece.direction * std::cos(angle_rad) - outward * std::sin(angle_rad));
}

/// The piece that holds a distance along; the later one where two meet.
std::size_t piece_index(const std::vector<PathPiece>& pieces, double distance_in) {
  const auto after = std::upper_bound(
      pieces.begin(), pieces.end(), distance_in,
      [](double wanted, const PathPiece& piece) { return wanted < piece.start_in; });
  return after == pieces.begin() ? 0 : static_cast<std::size_t>(after - pieces.begin()) - 1;
}

const PathPiece& piece_at(const std::vector<PathPiece>& pieces, double distance_in) {
  return pieces[piece_index(pieces, distance_in)];
}

/// Chords that keep an arc of `angle_rad` within the sagitta r (1 - cos(a/2)) = 2 r sin²(a/4).
int chord_count(double angle_rad, double radius_in, double sagitta_in) {
  // The floor bounds the number of chords where a sagitta of zero is asked for.
  const double ratio = std::clamp(sagitta_in / (2 * radius_in), 1e-12, 0.5);
  const double chord_angle_rad = 4 * std::asin(std::sqrt(ratio));
  return std::max(1, static_cast<int>(std::ceil(angle_rad / chord_angle_rad)));
}

}  // namespace

Centreline::Centreline(std::vector<PathCorner> corners) : corners_(std::move(corners)) {
  require_usable(corners_);
  const std::vector<Leg> legs = legs_between(corners_);
  std::vector<CornerTurn> turns = turns_at(corners_, legs);
  fit_to_legs(turns, legs);

  corner_distance_in_.assign(corners_.size(), 0);
  const auto append = [this](const PathPiece& piece) {
    pieces_.push_back(piece);
    length_in_ += piece.length_in;
  };
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const Leg& leg = legs[i];
    const CornerTurn& begin = turns[i];
    const CornerTurn& end = turns[i + 1];
    const Vec3 from = corners_[i].at + leg.direction * begin.built_tangent_in();
    const Vec3 to = corners_[i + 1].at - leg.direction * end.built_tangent_in();
    const double straight_in = leg.length_in - begin.built_tangent_in() - end.built_tangent_in();
    if (straight_in > length_tolerance_in)
      append(straight_piece(from, to, leg, straight_in, length_in_));
    straight_after_in_ += leg.length_in - begin.tangent_in - end.tangent_in;
    corner_distance_in_[i + 1] = length_in_;
    if (!end.bends) continue;

    const double start_in = length_in_;
    if (end.built_radius_in() > 0)
      append(arc_piece(corners_[i + 1].at, end, leg.direction, legs[i + 1].direction, start_in));
    bends_.push_back(bend_record(i + 1, end, start_in, length_in_ - start_in, straight_after_in_));
    corner_distance_in_[i + 1] = bends_.back().middle_in();
    straight_after_in_ = 0;
  }
  // Nothing is left where all corners lie closer together than the tolerance.
  if (pieces_.empty())
    append(straight_piece(corners_[0].at, corners_[1].at, legs[0], legs[0].length_in, 0));
}

std::vector<Bend> Centreline::made_bends() const {
  std::vector<Bend> made;
  double before_in = 0;
  for (const Bend& bend : bends_) {
    before_in += bend.straight_before_in;
    if (bend.slight) continue;
    made.push_back(bend);
    made.back().straight_before_in = before_in;
    before_in = 0;
  }
  return made;
}

double Centreline::straight_after_made_in() const {
  double after_in = straight_after_in_;
  for (auto bend = bends_.rbegin(); bend != bends_.rend() && bend->slight; ++bend)
    after_in += bend->straight_before_in;
  return after_in;
}

Vec3 Centreline::at(double distance_in) const {
  const double along_in = std::clamp(distance_in, 0.0, length_in_);
  const PathPiece& piece = piece_at(pieces_, along_in);
  return point_on(piece, along_in - piece.start_in);
}

Vec3 Centreline::direction(double distance_in) const {
  const double along_in = std::clamp(distance_in, 0.0, length_in_);
  const PathPiece& piece = piece_at(pieces_, along_in);
  return tangent_on(piece, along_in - piece.start_in);
}

std::vector<PathChord> Centreline::chords(double start_in, double end_in, double sagitta_in) const {
  std::vector<PathChord> chords;
  // From a piece early, since where pieces meet is rounded.
  std::size_t first = piece_index(pieces_, start_in);
  first -= std::min<std::size_t>(first, 1);
  for (std::size_t i = first; i < pieces_.size() && pieces_[i].start_in < end_in; ++i) {
    const PathPiece& piece = pieces_[i];
    const double from_in = std::max(start_in, piece.start_in);
    const double to_in = std::min(end_in, piece.start_in + piece.length_in);
    if (!(to_in - from_in > shortest_chord_in)) continue;
    const int count =
        piece.is_arc ? chord_count((to_in - from_in) / piece.radius_in, piece.radius_in, sagitta_in)
                     : 1;
    const double step_in = (to_in - from_in) / count;
    for (int k = 0; k < count; ++k) {
      const double chord_start_in = from_in + step_in * k;
      const double chord_end_in = k + 1 == count ? to_in : from_in + step_in * (k + 1);
      chords.push_back({point_on(piece, chord_start_in - piece.start_in),
                        point_on(piece, chord_end_in - piece.start_in), chord_start_in,
                        chord_end_in});
    }
  }
  return chords;
}

}  // namespace linewright
