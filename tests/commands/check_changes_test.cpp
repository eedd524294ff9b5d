#include "render/check_changes.hpp"

#include <gtest/gtest.h>

#include <ctime>

#include "commands/command_run.hpp"
#include "render/time_of_day.hpp"

namespace linewright {
namespace {

using test::contains;

/// A clearance of this much from T1, this far along static-left, where 0.5 in is wanted.
Judgement clearance(double distance_in, double value) {
  Judgement judgement;
  judgement.rule = "clearance";
  judgement.verdict = value < 0.5 ? Verdict::fail : Verdict::pass;
  judgement.route = "static-left";
  judgement.with = "T1";
  judgement.at = Vec3{100 + distance_in, 0, 10};
  judgement.distance_in = distance_in;
  judgement.value = value;
  judgement.limit = 0.5;
  judgement.unit = Unit::inch;
  judgement.message = value < 0.5 ? "too near to T1" : "clear of T1";
  judgement.source = "practice";
  judgement.mend = value < 0.5 ? "move it away" : "";
  judgement.location = {"static.yaml", 14, 9};
  return judgement;
}

Report report_of(std::vector<Judgement> judgements) {
  RouteReport route;
  route.cut.name = "static-left";
  route.from = "port-left";
  Report report;
  report.routes = {route};
  report.judgements = std::move(judgements);
  return report;
}

std::string text_of(const std::vector<Judgement>& before, const std::vector<Judgement>& now,
                    const TextStyle& style = {}) {
  return changes_text(report_of(before), report_of(now), "14:03:12", style);
}

TEST(CheckChanges, NothingChangedIsTwoLines) {
  EXPECT_EQ(text_of({clearance(5, 0.2)}, {clearance(5, 0.2)}),
            "\n14:03:12: nothing changed\n"
            "1 route: 0 passed, 0 warnings, 1 failed, 0 unknown, 0 waived\n");
}

TEST(CheckChanges, ANewFindingIsShownWhole) {
  EXPECT_EQ(text_of({}, {clearance(5, 0.2)}),
            "\n14:03:12: 1 new\n\n"
            "static-left: new\n"
            "static.yaml:14:9: fail: clearance: too near to T1\n"
            "  where:       FS 105.0 BL 0.0 WL 10.0, 5.00 in from port-left\n"
            "  by how much: value 0.200 in, limit at least 0.500 in: short by 0.300 in\n"
            "  why:         practice\n"
            "  mend:        move it away\n\n"
            "1 route: 0 passed, 0 warnings, 1 failed, 0 unknown, 0 waived\n");
}

TEST(CheckChanges, OfAChangedFindingOnlyWhatChangedIsShownWithWhatItWas) {
  EXPECT_EQ(text_of({clearance(5, 0.2)}, {clearance(5, 0.3)}),
            "\n14:03:12: 1 changed\n\n"
            "static-left: changed\n"
            "static.yaml:14:9: fail: clearance: too near to T1\n"
            "  by how much: value 0.300 in, limit at least 0.500 in: short by 0.200 in\n"
            "  was:         value 0.200 in, limit at least 0.500 in: short by 0.300 in\n\n"
            "1 route: 0 passed, 0 warnings, 1 failed, 0 unknown, 0 waived\n");
}

TEST(CheckChanges, AFindingThatPassesNowSaysByHowMuch) {
  const std::string text = text_of({clearance(5, 0.2)}, {clearance(5, 0.6)});
  EXPECT_TRUE(contains(text,
                       "14:03:12: 1 passes now\n\nstatic-left: passes now, was fail\n"
                       "static.yaml:14:9: pass: clearance: clear of T1\n"
                       "  by how much: value 0.600 in"))
      << text;
  EXPECT_FALSE(contains(text, "mend")) << text;
}

TEST(CheckChanges, AFindingThatPassedBeforeIsNewAndShownWhole) {
  const std::string text = text_of({clearance(5, 0.6)}, {clearance(5, 0.2)});
  EXPECT_TRUE(contains(text, "14:03:12: 1 new\n\nstatic-left: new, passed before\n")) << text;
  EXPECT_TRUE(contains(text, "  why:         practice\n")) << text;
  EXPECT_FALSE(contains(text, "  was:")) << text;
}

TEST(CheckChanges, AFindingThatIsGoneIsNamed) {
  EXPECT_EQ(text_of({clearance(5, 0.2)}, {}),
            "\n14:03:12: 1 gone\n\n"
            "static-left: gone\n"
            "fail: clearance: too near to T1\n\n"
            "1 route: 0 passed, 0 warnings, 0 failed, 0 unknown, 0 waived\n"
            "There was nothing to judge: that is not a pass.\n");
}

TEST(CheckChanges, AnotherVerdictIsAChange) {
  Judgement waived = clearance(5, 0.2);
  waived.verdict = Verdict::waived;
  waived.waived = Waived{"wrapped", Verdict::fail};
  const std::string text = text_of({clearance(5, 0.2)}, {waived});
  EXPECT_TRUE(contains(text,
                       "static-left: changed, was fail\n"
                       "static.yaml:14:9: waived: clearance: too near to T1\n"
                       "  waived:      wrapped (was fail)\n"))
      << text;
}

TEST(CheckChanges, PassesChangeOnlyForWhoSeesThem) {
  const std::vector<Judgement> before = {clearance(5, 0.6)};
  const std::vector<Judgement> now = {clearance(5, 0.7)};
  EXPECT_TRUE(contains(text_of(before, now), "nothing changed"));
  EXPECT_TRUE(contains(text_of(before, {}), "nothing changed"));
  TextStyle verbose;
  verbose.verbose = true;
  EXPECT_TRUE(contains(text_of(before, now, verbose), "1 changed"));
  EXPECT_TRUE(contains(text_of(before, now, verbose), "  was:         value 0.600 in"));
}

TEST(CheckChanges, WhatIsNotPrintedIsNoChange) {
  Judgement moved_in_file = clearance(5, 0.2);
  moved_in_file.location.line += 3;
  EXPECT_TRUE(contains(text_of({clearance(5, 0.2)}, {moved_in_file}), "nothing changed"));
  EXPECT_TRUE(
      contains(text_of({clearance(5, 0.2)}, {clearance(5, 0.2 + 1e-9)}), "nothing changed"));
}

TEST(CheckChanges, AFindingAmongOthersIsKnownAgainByItsPlaceAlongTheRoute) {
  // One is added before two that both move on by an inch.
  const std::string added = text_of({clearance(20, 0.2), clearance(40, 0.3)},
                                    {clearance(5, 0.1), clearance(21, 0.2), clearance(41, 0.3)});
  EXPECT_TRUE(contains(added, "14:03:12: 1 new, 2 changed\n\nstatic-left: new\n")) << added;
  EXPECT_TRUE(contains(added, "where:       FS 121.0 BL 0.0 WL 10.0, 21.0 in from")) << added;
  EXPECT_FALSE(contains(added, "  was:")) << added;
  // One is taken away behind two that both move on.
  const std::string taken = text_of({clearance(20, 0.2), clearance(40, 0.3), clearance(60, 0.4)},
                                    {clearance(21, 0.2), clearance(41, 0.3)});
  EXPECT_TRUE(contains(taken, "14:03:12: 2 changed, 1 gone\n")) << taken;
  EXPECT_FALSE(contains(taken, "  was:")) << taken;
}

TEST(CheckChanges, OtherRulesRoutesAndPartsAreOtherFindings) {
  Judgement other = clearance(5, 0.2);
  other.with = "T2";
  EXPECT_TRUE(contains(text_of({clearance(5, 0.2)}, {other}), "1 new, 1 gone"));
  other = clearance(5, 0.2);
  other.route = "static-right";
  EXPECT_TRUE(contains(text_of({clearance(5, 0.2)}, {other}), "1 new, 1 gone"));
  other = clearance(5, 0.2);
  other.rule = "chafe";
  EXPECT_TRUE(contains(text_of({clearance(5, 0.2)}, {other}), "1 new, 1 gone"));
}

TEST(CheckChanges, EveryDifferenceIsCountedOnce) {
  std::vector<Judgement> before;
  std::vector<Judgement> now;
  for (int i = 0; i < 40; ++i) {
    if (i % 3 != 0) before.push_back(clearance(i, 0.01 * i));
    if (i % 4 != 0) now.push_back(clearance(i + 0.25, 0.01 * i));
  }
  int was = 0;
  int is = 0;
  const Report old_report = report_of(before);
  const Report new_report = report_of(now);
  for (const Change& change : changes_between(old_report, new_report, {})) {
    was += change.was != nullptr;
    is += change.now != nullptr;
  }
  EXPECT_EQ(was, static_cast<int>(before.size()));
  EXPECT_EQ(is, static_cast<int>(now.size()));
}

TEST(CheckChanges, WhatIsAssumedIsSaidAgainWhereItChanged) {
  const Report before = report_of({clearance(5, 0.6)});
  Report now = before;
  now.assumptions = {"units are not stated: inches were taken"};
  EXPECT_TRUE(contains(changes_text(before, now, "14:03:12", {}), "  - units are not stated"));
  EXPECT_FALSE(contains(changes_text(now, now, "14:03:12", {}), "units are not stated"));
  EXPECT_TRUE(contains(changes_text(now, before, "14:03:12", {}), "Nothing is assumed any more."));
}

TEST(TimeOfDay, IsThatOfTheClockOnTheWall) {
  std::tm three_past_two{};
  three_past_two.tm_year = 126;
  three_past_two.tm_mday = 10;
  three_past_two.tm_hour = 14;
  three_past_two.tm_min = 3;
  three_past_two.tm_sec = 9;
  three_past_two.tm_isdst = -1;
  EXPECT_EQ(time_of_day(std::mktime(&three_past_two)), "14:03:09");
}

TEST(CheckChanges, FiguresOfDifferentThingsAreNotOneFindingThatChanged) {
  Judgement small = clearance(5, 0.2);
  small.unit = Unit::none;
  small.message = "the pulley is too small";
  small.source = "a handbook";
  Judgement guard = clearance(5, 0.7);
  guard.verdict = Verdict::fail;
  guard.sense = LimitSense::at_most;
  guard.message = "the guard is too far away";
  EXPECT_TRUE(contains(text_of({small}, {guard}), "1 new, 1 gone"));
  Judgement few = small;
  few.message = "the pulley has too few guards";
  few.source = "another handbook";
  EXPECT_TRUE(contains(text_of({small}, {few}), "1 new, 1 gone"));
  // What was not known before and is a figure now is the same finding.
  Judgement unknown = small;
  unknown.verdict = Verdict::unknown;
  unknown.value.reset();
  EXPECT_TRUE(contains(text_of({unknown}, {small}), "1 changed"));
}

}  // namespace
}  // namespace linewright
