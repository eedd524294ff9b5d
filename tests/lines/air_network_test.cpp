// Which air lines hang together, and how high their places lie in an attitude.

#include "lines/air_network.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "lines/prepare.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

constexpr double degree = std::numbers::pi / 180;

TEST(UpInAttitude, LevelIsTheWaterline) {
  EXPECT_EQ(up_in_attitude(0, 0), (Vec3{0, 0, 1}));
}

TEST(UpInAttitude, NoseUpLowersWhatIsAft) {
  // Forward and aft ends (100, 20) and (180, 26) as FS, WL: level, the aft end is 6.000 in higher;
  // 12 degrees nose-up it is 10.764 in lower (calc: WL cos - FS sin).
  const Vec3 along{80, 0, 6};
  EXPECT_NEAR(dot(along, up_in_attitude(0, 0)), 6.000, 5e-4);
  EXPECT_NEAR(dot(along, up_in_attitude(12, 0)), -10.764, 5e-4);
}

TEST(UpInAttitude, RightWingDownLowersTheRightSide) {
  EXPECT_NEAR(dot(Vec3{0, 10, 0}, up_in_attitude(0, 30)), -5, 1e-12);
  EXPECT_NEAR(dot(Vec3{0, -10, 0}, up_in_attitude(0, 30)), 5, 1e-12);
  EXPECT_NEAR(dot(Vec3{0, 0, 10}, up_in_attitude(0, 60)), 5, 1e-12);
}

TEST(UpInAttitude, IsOfUnitLengthAndPitchesAfterRolling) {
  const Vec3 up = up_in_attitude(20, 35);
  EXPECT_NEAR(norm(up), 1, 1e-15);
  // Roll leaves the long axis where it is, so that its fall is the pitch's alone.
  EXPECT_NEAR(up.x, -std::sin(20 * degree), 1e-15);
}

TEST(HeightProfile, FindsTheLowestPlaceOfABendExactly) {
  // Down at 3 in 5, up at 3 in 5, with a radius of 2: each leg leaves the arc at an angle whose
  // cosine is 4/5, so that the bottom lies 2/0.8 - 2 = 0.5 in above the corner.
  const Centreline line({{{0, 0, 12}, 0}, {{16, 0, 0}, 2}, {{32, 0, 12}, 0}});
  const auto profile = height_profile(line, {0, 0, 1});
  const auto lowest =
      std::min_element(profile.begin(), profile.end(),
                       [](const auto& a, const auto& b) { return a.height_in < b.height_in; });
  EXPECT_NEAR(lowest->height_in, 0.5, 1e-12);
  EXPECT_NEAR(lowest->distance_in, line.length_in() / 2, 1e-9);
  EXPECT_DOUBLE_EQ(profile.front().height_in, 12);
  EXPECT_DOUBLE_EQ(profile.back().height_in, 12);
  EXPECT_DOUBLE_EQ(profile.back().distance_in, line.length_in());
}

TEST(HeightProfile, TheDrawnProfileIsTheCorners) {
  const Centreline line({{{0, 0, 12}, 0}, {{16, 0, 0}, 2}, {{32, 0, 12}, 0}});
  const auto drawn = drawn_height_profile(line, {0, 0, 1});
  ASSERT_EQ(drawn.size(), 3u);
  EXPECT_DOUBLE_EQ(drawn[1].height_in, 0);
  EXPECT_DOUBLE_EQ(drawn[1].distance_in, line.corner_distance_in(1));
}

