// The free length between two things that hold the line, over tees and unions that hang on it.

#include "lines/free_run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "lines/prepare.hpp"

namespace linewright {
namespace {

/// Nodes and straight routes between them, all of one line.
class Network {
 public:
  Network() {
    Line line;
    line.name = "tube";
    line.outside_diameter_in = 0.25;
    project_.catalogue.lines = {line};
  }

  Network& held(const std::string& name, Vec3 at) { return node(name, at, true); }
  Network& hanging(const std::string& name, Vec3 at) { return node(name, at, false); }

  /// A route with clamps at these places.
  Network& route(const std::string& from, const std::string& to,
                 const std::vector<Vec3>& clamps = {}) {
    Route route;
    route.name = from + " to " + to;
    route.line = "tube";
    route.from = from;
    route.to = to;
    for (const Vec3& at : clamps) {
      RoutePoint point;
      point.at = at;
      point.hold = HoldKind::clamp;
      route.points.push_back(point);
    }
    project_.routes.push_back(route);
    return *this;
  }

  std::vector<FreeRun> runs() const { return free_runs(prepare(project_)); }

  std::vector<double> lengths() const {
    std::vector<double> all;
    for (const FreeRun& run : runs()) all.push_back(run.length_in);
    std::sort(all.begin(), all.end());
    return all;
  }

 private:
  Network& node(const std::string& name, Vec3 at, bool fixed) {
    Node node;
    node.name = name;
    node.kind = NodeKind::tee;
    node.at = at;
    node.fixed = fixed;
    project_.nodes.push_back(node);
    return *this;
  }

