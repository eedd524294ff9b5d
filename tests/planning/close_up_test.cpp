#include "planning/close_up.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "planning/cutlist.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A box from FS 100 to 140, BL -12 to 12, WL 0 to 24, with a lid. Static lines meet in the middle
/// of it at a union; two more of the system's nodes are outside.
ProjectSections box(const std::string& rest) {
  ProjectSections sections;
  sections.structure =
      "  frames:\n"
      "    - {name: web, station: 130, thickness: 0.032, outline: [[-12, 0], [12, 0], [12, 24], "
      "[-12, 24]], holes: [{name: h, centre: [0, 12], diameter: 8, edge: rolled}]}\n"
      "  panels:\n"
      "    - {name: front, corners: [[100, -12, 0], [100, 12, 0], [100, 12, 24], [100, -12, 24]]}\n"
      "    - {name: back, corners: [[140, -12, 0], [140, 12, 0], [140, 12, 24], [140, -12, 24]]}\n"
      "    - {name: left, corners: [[100, -12, 0], [140, -12, 0], [140, -12, 24], [100, -12, "
      "24]]}\n"
      "    - {name: right, corners: [[100, 12, 0], [140, 12, 0], [140, 12, 24], [100, 12, 24]]}\n"
      "    - {name: floor, corners: [[100, -12, 0], [140, -12, 0], [140, 12, 0], [100, 12, 0]]}\n"
      "    - {name: lid, corners: [[100, -12, 24], [140, -12, 24], [140, 12, 24], [100, 12, "
      "24]]}\n";
  sections.nodes =
      "  - {name: port, kind: static-port, at: [60, 0, 12]}\n"
      "  - {name: joint, kind: union, at: [115, 0, 12]}\n"
      "  - {name: altimeter, kind: instrument, at: [180, 0, 12]}\n";
  sections.routes =
      "  - name: first\n    system: static\n    line: tube-nylon-1/4\n    from: port\n"
      "    to: joint\n    points: [{at: [108, 0, 12], hold: clamp, to: floor}]\n"
      "  - {name: second, system: static, line: tube-nylon-1/4, from: joint, to: altimeter}\n";
  sections.rest = rest;
  return sections;
}

CloseUp planned(const ProjectSections& sections) {
  const ProjectText project(sections);
  return close_up(project.prepared());
}

std::vector<std::string> names_before(const CloseUp& plan, const std::string& closure) {
  std::vector<std::string> names;
  for (const ClosureList& each : plan.closures)
    if (each.name == closure)
      for (const CloseUpItem& item : each.before) names.push_back(item.kind + " " + item.name);
  return names;
}

const CloseUpItem& item(const CloseUp& plan, const std::string& name) {
  for (const ClosureList& closure : plan.closures)
    for (const CloseUpItem& each : closure.before)
      if (each.name == name) return each;
  throw std::runtime_error("no item " + name);
}

using Names = std::vector<std::string>;

TEST(CloseUp, ListsWhatTheLidPutsOutOfReach) {
  const CloseUp plan = planned(box("closures:\n  - {name: lid-on, covers: [lid]}\n"));
  EXPECT_EQ(plan.order, Names{"lid-on"});
  EXPECT_EQ(names_before(plan, "lid-on"),
            (Names{"line first", "support clamp on floor", "fitting joint"}));
  EXPECT_EQ(item(plan, "joint").reached_now_by, "the outside");
  EXPECT_EQ(item(plan, "joint").why, "no hand comes to it once lid-on is on");
  EXPECT_EQ(plan.closures[0].tests, Names{"static"});
  EXPECT_TRUE(plan.is_sound());
}

TEST(CloseUp, ListsNothingThatAnOpeningLeavesInReach) {
  const CloseUp plan = planned(
      box("closures:\n  - {name: lid-on, covers: [lid], openings: [{name: hatch, centre: [112, 0, "
          "24], normal: [0, 0, 1], size: [8, 8], reach: 26}]}\n"));
  EXPECT_EQ(names_before(plan, "lid-on"), Names{});
  EXPECT_EQ(plan.closures[0].tests, Names{});
}

