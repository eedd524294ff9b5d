#include <gtest/gtest.h>

#include <string>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A box from FS 100 to 140, BL -12 to 12, WL 0 to 24. Its lid goes on last; a hatch in it at
/// FS 108. A frame across it at FS 120 has the holes given.
struct Box {
  std::string holes = {};
  std::string openings =
      "{name: hatch, centre: [108, 0, 24], normal: [0, 0, 1], size: [8, 8], reach: 34}";
  std::string other_closures = {};
  std::string union_at = "126, 0, 12";
  std::string waivers = {};

  ProjectSections sections() const {
    ProjectSections sections;
    sections.structure =
        "  frames:\n"
        "    - {name: web, station: 120, thickness: 0.032, outline: [[-12, 0], [12, 0], [12, 24], "
        "[-12, 24]], holes: [" +
        holes +
        "]}\n"
        "  panels:\n"
        "    - {name: front, corners: [[100, -12, 0], [100, 12, 0], [100, 12, 24], [100, -12, "
        "24]]}\n"
        "    - {name: back, corners: [[140, -12, 0], [140, 12, 0], [140, 12, 24], [140, -12, "
        "24]]}\n"
        "    - {name: left, corners: [[100, -12, 0], [140, -12, 0], [140, -12, 24], [100, -12, "
        "24]]}\n"
        "    - {name: right, corners: [[100, 12, 0], [140, 12, 0], [140, 12, 24], [100, 12, "
        "24]]}\n"
        "    - {name: floor, corners: [[100, -12, 0], [140, -12, 0], [140, 12, 0], [100, 12, "
        "0]]}\n"
        "    - {name: lid, corners: [[100, -12, 24], [140, -12, 24], [140, 12, 24], [100, 12, "
        "24]]}\n";
    sections.nodes =
        "  - {name: port, kind: static-port, at: [60, 0, 12]}\n"
        "  - {name: joint, kind: union, at: [" +
        union_at +
        "]}\n"
        "  - {name: altimeter, kind: instrument, at: [180, 0, 12]}\n";
    sections.routes =
        "  - {name: first, system: static, line: tube-nylon-1/4, from: port, to: joint}\n"
        "  - {name: second, system: static, line: tube-nylon-1/4, from: joint, to: altimeter}\n";
    sections.rest = "closures:\n  - {name: lid-on, covers: [lid], openings: [" + openings + "]}\n" +
                    other_closures + waivers;
    return sections;
  }

  Judgement joint() const { return only(with(judged(sections(), "access"), "joint")); }
};

// An opening measured at the wrong place would let hands in where there is none.
TEST(Access, IsUnknownForAnOpeningInMidAir) {
  const auto unknown_at = [](const std::string& centre) {
    Box box;
    box.openings =
        "{name: hatch, centre: [" + centre + "], normal: [0, 0, 1], size: [8, 8], reach: 34}";
    std::vector<Judgement> all = judged(box.sections(), "access");
    std::erase_if(all, [](const Judgement& each) { return each.verdict != Verdict::unknown; });
    return all;
  };
  EXPECT_TRUE(unknown_at("108, 0, 24").empty());
  EXPECT_TRUE(unknown_at("108, 0, 24.9").empty());
  for (const char* centre : {"108, 0, 25.1", "108, 0, 14", "108, 0, 42"}) {
    const Judgement judgement = only(unknown_at(centre));
    EXPECT_EQ(judgement.message,
              "opening hatch is cut into nothing: no structure lies within 1.00 in of it");
    EXPECT_EQ(judgement.mend, "set right where it is, or describe what it is cut into");
  }
}

// From the hatch's middle to that of the hole 12 in aft, 12 in down: 17 in; from there 6 in more to
// the joint. Steps along and across cells make it up to an eighth longer.
constexpr double straight_way_in = 17 + 6;

TEST(Access, AnArmGoesRoundABulkheadThroughItsHole) {
  const Judgement joint = Box{"{name: h, centre: [0, 12], diameter: 8, edge: rolled}"}.joint();
  EXPECT_EQ(joint.verdict, Verdict::pass) << joint.message;
  EXPECT_NE(joint.message.find("by hatch"), std::string::npos) << joint.message;
}

