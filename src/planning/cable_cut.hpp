#pragma once
// How long to cut the pieces of a control cable, and what its turnbuckles can take up afterwards.

#include <optional>
#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// Constructional stretch of a new cable, as a share of its length, at the most [verified in a
/// restatement: two wire-rope makers' pages on stretch]. Prestretching takes it out.
inline constexpr double constructional_stretch_share = 0.01;

/// One piece of cable, from a node or turnbuckle to the next.
struct CablePiece {
  std::string from;
  std::string to;
  std::optional<double> cut_length_in;  ///< unloaded, with what its ends hold
};

struct Turnbuckle {
  std::string name;  ///< "turnbuckle", or "turnbuckle 2" where there are several
  double at_in = 0;  ///< along the route
  double drawn_in = 0;
  std::optional<Adjustment> adjustment;
};

struct CableCut {
  std::vector<CablePiece> pieces;       ///< in order along the route
  std::vector<Turnbuckle> turnbuckles;  ///< in order along the route
  std::optional<double> cut_length_in;  ///< of all pieces together
  std::optional<double> each_way_in;    ///< all turnbuckles together, from mid-adjustment
  std::optional<double> bedding_in_in;  ///< constructional stretch of all pieces, at the most
  double tolerance_in = 0;              ///< the ends' places: build tolerance at both
  std::vector<std::string> missing;     ///< what is not known, in words

  /// Whether the turnbuckles, cut for mid-adjustment, take up a prestretched cable's tolerance, and
  /// a new cable's stretch as well. Nothing where that is not known.
  std::optional<bool> takes_up_tolerance() const;
  std::optional<bool> takes_up_all() const;
};

/// The pieces of a route of cable as rigged at the rigging temperature: the way from node to node
/// along the centreline, less each turnbuckle at mid-adjustment and what terminals take up, less
/// the stretch at the rigged tension, and with the cable that the ends hold. A route whose ends are
/// nowhere stated has no pieces where its line states a cutting allowance of its own: that gives
/// the length then.
CableCut cable_cut(const PreparedRoute& route, double build_tolerance_in);

}  // namespace linewright