TEST(HeightProfileProperty, RunsStraightBetweenSamplesAndMissesNoExtreme) {
  oracles::Random random(9);
  for (int trial = 0; trial < 200; ++trial) {
    SCOPED_TRACE(trial);
    const Centreline line(oracles::fitting_path(random, random.whole(2, 6)));
    const Vec3 up = random.direction();
    const auto profile = height_profile(line, up);
    ASSERT_GE(profile.size(), 2u);
    EXPECT_EQ(profile.front().distance_in, 0);
    EXPECT_NEAR(profile.back().distance_in, line.length_in(), 1e-9);
    for (std::size_t i = 1; i < profile.size(); ++i) {
      const HeightSample& a = profile[i - 1];
      const HeightSample& b = profile[i];
      ASSERT_LT(a.distance_in, b.distance_in);
      for (int step = 1; step < 10; ++step) {
        const double share = step / 10.0;
        const double true_in =
            dot(line.at(a.distance_in + (b.distance_in - a.distance_in) * share), up);
        EXPECT_NEAR(true_in, a.height_in + (b.height_in - a.height_in) * share,
                    Centreline::default_sagitta_in * 1.01);
        EXPECT_LE(true_in, std::max(a.height_in, b.height_in) + 1e-10);
        EXPECT_GE(true_in, std::min(a.height_in, b.height_in) - 1e-10);
      }
    }
  }
}

/// A project of routes between nodes named by letters, each node at its own place.
class Letters {
 public:
  Letters() {
    Line tube;
    tube.name = "tube";
    tube.inside_diameter_in = 0.18;
    project_.catalogue.lines.push_back(tube);
    for (char name = 'a'; name <= 'h'; ++name) {
      Node node;
      node.name = std::string(1, name);
      node.kind = NodeKind::tee;
      node.at = {10.0 * (name - 'a'), 0, 0};
      project_.nodes.push_back(node);
    }
  }
  Letters& join(const std::string& two, SystemKind kind, const std::string& system) {
    Route route;
    route.name = two;
    route.system = kind;
    route.system_name = system;
    route.line = "tube";
    route.from = two.substr(0, 1);
    route.to = two.substr(1, 1);
    project_.routes.push_back(route);
    return *this;
  }
  Letters& make(char name, NodeKind kind) {
    project_.nodes.at(static_cast<std::size_t>(name - 'a')).kind = kind;
    return *this;
  }
  Letters& still(const std::string& two) { return join(two, SystemKind::static_air, "static"); }

  /// "ab bc | de": the routes of each network.
  std::string networks() const {
    const PreparedProject prepared = prepare(project_);
    std::string words;
    for (const AirNetwork& network : air_networks(prepared)) {
      if (!words.empty()) words += " |";
      for (const AirLink& link : network.links) {
        EXPECT_EQ(network.nodes.at(static_cast<std::size_t>(link.from)), link.route->from);
        EXPECT_EQ(network.nodes.at(static_cast<std::size_t>(link.to)), link.route->to);
        words += (words.empty() ? "" : " ") + link.route->route->name;
      }
    }
    return words;
  }

 private:
  Project project_;
};

TEST(AirNetworks, PartWhereALineIsCappedEndsOpenOrMovesAControl) {
  for (const NodeKind kind : {NodeKind::cap, NodeKind::end, NodeKind::horn, NodeKind::pedal})
    EXPECT_EQ(Letters().make('b', kind).still("ab").still("bc").networks(), "ab | bc");
  for (const NodeKind kind : {NodeKind::union_fitting, NodeKind::bulkhead, NodeKind::valve})
    EXPECT_EQ(Letters().make('b', kind).still("ab").still("bc").networks(), "ab bc");
}

TEST(AirNetworks, RoutesThatShareANodeHangTogether) {
  EXPECT_EQ(Letters().still("ab").still("cd").still("bc").still("ef").networks(), "ab cd bc | ef");
}

TEST(AirNetworks, LoopsCountEachRouteOnce) {
  EXPECT_EQ(Letters().still("ab").still("bc").still("ca").networks(), "ab bc ca");
}

TEST(AirNetworks, SystemsOfOtherNamesStayApartThoughTheyMeet) {
  EXPECT_EQ(Letters()
                .still("ab")
                .join("bc", SystemKind::pitot, "pitot")
                .join("bd", SystemKind::static_air, "static: alternate")
                .networks(),
            "ab | bc | bd");
}

TEST(AirNetworks, VentsCablesAndWiresAreNone) {
  EXPECT_EQ(Letters()
                .join("ab", SystemKind::vent, "vent")
                .join("bc", SystemKind::cable, "cable")
                .join("cd", SystemKind::wire, "wire")
                .networks(),
            "");
}

}  // namespace
}  // namespace linewright
