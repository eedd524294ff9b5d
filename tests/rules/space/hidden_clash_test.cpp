// Clashes that something could hide: a fitting's mounting, a moving part, a waiver for another
// place, a filter, a hole named where the line is not.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

std::vector<Judgement> broken(const std::vector<Judgement>& judgements) {
  std::vector<Judgement> kept;
  std::copy_if(judgements.begin(), judgements.end(), std::back_inserter(kept),
               [](const Judgement& each) { return each.verdict != Verdict::pass; });
  return kept;
}

std::string tube(const std::string& name, const std::string& from, const std::string& to,
                 const std::string& points = "[]") {
  return "  - {name: " + name + ", system: static, line: tube-nylon-1/4, from: " + from +
         ", to: " + to + ", points: " + points + "}\n";
}

const std::string solid_frame =
    "  frames:\n    - {name: F1, station: 20, thickness: 0.032, outline: [[-8, 0], [8, 0], [8, "
    "20], "
    "[-8, 20]]}\n";

TEST(FittingInAWeb, FailsUnlessItIsABulkheadUnion) {
  const auto through = [](const std::string& kind) {
    ProjectSections sections;
    sections.structure = solid_frame;
    sections.nodes =
        "  - {name: port, kind: static-port, at: [12, 0, 10]}\n"
        "  - {name: fitting, kind: " +
        kind +
        ", at: [20, 0, 10], fixed: true}\n"
        "  - {name: dial, kind: instrument, at: [30, 0, 10]}\n";
    sections.routes = tube("aft", "port", "fitting") + tube("forward", "fitting", "dial");
    return broken(ProjectText(sections).judged("frame-crossing"));
  };
  const std::vector<Judgement> found = through("union");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].verdict, Verdict::fail);
  EXPECT_EQ(found[0].with, "F1");
  EXPECT_EQ(found[0].message, "fitting stands in the web of frame F1, where there is no hole");
  EXPECT_TRUE(through("bulkhead").empty());
}

TEST(MountedEnd, DoesNotHideAPiercingNearerThanTheMounting) {
  ProjectSections sections;
  sections.structure =
      "  channels:\n    - {name: C1, path: [[20.45, -20, 8], [20.45, 20, 8]], section: [[0, 0], "
      "[0, "
      "4]], thickness: 0.02, edge: bare}\n";
  sections.nodes =
      "  - {name: drain, kind: drain, at: [20, 0, 10]}\n"
      "  - {name: port, kind: static-port, at: [26, 0, 10]}\n";
  sections.routes = tube("run", "drain", "port");
  const std::vector<Judgement> found = broken(ProjectText(sections).judged("clearance"));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].verdict, Verdict::fail);
  EXPECT_EQ(found[0].with, "C1");
  EXPECT_NEAR(*found[0].distance_in, 0.45, 0.02);
}

TEST(MovingPart, IsNotExemptForATubeThatEndsBesideIt) {
  ProjectSections sections;
  sections.structure =
      "  movers:\n    - {name: crank, pivot: [50, 0, 10], axis: [0, 1, 0], points: [[50, 0, 10], "
      "[50, "
      "0, 16]], radius: 0.4, sweep: [-30, 30]}\n";
  sections.nodes =
      "  - {name: drain, kind: drain, at: [50, 0.8, 16]}\n"
      "  - {name: port, kind: static-port, at: [62, -6, 12]}\n";
  sections.routes =
      tube("run", "drain", "port", "[{at: [50, 6, 16]}, {at: [50, 6, 12]}, {at: [50, -6, 12]}]");
  const std::vector<Judgement> found = broken(ProjectText(sections).judged("clearance"));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].verdict, Verdict::fail);
  EXPECT_EQ(found[0].with, "crank");
}

/// A tube that meets two posts, at FS 10 and at FS 50.
ProjectSections two_posts(const std::string& waiver) {
  ProjectSections sections;
  sections.structure =
      "  solids:\n"
      "    - {name: post, box: {min: [9, -1, 8], max: [11, 1, 10]}}\n";
  sections.nodes =
      "  - {name: a, kind: static-port, at: [0, 0, 12]}\n"
      "  - {name: b, kind: instrument, at: [60, 0, 12]}\n";
  sections.routes = tube("run", "a", "b",
                         "[{at: [5, 0, 10]}, {at: [15, 0, 10]}, {at: [20, 0, 12]}, {at: [25, 12, "
                         "12]}, {at: [10, 12, 12]}, {at: [10, 12, 10]}, {at: [10, -12, 10]}]");
  sections.rest = waiver;
  return sections;
}

