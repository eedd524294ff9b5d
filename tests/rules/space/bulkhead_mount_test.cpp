// A bulkhead union is held by the edge of a hole that its nut covers: of a body 5/8 in across, in a
// hole of 7/16 in, 3/32 in all round.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/small_project.hpp"
#include "rules/space/bulkhead_project.hpp"

namespace linewright {
namespace {

Judgement sole_of(const BulkheadProject& project) {
  return only(project.judged());
}

const std::string no_size = "";

TEST(BulkheadMount, AUnionInAHoleThatItsNutCoversIsHeld) {
  const Judgement judgement = sole_of({});
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_EQ(judgement.message, "bulkhead union union is held by the edge of hole H of F");
  EXPECT_EQ(judgement.with, "F");
  EXPECT_EQ(judgement.route, "line");
  EXPECT_NEAR(*judgement.value, 3.0 / 32, 1e-9);
}

TEST(BulkheadMount, AUnionWithoutAHoleFails) {
  const Judgement judgement = sole_of({.holes = "[]"});
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message,
            "bulkhead union union stands in the web of F, where there is no hole");
  EXPECT_FALSE(judgement.value);
}

// A node that is no more than a place where structure holds a line need not be in a sheet.
TEST(BulkheadMount, OfAMerePlaceNoHoleIsAskedFor) {
  EXPECT_TRUE((BulkheadProject{.holes = "[]", .size = no_size}.judged().empty()));
}

// The edge of a hole of 7/16 in whose middle is 1 in away is 0.78125 in away.
TEST(BulkheadMount, AUnionBesideAHoleFailsByHowFarThatIs) {
  for (const std::string bl : {"1", "-1"}) {
    const Judgement judgement =
        sole_of({.holes = "[{name: H, centre: [" + bl + ", 10], diameter: 7/16}]"});
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_NEAR(*judgement.value, 0.78125, 1e-9);
    EXPECT_TRUE(contains(judgement.mend, "hole H")) << judgement.mend;
  }
}

TEST(BulkheadMount, AUnionInTheMiddleOfAWideHoleIsNotHeld) {
  const Judgement judgement = sole_of({.holes = hole_about_union(4)});
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.message, "is not held in hole H of F")) << judgement.message;
  EXPECT_NEAR(*judgement.value, 0.3125 - 2, 1e-6);
  // Of no stated size it is asked about.
  EXPECT_EQ(sole_of({.holes = hole_about_union(4), .size = no_size}).verdict, Verdict::warn);
  EXPECT_EQ(sole_of({.size = no_size}).verdict, Verdict::pass);
}

// 1/8 in off the middle of the hole its body ends 1/32 in before the hole's edge on the far side.
TEST(BulkheadMount, AUnionOffTheMiddleOfItsHoleIsJudgedWhereItCoversLeast) {
  for (const std::string bl : {"0.125", "-0.125"}) {
    const Judgement judgement =
        sole_of({.holes = "[{name: H, centre: [" + bl + ", 10], diameter: 0.55}]"});
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_NEAR(*judgement.value, 0.3125 - 0.275 - 0.125, 1e-9);
  }
}

TEST(BulkheadMount, OfAHoleWithCornersTheFarthestCounts) {
  const auto square = [](const std::string& half) {
    return "[{name: H, outline: [[-" + half + ", 9.8], [" + half + ", 9.8], [" + half +
           ", 10.2], [-" + half + ", 10.2]]}]";
  };
  // Half of the diagonal of a square of 0.4 in is 0.283 in.
  EXPECT_EQ(sole_of({.holes = square("0.2")}).verdict, Verdict::warn);
  EXPECT_EQ(sole_of({.holes = square("0.4")}).verdict, Verdict::fail);
}

TEST(BulkheadMount, AHoleThatTheLineItselfDoesNotGoThroughFails) {
  const Judgement judgement = sole_of({.holes = hole_about_union(0.2)});
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "bulkhead union union does not go in hole H of F");
}

