#include "geometry/envelope.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "oracles/random_path.hpp"
#include "physics/deflection.hpp"

namespace linewright {
namespace {

// Sums of a few terms of about an inch.
constexpr double rounding_in = 1e-12;

/// A span from `start_in` with surplus length and nothing else.
ReachEnvelope slack_span(double start_in, double length_in, double surplus_in, bool clamped) {
  ReachEnvelope span;
  span.start_in = start_in;
  span.end_in = start_in + length_in;
  span.surplus_in = surplus_in;
  span.clamped_shape = clamped;
  span.bow_in = clamped ? clamped_tube_bow_in(length_in, surplus_in)
                        : slack_string_bow_in(length_in, surplus_in);
  span.bound_half_width_in = ellipsoid_half_width_in(length_in, length_in + surplus_in);
  return span;
}

ReachEnvelope random_span(oracles::Random& random) {
  const double length = random.between(2, 60);
  ReachEnvelope span = slack_span(random.between(-20, 20), length, length * random.between(0, 0.05),
                                  random.whole(0, 1) == 1);
  span.play_first_in = random.between(0, 0.1);
  span.play_last_in = random.between(0, 0.1);
  span.sag_in = random.between(0, 0.5);
  span.bend_spread_in = random.between(0, 0.5);
  span.swing_first_in = random.whole(0, 3) == 0 ? length : 0;
  span.swing_last_in = random.whole(0, 3) == 0 ? length : 0;
  return span;
}

// In the middle of a span L with a surplus δ: a slack string √(3 L δ/8), from the parabola's length
// L [1 + 8/3 (f/L)²] [verified: structures text on cables, eqs. 5.13 to 5.16]; a clamped tube, as a
// cosine, (2/π) √(L δ), and the ellipsoid about both ends ½ √((L+δ)² - L²) [calculated].
TEST(Envelope, HasTheTextbookWidthsInTheMiddle) {
  struct Row {
    double length, surplus, string, tube, bound;
  };
  for (const Row& row :
       {Row{13.5, 0.081, 0.64036, 0.66572, 0.74053}, Row{20, 0.05, 0.61237, 0.63662, 0.70755},
        Row{24, 0.02, 0.42426, 0.44106, 0.49000}}) {
    const ReachEnvelope string = slack_span(5, row.length, row.surplus, false);
    const ReachEnvelope tube = slack_span(5, row.length, row.surplus, true);
    const double middle = 5 + row.length / 2;
    EXPECT_NEAR(string.width_in(Reach::likely, middle), row.string, 5e-6);
    EXPECT_NEAR(tube.width_in(Reach::likely, middle), row.tube, 5e-6);
    EXPECT_NEAR(string.width_in(Reach::bound, middle), row.bound, 5e-6);
    EXPECT_NEAR(tube.width_in(Reach::bound, middle), row.bound, 5e-6);
  }
}

TEST(Envelope, NarrowsToNothingAtTheSupportsAsAParabolaOrASine) {
  const ReachEnvelope string = slack_span(0, 12, 0.072, false);
  EXPECT_EQ(string.width_in(Reach::likely, 0), 0);
  EXPECT_EQ(string.width_in(Reach::likely, 12), 0);
  EXPECT_NEAR(string.width_in(Reach::likely, 3), 0.75 * string.bow_in, rounding_in);
  const ReachEnvelope tube = slack_span(0, 12, 0.072, true);
  EXPECT_NEAR(tube.width_in(Reach::likely, 12), 0, rounding_in);
  EXPECT_NEAR(tube.width_in(Reach::likely, 3), tube.bow_in * std::numbers::sqrt2 / 2, rounding_in);
  EXPECT_NEAR(tube.width_in(Reach::likely, 9), tube.bow_in * std::numbers::sqrt2 / 2, rounding_in);
}

TEST(Envelope, LetsTheEllipseReachABitPastItsFoci) {
  // Half the width at a focus is (S2 - c2) / (2 S): the line may fold back there.
  const ReachEnvelope span = slack_span(0, 12, 0.072, false);
  const double string = 12.072;
  EXPECT_NEAR(span.width_in(Reach::bound, 0), (string * string - 144) / (2 * string), 1e-9);
}

TEST(Envelope, IsTheEllipseWhoseStringIsTheLine) {
  oracles::Random random(8);
  for (int i = 0; i < 200; ++i) {
    const double length = random.between(1, 60);
    const double surplus = length * random.between(0.0001, 0.1);
    const ReachEnvelope span = slack_span(10, length, surplus, false);
    const double along = random.between(0, length);
    const double off = span.width_in(Reach::bound, 10 + along);
    // 1e-9 of a length under 70 in; the square root loses half the digits of its difference.
    EXPECT_NEAR(std::hypot(along, off) + std::hypot(length - along, off), length + surplus, 1e-9);
  }
}

TEST(Envelope, AddsSagAsAParabolaToBothOutlines) {
  ReachEnvelope span;
  span.start_in = 10;
  span.end_in = 40;
  span.sag_in = 0.0090625;  // w L²/(8 T) of 1/8 in cable over 30 in at 30 lbf [calculated]
  EXPECT_NEAR(span.width_in(Reach::likely, 25), 0.0090625, rounding_in);
  EXPECT_NEAR(span.width_in(Reach::bound, 25), 0.0090625, rounding_in);
  EXPECT_NEAR(span.width_in(Reach::likely, 17.5), 0.75 * 0.0090625, rounding_in);
}

TEST(Envelope, GoesFromTheOneSupportsPlayToTheOthers) {
  ReachEnvelope span;
  span.start_in = 0;
  span.end_in = 10;
  span.play_first_in = 0.02;
  span.play_last_in = 0.06;
  EXPECT_NEAR(span.width_in(Reach::likely, 0), 0.02, rounding_in);
  EXPECT_NEAR(span.width_in(Reach::likely, 5), 0.04, rounding_in);
  EXPECT_NEAR(span.width_in(Reach::bound, 10), 0.06, rounding_in);
}

TEST(Envelope, SwingsAtAFreeEndOnlyWithinTheBound) {
  ReachEnvelope span;
  span.start_in = 0;
  span.end_in = 6;
  span.swing_last_in = 6;
  EXPECT_EQ(span.width_in(Reach::likely, 6), 0);
  EXPECT_NEAR(span.width_in(Reach::bound, 6), 6, rounding_in);
  EXPECT_NEAR(span.width_in(Reach::bound, 3), 3, rounding_in);
  EXPECT_NEAR(span.width_in(Reach::bound, 0), 0, rounding_in);
}

TEST(Envelope, SpreadsBendsOnlyWithinTheBound) {
  ReachEnvelope span;
  span.start_in = 0;
  span.end_in = 6;
  span.bend_spread_in = 0.5;
  EXPECT_EQ(span.width_in(Reach::likely, 3), 0);
  EXPECT_NEAR(span.width_in(Reach::bound, 3), 0.5, rounding_in);
}

TEST(Envelope, IsNothingForALineTakenAsDrawn) {
  oracles::Random random(5);
  const ReachEnvelope span = random_span(random);
  EXPECT_EQ(span.width_in(Reach::none, (span.start_in + span.end_in) / 2), 0);
  EXPECT_EQ(span.widest_in(Reach::none), 0);
}

TEST(Envelope, IsNowhereWiderThanItsWidestAndLikelyNowhereWiderThanBound) {
  oracles::Random random(11);
  for (int i = 0; i < 500; ++i) {
    const ReachEnvelope span = random_span(random);
    const double at = random.between(span.start_in, span.end_in);
    EXPECT_LE(span.width_in(Reach::likely, at), span.widest_in(Reach::likely) + rounding_in);
    EXPECT_LE(span.width_in(Reach::bound, at), span.widest_in(Reach::bound) + rounding_in);
    EXPECT_LE(span.width_in(Reach::likely, at), span.width_in(Reach::bound, at) + rounding_in);
  }
}

TEST(Envelope, IsConcaveAlongTheSpan) {
  oracles::Random random(12);
  for (int i = 0; i < 500; ++i) {
    const ReachEnvelope span = random_span(random);
    const double a = random.between(span.start_in, span.end_in);
    const double b = random.between(span.start_in, span.end_in);
    for (const Reach reach : {Reach::likely, Reach::bound}) {
      const double chord = (span.width_in(reach, a) + span.width_in(reach, b)) / 2;
      EXPECT_GE(span.width_in(reach, (a + b) / 2), chord - rounding_in);
    }
  }
}

TEST(ShortenedEnvelope, IsThatOfASpanOfThatLength) {
  const ReachEnvelope whole = slack_span(0, 13.5, 0.006 * 13.5, false);
  const ReachEnvelope part = shortened(whole, 4.5, 13.5, 0.02, 4);
  const ReachEnvelope drawn = slack_span(4.5, 9, 0.006 * 9, false);
  EXPECT_NEAR(part.bow_in, drawn.bow_in, rounding_in);
  EXPECT_NEAR(part.bound_half_width_in, drawn.bound_half_width_in, rounding_in);
  EXPECT_NEAR(part.surplus_in, drawn.surplus_in, rounding_in);
}

TEST(ShortenedEnvelope, SagsByTheFourthPowerOfABeamAndTheSecondOfAString) {
  ReachEnvelope span;
  span.start_in = 0;
  span.end_in = 60;
  span.sag_in = 0.03625;  // of 1/8 in cable over 60 in at 30 lbf; a quarter of it over 30 in
  EXPECT_NEAR(shortened(span, 0, 30, 0, 2).sag_in, 0.0090625, rounding_in);
  EXPECT_NEAR(shortened(span, 0, 30, 0, 4).sag_in, 0.03625 / 16, rounding_in);
}

TEST(ShortenedEnvelope, HasTheNewSupportsPlayAndNoSwingWhereItIsCut) {
  ReachEnvelope span;
  span.start_in = 0;
  span.end_in = 12;
  span.play_first_in = 0.05;
  span.play_last_in = 0.07;
  span.swing_last_in = 12;
  const ReachEnvelope before = shortened(span, 0, 4, 0.02, 4);
  EXPECT_EQ(before.play_first_in, 0.05);
  EXPECT_EQ(before.play_last_in, 0.02);
  EXPECT_EQ(before.swing_last_in, 0);
  const ReachEnvelope after = shortened(span, 4, 12, 0.02, 4);
  EXPECT_EQ(after.play_first_in, 0.02);
  EXPECT_EQ(after.play_last_in, 0.07);
  EXPECT_EQ(after.swing_last_in, 12);
}

}  // namespace
}  // namespace linewright
