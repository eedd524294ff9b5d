// Ties between far supports: AC 43.13-1B para 11-158 b [verified]. A drip loop where wires come
// down to a connector, terminal block, panel or junction box: para 11-96 x [verified].

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// A bundle from a stud at WL 20 through sharp corners to an end at FS 20, WL 10.
SmallProject bundle(const std::vector<RoutePoint>& points, std::optional<bool> connector,
                    std::optional<bool> tied = true) {
  SmallProject project;
  project.node("stud", NodeKind::end, {0, 0, 20}, true)
      .node("radio", NodeKind::end, {20, 0, 10}, true);
  project.project.nodes.back().connector = connector;
  project.route("wires", "wire-1/4", "stud", "radio", points).tied = tied;
  return project;
}

RoutePoint sharply_clamped(Vec3 at) {
  RoutePoint point = bent(at, 0);
  point.hold = HoldKind::clamp;
  return point;
}

std::vector<Judgement> wrong_with(const SmallProject& project) {
  return not_passed(project.judged_by("wiring"));
}

TEST(Wiring, ABundleWithoutTiesOverMoreThanTwelveInchesFails) {
  const SmallProject project =
      bundle({sharply_clamped({5, 0, 20}), sharply_clamped({5, 0, 5})}, false, /*tied=*/false);
  const Judgement loose = sole(wrong_with(project));
  EXPECT_EQ(loose.verdict, Verdict::fail);
  EXPECT_NEAR(*loose.value, 15.811, 1e-3);  // the root of 15² + 5²
  EXPECT_EQ(loose.limit, 12);
  EXPECT_EQ(loose.message, "the bundle's supports are up to 15.8 in apart, without ties between");
  EXPECT_EQ(loose.mend, "tie it between them, or support it at least every 12.0 in");
}

TEST(Wiring, ATiedBundlePassesAndOneThatDoesNotSayIsUnknownToTheRuleAlone) {
  EXPECT_TRUE(wrong_with(bundle({}, false, true)).empty());
  const SmallProject untold = bundle({}, false, std::nullopt);
  EXPECT_TRUE(wrong_with(untold).empty()) << "it is among what was taken";
  const Judgement unsaid = sole(untold.lacking_for("wiring"));
  EXPECT_EQ(unsaid.verdict, Verdict::unknown);
  EXPECT_EQ(unsaid.mend, "tie it, and state tied: true");
}

TEST(Wiring, SupportsTwelveInchesApartNeedNoTies) {
  // 10, 8 and 12 in.
  const SmallProject close =
      bundle({sharply_clamped({0, 0, 10}), sharply_clamped({8, 0, 10})}, false, std::nullopt);
  EXPECT_TRUE(wrong_with(close).empty());
}

TEST(Wiring, ABundleThatComesDownToAConnectorFails) {
  const Judgement wet = sole(wrong_with(bundle({}, true)));
  EXPECT_EQ(wet.verdict, Verdict::fail);
  EXPECT_EQ(wet.with, "radio");
  EXPECT_EQ(wet.location.line, SmallProject::line_of_route(0) + 2);
  EXPECT_EQ(wet.message,
            "the bundle comes down to radio without a drip loop, so that water runs into it, in "
            "attitude level flight");
  EXPECT_EQ(wet.mend, "let it hang below radio and come up to it");
}

TEST(Wiring, ABundleThatHangsBelowItsConnectorPasses) {
  const std::vector<Judgement> judged = bundle({bent({15, 0, 7}, 0)}, true).judged_by("wiring");
  EXPECT_TRUE(not_passed(judged).empty());
  ASSERT_EQ(judged.size(), 2u);
  EXPECT_EQ(judged[1].message, "the bundle hangs 3.00 in below radio before it comes to it");
}

TEST(Wiring, ALoopThatTheBuildToleranceCanTakeAwayIsNone) {
  SmallProject project = bundle({bent({15, 0, 9.95}, 0)}, true);
  EXPECT_TRUE(wrong_with(project).empty());
  project.project.build_tolerance_in = 0.06;
  EXPECT_EQ(sole(wrong_with(project)).verdict, Verdict::fail);
}

TEST(Wiring, AnEndThatDoesNotSayWhatItIsIsUnknownOnlyWhereTheBundleComesDown) {
  const SmallProject untold = bundle({}, std::nullopt);
  EXPECT_TRUE(wrong_with(untold).empty()) << "it is among what was taken";
  const Judgement unsaid = sole(untold.lacking_for("wiring"));
  EXPECT_EQ(unsaid.verdict, Verdict::unknown);
  EXPECT_EQ(unsaid.mend,
            "let it hang below radio and come up to it, or state connector: false of it");
  EXPECT_TRUE(wrong_with(bundle({}, false)).empty());
  EXPECT_TRUE(bundle({bent({15, 0, 7}, 0)}, std::nullopt).lacking_for("wiring").empty());
}

// 12 degrees nose-up the far end sinks by 20 sin 12 deg = 4.2 in against the low place, which is
// then above it.
TEST(Wiring, TheLoopHangsInEachAttitude) {
  SmallProject project = bundle({bent({0, 0, 9.9}, 0)}, true);
  project.project.attitudes = {{"level flight", 0, 0, {}}};
  EXPECT_TRUE(wrong_with(project).empty());
  project.project.attitudes.push_back({"parked", 12, 0, {}});
  EXPECT_EQ(sole(wrong_with(project)).verdict, Verdict::fail);
}

}  // namespace
}  // namespace linewright
