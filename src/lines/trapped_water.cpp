#include "lines/trapped_water.hpp"

#include <algorithm>
#include <cmath>

#include "physics/drainage.hpp"

namespace linewright {

namespace {

using Profile = std::vector<HeightSample> (*)(const Centreline&, Vec3);

/// A network as pipework with heights, and the way back to places along its lines.
struct SampledNetwork {
  WaterNetwork water;
  std::vector<WaterPlace> places;            ///< of each vertex
  std::vector<const PreparedRoute*> routes;  ///< of each reach
  std::vector<HeightSample> reach_starts;    ///< of each reach: its `from`
  std::vector<HeightSample> reach_ends;
};

std::size_t index(int vertex) {
  return static_cast<std::size_t>(vertex);
}

/// Nodes become vertices 0, 1…, in their order; samples between them follow.
SampledNetwork sample(const AirNetwork& network, Vec3 up, Profile profile) {
  SampledNetwork sampled;
  for (std::size_t i = 0; i < network.nodes.size(); ++i) {
    const Node& node = *network.nodes[i];
    sampled.water.height_in.push_back(dot(node.at, up));
    sampled.places.push_back({nullptr, 0, &node});
    if (lets_water_out(node)) sampled.water.outlets.push_back(static_cast<int>(i));
  }
  for (const AirLink& link : network.links) {
    for (const int node : {link.from, link.to}) {
      WaterPlace& place = sampled.places[index(node)];
      if (place.route) continue;
      place.route = link.route;
      place.distance_in = AirNetwork::distance_of_node(link, node);
    }
    const std::vector<HeightSample> samples = profile(link.route->centreline, up);
    int last = link.from;
    for (std::size_t i = 1; i < samples.size(); ++i) {
      int next = link.to;
      if (i + 1 < samples.size()) {
        next = static_cast<int>(sampled.places.size());
        sampled.places.push_back({link.route, samples[i].distance_in, nullptr});
        sampled.water.height_in.push_back(samples[i].height_in);
      }
      sampled.water.reaches.push_back({last, next,
                                       samples[i].distance_in - samples[i - 1].distance_in,
                                       link.route->line->inside_diameter_in});
      sampled.routes.push_back(link.route);
      sampled.reach_starts.push_back(samples[i - 1]);
      sampled.reach_ends.push_back(samples[i]);
      last = next;
    }
  }
  return sampled;
}

/// The wet parts of a pool's reaches, neighbours on one line joined.
std::vector<WetStretch> wet_stretches(const SampledNetwork& sampled, const Pool& pool) {
  std::vector<WetStretch> stretches;
  for (const WetPart& part : pool.parts) {
    const std::size_t reach = index(part.reach);
    const double start_in = sampled.reach_starts[reach].distance_in;
    const double length_in = sampled.reach_ends[reach].distance_in - start_in;
    const WetStretch wet{sampled.routes[reach], start_in + part.from * length_in,
                         start_in + part.to * length_in};
    WetStretch* last = stretches.empty() ? nullptr : &stretches.back();
    if (last && last->route == wet.route && wet.from_in <= last->to_in)
      last->to_in = wet.to_in;
    else
      stretches.push_back(wet);
  }
  return stretches;
}

WaterTrap trap_from(const SampledNetwork& sampled, const Pool& pool, const Attitude& attitude) {
  WaterTrap trap;
  trap.attitude = &attitude;
  trap.lowest = sampled.places[index(pool.lowest)];
  if (pool.crest >= 0) trap.crest = sampled.places[index(pool.crest)];
  trap.depth_in = pool.depth_in;
  trap.volume_in3 = pool.volume_in3;
  trap.bore_in = pool.bore_in;
  trap.closes_bore = pool.closes_bore;
  trap.wet = wet_stretches(sampled, pool);
  return trap;
}

/// The part of a line that a drawn corner is rounded into; the corner alone where it is sharp.
WetStretch rounding_of(const WaterPlace& corner) {
  for (const Bend& bend : corner.route->centreline.bends())
    if (bend.start_in <= corner.distance_in && corner.distance_in <= bend.end_in)
      return {corner.route, bend.start_in, bend.end_in};
  return {corner.route, corner.distance_in, corner.distance_in};
}

/// True where a stretch under water comes to a drawn point, its arc or a node.
bool comes_to(const WetStretch& wet, const WaterPlace& place) {
  constexpr double rounding_in = 1e-9;
  if (place.node)
    return (wet.route->from == place.node && wet.from_in <= rounding_in) ||
           (wet.route->to == place.node && wet.to_in >= wet.route->length_in() - rounding_in);
  const WetStretch arc = rounding_of(place);
  return wet.route == arc.route && wet.from_in <= arc.to_in + rounding_in &&
         wet.to_in >= arc.from_in - rounding_in;
}

/// True where a pool of the drawn legs reaches into a trap. A trap may hold several of them: a
/// crest between them that stands out of the water as drawn is under water when rounded.
bool reaches_into(const SampledNetwork& drawn, const Pool& pool, const WaterTrap& trap) {
  return std::any_of(pool.vertices.begin(), pool.vertices.end(), [&](int vertex) {
    return std::any_of(trap.wet.begin(), trap.wet.end(), [&](const WetStretch& wet) {
      return comes_to(wet, drawn.places[index(vertex)]);
    });
  });
}

Vec3 drawn_at(const WaterPlace& place) {
  if (place.node) return place.node->at;
  const Centreline& line = place.route->centreline;
  std::size_t nearest = 0;
  const auto away = [&](std::size_t corner) {
    return std::abs(line.corner_distance_in(static_cast<int>(corner)) - place.distance_in);
  };
  for (std::size_t i = 1; i < line.corners().size(); ++i)
    if (away(i) < away(nearest)) nearest = i;
  return line.corners()[nearest].at;
}

bool under_water(const WaterPlace& place, const WaterTrap& trap) {
  return std::any_of(trap.wet.begin(), trap.wet.end(), [&](const WetStretch& wet) {
    return wet.route == place.route && place.distance_in >= wet.from_in &&
           place.distance_in <= wet.to_in;
  });
}

bool is_worse(const WaterTrap& a, const WaterTrap& b) {
  if (a.has_way_out() != b.has_way_out()) return b.has_way_out();
  if (a.closes_bore != b.closes_bore) return a.closes_bore;
  return a.volume_in3 > b.volume_in3;
}

bool same_trap(const TrapInAttitudes& known, const WaterTrap& trap) {
  const bool in_attitude = known.worst.attitude == trap.attitude ||
                           std::find(known.also_in.begin(), known.also_in.end(),
                                     trap.attitude->name) != known.also_in.end();
  return !in_attitude &&
         (under_water(trap.lowest, known.worst) || under_water(known.worst.lowest, trap));
}

}  // namespace

bool lets_water_out(const Node& node) {
  return node.kind == NodeKind::static_port || node.kind == NodeKind::pitot_probe ||
         node.kind == NodeKind::drain;
}

std::vector<WaterTrap> water_traps(const AirNetwork& network, const Attitude& attitude) {
  const Vec3 up = up_in_attitude(attitude.pitch_deg, attitude.roll_deg);
  const SampledNetwork sampled = sample(network, up, height_profile);
  std::vector<WaterTrap> traps;
  for (const Pool& pool : standing_pools(sampled.water))
    traps.push_back(trap_from(sampled, pool, attitude));
  return traps;
}

std::vector<LowPoint> points_to_raise(const AirNetwork& network, const WaterTrap& trap) {
  const Vec3 up = up_in_attitude(trap.attitude->pitch_deg, trap.attitude->roll_deg);
  const SampledNetwork drawn = sample(network, up, drawn_height_profile);
  std::vector<LowPoint> points;
  if (!trap.has_way_out()) return points;
  for (const Pool& pool : standing_pools(drawn.water)) {
    if (!reaches_into(drawn, pool, trap)) continue;
    for (const int vertex : pool.vertices) {
      const WaterPlace& place = drawn.places[index(vertex)];
      points.push_back({place, drawn_at(place),
                        pool.level_in - drawn.water.height_in[index(vertex)], pool.level_in});
    }
  }
  std::stable_sort(points.begin(), points.end(),
                   [](const LowPoint& a, const LowPoint& b) { return a.raise_in > b.raise_in; });
  return points;
}

std::vector<TrapInAttitudes> distinct_traps(const AirNetwork& network,
                                            const std::vector<Attitude>& attitudes) {
  std::vector<WaterTrap> all;
  for (const Attitude& attitude : attitudes) {
    const std::vector<WaterTrap> traps = water_traps(network, attitude);
    all.insert(all.end(), traps.begin(), traps.end());
  }
  std::stable_sort(all.begin(), all.end(), is_worse);
  std::vector<TrapInAttitudes> distinct;
  for (const WaterTrap& trap : all) {
    const auto known =
        std::find_if(distinct.begin(), distinct.end(),
                     [&](const TrapInAttitudes& candidate) { return same_trap(candidate, trap); });
    if (known == distinct.end()) {
      distinct.push_back({trap, {}, trap.depth_in});
      continue;
    }
    known->also_in.push_back(trap.attitude->name);
    known->deepest_in = std::max(known->deepest_in, trap.depth_in);
  }
  return distinct;
}

}  // namespace linewright
