// What the builder has accepted stays visible, and a waiver that waives nothing is told.

#include "rules/waivers.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "lines/prepare.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// A judgement of a made-up place, as a rule would hand it over.
Judgement judgement_of(const std::string& rule, const std::string& route, Verdict verdict,
                       Vec3 at = {0, 0, 0}) {
  Judgement judgement;
  judgement.rule = rule;
  judgement.route = route;
  judgement.verdict = verdict;
  judgement.at = at;
  return judgement;
}

std::vector<Judgement> waived(const SmallProject& project, std::vector<Judgement> judgements,
                              const std::optional<std::string>& only_rule = std::nullopt) {
  apply_waivers(prepare(project.project), only_rule, judgements);
  return judgements;
}

TEST(Waivers, FailAndWarnAreWaivedWithTheReason) {
  for (const Verdict verdict : {Verdict::fail, Verdict::warn}) {
    SmallProject project;
    project.waive("chafe", "main").reason = "spiral wrap fitted";
    const Judgement judgement = sole(waived(project, {judgement_of("chafe", "main", verdict)}));
    EXPECT_EQ(judgement.verdict, Verdict::waived);
    ASSERT_TRUE(judgement.waived);
    EXPECT_EQ(judgement.waived->was, verdict);
    EXPECT_EQ(judgement.unwaived(), verdict);
    EXPECT_EQ(judgement.waived->reason, "spiral wrap fitted");
  }
}

TEST(Waivers, OtherRulesAndRoutesAreLeftAlone) {
  SmallProject project;
  project.waive("chafe", "main");
  const auto judgements = waived(project, {judgement_of("chafe", "main", Verdict::fail),
                                           judgement_of("clearance", "main", Verdict::fail),
                                           judgement_of("chafe", "other", Verdict::fail)});
  EXPECT_EQ(verdicts(judgements), (std::vector{Verdict::waived, Verdict::fail, Verdict::fail}));
  EXPECT_FALSE(judgements[1].waived);
}

TEST(Waivers, EitherSideOfAPairMayBeNamed) {
  SmallProject project;
  project.waive("separation", "tail-wires");
  Judgement pair = judgement_of("separation", "main", Verdict::fail);
  pair.with = "tail-wires";
  pair.with_is_route = true;
  EXPECT_EQ(sole(waived(project, {pair})).verdict, Verdict::waived);
}

TEST(Waivers, PartWithTheRoutesNameIsNotTheRoute) {
  SmallProject project;
  project.waive("clearance", "rudder");
  Judgement part = judgement_of("clearance", "main", Verdict::fail);
  part.with = "rudder";
  EXPECT_EQ(verdicts(waived(project, {part})), (std::vector{Verdict::fail, Verdict::warn}));
}

TEST(Waivers, PassIsLeftAPass) {
  SmallProject project;
  project.waive("chafe", "main");
  const auto judgements = waived(project, {judgement_of("chafe", "main", Verdict::pass),
                                           judgement_of("chafe", "main", Verdict::warn)});
  EXPECT_EQ(verdicts(judgements), (std::vector{Verdict::pass, Verdict::waived}));
}

TEST(Waivers, NearAndWithinBoundWhatIsWaived) {
  SmallProject project;
  Waiver& waiver = project.waive("chafe", "main");
  waiver.near = Vec3{205, -8, 15};
  waiver.within_in = 5;
  // 3-4-5: exactly at the distance is within it.
  const auto judgements =
      waived(project, {judgement_of("chafe", "main", Verdict::fail, {208, -4, 15}),
                       judgement_of("chafe", "main", Verdict::fail, {208, -4, 15.5}),
                       judgement_of("chafe", "main", Verdict::fail, {205, -8, 15})});
  EXPECT_EQ(verdicts(judgements), (std::vector{Verdict::waived, Verdict::fail, Verdict::waived}));
}

TEST(Waivers, WhatHasNoPlaceIsNotNear) {
  SmallProject project;
  Waiver& waiver = project.waive("chafe", "main");
  waiver.near = Vec3{0, 0, 0};
  waiver.within_in = 1000;
  Judgement judgement = judgement_of("chafe", "main", Verdict::fail);
  judgement.at.reset();
  EXPECT_EQ(waived(project, {judgement}).at(0).verdict, Verdict::fail);
}

