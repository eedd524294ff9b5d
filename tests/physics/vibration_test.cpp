// Frequencies and hanging lines against worked figures, each with its source and how far that was
// read. The tolerance is half of the last digit of the figure, unless a comment says otherwise.

#include "physics/vibration.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "physics/deflection.hpp"

namespace linewright {
namespace {

// 1/8 in 7x19 cable: 2.90 lb per 100 ft [from memory].
constexpr double cable_weight_lb_per_in = 2.90 / 1200;

// 5052 tube 1/4 × 0.035, empty: E 10.2e6 psi, 0.097 lb/in³ [from memory].
constexpr double aluminium_weight_lb_per_in =
    0.097 * std::numbers::pi / 4 * (0.25 * 0.25 - 0.18 * 0.18);
constexpr double aluminium_modulus_psi = 10.2e6;
const double aluminium_inertia_in4 = tube_second_moment_in4(0.25, 0.18);

double aluminium_hz(BeamEnds ends, double length_in) {
  return beam_frequency_hz(ends, {.length_in = length_in,
                                  .weight_lb_per_in = aluminium_weight_lb_per_in,
                                  .youngs_modulus_psi = aluminium_modulus_psi,
                                  .second_moment_in4 = aluminium_inertia_in4});
}

TEST(TautString, SwingsAsInTheWorkedExamples) {
  // (1/2L) √(T g/w) [from memory]; figures [calculated].
  EXPECT_NEAR(taut_string_frequency_hz(
                  {.length_in = 30, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 30}),
              36.488, 0.0005);
  EXPECT_NEAR(taut_string_frequency_hz(
                  {.length_in = 60, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 30}),
              18.244, 0.0005);
  EXPECT_NEAR(taut_string_frequency_hz(
                  {.length_in = 60, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 20}),
              14.896, 0.0005);
  EXPECT_NEAR(taut_string_frequency_hz(
                  {.length_in = 48, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 15}),
              16.125, 0.0005);
}

TEST(TautString, IsAnOctaveHigherAtHalfTheLengthOrFourTimesTheTension) {
  const double base =
      taut_string_frequency_hz({.length_in = 40, .weight_lb_per_in = 0.003, .tension_lbf = 25});
  EXPECT_DOUBLE_EQ(
      taut_string_frequency_hz({.length_in = 20, .weight_lb_per_in = 0.003, .tension_lbf = 25}),
      2 * base);
  EXPECT_DOUBLE_EQ(
      taut_string_frequency_hz({.length_in = 40, .weight_lb_per_in = 0.003, .tension_lbf = 100}),
      2 * base);
  EXPECT_DOUBLE_EQ(
      taut_string_frequency_hz({.length_in = 40, .weight_lb_per_in = 0.012, .tension_lbf = 25}),
      base / 2);
}

TEST(Beam, AluminiumTubeSwingsAsInTheWorkedExamples) {
  // k/2π √(E I g/(w L⁴)); k 22.373 clamped at both ends [verified: Thomson, Theory of Vibration,
  // App. D], 15.418 pinned and clamped [verified, secondary: 1977 rotorcraft structural manual on a
  // calculator page, to 15.4], π² pinned [from memory]; figures [calculated].
  EXPECT_NEAR(aluminium_hz(BeamEnds::pinned_pinned, 20), 60.94, 0.005);
  EXPECT_NEAR(aluminium_hz(BeamEnds::pinned_clamped, 20), 95.20, 0.005);
  EXPECT_NEAR(aluminium_hz(BeamEnds::clamped_clamped, 20), 138.14, 0.005);
  EXPECT_NEAR(aluminium_hz(BeamEnds::pinned_pinned, 12), 169.27, 0.005);
  EXPECT_NEAR(aluminium_hz(BeamEnds::clamped_clamped, 12), 383.72, 0.005);
  EXPECT_NEAR(aluminium_hz(BeamEnds::pinned_pinned, 24), 42.32, 0.005);
  EXPECT_NEAR(aluminium_hz(BeamEnds::clamped_clamped, 24), 95.93, 0.005);
}

TEST(Beam, PlasticTubeSwingsAsInTheWorkedExamples) {
  // Plastic tube 1/4 × 0.040: E 60e3 psi, 0.0375 lb/in³ [from memory]; figures [calculated].
  const double inertia_in4 = tube_second_moment_in4(0.25, 0.17);
  const double weight_lb_per_in = 0.0375 * std::numbers::pi / 4 * (0.25 * 0.25 - 0.17 * 0.17);
  const auto hz = [&](double length_in) {
    return beam_frequency_hz(BeamEnds::pinned_pinned, {.length_in = length_in,
                                                       .weight_lb_per_in = weight_lb_per_in,
                                                       .youngs_modulus_psi = 60e3,
                                                       .second_moment_in4 = inertia_in4});
  };
  EXPECT_NEAR(hz(12), 20.49, 0.005);
  EXPECT_NEAR(hz(24), 5.12, 0.005);
}

TEST(Beam, ConstantsAreTheSquaresOfTheRootsOfTheirEquations) {
  // A beam's first mode obeys cos x cosh x = 1 clamped at both ends, −1 with one end free, and
  // tan x = tanh x pinned at one end: k = x². The published constants have four or five digits.
  const double clamped = std::sqrt(first_mode_constant(BeamEnds::clamped_clamped));
  EXPECT_NEAR(std::cos(clamped) * std::cosh(clamped), 1, 0.01);
  const double tail = std::sqrt(first_mode_constant(BeamEnds::clamped_free));
  EXPECT_NEAR(std::cos(tail) * std::cosh(tail), -1, 0.001);
  const double propped = std::sqrt(first_mode_constant(BeamEnds::pinned_clamped));
  EXPECT_NEAR(std::tan(propped), std::tanh(propped), 0.001);
  EXPECT_DOUBLE_EQ(std::sqrt(first_mode_constant(BeamEnds::pinned_pinned)), std::numbers::pi);
}

TEST(Beam, SwingsAQuarterAsFastOverTwiceTheLength) {
  for (const BeamEnds ends : {BeamEnds::pinned_pinned, BeamEnds::pinned_clamped,
                              BeamEnds::clamped_clamped, BeamEnds::clamped_free})
    EXPECT_DOUBLE_EQ(aluminium_hz(ends, 40), aluminium_hz(ends, 20) / 4);
}

TEST(MeetingSpeed, IsTheFrequencyAMinuteSharedAmongTheOrder) {
  EXPECT_DOUBLE_EQ(meeting_rpm(40, 1), 2400);
  EXPECT_DOUBLE_EQ(meeting_rpm(40, 2), 1200);
}

TEST(Catenary, OfOneSpanPerParameterIsTheHyperbolicCosine) {
  // L = 2 a: the sag is a (cosh 1 − 1) and the length 2 a sinh 1.
  EXPECT_NEAR(catenary_sag_in({.length_in = 2, .weight_lb_per_in = 1, .tension_lbf = 1}),
              std::cosh(1.0) - 1, 1e-15);
  EXPECT_NEAR(catenary_length_in({.length_in = 2, .weight_lb_per_in = 1, .tension_lbf = 1}),
              2 * std::sinh(1.0), 1e-15);
}

TEST(Catenary, SagsAsTheWorkedExamplesOfTautCables) {
  // Parabola w L²/(8 T) [verified: structures text on cables]; so flat, both agree to all digits
  // given.
  EXPECT_NEAR(catenary_sag_in(
                  {.length_in = 30, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 30}),
              0.0090625, 0.5e-6);
  EXPECT_NEAR(catenary_sag_in(
                  {.length_in = 60, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 20}),
              0.054375, 1e-6);
  // The last figure is cut off, not rounded.
  EXPECT_NEAR(
      catenary_sag_in(
          {.length_in = 30, .weight_lb_per_in = 3.8 * cable_weight_lb_per_in, .tension_lbf = 30}),
      0.0344375, 1e-6);
}

TEST(Catenary, IsNeverFlatterThanTheParabolaAndDeeperByLittle) {
  // With u = L/2a the two differ by (cosh u − 1)/(u²/2) − 1 ≈ u²/12 = 4/3 (f/L)². Up to a sag of a
  // tenth of the span, the parabola's range, the next term keeps that under 1.4 (f/L)²: 1.4 % at
  // most. Cables as rigged sag under a hundredth: 0.014 %.
  std::mt19937 random(7);
  std::uniform_real_distribution<double> spans(2, 200), weights(0.0003, 0.05), steepness(-5, -1);
  for (int i = 0; i < 2000; ++i) {
    const double span = spans(random);
    const double weight = weights(random);
    const double share = std::pow(10.0, steepness(random));
    const double tension = weight * span / (8 * share);
    const double parabola =
        string_sag_in({.length_in = span, .weight_lb_per_in = weight, .tension_lbf = tension});
    const double exact =
        catenary_sag_in({.length_in = span, .weight_lb_per_in = weight, .tension_lbf = tension});
    ASSERT_NEAR(parabola, share * span, 1e-9 * span);
    ASSERT_GE(exact, parabola * (1 - 1e-12));
    ASSERT_LE(exact, parabola * (1 + 1.4 * share * share + 1e-12));
  }
}

TEST(Catenary, OfASlackLineIsAsDeepAsTheBowOfItsSurplusLength) {
  // √(3 L δ/8) against the catenary of the same length. S = L [1 + 8/3 s² − 32/5 s⁴ …], s = f/L,
  // for the parabola: leaving out the s⁴ makes the bow too shallow by about 6/5 s² of itself, and
  // the other shape deeper by less than that again.
  for (const double share : {0.001, 0.01, 0.03, 0.1}) {
    const double span = 20;
    const double tension = span / (8 * share);
    const double surplus =
        catenary_length_in({.length_in = span, .weight_lb_per_in = 1, .tension_lbf = tension}) -
        span;
    const double exact =
        catenary_sag_in({.length_in = span, .weight_lb_per_in = 1, .tension_lbf = tension});
    EXPECT_NEAR(slack_string_bow_in(span, surplus), exact, 2.4 * share * share * exact + 1e-9)
        << share;
  }
}

}  // namespace
}  // namespace linewright
