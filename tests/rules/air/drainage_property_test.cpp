// Water in random systems: a few nodes joined as a tree with loops, by lines whose bends may not
// fit.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "lines/prepare.hpp"
#include "lines/trapped_water.hpp"
#include "oracles/random_path.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

const std::string tube = "tube-nylon-1/4";

SmallProject random_system(oracles::Random& random, double widest_bend_in = 3) {
  SmallProject project;
  const int nodes = random.whole(2, 5);
  for (int i = 0; i < nodes; ++i) {
    constexpr NodeKind kinds[] = {NodeKind::tee, NodeKind::instrument, NodeKind::drain,
                                  NodeKind::union_fitting};
    const NodeKind kind = i == 0 ? NodeKind::static_port : kinds[random.whole(0, 3)];
    project.node("node-" + std::to_string(i), kind, random.point(20));
  }
  const auto join = [&](int from, int to) {
    std::vector<RoutePoint> points;
    for (int corners = random.whole(0, 4); corners > 0; --corners)
      points.push_back(bent(random.point(20), random.between(0, widest_bend_in)));
    project.route("route-" + std::to_string(project.project.routes.size()), tube,
                  "node-" + std::to_string(from), "node-" + std::to_string(to), points);
  };
  for (int i = 1; i < nodes; ++i) join(random.whole(0, i - 1), i);
  for (int loops = random.whole(0, 2); loops > 0; --loops) {
    const int from = random.whole(1, nodes - 1);
    join(from, random.whole(0, from - 1));
  }
  project.project.attitudes = {{"tilted", random.between(-40, 40), random.between(-40, 40), {}}};
  return project;
}

/// Height after rolling the right wing down and then pitching the nose up, turn by turn.
double height_in(Vec3 at, const Attitude& attitude) {
  const double roll = attitude.roll_deg * std::numbers::pi / 180;
  const double pitch = attitude.pitch_deg * std::numbers::pi / 180;
  const double rolled = at.z * std::cos(roll) - at.y * std::sin(roll);
  return rolled * std::cos(pitch) - at.x * std::sin(pitch);
}

/// The deepest water, by stepping along every line and letting levels fall until none can.
double stepped_depth_in(const Project& project, const Attitude& attitude) {
  const PreparedProject prepared = prepare(project);
  std::vector<double> height;
  std::vector<double> level;
  std::vector<std::pair<std::size_t, std::size_t>> steps;
  for (const Node& node : project.nodes) {
    height.push_back(height_in(node.at, attitude));
    const bool open = node.kind == NodeKind::static_port || node.kind == NodeKind::drain;
    level.push_back(open ? height.back() : std::numeric_limits<double>::infinity());
  }
  for (const PreparedRoute& route : prepared.routes) {
    const auto node = [&](const Node* wanted) {
      return static_cast<std::size_t>(wanted - project.nodes.data());
    };
    std::size_t last = node(route.from);
    const int count = static_cast<int>(route.length_in() / 0.02) + 1;
    for (int i = 1; i <= count; ++i) {
      std::size_t next = node(route.to);
      if (i < count) {
        next = height.size();
        height.push_back(height_in(route.centreline.at(route.length_in() * i / count), attitude));
        level.push_back(std::numeric_limits<double>::infinity());
      }
      steps.push_back({last, next});
      last = next;
    }
  }
  const auto lower = [&](std::size_t from, std::size_t to) {
    const double reached = std::max(height[to], level[from]);
    if (reached >= level[to]) return false;
    level[to] = reached;
    return true;
  };
  for (bool moved = true; moved;) {
    moved = false;
    for (const auto& [a, b] : steps) moved = lower(a, b) || moved;
    for (auto step = steps.rbegin(); step != steps.rend(); ++step)
      moved = lower(step->second, step->first) || moved;
  }
  double deepest = 0;
  for (std::size_t i = 0; i < height.size(); ++i) deepest = std::max(deepest, level[i] - height[i]);
  return deepest;
}

double deepest_trap_in(const Project& project, const Attitude& attitude) {
  const PreparedProject prepared = prepare(project);
  double deepest = 0;
  for (const AirNetwork& network : air_networks(prepared))
    for (const WaterTrap& trap : water_traps(network, attitude))
      deepest = std::max(deepest, trap.depth_in);
  return deepest;
}

