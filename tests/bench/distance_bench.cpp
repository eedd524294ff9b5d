// Measures one contestant at one size:
//   distance_bench CONTESTANT TRIANGLES [LONGEST PIECE]
// prints, separated by blanks: triangles, build in s, queries per second, memory in bytes a
// triangle, largest difference from brute force in inches, sum of all distances.

#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <string>

#include "bench/peer.hpp"
#include "bench/tailcone.hpp"

namespace linewright::bench {
namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t routes = 200;
constexpr std::size_t per_route = 50;
constexpr int rounds = 5;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

/// Memory that this process holds now, from the kernel.
double resident_bytes() {
  std::ifstream status("/proc/self/statm");
  double pages = 0;
  double resident = 0;
  status >> pages >> resident;
  return resident * 4096;
}

double all_distances(Peer& peer, const std::vector<Segment3>& segments) {
  double sum = 0;
  for (std::size_t i = 0; i < segments.size(); ++i)
    sum += peer.distance_in(segments[i], i % per_route == 0);
  return sum;
}

double largest_error(Peer& peer, const std::vector<Segment3>& segments,
                     const std::vector<Triangle3>& triangles) {
  const std::size_t checked = std::clamp<std::size_t>(30'000'000 / triangles.size(), 30, 1000);
  const std::unique_ptr<Peer> reference = make_brute_force(triangles);
  double largest = 0;
  for (std::size_t i = 0; i < segments.size(); i += segments.size() / checked)
    largest = std::max(largest, std::abs(peer.distance_in(segments[i], true) -
                                         reference->distance_in(segments[i], true)));
  return largest;
}

void measure(MakePeer make, std::size_t size, double longest_piece_in) {
  const std::vector<Triangle3> triangles = tailcone(size);
  const std::vector<Segment3> segments = route_segments(routes, per_route);
  const double before = resident_bytes();
  std::unique_ptr<Peer> peer = make(triangles, longest_piece_in);
  const double bytes = resident_bytes() - before;
  std::vector<double> builds;
  for (int round = 0; round < rounds; ++round) {
    peer.reset();
    const auto start = Clock::now();
    peer = make(triangles, longest_piece_in);
    builds.push_back(seconds_since(start));
  }
  std::vector<double> passes;
  double sum = 0;
  for (int round = 0; round < rounds; ++round) {
    const auto start = Clock::now();
    sum = all_distances(*peer, segments);
    passes.push_back(seconds_since(start));
  }
  const auto count = static_cast<double>(triangles.size());
  std::printf("%zu %.4f %.0f %.0f %.1e %.9f\n", triangles.size(), median(builds),
              static_cast<double>(segments.size()) / median(passes), bytes / count,
              largest_error(*peer, segments, triangles), sum);
}

}  // namespace
}  // namespace linewright::bench

int main(int count, char** words) {
  using namespace linewright::bench;
  const std::map<std::string, MakePeer> contestants{
      {"own", make_own},       {"own-2-threads", make_own_two_threads},
      {"embree", make_embree}, {"rtree", make_rtree},
      {"cgal", make_cgal},     {"fcl", make_fcl}};
  const auto found = count >= 3 ? contestants.find(words[1]) : contestants.end();
  const std::size_t size = count >= 3 ? std::strtoul(words[2], nullptr, 10) : 0;
  const double longest_piece_in = count >= 4 ? std::strtod(words[3], nullptr) : 1000;
  if (found == contestants.end() || size < 1000 || !(longest_piece_in > 0.01)) {
    std::fprintf(stderr, "usage: distance_bench CONTESTANT TRIANGLES [LONGEST PIECE in]\n");
    return 2;
  }
  measure(found->second, size, longest_piece_in);
}
