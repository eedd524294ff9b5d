// Cables under load, heat and friction against worked figures, each with its source. The tolerance
// is half of the last digit of the figure.

#include "physics/cable.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "oracles/searched_loop.hpp"
#include "physics/deflection.hpp"

namespace linewright {
namespace {

constexpr double degree = std::numbers::pi / 180;

const Line& cable(const std::string& name) {
  return *built_in_catalogue().find_line(name);
}

double stiffness(const std::string& name) {
  return cable(name).axial_stiffness_lbf->value;
}

// Cable-assembly maker's stretch calculator [verified, secondary]: 7x19 stainless 1/8 in, 20 in,
// 500 lb: 0.5184 %, 0.10368 in.
TEST(Cable, StretchesAsInTheMakersPublishedExample) {
  EXPECT_NEAR(cable_stretch_in(500, {.length_in = 20,
                                     .axial_stiffness_lbf = stiffness("cable-7x19-1/8-stainless")}),
              0.10368, 0.5e-5);
}

// Worked from the maker's table of stretch constants [calculated].
TEST(Cable, GalvanisedCableStretchesLessThanStainless) {
  EXPECT_NEAR(cable_stretch_in(200, {.length_in = 150,
                                     .axial_stiffness_lbf = stiffness("cable-7x19-1/8-steel")}),
              0.2688, 0.5e-4);
  EXPECT_NEAR(cable_stretch_in(200, {.length_in = 150,
                                     .axial_stiffness_lbf = stiffness("cable-7x19-1/8-stainless")}),
              0.31104, 0.5e-5);
}

// Per degree F [verified: engineering tables of linear expansion: aluminium 2024 12.7e-6 and 6061
// 13.1e-6, plain carbon steel 6.2e-6 to 6.8e-6, stainless 304 9.6e-6].
constexpr double aluminium = 12.8e-6;
constexpr double steel = 6.5e-6;
constexpr double stainless = 9.6e-6;

TEST(Cable, ExpandsByTheCataloguesFiguresInAnAirframeOfAluminium) {
  EXPECT_DOUBLE_EQ(airframe_expansion_per_degf, aluminium);
  EXPECT_DOUBLE_EQ(cable("cable-7x19-1/8-steel").expansion_per_degf->value, steel);
  EXPECT_DOUBLE_EQ(cable("cable-7x19-1/8-stainless").expansion_per_degf->value, stainless);
}

// 6.3e-6 of 111,607 lbf and 3.2e-6 of 96,451 [calculated].
TEST(Cable, TensionOfStainlessChangesLessThanHalfAsMuchWithTemperature) {
  EXPECT_NEAR(
      tension_slope_lbf_per_degf({.line_per_degf = steel, .airframe_per_degf = aluminium}, 111'607),
      0.7031, 0.5e-4);
  EXPECT_NEAR(tension_slope_lbf_per_degf(
                  {.line_per_degf = stainless, .airframe_per_degf = aluminium}, 96'451),
              0.3086, 0.5e-4);
}

// 180 in warmed by 100 degrees F [calculated]: the airframe outgrows the cable by 0.1134 in, or
// 0.0576 in where it is stainless.
TEST(Cable, TensionSlopeIsTheAirframesOutgrowthHeldByTheCablesStiffness) {
  const double outgrown =
      -thermal_growth_in(180, {.line_per_degf = steel, .airframe_per_degf = aluminium}, 100);
  EXPECT_NEAR(outgrown, 0.1134, 0.5e-4);
  EXPECT_NEAR(
      -thermal_growth_in(180, {.line_per_degf = stainless, .airframe_per_degf = aluminium}, 100),
      0.0576, 0.5e-4);
  const double tension =
      100 *
      tension_slope_lbf_per_degf({.line_per_degf = steel, .airframe_per_degf = aluminium}, 111'607);
  EXPECT_NEAR(cable_stretch_in(tension, {.length_in = 180, .axial_stiffness_lbf = 111'607}),
              outgrown, 1e-12);
}

TEST(Cable, TensionRangeRunsFromTheColdToTheHotEnd) {
  const TensionRange range = tension_range(60, 0.5, {20, 70, 110});
  EXPECT_DOUBLE_EQ(range.lowest_lbf, 35);
  EXPECT_DOUBLE_EQ(range.lowest_at_degf, 20);
  EXPECT_DOUBLE_EQ(range.highest_lbf, 80);
  EXPECT_DOUBLE_EQ(range.highest_at_degf, 110);
}

TEST(Cable, CableThatOutgrowsTheAirframeSlackensInTheHeat) {
  const TensionRange range = tension_range(60, -0.5, {20, 70, 110});
  EXPECT_DOUBLE_EQ(range.lowest_lbf, 40);
  EXPECT_DOUBLE_EQ(range.lowest_at_degf, 110);
  EXPECT_DOUBLE_EQ(range.highest_lbf, 85);
  EXPECT_DOUBLE_EQ(range.highest_at_degf, 20);
}

// 100 in of 1/8 7x19 steel, AE 111,607 lbf: 1116.07 lbf/in. Aluminium less steel gains 6.3e-4 in
// per degF over it: 0.70312 lbf if rigid [calculated].
TEST(TiedCable, AndTheAirframeAreTwoSpringsInSeries) {
  const TiedCable cable{1116.07, 6.3e-4};
  // An airframe as stiff as the cable takes half.
  EXPECT_NEAR(tied_tension_slope_lbf_per_degf(cable, {}, 1116.07), 0.70312 / 2, 0.5e-5);
  // Δα L / (L / AE + 1 / k), k = 1200 lbf/in: 6.3e-4 / (8.96002e-4 + 8.33333e-4) = 0.364302.
  EXPECT_NEAR(tied_tension_slope_lbf_per_degf(cable, {}, 1200), 0.364302, 0.5e-6);
}

TEST(TiedCable, OfAPairFindsTheAirframeHalfAsStiff) {
  const TiedCable cable{1116.07, 6.3e-4};
  EXPECT_NEAR(tied_tension_slope_lbf_per_degf(cable, std::vector{cable}, 1200),
              tied_tension_slope_lbf_per_degf(cable, {}, 600), 1e-12);
}

TEST(TiedCable, KeepsTheForcesOfAllInBalanceWithTheAirframe) {
  // Each cable is k (g − u) tight for an airframe shortened by u, and u is their sum over its
  // stiffness.
  const TiedCable first{1000, 5e-4};
  const TiedCable second{400, 9e-4};
  const double here = tied_tension_slope_lbf_per_degf(first, std::vector{second}, 800);
  const double there = tied_tension_slope_lbf_per_degf(second, std::vector{first}, 800);
  EXPECT_NEAR(here, 1000 * (5e-4 - (here + there) / 800), 1e-12);
  EXPECT_NEAR(there, 400 * (9e-4 - (here + there) / 800), 1e-12);
}

TEST(TiedCable, NeverChangesLessInAStifferAirframeAndTendsToTheRigidOne) {
  std::mt19937 random(397);
  const auto number = [&](double low, double high) {
    return std::exp(std::uniform_real_distribution<double>(std::log(low), std::log(high))(random));
  };
  for (int i = 0; i < 500; ++i) {
    const TiedCable cable{number(10, 1e5), number(1e-5, 1e-2)};
    const std::vector<TiedCable> others(static_cast<std::size_t>(i % 3), cable);
    const double rigid = cable.stiffness_lbf_per_in * cable.outgrown_in_per_degf;
    double before = 0;
    for (double airframe = 1; airframe < 1e12; airframe *= 3) {
      const double slope = tied_tension_slope_lbf_per_degf(cable, others, airframe);
      ASSERT_GE(slope, before);
      ASSERT_LE(slope, rigid * (1 + 1e-12));
      before = slope;
    }
    ASSERT_NEAR(before, rigid, rigid * 1e-6);
  }
}

// Two springs between two levers; figures [calculated] from the balance of the levers.
TEST(PulledLoop, OfTwoAlikeSharesThePullUntilOneIsSlack) {
  const LoopedCable cable{.tension_lbf = 40, .stiffness_lbf_per_in = 500};
  const PulledLoop light = pulled_loop(cable, cable, 60);
  EXPECT_DOUBLE_EQ(light.pulled_lbf, 70);
  EXPECT_DOUBLE_EQ(light.other_lbf, 10);
  EXPECT_EQ(light.other_slack_in, 0);
  const PulledLoop just_slack = pulled_loop(cable, cable, 80);
  EXPECT_DOUBLE_EQ(just_slack.pulled_lbf, 80);
  EXPECT_NEAR(just_slack.other_lbf, 0, 1e-12);
  const PulledLoop heavy = pulled_loop(cable, cable, 200);
  EXPECT_DOUBLE_EQ(heavy.pulled_lbf, 200);
  EXPECT_EQ(heavy.other_lbf, 0);
  EXPECT_DOUBLE_EQ(heavy.other_slack_in, 120.0 / 500);
}

TEST(PulledLoop, OfTwoUnlikeSharesThePullByStiffness) {
  const LoopedCable soft{.tension_lbf = 40, .stiffness_lbf_per_in = 500};
  const LoopedCable stiff{.tension_lbf = 40, .stiffness_lbf_per_in = 1000};
  // Of 60 lbf the soft one takes a third and the stiff one two, whichever is pulled.
  EXPECT_NEAR(pulled_loop(soft, stiff, 60).pulled_lbf, 60, 1e-12);
  EXPECT_NEAR(pulled_loop(soft, stiff, 60).other_lbf, 0, 1e-12);
  EXPECT_NEAR(pulled_loop(stiff, soft, 60).pulled_lbf, 80, 1e-12);
  EXPECT_NEAR(pulled_loop(stiff, soft, 60).other_lbf, 20, 1e-12);
}

// Cold left the pulled one 0.060 in too long: its lever turns by that before it pulls at all.
TEST(PulledLoop, HasTheSlackOfBothCablesInTheOther) {
  const LoopedCable taut{.tension_lbf = 40, .stiffness_lbf_per_in = 500};
  const LoopedCable slack{.slack_in = 0.060, .stiffness_lbf_per_in = 500};
  EXPECT_NEAR(pulled_loop(slack, taut, 50).other_slack_in, 0.060 - 0.080 + 0.100, 1e-12);
  EXPECT_NEAR(pulled_loop(slack, slack, 50).other_slack_in, 0.120 + 0.100, 1e-12);
}

// An airframe that gives 1/600 in a pound: 20 lbf beyond what both cables had bring its ends 1/30
// in nearer, which is left over of either cable.
TEST(PulledLoop, IsLeftSlackerByAnAirframeThatGives) {
  const LoopedCable cable{.tension_lbf = 40, .stiffness_lbf_per_in = 500};
  EXPECT_NEAR(pulled_loop(cable, cable, 100, 1.0 / 600).other_slack_in, 20.0 / 500 + 2.0 / 30,
              1e-12);
  EXPECT_NEAR(pulled_loop(cable, cable, 60, 1.0 / 600).other_lbf, 10, 1e-12);
}

TEST(PulledLoop, HoldsTheEquationsOfAnySearchedLoop) {
  std::mt19937 random(11);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  for (int i = 0; i < 500; ++i) {
    const auto cable = [&] {
      LoopedCable each{.stiffness_lbf_per_in = between(100, 3000)};
      if (i % 3 == 0)
        each.slack_in = between(0, 0.3);
      else
        each.tension_lbf = between(0, 120);
      return each;
    };
    const LoopedCable pulled = cable();
    const LoopedCable other = cable();
    const double give = i % 2 == 0 ? 0 : 1 / between(200, 5000);
    const double pull = between(1, 400);
    const PulledLoop found = pulled_loop(pulled, other, pull, give);
    const SearchedLoop searched = searched_loop(pulled, other, pull, give);
    // The search ends at 1e-9 in of lever movement, and no cable is stiffer than 3000 lbf/in.
    ASSERT_NEAR(found.pulled_lbf, searched.pulled_lbf, 1e-4) << i;
    ASSERT_NEAR(found.other_lbf, searched.other_lbf, 1e-4) << i;
    ASSERT_NEAR(found.other_slack_in, searched.other_slack_in, 1e-7) << i;
  }
}

// Capstan equation [from memory]; figures [calculated].
TEST(Cable, FrictionRoundAGuideGrowsByTheCapstanEquation) {
  EXPECT_NEAR(capstan_ratio(0.2, 90 * degree), 1.369108, 0.5e-6);
  EXPECT_NEAR(capstan_ratio(0.1, 90 * degree), 1.170089, 0.5e-6);
  EXPECT_NEAR(capstan_ratio(0.2, 3 * degree), 1.010527, 0.5e-6);
  EXPECT_NEAR(capstan_ratio(0.3, 180 * degree), 2.566332, 0.5e-6);
  EXPECT_DOUBLE_EQ(capstan_ratio(0, 2), 1);
}

// 2 T sin(θ/2) [from memory: statics]; figures [calculated].
TEST(Cable, PushesOnAGuideByTwiceTheSineOfHalfTheTurn) {
  EXPECT_NEAR(guide_push_lbf(70, 3 * degree), 3.6648, 0.5e-4);
  EXPECT_NEAR(guide_push_lbf(200, 3 * degree), 10.4708, 0.5e-4);
  EXPECT_NEAR(guide_push_lbf(70, 90 * degree), 98.9949, 0.5e-4);
}

// Drift over 12 in of lead [calculated].
TEST(Cable, DriftsOutOfAPulleysPlaneAlongItsLead) {
  EXPECT_NEAR(off_plane_drift_in(12, 1 * degree), 0.20946, 0.5e-5);
  EXPECT_NEAR(off_plane_drift_in(12, 2 * degree), 0.41905, 0.5e-5);
  EXPECT_NEAR(off_plane_drift_in(12, 3 * degree), 0.62889, 0.5e-5);
}

// w L²/(8 T) [verified: structures text on cables, eqs. 5.13 to 5.16]: 1/8 in 7x19 cable of
// 0.0024167 lb/in [from memory] over 30 in at 30 lbf sags 0.0090625 in [calculated].
TEST(Cable, SagsAsAStringUntilItsStretchCapsIt) {
  constexpr double stiffness = 111600;  // AE of 1/8 in 7x19 galvanised
  EXPECT_NEAR(
      cable_sag_in(
          {.length_in = 30, .weight_lb_per_in = 0.0024167, .axial_stiffness_lbf = stiffness}, 30),
      0.0090625, 0.5e-6);
  // f = L (3 w L / (64 AE))^(1/3): 30 in times the cube root of 3.0453e-8.
  const double most = untensioned_sag_in(
      {.length_in = 30, .weight_lb_per_in = 0.0024167, .axial_stiffness_lbf = stiffness});
  EXPECT_NEAR(most, 0.09369, 0.5e-4);
  // With that sag the cable pulls with what its own stretch gives: AE 8/3 (f/L)².
  const double pull = stiffness * 8 / 3 * (most / 30) * (most / 30);
  EXPECT_NEAR(0.0024167 * 30 * 30 / (8 * pull), most, 1e-9);
  for (const double tension : {0.5, 0.0, -20.0})
    EXPECT_DOUBLE_EQ(
        cable_sag_in(
            {.length_in = 30, .weight_lb_per_in = 0.0024167, .axial_stiffness_lbf = stiffness},
            tension),
        most);
}

}  // namespace
}  // namespace linewright
