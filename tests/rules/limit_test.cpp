// The one way in which a value is held against limits.

#include "rules/limit.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace linewright {
namespace {

constexpr LimitRow touching{.name = "touching",
                            .subject = "gap",
                            .value = 0,
                            .source = "geometry",
                            .mark = Mark::calculated};
constexpr LimitRow wanted{.name = "wanted",
                          .subject = "gap",
                          .value = 0.5,
                          .source = "practice",
                          .mark = Mark::common_practice,
                          .broken = Verdict::warn};
constexpr LimitRow far_off{.name = "far-off",
                           .subject = "distance",
                           .value = 6,
                           .sense = LimitSense::at_most,
                           .source = "geometry",
                           .mark = Mark::calculated};
constexpr LimitRow stand_off{.name = "stand-off",
                             .subject = "distance",
                             .value = 2,
                             .sense = LimitSense::at_most,
                             .source = "practice",
                             .mark = Mark::common_practice,
                             .broken = Verdict::warn};
constexpr LimitRow share{.name = "share",
                         .subject = "tension",
                         .value = 0.6,
                         .unit = Unit::pound_force,
                         .sense = LimitSense::at_most,
                         .source = "a handbook",
                         .mark = Mark::verified,
                         .times = "breaking strength"};

Judgement held(double value, std::initializer_list<Limit> limits) {
  Judgement judgement;
  const bool holding = holds(judgement, value, limits);
  EXPECT_EQ(holding, judgement.verdict == Verdict::pass);
  EXPECT_EQ(holding, *judgement.margin() >= 0);
  return judgement;
}

TEST(Limit, AValueAtTheLimitPassesAndOneBeyondItDoesNot) {
  EXPECT_EQ(held(0.5, {wanted}).verdict, Verdict::pass);
  EXPECT_EQ(held(0.50001, {wanted}).verdict, Verdict::pass);
  EXPECT_EQ(held(0.49999, {wanted}).verdict, Verdict::warn);
  EXPECT_EQ(held(2, {stand_off}).verdict, Verdict::pass);
  EXPECT_EQ(held(1.99999, {stand_off}).verdict, Verdict::pass);
  EXPECT_EQ(held(2.00001, {stand_off}).verdict, Verdict::warn);
}

// What rounding leaves over in sums of lengths is far under a millionth of an inch.
TEST(Limit, RoundingBreaksNoLimitAndLeavesNoMarginBelowZero) {
  const Judgement under = held(0.5 - 1e-9, {wanted});
  EXPECT_EQ(under.verdict, Verdict::pass);
  EXPECT_EQ(*under.value, 0.5);
  EXPECT_EQ(*under.margin(), 0);
  EXPECT_EQ(held(0.5 - 2e-6, {wanted}).verdict, Verdict::warn);
}

TEST(Limit, AllFiguresAreOfOneRow) {
  const Judgement broken = held(120, {share * 150});
  EXPECT_EQ(broken.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*broken.value, 120);
  EXPECT_DOUBLE_EQ(*broken.limit, 90);
  EXPECT_EQ(broken.unit, Unit::pound_force);
  EXPECT_EQ(broken.sense, LimitSense::at_most);
  EXPECT_EQ(broken.source, "a handbook (verified)");
}

TEST(Limit, OfTwoThatAreBrokenTheGraverIsSaid) {
  const Judgement both = held(-0.1, {wanted, touching});
  EXPECT_EQ(both.verdict, Verdict::fail);
  EXPECT_EQ(*both.limit, 0);
  EXPECT_EQ(both.source, "geometry (calculated)");
  EXPECT_EQ(held(7, {stand_off, far_off}).verdict, Verdict::fail);
}

TEST(Limit, OfTwoAsGraveTheFirstNamedIsSaid) {
  constexpr LimitRow printed{.name = "printed",
                             .subject = "gap",
                             .value = 0.25,
                             .source = "a standard",
                             .mark = Mark::verified};
  EXPECT_EQ(*held(-0.1, {touching, printed}).limit, 0);
  EXPECT_EQ(*held(-0.1, {printed, touching}).limit, 0.25);
}

// Between the two limits, and by a hair beyond the upper: neither a pass nor the other's verdict.
TEST(Limit, AValueBetweenTwoLimitsIsOfTheOneItBreaks) {
  EXPECT_EQ(held(0.2, {touching, wanted}).verdict, Verdict::warn);
  EXPECT_EQ(*held(0.2, {touching, wanted}).limit, 0.5);
  const Judgement hair = held(6.000000000000001, {far_off, stand_off});
  EXPECT_EQ(hair.verdict, Verdict::warn);
  EXPECT_EQ(*hair.limit, 2);
}

TEST(Limit, WhatBreaksNoneIsSaidOfTheNearest) {
  EXPECT_EQ(*held(0.75, {touching, wanted}).limit, 0.5);
  EXPECT_EQ(*held(0.75, {wanted, touching}).limit, 0.5);
  EXPECT_EQ(held(0.75, {wanted, touching}).source, "practice (common practice, no source)");
}

TEST(Limit, NoNumberBreaksEveryLimit) {
  Judgement judgement;
  EXPECT_FALSE(holds(judgement, std::numeric_limits<double>::quiet_NaN(), {wanted}));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_FALSE(holds(judgement, std::numeric_limits<double>::quiet_NaN(), {stand_off, far_off}));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
}

TEST(Limit, AFigureOfTheCatalogueFailsUnlessItIsPractice) {
  Judgement judgement;
  const SourcedValue published{1.0, {"SAE J844", Mark::from_memory}};
  EXPECT_FALSE(holds(judgement, 0.5, {Limit{published, Unit::inch, LimitSense::at_least}}));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.source, "SAE J844 (from memory, not checked against it)");
  const SourcedValue practice{1.0, {"what builders do", Mark::common_practice}};
  EXPECT_FALSE(holds(judgement, 0.5, {Limit{practice, Unit::inch, LimitSense::at_least}}));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
}

TEST(Limit, WhatHasNoNumberIsRightOrBroken) {
  Judgement judgement;
  EXPECT_TRUE(holds_true(judgement, true, wanted));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_FALSE(holds_true(judgement, false, wanted));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_FALSE(judgement.limit.has_value());
}

TEST(Limit, SaysHowMuchAValueLacks) {
  EXPECT_DOUBLE_EQ(Limit(wanted).lacking(0.2), 0.3);
  EXPECT_DOUBLE_EQ(Limit(stand_off).lacking(2.5), 0.5);
  EXPECT_DOUBLE_EQ((share * 100).lacking(50), -10);
}

}  // namespace
}  // namespace linewright