TEST(CloseUp, TestsASystemBeforeEachClosureOverAJointOfIt) {
  ProjectSections sections = box(
      "closures:\n  - {name: cabin, covers: [cabin-lid]}\n  - {name: lid-on, covers: [lid], after: "
      "[cabin]}\n");
  // A second box, 8 in wide, about the altimeter.
  const std::string lows[] = {"176, -4, 8", "184, -4, 8", "184, 4, 8", "176, 4, 8"};
  const std::string highs[] = {"176, -4, 16", "184, -4, 16", "184, 4, 16", "176, 4, 16"};
  for (int i = 0; i < 4; ++i) {
    const int next = (i + 1) % 4;
    sections.structure += "    - {name: side-" + std::to_string(i) + ", corners: [[" + lows[i] +
                          "], [" + lows[next] + "], [" + highs[next] + "], [" + highs[i] + "]]}\n";
  }
  sections.structure += "    - {name: cabin-floor, corners: [[" + lows[0] + "], [" + lows[1] +
                        "], [" + lows[2] + "], [" + lows[3] + "]]}\n";
  sections.structure += "    - {name: cabin-lid, corners: [[" + highs[0] + "], [" + highs[1] +
                        "], [" + highs[2] + "], [" + highs[3] + "]]}\n";
  const CloseUp plan = planned(sections);
  EXPECT_EQ(plan.order, (Names{"cabin", "lid-on"}));
  EXPECT_EQ(plan.closures[0].tests, Names{"static"}) << "the altimeter's joint is hidden by it";
  EXPECT_EQ(plan.closures[1].tests, Names{"static"});
}

TEST(CloseUp, SaysThatALineGoesThroughWhatIsPutOnOverIt) {
  ProjectSections sections = box("closures:\n  - {name: lid-on, covers: [lid]}\n");
  const auto why = [&] { return item(planned(sections), "first").why; };
  EXPECT_EQ(why(), "it has to lie in what holds it: no hand comes to it once lid-on is on");
  sections.nodes += "  - {name: above, kind: drain, at: [115, 4, 40]}\n";
  sections.routes =
      "  - {name: first, system: static, line: tube-nylon-1/4, from: joint, to: above, points: "
      "[{at: "
      "[108, 4, 12], hold: clamp, to: floor}, {at: [115, 4, 24], hold: grommet, bore: 0.3125}]}\n"
      "  - {name: second, system: static, line: tube-nylon-1/4, from: joint, to: altimeter}\n"
      "  - {name: third, system: static, line: tube-nylon-1/4, from: port, to: altimeter}\n";
  EXPECT_TRUE(why().find("; yet it goes through the hole of its guide in lid, which goes on with "
                         "lid-on: lead it through as that goes on") != std::string::npos)
      << why();
  // The lid's own hole, named.
  const std::size_t lid = sections.structure.find("{name: lid, ") + 1;
  sections.structure.insert(
      lid, "holes: [{name: H, at: [115, 4, 24], diameter: 0.5, edge: grommet, bore: 0.3125}], ");
  const std::size_t bore = sections.routes.find("bore: 0.3125");
  sections.routes.replace(bore, 12, "through: H");
  EXPECT_TRUE(why().find("; yet it goes through hole H of lid") != std::string::npos) << why();
}

TEST(CloseUp, SaysThatASupportIsFixedToWhatIsPutOnOverIt) {
  ProjectSections sections = box("closures:\n  - {name: lid-on, covers: [lid]}\n");
  sections.nodes += "  - {name: above, kind: drain, at: [115, 4, 22]}\n";
  sections.routes =
      "  - {name: first, system: static, line: tube-nylon-1/4, from: joint, to: above, points: "
      "[{at: [108, 4, 23], hold: clamp, to: lid}]}\n";
  const std::string why = item(planned(sections), "clamp on lid").why;
  EXPECT_TRUE(why.find("; yet lid, which it is fixed to, goes on with lid-on: fit it as that goes "
                       "on, the line in it, or fix it to what stays") != std::string::npos)
      << why;
}

TEST(CloseUp, PutsClosuresAndTasksInTheirStatedOrder) {
  const CloseUp plan =
      planned(box("closures:\n  - {name: lid-on, covers: [lid], after: [wash]}\n"
                  "  - {name: below, covers: [floor]}\n"
                  "tasks:\n  - {name: wash, at: [90, 0, 12], after: [below], again: 3}\n"));
  EXPECT_EQ(plan.order, (Names{"below", "lid-on"}));
  EXPECT_EQ(item(plan, "wash").why,
            "lid-on is stated to come after it; it is to come apart 3 times more");
}

TEST(CloseUp, PutsATaskBeforeTheClosureThatEndsItsReach) {
  const CloseUp plan =
      planned(box("closures:\n  - {name: lid-on, covers: [lid]}\n"
                  "tasks:\n  - {name: bolt, at: [115, 0, 10]}\n"));
  EXPECT_EQ(item(plan, "bolt").why, "no hand comes to it once lid-on is on");
}