TEST(DrainageProperty, DepthMatchesSteppingAlongTheLines) {
  oracles::Random random(31);
  int trapped = 0;
  for (int trial = 0; trial < 300; ++trial) {
    SCOPED_TRACE(trial);
    const SmallProject project = random_system(random);
    const Attitude& attitude = project.project.attitudes.front();
    const double stepped = stepped_depth_in(project.project, attitude);
    // A step of 0.02 in can miss the top or bottom of a sharp corner by half of itself.
    EXPECT_NEAR(deepest_trap_in(project.project, attitude), stepped, 0.021);
    trapped += stepped > 0.1;
  }
  EXPECT_GT(trapped, 100);
}

TEST(DrainageProperty, RaisingThePointsOfTheMendLetsAllWaterOut) {
  oracles::Random random(32);
  int mended = 0;
  for (int trial = 0; trial < 300; ++trial) {
    SCOPED_TRACE(trial);
    SmallProject small = random_system(random);
    Project& project = small.project;
    const Attitude attitude = project.attitudes.front();
    const Vec3 up = up_in_attitude(attitude.pitch_deg, attitude.roll_deg);
    std::map<Vec3*, double> raise;
    {
      const PreparedProject prepared = prepare(project);
      for (const AirNetwork& network : air_networks(prepared))
        for (const WaterTrap& trap : water_traps(network, attitude)) {
          const auto points = points_to_raise(network, trap);
          ASSERT_FALSE(points.empty());
          for (const LowPoint& point : points) {
            Vec3* drawn = nullptr;
            for (Node& node : project.nodes)
              if (point.place.node == &node) drawn = &node.at;
            for (Route& route : project.routes)
              for (RoutePoint& corner : route.points)
                if (!point.place.node && corner.at == point.at) drawn = &corner.at;
            ASSERT_TRUE(drawn);
            raise[drawn] = point.raise_in;
          }
        }
    }
    for (const auto& [drawn, by_in] : raise) *drawn = *drawn + up * by_in;
    mended += !raise.empty();
    EXPECT_LT(deepest_trap_in(project, attitude), 1e-6);
  }
  EXPECT_GT(mended, 100);
}

TEST(DrainageProperty, DrainsAtTheLowestPlacesOfSharpCorneredLinesLetAllWaterOut) {
  oracles::Random random(33);
  int drained = 0;
  for (int trial = 0; trial < 100; ++trial) {
    SCOPED_TRACE(trial);
    SmallProject small = random_system(random, 0);
    const Attitude attitude = small.project.attitudes.front();
    for (int drains = 0; drains < 40; ++drains) {
      const PreparedProject prepared = prepare(small.project);
      const auto networks = air_networks(prepared);
      const auto traps = water_traps(networks.at(0), attitude);
      if (traps.empty()) break;
      ++drained;
      const WaterPlace place = traps.front().lowest;
      if (place.node) {
        for (Node& node : small.project.nodes)
          if (node.name == place.node->name) node.kind = NodeKind::drain;
        continue;
      }
      // Cut the line there, sharp, and join the halves at a drain.
      const std::string drain = "drain-" + std::to_string(drains);
      const Vec3 at = place.route->centreline.at(place.distance_in);
      Route half;
      for (Route& route : small.project.routes) {
        if (route.name != place.route->route->name) continue;
        const auto split = std::find_if(
            place.route->point_distance_in.begin(), place.route->point_distance_in.end(),
            [&](double along) { return along >= place.distance_in - 1e-9; });
        const auto kept = split - place.route->point_distance_in.begin();
        half = route;
        half.name += "-" + std::to_string(drains);
        half.from = drain;
        half.points.erase(half.points.begin(), half.points.begin() + kept);
        route.points.erase(route.points.begin() + kept, route.points.end());
        route.to = drain;
        if (!half.points.empty() && distance(half.points.front().at, at) < 1e-9)
          half.points.erase(half.points.begin());
      }
      small.node(drain, NodeKind::drain, at);
      small.project.routes.push_back(half);
    }
    EXPECT_LT(deepest_trap_in(small.project, attitude), 1e-6);
  }
  EXPECT_GT(drained, 100);
}

}  // namespace
}  // namespace linewright
