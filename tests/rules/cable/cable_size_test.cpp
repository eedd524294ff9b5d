// Primary control cables against the 1/8 in of 14 CFR 23.689(a)(1) [verified].

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

Judgement judged(const SmallProject& project) {
  return sole(project.judged_by("cable-size"));
}

TEST(CableSize, SmallPrimaryCableFailsAndMayBeWaived) {
  const Judgement judgement = judged(cable_project({}, {100, 0, 10}, "cable-7x7-3/32-steel"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*judgement.value, 0.09375);
  EXPECT_DOUBLE_EQ(*judgement.limit, 0.125);
  EXPECT_TRUE(contains(judgement.message, "waive this with the reason"));
  EXPECT_TRUE(contains(judgement.source, "23.689(a)(1)"));
  EXPECT_TRUE(contains(judgement.mend, "cable-7x19-1/8-steel"));
  EXPECT_EQ(judgement.location.line, 104) << "where the line is named";
  expect_complete(judgement);
}

TEST(CableSize, MendStaysWithTheCablesMetal) {
  const Judgement judgement = judged(cable_project({}, {100, 0, 10}, "cable-7x19-3/32-stainless"));
  EXPECT_TRUE(contains(judgement.mend, "cable-7x19-1/8-stainless"));
}

TEST(CableSize, EighthExactlyPassesAndJustUnderFails) {
  SmallProject project = cable_project();
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
  the_line(project).outside_diameter_in = 0.1249;
  EXPECT_EQ(judged(project).verdict, Verdict::fail);
}

// 14 CFR 23.689(f) [verified]: tab cables may be smaller.
TEST(CableSize, SecondaryAndTrimCablesMayBeSmaller) {
  SmallProject secondary = cable_project({}, {100, 0, 10}, "cable-7x7-1/16-steel");
  the_route(secondary).primary = false;
  the_route(secondary).control = "tab";
  EXPECT_EQ(judged(secondary).verdict, Verdict::pass);
  EXPECT_FALSE(judged(secondary).limit.has_value());
  SmallProject trim = cable_project({}, {100, 0, 10}, "cable-7x7-1/16-steel");
  the_route(trim).control = "trim";
  EXPECT_EQ(judged(trim).verdict, Verdict::pass);
}

// Whatever a file says of it, the aeroplane hangs on these [common practice, no source].
TEST(CableSize, ThinCableOfAPrimaryControlSaidToBeNoneIsWarned) {
  for (const std::string control : {"rudder", "Elevator", "aileron"}) {
    SmallProject project = cable_project({}, {100, 0, 10}, "cable-7x7-1/16-steel");
    the_route(project).control = control;
    the_route(project).primary = false;
    EXPECT_EQ(judged(project).verdict, Verdict::warn);
    EXPECT_TRUE(contains(judged(project).message, control));
    expect_complete(judged(project));
    the_line(project).outside_diameter_in = 0.125;
    EXPECT_EQ(judged(project).verdict, Verdict::pass);
  }
}

TEST(CableSize, UnnamedControlCountsAsPrimary) {
  SmallProject project = cable_project({}, {100, 0, 10}, "cable-7x7-1/16-steel");
  the_route(project).control.clear();
  EXPECT_EQ(judged(project).verdict, Verdict::fail);
}

TEST(CableSize, TubesAndWiresAreNotJudged) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {10, 0, 0});
  project.route("tube", "tube-nylon-1/4", "a", "b");
  EXPECT_TRUE(project.judged_by("cable-size").empty());
}

TEST(CableSize, SaysTheSameOfAReversedRun) {
  expect_same_reversed(
      cable_project({held({30, 0, 11}, HoldKind::fairlead)}, {100, 0, 10}, "cable-7x7-3/32-steel"),
      "cable-size");
}

}  // namespace
}  // namespace linewright