TEST(Access, AnArmGoesThroughNoWeb) {
  const Judgement joint = Box{""}.joint();
  EXPECT_EQ(joint.verdict, Verdict::warn);
  EXPECT_EQ(joint.value, 0);
  EXPECT_FALSE(joint.mend.empty());
}

// An arm is 3 1/2 in across [common practice, no source].
TEST(Access, AnArmIsTooThickForANarrowHole) {
  EXPECT_EQ((Box{"{name: h, centre: [0, 12], diameter: 3.45, edge: rolled}"}.joint().verdict),
            Verdict::warn);
  EXPECT_EQ((Box{"{name: h, centre: [0.3, 12.4], diameter: 3.55, edge: rolled}"}.joint().verdict),
            Verdict::pass);
}

TEST(Access, AnArmIsNoLongerThanItsReach) {
  Box box{"{name: h, centre: [0, 12], diameter: 8, edge: rolled}"};
  const auto hatch = [](double reach_in) {
    return "{name: hatch, centre: [108, 0, 24], normal: [0, 0, 1], size: [8, 8], reach: " +
           std::to_string(reach_in) + "}";
  };
  // To the hatch's nearest edge 4 in less, and a cell less at each end.
  box.openings = hatch(straight_way_in - 4 - 2);
  EXPECT_EQ(box.joint().verdict, Verdict::warn);
  box.openings = hatch(straight_way_in * 1.125 + 2);
  EXPECT_EQ(box.joint().verdict, Verdict::pass);
}

TEST(Access, AnOpeningTooSmallForAnArmLetsNoneIn) {
  Box box;
  box.union_at = "108, 0, 12";
  EXPECT_EQ(box.joint().verdict, Verdict::pass);
  box.openings = "{name: hatch, centre: [108, 0, 24], diameter: 3.45, reach: 26}";
  EXPECT_EQ(box.joint().verdict, Verdict::warn);
  box.openings = "{name: hatch, centre: [108.4, 0.4, 24], diameter: 3.55, reach: 26}";
  EXPECT_EQ(box.joint().verdict, Verdict::pass);
}

TEST(Access, APersonWhoCrawlsInReachesFromInside) {
  Box box{"{name: h, centre: [0, 12], diameter: 20, edge: rolled}"};
  box.union_at = "137, 0, 12";
  const auto hatch = [](const std::string& more) {
    return "{name: hatch, centre: [110, 0, 24], normal: [0, 0, 1], size: [18, 18], reach: 22" +
           more + "}";
  };
  box.openings = hatch("");
  EXPECT_EQ(box.joint().verdict, Verdict::warn);
  box.openings = hatch(", crawl: true");
  EXPECT_EQ(box.joint().verdict, Verdict::pass);
}

// A person gets through 12 in [common practice, no source].
TEST(Access, NoPersonCrawlsThroughLessThanAFoot) {
  Box box{"{name: h, centre: [0, 12], diameter: 20, edge: rolled}"};
  box.union_at = "137, 0, 12";
  const auto hatch = [](const std::string& size_in) {
    return "{name: hatch, centre: [110, 0, 24], normal: [0, 0, 1], size: [" + size_in + ", " +
           size_in + "], reach: 22, crawl: true}";
  };
  box.openings = hatch("11.9");
  EXPECT_EQ(box.joint().verdict, Verdict::warn);
  box.openings = hatch("12.1");
  EXPECT_EQ(box.joint().verdict, Verdict::pass);
}

TEST(Access, AnotherClosureClosesAnOpening) {
  Box box;
  box.union_at = "108, 0, 12";
  ProjectSections sections = box.sections();
  sections.structure +=
      "    - {name: cover, corners: [[100, -12, 24.1], [140, -12, 24.1], [140, 12, 24.1], [100, "
      "12, "
      "24.1]]}\n";
  sections.structure +=
      "    - {name: carpet, corners: [[101, -11, 22], [139, -11, 22], [139, 11, 22], [101, 11, "
      "22]]}\n";
  sections.rest += "  - {name: carpet-down, covers: [carpet, cover]}\n";
  EXPECT_EQ(only(with(judged(sections, "access"), "joint")).verdict, Verdict::warn);
}