// A thread of 7/16 in through a hole of 3/8 in, that the tube of 1/4 in would go through.
TEST(BulkheadMount, AHoleNarrowerThanTheThreadFails) {
  const Judgement judgement = sole_of({.holes = hole_about_union(0.375), .thread = "7/16"});
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.375 - 0.4375, 1e-9);
  EXPECT_EQ(judgement.message,
            "the thread of bulkhead union union, 0.438 in across, does not go in "
            "hole H of F");
  EXPECT_EQ(sole_of({.thread = "7/16"}).verdict, Verdict::pass);
  EXPECT_EQ(sole_of({.thread = "11 mm"}).verdict, Verdict::pass);
  EXPECT_EQ(sole_of({.thread = "0.5"}).verdict, Verdict::fail);
}

// Off the middle of its hole by more than the hole is wider, a union cannot be.
TEST(BulkheadMount, AThreadThatReachesPastTheEdgeOfAWideHoleFails) {
  const std::string off = "[{name: H, centre: [0.1, 10], diameter: 0.5}]";
  const Judgement judgement = sole_of({.holes = off, .thread = "7/16"});
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 2 * 0.15 - 0.4375, 1e-9);
}

// With no thread stated, one 3/16 in over the tube is taken: 7/16 in.
TEST(BulkheadMount, AHoleThatMayBeNarrowerThanTheThreadIsNotKnown) {
  const std::string narrow = hole_about_union(0.375);
  EXPECT_EQ(sole_of({.holes = narrow}).verdict, Verdict::unknown);
  EXPECT_EQ(sole_of({.holes = narrow, .size = no_size}).verdict, Verdict::unknown);
  EXPECT_EQ(sole_of({}).verdict, Verdict::pass);
}

TEST(BulkheadMount, AUnionThatLeansInItsHoleFailsToEitherSide) {
  for (const std::string direction : {"[1, 1, 0]", "[1, -1, 0]", "[-1, 0, 1]"}) {
    const Judgement judgement =
        sole_of({.size = ", fitting: through-1/4, direction: " + direction});
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_NEAR(*judgement.value, 45, 1e-9);
  }
  EXPECT_EQ(sole_of({.size = ", fitting: through-1/4, direction: [-1, 0, 0]"}).verdict,
            Verdict::pass);
}

TEST(BulkheadMount, AUnionInAPanelWithoutADescribedHoleIsNotKnownToBeHeld) {
  BulkheadProject project{.has_frame = false};
  const auto panel = [](const std::string& holes) {
    return "  panels: [{name: P, thickness: 0.03, corners: [[106, -9, 0], [106, 9, 0], [106, 9, "
           "20], [106, -9, 20]], holes: " +
           holes + "}]\n";
  };
  project.beside = panel("[]");
  EXPECT_EQ(sole_of(project).verdict, Verdict::unknown);
  EXPECT_EQ(sole_of(project).with, "P");
  project.beside = panel("[{name: H, at: [106, 0, 10], diameter: 7/16, edge: bare}]");
  EXPECT_EQ(sole_of(project).verdict, Verdict::pass);
  project.beside = panel("[{name: H, at: [106, 0, 10], diameter: 3, edge: bare}]");
  EXPECT_EQ(sole_of(project).verdict, Verdict::fail);
}

TEST(BulkheadMount, WithNoStructureNearNothingIsSaid) {
  EXPECT_TRUE(BulkheadProject{.at = "102, 0, 10"}.judged().empty());
}

// A board across the lower half of a cut-out holds it there.
TEST(BulkheadMount, AUnionInACutOutMayStandOnAnotherPart) {
  BulkheadProject project{.holes = hole_about_union(4)};
  project.beside =
      "  solids: [{name: bracket, box: {min: [105.9, -1, 9], max: [106.1, 1, 10.5]}}]\n";
  EXPECT_EQ(sole_of(project).verdict, Verdict::unknown);
  EXPECT_EQ(sole_of(project).with, "bracket");
}

}  // namespace
}  // namespace linewright
