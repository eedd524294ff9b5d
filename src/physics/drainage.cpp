#include "physics/drainage.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <queue>
#include <utility>

namespace linewright {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

std::size_t index(int vertex) {
  return static_cast<std::size_t>(vertex);
}

/// The reaches that end at each vertex.
std::vector<std::vector<int>> reaches_by_vertex(const WaterNetwork& network) {
  std::vector<std::vector<int>> ends(network.height_in.size());
  for (std::size_t i = 0; i < network.reaches.size(); ++i) {
    ends[index(network.reaches[i].from)].push_back(static_cast<int>(i));
    ends[index(network.reaches[i].to)].push_back(static_cast<int>(i));
  }
  return ends;
}

int other_end(const WaterReach& reach, int vertex) {
  return reach.from == vertex ? reach.to : reach.from;
}

/// Cosine of a reach's slope against the level.
double slope_cosine(const WaterNetwork& network, const WaterReach& reach) {
  if (!(reach.length_in > 0)) return 1;
  const double rise =
      (network.height_in[index(reach.to)] - network.height_in[index(reach.from)]) / reach.length_in;
  return std::sqrt(std::max(0.0, 1 - rise * rise));
}

/// The part of a reach that lies under water standing at its lower end up to `level_in`.
WetPart wet_part(const WaterNetwork& network, int reach_index, double level_in) {
  const WaterReach& reach = network.reaches[index(reach_index)];
  const double from_in = network.height_in[index(reach.from)];
  const double to_in = network.height_in[index(reach.to)];
  const double low_in = std::min(from_in, to_in);
  const double rise_in = std::abs(to_in - from_in);
  if (level_in - low_in >= rise_in) return {reach_index, 0, 1};
  const double share = (level_in - low_in) / rise_in;
  return from_in <= to_in ? WetPart{reach_index, 0, share} : WetPart{reach_index, 1 - share, 1};
}

class PoolSearch {
 public:
  explicit PoolSearch(const WaterNetwork& network)
      : network_(network),
        spill_(spill_levels(network)),
        ends_(reaches_by_vertex(network)),
        taken_(network.height_in.size(), false) {}

  std::vector<Pool> pools() {
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < taken_.size(); ++i)
      if (under_water(static_cast<int>(i)) && !taken_[i])
        pools.push_back(pool_around(static_cast<int>(i)));
    return pools;
  }

 private:
  bool under_water(int vertex) const {
    return spill_.level_in[index(vertex)] - network_.height_in[index(vertex)] > least_pool_depth_in;
  }

  /// Two neighbours under water lie in one pool: the pipe between them is flooded from the lower
  /// one's side to at least the height of the other.
  Pool pool_around(int first) {
    Pool pool;
    std::vector<int> waiting{first};
    taken_[index(first)] = true;
    while (!waiting.empty()) {
      const int vertex = waiting.back();
      waiting.pop_back();
      pool.vertices.push_back(vertex);
      for (const int reach : ends_[index(vertex)]) {
        const int next = other_end(network_.reaches[index(reach)], vertex);
        if (taken_[index(next)] || !under_water(next)) continue;
        taken_[index(next)] = true;
        waiting.push_back(next);
      }
    }
    std::sort(pool.vertices.begin(), pool.vertices.end());
    measure(pool);
    return pool;
  }

  void measure(Pool& pool) const {
    const auto height = [&](int vertex) { return network_.height_in[index(vertex)]; };
    pool.lowest = *std::min_element(pool.vertices.begin(), pool.vertices.end(),
                                    [&](int a, int b) { return height(a) < height(b); });
    pool.crest = spill_.crest[index(pool.lowest)];
    pool.level_in = spill_.level_in[index(pool.lowest)];
    pool.depth_in = pool.level_in - height(pool.lowest);
    std::vector<int> reaches;
    for (const int vertex : pool.vertices)
      reaches.insert(reaches.end(), ends_[index(vertex)].begin(), ends_[index(vertex)].end());
    std::sort(reaches.begin(), reaches.end());
    reaches.erase(std::unique(reaches.begin(), reaches.end()), reaches.end());
    for (const int reach : reaches) {
      const WetPart part = wet_part(network_, reach, pool.level_in);
      const WaterReach& pipe = network_.reaches[index(reach)];
      pool.parts.push_back(part);
      pool.volume_in3 += std::numbers::pi / 4 * pipe.bore_in * pipe.bore_in * pipe.length_in *
                         (part.to - part.from);
    }
    measure_bore(pool);
  }

  void measure_bore(Pool& pool) const {
    double cosine = 0;
    pool.bore_in = infinity;
    for (const int reach : ends_[index(pool.lowest)]) {
      const WaterReach& pipe = network_.reaches[index(reach)];
      cosine = std::max(cosine, slope_cosine(network_, pipe));
      pool.bore_in = std::min(pool.bore_in, pipe.bore_in);
    }
    if (ends_[index(pool.lowest)].empty()) pool.bore_in = 0;
    pool.closes_bore = pool.depth_in >= pool.bore_in * cosine;
  }

  const WaterNetwork& network_;
  SpillLevels spill_;
  std::vector<std::vector<int>> ends_;
  std::vector<bool> taken_;
};

}  // namespace

SpillLevels spill_levels(const WaterNetwork& network) {
  const std::size_t count = network.height_in.size();
  SpillLevels spill{std::vector<double>(count, infinity), std::vector<int>(count, -1)};
  using Front = std::pair<double, int>;
  std::priority_queue<Front, std::vector<Front>, std::greater<>> front;
  const auto reach_vertex = [&](int vertex, double level_in, int crest) {
    if (!(level_in < spill.level_in[index(vertex)])) return;
    spill.level_in[index(vertex)] = level_in;
    spill.crest[index(vertex)] = crest;
    front.push({level_in, vertex});
  };
  for (const int outlet : network.outlets)
    reach_vertex(outlet, network.height_in[index(outlet)], outlet);
  const std::vector<std::vector<int>> ends = reaches_by_vertex(network);
  while (!front.empty()) {
    const auto [level_in, vertex] = front.top();
    front.pop();
    if (level_in > spill.level_in[index(vertex)]) continue;
    for (const int reach : ends[index(vertex)]) {
      const int next = other_end(network.reaches[index(reach)], vertex);
      const double height_in = network.height_in[index(next)];
      if (height_in >= level_in)
        reach_vertex(next, height_in, next);
      else
        reach_vertex(next, level_in, spill.crest[index(vertex)]);
    }
  }
  return spill;
}

std::vector<Pool> standing_pools(const WaterNetwork& network) {
  return PoolSearch(network).pools();
}

}  // namespace linewright