  Project project_;
};

using Lengths = std::vector<double>;

TEST(FreeRun, LineBetweenTwoHeldNodesIsOneRun) {
  const std::vector<FreeRun> runs =
      Network().held("a", {0, 0, 0}).held("b", {30, 40, 0}).route("a", "b").runs();
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_DOUBLE_EQ(runs[0].length_in, 50);
  EXPECT_TRUE(runs[0].first.held());
  EXPECT_TRUE(runs[0].last.held());
  EXPECT_FALSE(runs[0].carries_fitting());
  EXPECT_FALSE(runs[0].cut_short);
  ASSERT_EQ(runs[0].legs.size(), 1u);
  EXPECT_EQ(runs[0].legs[0].route, 0);
  EXPECT_DOUBLE_EQ(runs[0].legs[0].from_in, 0);
  EXPECT_DOUBLE_EQ(runs[0].legs[0].to_in, 50);
}

TEST(FreeRun, ClampsPartALine) {
  const std::vector<FreeRun> runs = Network()
                                        .held("a", {0, 0, 0})
                                        .held("b", {20, 0, 0})
                                        .route("a", "b", {{5, 0, 0}, {12, 0, 0}})
                                        .runs();
  ASSERT_EQ(runs.size(), 3u);
  EXPECT_DOUBLE_EQ(runs[0].length_in, 5);
  EXPECT_DOUBLE_EQ(runs[1].length_in, 7);
  EXPECT_DOUBLE_EQ(runs[2].length_in, 8);
  EXPECT_EQ(runs[1].first.support, 1);
  EXPECT_EQ(runs[1].last.support, 2);
  EXPECT_DOUBLE_EQ(runs[1].legs[0].low_in(), 5);
  EXPECT_DOUBLE_EQ(runs[1].legs[0].high_in(), 12);
}

TEST(FreeRun, TailEndsFree) {
  const std::vector<FreeRun> runs =
      Network().held("a", {0, 0, 0}).hanging("b", {20, 0, 0}).route("a", "b", {{13, 0, 0}}).runs();
  ASSERT_EQ(runs.size(), 2u);
  EXPECT_DOUBLE_EQ(runs[0].length_in, 13);
  EXPECT_TRUE(runs[0].last.held());
  EXPECT_DOUBLE_EQ(runs[1].length_in, 7);
  EXPECT_TRUE(runs[1].first.held());
  EXPECT_FALSE(runs[1].last.held());
}

TEST(FreeRun, TailAtTheStartIsFollowedAgainstTheRoute) {
  const std::vector<FreeRun> runs =
      Network().hanging("a", {0, 0, 0}).held("b", {20, 0, 0}).route("a", "b", {{6, 0, 0}}).runs();
  ASSERT_EQ(runs.size(), 2u);
  const auto tail =
      std::find_if(runs.begin(), runs.end(), [](const FreeRun& run) { return !run.last.held(); });
  ASSERT_NE(tail, runs.end());
  EXPECT_DOUBLE_EQ(tail->length_in, 6);
  EXPECT_DOUBLE_EQ(tail->legs[0].from_in, 6);
  EXPECT_DOUBLE_EQ(tail->legs[0].to_in, 0);
}

TEST(FreeRun, ClampAloneHoldsTwoTails) {
  EXPECT_EQ(Network()
                .hanging("a", {0, 0, 0})
                .hanging("b", {20, 0, 0})
                .route("a", "b", {{6, 0, 0}})
                .lengths(),
            (Lengths{6, 14}));
}

TEST(FreeRun, GoesOnThroughAUnionThatHangsAndIsMetOnce) {
  const std::vector<FreeRun> runs = Network()
                                        .held("a", {0, 0, 0})
                                        .hanging("union", {8, 0, 0})
                                        .held("b", {8, 5, 0})
                                        .route("a", "union")
                                        .route("b", "union")
                                        .runs();
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_DOUBLE_EQ(runs[0].length_in, 13);
  EXPECT_TRUE(runs[0].carries_fitting());
  ASSERT_EQ(runs[0].legs.size(), 2u);
  EXPECT_DOUBLE_EQ(runs[0].legs[0].to_in, 8);
  // The second route is followed against its own direction.
  EXPECT_EQ(runs[0].legs[1].route, 1);
  EXPECT_DOUBLE_EQ(runs[0].legs[1].from_in, 5);
  EXPECT_DOUBLE_EQ(runs[0].legs[1].to_in, 0);
  EXPECT_EQ(runs[0].first.route, 0);
  EXPECT_EQ(runs[0].last.route, 1);
}

TEST(FreeRun, FixedFittingEndsTheRuns) {
  EXPECT_EQ(Network()
                .held("a", {0, 0, 0})
                .held("tee", {8, 0, 0})
                .held("b", {8, 5, 0})
                .route("a", "tee")
                .route("tee", "b")
                .lengths(),
            (Lengths{5, 8}));
}

TEST(FreeRun, GoesOnOnlyToTheNextSupport) {
  EXPECT_EQ(Network()
                .held("a", {0, 0, 0})
                .hanging("union", {8, 0, 0})
                .held("b", {28, 0, 0})
                .route("a", "union", {{5, 0, 0}})
                .route("union", "b", {{12, 0, 0}})
                .lengths(),
            (Lengths{5, 3 + 4, 16}));
}

TEST(FreeRun, ThreeLinesAtAHangingTeeAreThreeRuns) {
  EXPECT_EQ(Network()
                .hanging("tee", {0, 0, 0})
                .held("a", {1, 0, 0})
                .held("b", {0, 10, 0})
                .held("c", {0, 0, 100})
                .route("a", "tee")
                .route("tee", "b")
                .route("c", "tee")
                .lengths(),
            (Lengths{11, 101, 110}));
}

TEST(FreeRun, BranchThatEndsFreeIsATailOfEachOther) {
  const std::vector<FreeRun> runs = Network()
                                        .hanging("tee", {0, 0, 0})
                                        .held("a", {1, 0, 0})
                                        .held("b", {0, 10, 0})
                                        .hanging("cap", {0, 0, 100})
                                        .route("a", "tee")
                                        .route("tee", "b")
                                        .route("tee", "cap")
                                        .runs();
  Lengths held;
  Lengths free;
  for (const FreeRun& run : runs) (run.last.held() ? held : free).push_back(run.length_in);
  std::sort(free.begin(), free.end());
  EXPECT_EQ(held, (Lengths{11}));
  EXPECT_EQ(free, (Lengths{101, 110}));
}

TEST(FreeRun, GoesOnOverSeveralFittings) {
  const std::vector<FreeRun> runs = Network()
                                        .held("a", {0, 0, 0})
                                        .hanging("first", {3, 0, 0})
                                        .hanging("second", {3, 4, 0})
                                        .held("b", {3, 4, 12})
                                        .route("a", "first")
                                        .route("first", "second")
                                        .route("second", "b")
                                        .runs();
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_DOUBLE_EQ(runs[0].length_in, 3 + 4 + 12);
  EXPECT_EQ(runs[0].legs.size(), 3u);
}

TEST(FreeRun, LineThatNothingHoldsIsOneRunFreeAtBothEnds) {
  const std::vector<FreeRun> runs =
      Network().hanging("a", {0, 0, 0}).hanging("b", {5, 0, 0}).route("a", "b").runs();
  ASSERT_EQ(runs.size(), 1u);
  EXPECT_FALSE(runs[0].first.held());
  EXPECT_FALSE(runs[0].last.held());
  EXPECT_DOUBLE_EQ(runs[0].length_in, 5);
}

// Two lines between the same two hanging fittings are a loop: each way round is a run.
TEST(FreeRun, BothWaysRoundALoopAreFollowed) {
  const Lengths lengths = Network()
                              .held("a", {0, 0, 0})
                              .hanging("near", {1, 0, 0})
                              .hanging("far", {4, 4, 0})
                              .hanging("over", {4, 0, 0})
                              .held("b", {4, 14, 0})
                              .route("a", "near")
                              .route("near", "far")
                              .route("near", "over")
                              .route("over", "far")
                              .route("far", "b")
                              .lengths();
  EXPECT_NE(std::find(lengths.begin(), lengths.end(), 1 + 5 + 10), lengths.end());
  EXPECT_NE(std::find(lengths.begin(), lengths.end(), 1 + 3 + 4 + 10), lengths.end());
}

TEST(FreeRun, EverySpanOfEveryRouteIsInARun) {
  const std::vector<FreeRun> runs = Network()
                                        .held("a", {0, 0, 0})
                                        .hanging("tee", {10, 0, 0})
                                        .hanging("cap", {10, 5, 0})
                                        .held("b", {30, 0, 0})
                                        .hanging("lost-1", {0, 0, 50})
                                        .hanging("lost-2", {9, 0, 50})
                                        .route("a", "tee", {{4, 0, 0}})
                                        .route("tee", "cap")
                                        .route("tee", "b", {{15, 0, 0}})
                                        .route("lost-1", "lost-2")
                                        .runs();
  std::vector<double> covered(4, 0);
  std::vector<std::pair<int, double>> seen;
  for (const FreeRun& run : runs)
    for (const RunLeg& leg : run.legs) {
      const std::pair<int, double> place{leg.route, leg.low_in()};
      if (std::find(seen.begin(), seen.end(), place) != seen.end()) continue;
      seen.push_back(place);
      covered[static_cast<std::size_t>(leg.route)] += leg.length_in();
    }
  EXPECT_EQ(covered, (Lengths{10, 5, 20, 9}));
}

TEST(FreeRun, LengthIsTheSumOfTheLegs) {
  const std::vector<FreeRun> runs = Network()
                                        .held("a", {0, 0, 0})
                                        .hanging("tee", {10, 0, 0})
                                        .held("b", {30, 0, 0})
                                        .hanging("cap", {10, 5, 0})
                                        .route("a", "tee", {{4, 0, 0}})
                                        .route("tee", "b", {{15, 0, 0}})
                                        .route("cap", "tee")
                                        .runs();
  // Up to the clamps at 4 and 15 in; between them, and from each to the cap.
  EXPECT_EQ(runs.size(), 5u);
  for (const FreeRun& run : runs) {
    double sum = 0;
    for (const RunLeg& leg : run.legs) sum += leg.length_in();
    EXPECT_DOUBLE_EQ(run.length_in, sum);
  }
}

// The runs through a mesh grow beyond all bounds: they are cut short, and say so.
TEST(FreeRun, MeshOfHangingFittingsIsCutShort) {
  Network network;
  network.held("port", {-1, 0, 0});
  const int fittings = 12;
  const auto name = [](int i) { return "tee-" + std::to_string(i); };
  for (int i = 0; i < fittings; ++i) network.hanging(name(i), {1.0 * i, 1.0 * (i % 2), 0});
  network.route("port", name(0));
  for (int i = 0; i < fittings; ++i)
    for (int j = i + 1; j < fittings; ++j) network.route(name(i), name(j));
  const std::vector<FreeRun> runs = network.runs();
  EXPECT_LT(runs.size(), 1000u);
  EXPECT_TRUE(
      std::any_of(runs.begin(), runs.end(), [](const FreeRun& run) { return run.cut_short; }));
}

}  // namespace
}  // namespace linewright