TEST(Access, APartOfACableMustBeSeenOrTouched) {
  Box box;
  ProjectSections sections = box.sections();
  sections.nodes += held_node("forward", "60, 4, 12") + held_node("aft", "180, 4, 12");
  sections.routes +=
      "  - name: cable\n    system: cable\n    line: cable-7x19-1/8-steel\n    from: forward\n"
      "    to: aft\n    points: [{at: [132, 4, 12], hold: fairlead, bore: 0.19}]\n";
  const Judgement hidden = only(with(judged(sections, "access"), "fairlead"));
  EXPECT_EQ(hidden.verdict, Verdict::fail);
  // 14 CFR 23.689(a)(3): means for visual inspection at each fairlead, pulley, terminal,
  // turnbuckle.
  EXPECT_NE(hidden.source.find("14 CFR 23.689(a)(3)"), std::string::npos);
  sections.rest +=
      "waivers:\n  - {rule: access, route: cable, reason: \"the lid comes off each year\"}\n";
  EXPECT_EQ(only(with(judged(sections, "access"), "fairlead")).verdict, Verdict::waived);
}

TEST(Access, ALineOfSightThroughAnOpeningIsEnoughForACable) {
  Box box;
  // Too narrow for an arm, straight above the fairlead: 12 in.
  box.openings = "{name: window, centre: [132, 4, 24], diameter: 2, reach: 14}";
  ProjectSections sections = box.sections();
  sections.nodes += held_node("forward", "60, 4, 12") + held_node("aft", "180, 4, 12");
  sections.routes +=
      "  - name: cable\n    system: cable\n    line: cable-7x19-1/8-steel\n    from: forward\n"
      "    to: aft\n    points: [{at: [132, 4, 12], hold: fairlead, bore: 0.19}]\n";
  const Judgement seen = only(with(judged(sections, "access"), "fairlead"));
  EXPECT_EQ(seen.verdict, Verdict::pass);
  EXPECT_NE(seen.message.find("seen"), std::string::npos) << seen.message;
}

TEST(Access, WhatStandsOutsideIsReachedFromThere) {
  const auto judgements = judged(Box{}.sections(), "access");
  EXPECT_EQ(only(with(judgements, "port")).verdict, Verdict::pass);
  EXPECT_EQ(only(with(judgements, "altimeter")).verdict, Verdict::pass);
}

TEST(Access, IsUnknownForAClosureThatCoversNothing) {
  Box box;
  box.other_closures = "  - {name: belly, reach: 20}\n";
  const auto judgements = judged(box.sections(), "access");
  const Judgement belly = only(with(judgements, "belly"));
  EXPECT_EQ(belly.verdict, Verdict::unknown);
  EXPECT_EQ(belly.message, "closure belly does not say what goes on with it");
  EXPECT_EQ(belly.location.line, line_number(box.sections().text(), "{name: belly"));
}

TEST(Access, FailsWhereClosuresWaitForEachOther) {
  Box box;
  box.other_closures =
      "  - {name: belly, covers: [floor], after: [bolt]}\ntasks:\n"
      "  - {name: bolt, at: [130, 0, 12], after: [belly]}\n";
  const Judgement ring = only(with(judged(box.sections(), "access"), "belly"));
  EXPECT_EQ(ring.verdict, Verdict::fail);
  EXPECT_EQ(ring.message,
            "closures and tasks wait for each other: belly, then bolt, then belly again");
}

TEST(Access, SaysNothingWhereNoClosureIsStated) {
  ProjectSections sections = Box{}.sections();
  sections.rest = "";
  EXPECT_TRUE(judged(sections, "access").empty());
}

}  // namespace
}  // namespace linewright
