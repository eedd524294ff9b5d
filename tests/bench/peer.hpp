#pragma once
// What every contestant of the distance benchmark does: index the triangles once, then give exact
// minimum distances of segments, those of one route one after the other.

#include <memory>
#include <vector>

#include "geometry/distance.hpp"

namespace linewright::bench {

class Peer {
 public:
  virtual ~Peer() = default;
  /// Distance in inches. `new_route` is true for the first segment of a route; otherwise the last
  /// answer may be used as a first guess.
  virtual double distance_in(const Segment3& segment, bool new_route) = 0;
};

/// Builds the index; what that takes is what is timed. Segments longer than `longest_piece_in` are
/// asked about in equal pieces by contestants that only know spheres or boxes.
using MakePeer = std::unique_ptr<Peer> (*)(const std::vector<Triangle3>& triangles,
                                           double longest_piece_in);

std::unique_ptr<Peer> make_own(const std::vector<Triangle3>& triangles, double);
std::unique_ptr<Peer> make_own_two_threads(const std::vector<Triangle3>& triangles, double);
std::unique_ptr<Peer> make_embree(const std::vector<Triangle3>& triangles, double longest_piece_in);
std::unique_ptr<Peer> make_rtree(const std::vector<Triangle3>& triangles, double longest_piece_in);
std::unique_ptr<Peer> make_cgal(const std::vector<Triangle3>& triangles, double longest_piece_in);
std::unique_ptr<Peer> make_fcl(const std::vector<Triangle3>& triangles, double);
std::unique_ptr<Peer> make_brute_force(const std::vector<Triangle3>& triangles);

}  // namespace linewright::bench