TEST(Waivers, UnknownIsNeverWaived) {
  SmallProject project;
  project.waive("chafe", "main");
  const auto judgements = waived(project, {judgement_of("chafe", "main", Verdict::unknown)});
  ASSERT_EQ(judgements.size(), 2u);
  EXPECT_EQ(judgements[0].verdict, Verdict::unknown);
  EXPECT_EQ(judgements[1].rule, "waivers");
  EXPECT_EQ(judgements[1].verdict, Verdict::warn);
  EXPECT_EQ(judgements[1].message,
            "the waiver of chafe meets only an unknown, which cannot be waived");
  EXPECT_EQ(judgements[1].mend, "state what is missing, so that it can be judged");
}

TEST(Waivers, WaiverThatMatchesNothingIsTold) {
  SmallProject project;
  Waiver& waiver = project.waive("chafe", "main");
  waiver.near = Vec3{1, 2, 3};
  waiver.within_in = 2;
  const Judgement judgement = sole(waived(project, {}));
  EXPECT_EQ(judgement.rule, "waivers");
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.route, "main");
  EXPECT_EQ(judgement.at, (Vec3{1, 2, 3}));
  EXPECT_EQ(judgement.location, (SourceLocation{"waivers.yaml", 10, 5}));
  EXPECT_EQ(judgement.message, "the waiver of chafe matches no failure or warning");
  EXPECT_EQ(judgement.mend, "remove it, or correct its route, near or within");
}

TEST(Waivers, WaiverOfAPassIsTold) {
  SmallProject project;
  project.waive("chafe", "main");
  const auto judgements = waived(project, {judgement_of("chafe", "main", Verdict::pass)});
  ASSERT_EQ(judgements.size(), 2u);
  EXPECT_TRUE(contains(judgements[1].message, "matches no failure or warning"));
}

TEST(Waivers, UnknownRuleIsTold) {
  SmallProject project;
  project.waive("chaff", "main");
  const Judgement judgement = sole(waived(project, {}));
  EXPECT_EQ(judgement.message, "no rule is called 'chaff', so the waiver waives nothing");
  EXPECT_EQ(judgement.mend, "name a rule from: linewright rules");
}

TEST(Waivers, SecondWaiverOfTheSamePlaceIsNotCalledUnused) {
  SmallProject project;
  project.waive("chafe", "main").reason = "first";
  project.waive("chafe", "main").reason = "second";
  const Judgement judgement = sole(waived(project, {judgement_of("chafe", "main", Verdict::fail)}));
  ASSERT_TRUE(judgement.waived);
  EXPECT_EQ(judgement.waived->reason, "first");
  EXPECT_EQ(judgement.waived->was, Verdict::fail);
}

TEST(Waivers, WithOneRuleAskedForOtherWaiversAreNotLookedAt) {
  SmallProject project;
  project.waive("chafe", "main");
  project.waive("slack", "main");
  const Judgement judgement = sole(waived(project, {}, "chafe"));
  EXPECT_TRUE(contains(judgement.message, "the waiver of chafe"));
}

// From the project to the report: a bend too tight by the builder's own decision.
TEST(Waivers, TightBendIsWaivedInACheckOfTheProject) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {10, 10, 0});
  project.route("main", "tube-nylon-1/4", "port", "altimeter", {bent({10, 0, 0}, 0.9)});
  EXPECT_EQ(sole(project.judged("bend-radius")).verdict, Verdict::fail);
  Waiver& waiver = project.waive("bend-radius", "main");
  waiver.near = Vec3{10, 0, 0};
  waiver.within_in = 0.5;
  EXPECT_EQ(sole(project.judged("bend-radius")).verdict, Verdict::waived);
  // The arc passes its corner at 0.9 (√2 - 1) = 0.373 in.
  project.project.waivers[0].within_in = 0.37;
  EXPECT_EQ(verdicts(project.judged("bend-radius")), (std::vector{Verdict::fail, Verdict::warn}));
}

}  // namespace
}  // namespace linewright
