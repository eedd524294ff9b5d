#pragma once
// The path a line really takes: legs between corners, each corner rounded by a true circular arc.
// Lengths are inches, angles radians. Distances along the line count from its first corner.

#include <vector>

#include "model/vector.hpp"

namespace linewright {

/// A corner as drawn. A radius of zero leaves it sharp.
struct PathCorner {
  Vec3 at;
  double radius_in = 0;
  bool slight = false;  ///< drawn, but no bend: sharp, whatever its radius (`slight_corners`)
};

/// A straight or a circular arc of the centreline.
struct PathPiece {
  bool is_arc = false;
  double start_in = 0;  ///< distance along the line where it begins
  double length_in = 0;
  Vec3 from;
  Vec3 to;
  Vec3 direction;        ///< unit tangent at `from`
  Vec3 centre;           ///< arcs only
  double radius_in = 0;  ///< arcs only
};

/// A part of a straight, or of an arc replaced by its chord.
struct PathChord {
  Vec3 from;
  Vec3 to;
  double start_in = 0;  ///< distance along the line, arcs measured along the arc
  double end_in = 0;
};

/// What became of an interior corner.
struct Bend {
  int corner = 0;        ///< index into the corners
  double angle_rad = 0;  ///< how far the line turns there
  double drawn_radius_in = 0;
  double tangent_in = 0;       ///< corner to start of arc that the drawn radius needs
  double built_radius_in = 0;  ///< the drawn radius, or the largest that the legs leave room for
  double start_in = 0;         ///< distance along the line where the arc starts
  double end_in = 0;
  double straight_before_in =
      0;                ///< from the last arc or the start, drawn radii; below zero: overlap
  bool fits = true;     ///< the drawn radius fits on both legs
  bool slight = false;  ///< the line turns here as drawn, and is not bent
  double middle_in() const { return (start_in + end_in) / 2; }
};

/// A filleted path. Built once, never changed.
class Centreline {
 public:
  /// Corners that turn less than this are taken as straight: 0.01 degree.
  static constexpr double straight_below_rad = 0.01 * 3.14159265358979323846 / 180;
  /// A turn this close to half a circle is a full reversal: no arc leads round it.
  static constexpr double reversal_within_rad = 1e-6;

  /// Rounds `corners` (two or more, neighbours distinct, all finite). Where the drawn radii do
  /// not fit on a leg, both arcs that share it are drawn smaller in proportion so that the rest of
  /// the path stays defined, and their bends say `fits == false`. A full reversal never fits.
  explicit Centreline(std::vector<PathCorner> corners);

  const std::vector<PathCorner>& corners() const { return corners_; }
  const std::vector<PathPiece>& pieces() const { return pieces_; }
  const std::vector<Bend>& bends() const { return bends_; }  ///< only corners that turn, in order
  /// Those that are bends, each with the straight before it up to the last one of these.
  std::vector<Bend> made_bends() const;
  /// Straight after the last of these.
  double straight_after_made_in() const;
  /// Developed length: legs less tangents plus arcs.
  double length_in() const { return length_in_; }
  /// Straight after the last arc, drawn radii; the whole length where there is no bend.
  double straight_after_in() const { return straight_after_in_; }

  /// Point at a distance along, clamped to the ends.
  Vec3 at(double distance_in) const;
  /// Unit tangent there.
  Vec3 direction(double distance_in) const;
  /// Distance along of a corner: of the middle of its arc where it is rounded.
  double corner_distance_in(int corner) const {
    return corner_distance_in_[static_cast<std::size_t>(corner)];
  }

  /// The part from `start_in` to `end_in` as chords. No point of an arc lies farther than
  /// `sagitta_in` from its chord.
  std::vector<PathChord> chords(double start_in, double end_in,
                                double sagitta_in = default_sagitta_in) const;
  static constexpr double default_sagitta_in = 0.00025;

 private:
  std::vector<PathCorner> corners_;
  std::vector<PathPiece> pieces_;
  std::vector<Bend> bends_;
  std::vector<double> corner_distance_in_;
  double length_in_ = 0;
  double straight_after_in_ = 0;
};

}  // namespace linewright
