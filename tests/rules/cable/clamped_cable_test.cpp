// Clamps about control cables (14 CFR 23.685(a) [verified]: no jamming, chafing or interference).

#include "lines/free_run.hpp"
#include "lines/motion/line_motion.hpp"
#include "lines/prepare.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// A clamp half way along, and a travel of so much both ways.
SmallProject clamped_cable(std::optional<double> travel_in) {
  SmallProject project = cable_project({clamped({50, 0, 10})});
  set_tension(project, 40, 200);
  if (travel_in) set_travel(project, *travel_in, *travel_in);
  return project;
}

SmallProject with_sleeve(SmallProject project, double from_in, double to_in) {
  the_route(project).sleeves.push_back({from_in, to_in, 0.17, 0.25, {"routes.yaml", 108, 16}});
  return project;
}

Judgement judged(const SmallProject& project) {
  return sole(project.judged_by("support-mount"));
}

std::size_t spans(const SmallProject& project) {
  return prepare(project.project).routes[0].spans.size();
}

TEST(ClampedCable, BareAndMovingFailsAndIsNotHeld) {
  const SmallProject project = clamped_cable(2);
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(*judgement.value, 4);
  EXPECT_TRUE(contains(judgement.message, "seizes the cable or saws it")) << judgement.message;
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  expect_complete(judgement);
  EXPECT_EQ(spans(project), 1u);
}

TEST(ClampedCable, WithoutAStatedTravelIsUnknownAndNotHeld) {
  const SmallProject project = clamped_cable(std::nullopt);
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "travel of rudder-left")) << judgement.message;
  expect_complete(judgement);
  EXPECT_EQ(spans(project), 1u);
}

TEST(ClampedCable, ThatDoesNotMoveIsHeld) {
  EXPECT_EQ(judged(clamped_cable(0)).verdict, Verdict::pass);
  EXPECT_EQ(spans(clamped_cable(0)), 2u);
}

TEST(ClampedCable, InASleeveIsHeldByIt) {
  const SmallProject project = with_sleeve(clamped_cable(2), 45, 55);
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
  EXPECT_EQ(spans(project), 2u);
  EXPECT_EQ(judged(with_sleeve(clamped_cable(2), 51, 60)).verdict, Verdict::fail) << "beside it";
}

TEST(ClampedCable, HangsAsFarAsWithoutTheClamp) {
  const auto sag = [](const SmallProject& project) {
    const PreparedProject prepared = prepare(project.project);
    return motion_of(prepared).reaches[0][0].stretch.envelope.sag_in;
  };
  SmallProject bare = clamped_cable(2);
  the_route(bare).points.clear();
  EXPECT_DOUBLE_EQ(sag(clamped_cable(2)), sag(bare));
  EXPECT_LT(sag(clamped_cable(0)), sag(bare) / 3);
}

TEST(ClampedWire, IsNotSpokenOf) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {30, 0, 0});
  project.route("bundle", "wire-1/4", "a", "b", {clamped({15, 0, 0})});
  EXPECT_TRUE(project.judged_by("support-mount").empty());
}

// A band is half an inch wide at the least [common practice, no source]: all of it must be on the
// sleeve.
TEST(ClampedCable, OnASleeveThatIsNotUnderAllOfTheClampIsBareToIt) {
  EXPECT_EQ(spans(with_sleeve(clamped_cable(2), 49.75, 50.25)), 2u);
  for (const auto& [from, to] : {std::pair{49.99, 50.01}, {50.0, 60.0}, {40.0, 50.246}}) {
    const SmallProject project = with_sleeve(clamped_cable(2), from, to);
    EXPECT_EQ(judged(project).verdict, Verdict::fail) << from;
    EXPECT_EQ(spans(project), 1u) << from;
  }
}

}  // namespace
}  // namespace linewright