// The web's hole is 8 in wide: one arm gets through it to its far side, from a hatch in front.
TEST(CloseUp, TwoHandsNeedBothSidesAtOnce) {
  const auto with_hatch = [](const std::string& size, const std::string& hands) {
    return planned(
        box("closures:\n  - {name: lid-on, covers: [lid], openings: [{name: hatch, "
            "centre: [122, 0, 24], normal: [0, 0, 1], size: [" +
            size +
            "], reach: 32}]}\n"
            "tasks:\n  - {name: bolt, at: [130, 7, 12], on: web, needs: " +
            hands + "}\n"));
  };
  EXPECT_EQ(names_before(with_hatch("8, 8", "2 hands"), "lid-on"), Names{});
  EXPECT_EQ(names_before(with_hatch("4.6, 4.6", "1 hand"), "lid-on"), Names{});
  // 4.6 in square is 6.5 in from corner to corner: one arm, not two of 3.5 in.
  EXPECT_EQ(names_before(with_hatch("4.6, 4.6", "2 hands"), "lid-on"), Names{"task bolt"});
}

TEST(CloseUp, NamesACircleThatIsStated) {
  const CloseUp plan =
      planned(box("closures:\n"
                  "  - {name: deck, covers: [lid], after: [skin]}\n"
                  "  - {name: skin, covers: [left], after: [fairing]}\n"
                  "  - {name: fairing, covers: [floor], after: [deck]}\n"
                  "  - {name: cowl, covers: [front], after: [deck]}\n"));
  ASSERT_EQ(plan.circles.size(), 1u);
  EXPECT_EQ(plan.circles[0].names, (Names{"deck", "fairing", "skin"}));
  EXPECT_EQ(plan.circles[0].why.front(), "fairing is stated to come after deck");
  EXPECT_FALSE(plan.is_sound());
}

TEST(CloseUp, NamesACircleThatReachMakes) {
  const CloseUp plan =
      planned(box("closures:\n  - {name: lid-on, covers: [lid]}\n"
                  "tasks:\n  - {name: bolt, at: [115, 0, 12], after: [lid-on]}\n"));
  ASSERT_EQ(plan.circles.size(), 1u);
  EXPECT_EQ(plan.circles[0].names, (Names{"lid-on", "bolt"}));
  EXPECT_EQ(plan.circles[0].why, (Names{"bolt is stated to come after lid-on",
                                        "no hand comes to bolt once lid-on is on"}));
}

TEST(CloseUp, FindsTheRingAtTheEndOfALongChain) {
  constexpr int count = 20'000;
  std::vector<std::string> names;
  std::vector<Before> before;
  for (int i = 0; i < count; ++i) {
    names.push_back("c" + std::to_string(i));
    before.push_back({"c" + std::to_string(i + 1 < count ? i + 1 : count - 2), names.back(), ""});
  }
  const ClosingOrder order = closing_order(names, before);
  ASSERT_EQ(order.circles.size(), 1u);
  EXPECT_EQ(order.circles[0], (Names{"c19998", "c19999"}));
}

TEST(CloseUp, SaysWhichClosureCoversNothing) {
  const CloseUp plan = planned(box("closures:\n  - {name: lid-on}\n"));
  EXPECT_EQ(plan.unknown, Names{"lid-on"});
  EXPECT_FALSE(plan.is_sound());
}

TEST(CloseUp, HasNothingToSayWithoutClosures) {
  const CloseUp plan = planned(box(""));
  EXPECT_TRUE(plan.order.empty());
  EXPECT_TRUE(plan.is_sound());
}

ProjectSections with_loose_end() {
  ProjectSections sections =
      box("closures:\n  - {name: lid-on, covers: [lid]}\n"
          "tasks:\n  - {name: antenna, at: [90, 0, 12], after: [lid-on]}\n");
  sections.nodes +=
      "  - {name: tail, kind: end, at: [90, 4, 12], loose: {until: antenna, coil: 48}}\n";
  sections.routes +=
      "  - {name: third, system: \"static: alternate\", line: tube-nylon-1/4, from: tail, to: "
      "spare}\n";
  sections.nodes += "  - {name: spare, kind: cap, at: [90, 16, 12]}\n";
  return sections;
}

TEST(LooseEnd, IsOnTheListWhileItIsLoose) {
  const CloseUp plan = planned(with_loose_end());
  const CloseUpItem& tail = item(plan, "tail");
  EXPECT_EQ(tail.kind, "loose-end");
  for (const char* word :
       {"antenna", "capped", "wrapped", "clear of moving parts", "48 in", "cap on"})
    EXPECT_NE(tail.why.find(word), std::string::npos) << word;
}

TEST(LooseEnd, IsNoFaultOfTheNetwork) {
  for (const Judgement& each : judged(with_loose_end(), "network"))
    EXPECT_TRUE(each.route != "third" || each.verdict == Verdict::pass) << each.message;
}

// Drawn 12 in long, and 48 in hang in a coil.
TEST(LooseEnd, IsCutLongerByItsCoil) {
  const ProjectText project(with_loose_end());
  const std::vector<RouteCut> cuts = cut_list(project.prepared()).routes;
  ASSERT_EQ(cuts.back().name, "third");
  EXPECT_NEAR(cuts.back().length_in, 12 + 48, 1e-9);
}

}  // namespace
}  // namespace linewright
