// Sag, bow and growth against worked figures, each with its source and how far that was read. The
// tolerance is half of the last digit of the figure, unless a comment says otherwise.

#include "physics/deflection.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace linewright {
namespace {

// 5052 tube 1/4 × 0.035, empty: E 10.2e6 psi and 0.097 lb/in³ [from memory].
const double aluminium_tube_inertia_in4 = tube_second_moment_in4(0.25, 0.18);
constexpr double aluminium_tube_weight_lb_per_in = 0.002293;
constexpr double aluminium_modulus_psi = 10.2e6;

// 1/8 in 7x19 cable: 2.90 lb per 100 ft [from memory].
constexpr double cable_weight_lb_per_in = 0.0024167;

/// Length of y(x) over 0 to `length_in`, given its slope: Simpson's rule on √(1 + y'²).
template <typename Slope>
double curve_length_in(double length_in, const Slope& slope) {
  constexpr int steps = 2000;
  const double step_in = length_in / steps;
  double sum = 0;
  for (int i = 0; i <= steps; ++i) {
    const double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
    sum += weight * std::hypot(1, slope(step_in * i));
  }
  return sum * step_in / 3;
}

TEST(Deflection, SecondMomentOfATubeIsThatOfTheRodLessThatOfTheBore) {
  // Worked example, tube 1/4 × 0.035 [calculated].
  EXPECT_NEAR(aluminium_tube_inertia_in4, 1.4022e-4, 0.5e-8);
  EXPECT_DOUBLE_EQ(tube_second_moment_in4(2, 0), std::numbers::pi / 4);
  EXPECT_DOUBLE_EQ(tube_second_moment_in4(2, 1), std::numbers::pi * 15 / 64);
}

TEST(Deflection, AluminiumTubeSagsAsInTheWorkedExample) {
  // Sag 5 w L⁴/(384 E I) pinned, w L⁴/(384 E I) clamped [from memory]; figures [calculated].
  EXPECT_NEAR(pinned_beam_sag_in({.length_in = 20,
                                  .weight_lb_per_in = aluminium_tube_weight_lb_per_in,
                                  .youngs_modulus_psi = aluminium_modulus_psi,
                                  .second_moment_in4 = aluminium_tube_inertia_in4}),
              0.003340, 0.5e-6);
  EXPECT_NEAR(clamped_beam_sag_in({.length_in = 20,
                                   .weight_lb_per_in = aluminium_tube_weight_lb_per_in,
                                   .youngs_modulus_psi = aluminium_modulus_psi,
                                   .second_moment_in4 = aluminium_tube_inertia_in4}),
              0.000668, 0.5e-6);
}

TEST(Deflection, PlasticTubeSagsSixteenTimesAsMuchOverTwiceTheSpan) {
  // Plastic tube 1/4 × 0.040, E 60e3 psi and 0.0375 lb/in³ [from memory]; figures [calculated].
  const double inertia_in4 = tube_second_moment_in4(0.25, 0.17);
  const double weight_lb_per_in = 0.0375 * std::numbers::pi / 4 * (0.25 * 0.25 - 0.17 * 0.17);
  EXPECT_NEAR(pinned_beam_sag_in({.length_in = 12,
                                  .weight_lb_per_in = weight_lb_per_in,
                                  .youngs_modulus_psi = 60e3,
                                  .second_moment_in4 = inertia_in4}),
              0.0295, 0.5e-4);
  EXPECT_NEAR(pinned_beam_sag_in({.length_in = 24,
                                  .weight_lb_per_in = weight_lb_per_in,
                                  .youngs_modulus_psi = 60e3,
                                  .second_moment_in4 = inertia_in4}),
              0.4726, 0.5e-4);
  EXPECT_DOUBLE_EQ(pinned_beam_sag_in({.length_in = 24,
                                       .weight_lb_per_in = weight_lb_per_in,
                                       .youngs_modulus_psi = 60e3,
                                       .second_moment_in4 = inertia_in4}),
                   16 * pinned_beam_sag_in({.length_in = 12,
                                            .weight_lb_per_in = weight_lb_per_in,
                                            .youngs_modulus_psi = 60e3,
                                            .second_moment_in4 = inertia_in4}));
}

TEST(Deflection, CantileverTipSagsFortyEightTimesAsMuchAsTheClampedBeam) {
  // w L⁴/(8 E I) against w L⁴/(384 E I) [from memory].
  EXPECT_DOUBLE_EQ(cantilever_tip_sag_in({.length_in = 10,
                                          .weight_lb_per_in = 2,
                                          .youngs_modulus_psi = 1e6,
                                          .second_moment_in4 = 0.5}),
                   2 * 1e4 / (8 * 1e6 * 0.5));
  EXPECT_DOUBLE_EQ(cantilever_tip_sag_in({.length_in = 10,
                                          .weight_lb_per_in = 2,
                                          .youngs_modulus_psi = 1e6,
                                          .second_moment_in4 = 0.5}),
                   48 * clamped_beam_sag_in({.length_in = 10,
                                             .weight_lb_per_in = 2,
                                             .youngs_modulus_psi = 1e6,
                                             .second_moment_in4 = 0.5}));
}

TEST(Deflection, BeamSagsSatisfyTheBeamEquation) {
  // Sag at mid-span is the double integral of moment over E I; the moments come from statics.
  const double load = 0.7, length = 9, stiffness = 1e4 * 0.3;
  const auto sag_under = [&](auto moment, double arm_from, double arm_to) {
    constexpr int steps = 4000;
    double sum = 0;
    for (int i = 0; i < steps; ++i) {
      const double x = arm_from + (arm_to - arm_from) * (i + 0.5) / steps;
      sum += moment(x) * (x - arm_from);
    }
    return sum * (arm_to - arm_from) / steps / stiffness;
  };
  // Moment-area theorem: over half of a pinned or clamped beam about its end, where the tangent at
  // mid-span is level; over a cantilever about its tip.
  const double pinned =
      sag_under([&](double x) { return load * x * (length - x) / 2; }, 0, length / 2);
  const double tip = sag_under([&](double x) { return load * x * x / 2; }, 0, length);
  const double clamped =
      -sag_under([&](double x) { return load * (length * length / 12 - x * (length - x) / 2); }, 0,
                 length / 2);
  // The midpoint rule errs by some (1/4000)² of the whole.
  EXPECT_NEAR(pinned_beam_sag_in({.length_in = length,
                                  .weight_lb_per_in = load,
                                  .youngs_modulus_psi = 1e4,
                                  .second_moment_in4 = 0.3}),
              pinned, pinned * 1e-6);
  EXPECT_NEAR(cantilever_tip_sag_in({.length_in = length,
                                     .weight_lb_per_in = load,
                                     .youngs_modulus_psi = 1e4,
                                     .second_moment_in4 = 0.3}),
              tip, tip * 1e-6);
  EXPECT_NEAR(clamped_beam_sag_in({.length_in = length,
                                   .weight_lb_per_in = load,
                                   .youngs_modulus_psi = 1e4,
                                   .second_moment_in4 = 0.3}),
              clamped, clamped * 1e-5);
}

TEST(Deflection, CableSagsAsInTheWorkedExample) {
  // w L²/(8 H) [verified: structures text on cables, eqs. 5.13 to 5.16]; figures [calculated],
  // some of them cut off instead of rounded.
  EXPECT_NEAR(string_sag_in(
                  {.length_in = 30, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 30}),
              0.0090625, 1e-6);
  EXPECT_NEAR(
      string_sag_in(
          {.length_in = 30, .weight_lb_per_in = 3.8 * cable_weight_lb_per_in, .tension_lbf = 30}),
      0.034437, 1e-6);
  EXPECT_NEAR(string_sag_in(
                  {.length_in = 60, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 30}),
              0.036250, 1e-6);
  EXPECT_NEAR(string_sag_in(
                  {.length_in = 60, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 20}),
              0.054375, 1e-6);
  EXPECT_NEAR(string_sag_in(
                  {.length_in = 48, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 15}),
              0.046400, 1e-6);
}

TEST(Deflection, ParabolaOfATautCableIsNearItsCatenary) {
  // a = H/w, sag = a (cosh(L/2a) - 1) [verified, secondary: catenary calculator page].
  const double a = 15 / cable_weight_lb_per_in;
  const double catenary_sag_in = a * (std::cosh(48 / (2 * a)) - 1);
  // The next term of cosh is (L/2a)²/12 of the first: 1.2e-6 of it here. The subtraction above
  // keeps ten digits.
  EXPECT_NEAR(string_sag_in(
                  {.length_in = 48, .weight_lb_per_in = cable_weight_lb_per_in, .tension_lbf = 15}),
              catenary_sag_in, 2e-6 * catenary_sag_in);
}

TEST(Deflection, SlackLinesBowAsInTheWorkedExamples) {
  // Parabola √(3 L δ/8), clamped cosine (2/π) √(L δ), ellipsoid ½ √((L+δ)² - L²) [calculated].
  EXPECT_NEAR(slack_string_bow_in(13.5, 0.081), 0.64036, 0.5e-5);
  EXPECT_NEAR(clamped_tube_bow_in(13.5, 0.081), 0.66572, 0.5e-5);
  EXPECT_NEAR(ellipsoid_half_width_in(13.5, 13.5 + 0.081), 0.74053, 0.5e-5);
  EXPECT_NEAR(slack_string_bow_in(20, 0.05), 0.61237, 0.5e-5);
  EXPECT_NEAR(clamped_tube_bow_in(20, 0.05), 0.63662, 0.5e-5);
  EXPECT_NEAR(ellipsoid_half_width_in(20, 20.05), 0.70755, 0.5e-5);
  EXPECT_NEAR(slack_string_bow_in(24, 0.02), 0.42426, 0.5e-5);
  EXPECT_NEAR(clamped_tube_bow_in(24, 0.02), 0.44106, 0.5e-5);
  EXPECT_NEAR(ellipsoid_half_width_in(24, 24.02), 0.49000, 0.5e-5);
}

TEST(Deflection, BowedShapesUseUpTheSurplus) {
  // Integrated length of both shapes; the bow leaves out terms of the order of δ/L of the surplus.
  const double length_in = 20, surplus_in = 0.05;
  const double string_in = slack_string_bow_in(length_in, surplus_in);
  const double parabola_in = curve_length_in(
      length_in, [&](double x) { return 4 * string_in / length_in * (1 - 2 * x / length_in); });
  EXPECT_NEAR(parabola_in - length_in, surplus_in, surplus_in * 3 * surplus_in / length_in);
  const double tube_in = clamped_tube_bow_in(length_in, surplus_in);
  const double cosine_in = curve_length_in(length_in, [&](double x) {
    return tube_in * std::numbers::pi / length_in * std::sin(2 * std::numbers::pi * x / length_in);
  });
  EXPECT_NEAR(cosine_in - length_in, surplus_in, surplus_in * 3 * surplus_in / length_in);
}

TEST(Deflection, EllipsoidHoldsEveryShape) {
  // 3-4-5: a string of 10 in over foci 6 in apart reaches 4 in to the side.
  EXPECT_DOUBLE_EQ(ellipsoid_half_width_in(6, 10), 4);
  for (double surplus_in = 1e-6; surplus_in < 1; surplus_in *= 3) {
    const double bound_in = ellipsoid_half_width_in(20, 20 + surplus_in);
    EXPECT_LT(slack_string_bow_in(20, surplus_in), bound_in);
    EXPECT_LT(clamped_tube_bow_in(20, surplus_in), bound_in);
  }
}

TEST(Deflection, LineThatIsNotLongerThanItsSpanDoesNotBow) {
  for (const double surplus_in : {0.0, -0.3}) {
    EXPECT_EQ(slack_string_bow_in(20, surplus_in), 0);
    EXPECT_EQ(clamped_tube_bow_in(20, surplus_in), 0);
    EXPECT_EQ(ellipsoid_half_width_in(20, 20 + surplus_in), 0);
  }
}

TEST(Deflection, AirframeOutgrowsACableAsInTheWorkedExample) {
  // 180 in run, +100 °F, aluminium 12.8 against steel 6.5 and stainless 9.6, 1e-6/°F
  // [calculated].
  EXPECT_NEAR(thermal_growth_in(180, {.line_per_degf = 6.5e-6, .airframe_per_degf = 12.8e-6}, 100),
              -0.1134, 1e-12);
  EXPECT_NEAR(thermal_growth_in(180, {.line_per_degf = 9.6e-6, .airframe_per_degf = 12.8e-6}, 100),
              -0.0576, 1e-12);
  EXPECT_NEAR(thermal_growth_in(180, {.line_per_degf = 12.8e-6, .airframe_per_degf = 6.5e-6}, 100),
              0.1134, 1e-12);
  EXPECT_EQ(thermal_growth_in(180, {.line_per_degf = 12.8e-6, .airframe_per_degf = 12.8e-6}, 100),
            0);
}

}  // namespace
}  // namespace linewright