TEST(WaiverForOnePlace, LeavesTheNextPlaceToBeFound) {
  const std::vector<Judgement> before = broken(ProjectText(two_posts("")).judged("clearance"));
  ASSERT_EQ(before.size(), 1u);
  const Vec3 at = *before[0].at;
  const std::string near =
      "[" + std::to_string(at.x) + ", " + std::to_string(at.y) + ", " + std::to_string(at.z) + "]";
  const std::vector<Judgement> after =
      broken(ProjectText(two_posts("waivers:\n  - {rule: clearance, route: run, near: " + near +
                                   ", within: 0.3, reason: looked at}\n"))
                 .judged("clearance"));
  ASSERT_EQ(after.size(), 2u);
  EXPECT_EQ(std::count_if(after.begin(), after.end(),
                          [](const Judgement& each) { return each.verdict == Verdict::waived; }),
            1);
  EXPECT_EQ(std::count_if(after.begin(), after.end(),
                          [](const Judgement& each) { return each.verdict == Verdict::fail; }),
            1);
}

TEST(WaiverForOnePlace, WaivesAllWhereAllLiesWithin) {
  const std::vector<Judgement> after =
      broken(ProjectText(
                 two_posts("waivers:\n  - {rule: clearance, route: run, near: [10, 0, 10], within: "
                           "20, reason: looked at}\n"))
                 .judged("clearance"));
  ASSERT_EQ(after.size(), 1u);
  EXPECT_EQ(after[0].verdict, Verdict::waived);
}

TEST(OneRoute, KeepsWhatConcernsNoSingleRoute) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: a, kind: static-port, at: [0, 0, 12]}\n"
      "  - {name: b, kind: instrument, at: [9, 0, 12]}\n";
  sections.routes = tube("run", "a", "b");
  sections.rest = "closures:\n  - {name: deck, after: []}\n";
  const ProjectText project(sections);
  const std::vector<Judgement> judged =
      judge(project.prepared(), {}, std::nullopt, std::string("run"));
  EXPECT_TRUE(std::any_of(judged.begin(), judged.end(), [](const Judgement& each) {
    return each.verdict == Verdict::unknown && each.with == "deck";
  }));
}

const std::string frame_with_hole =
    "  frames:\n    - {name: F1, station: 100, thickness: 0.032, outline: [[-8, 0], [8, 0], [8, "
    "20], "
    "[-8, 20]], holes: [{name: H, centre: [0, 10], diameter: 0.5, edge: bare}]}\n";

ProjectSections through_hole(const std::string& points) {
  ProjectSections sections;
  sections.structure = frame_with_hole;
  sections.nodes =
      "  - {name: a, kind: static-port, at: [80, 0, 10]}\n"
      "  - {name: b, kind: instrument, at: [120, 0, 10]}\n";
  sections.routes = tube("run", "a", "b", points);
  return sections;
}

TEST(PointThatNamesAHole, MustStandInIt) {
  const auto found = [](const std::string& points) {
    return broken(ProjectText(through_hole(points)).judged("frame-crossing"));
  };
  // Half an inch along is as far as it may be.
  EXPECT_TRUE(found("[{at: [99.5, 0, 10], hold: fairlead, through: H}]").empty());
  EXPECT_FALSE(found("[{at: [99.49, 0, 10], hold: fairlead, through: H}]").empty());
  const std::vector<Judgement> far = found("[{at: [92, 0, 10], hold: fairlead, through: H}]");
  // The guide is not in the hole, so the bare edge counts, too.
  ASSERT_EQ(far.size(), 2u);
  EXPECT_EQ(far[0].verdict, Verdict::fail);
  EXPECT_EQ(far[0].message, "said to go through hole H, but the point is 8.00 in along from it");
  EXPECT_EQ(far[1].verdict, Verdict::warn);
  EXPECT_EQ(far[1].with, "H");
}

TEST(SmallBareHole, IsMendedByALargerOneWhereItsMiddleIsNotEnough) {
  const std::vector<Judgement> found =
      broken(ProjectText(through_hole("[]")).judged("frame-crossing"));
  ASSERT_EQ(found.size(), 1u);
  // 3/8 in on both sides of a 1/4 in tube.
  EXPECT_EQ(
      found[0].mend,
      "fit a grommet or edge trim, or make the hole 1.00 in wide and lead the line through its "
      "middle");
}

TEST(FreeEnd, IsSaidOnceAndNotForEverythingItCouldSwingTo) {
  ProjectSections sections;
  sections.structure =
      "  solids:\n    - {name: crate, box: {min: [110, -9, 0], max: [118, -3, 20]}}\n"
      "    - {name: chest, box: {min: [110, 3, 0], max: [118, 9, 20]}}\n";
  sections.nodes =
      "  - {name: a, kind: end, at: [100, 0, 10], fixed: true}\n"
      "  - {name: loose, kind: end, at: [120, 0, 10]}\n";
  sections.routes = "  - {name: bundle, system: wire, line: wire-1/4, from: a, to: loose}\n";
  const std::vector<Judgement> found = broken(ProjectText(sections).judged("chafe"));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].verdict, Verdict::warn);
  EXPECT_EQ(found[0].with, "loose");
  EXPECT_EQ(found[0].message, "nothing holds the end at loose: it can swing 20.0 in to any side");
}

}  // namespace
}  // namespace linewright
