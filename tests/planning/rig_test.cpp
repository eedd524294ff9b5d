// The rig of control cables, against one worked by hand from published figures: stretch of
// 1/8 7x19 steel by its maker's constant [verified, secondary], strength by AC 43.13-1B Table 7-3
// [verified], weight 2.90 lb per 100 ft [from memory], capstan equation [from memory].

#include "planning/rig.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "lines/prepare.hpp"
#include "planning/cable_project.hpp"

namespace linewright {
namespace {

constexpr double degrees = std::numbers::pi / 180;

/// 150 in: four spans, the last of which turns a right angle inside a sleeve.
CableProject hand_worked() {
  RoutePoint corner;
  corner.at = {120, 0, 0};
  CableProject project(
      {0, 0, 0}, {120, 0, 30},
      {guided({30, 0, 0}, HoldKind::fairlead), guided({60, 0, 0}, HoldKind::fairlead),
       guided({90, 0, 0}, HoldKind::fairlead), corner});
  project.tension(30, 200);
  project.cable().travel = Travel{2.5, 2.1, {}};
  project.cable().sleeves = {sleeve(110, 130)};
  return project;
}

TEST(Rig, OfTheWorkedCableStretchesAsPublished) {
  const RiggedCable cable = hand_worked().rigged();
  EXPECT_DOUBLE_EQ(cable.length_in, 150);
  // 150 in at 200 lb: 0.2688 in; at 30 lb 3/20 of it.
  EXPECT_NEAR(cable.stretch_at_limit_load_in.value(), 0.2688, 1e-9);
  EXPECT_NEAR(cable.stretch_as_rigged_in.value(), 0.04032, 1e-9);
  EXPECT_NEAR(cable.travel_lost_in.value(), 0.22848, 1e-9);
  EXPECT_NEAR(cable.travel_lost_share.value(), 0.22848 / 2.1, 1e-9);
  EXPECT_EQ(cable.missing, std::vector<std::string>{});
}

TEST(Rig, OverTheBreakingStrengthHasNoFigures) {
  CableProject project = hand_worked();
  project.tension(2001, 200);
  project.cable().lever = ControlLever{1, 100, {}};
  const RiggedCable cable = project.rigged();
  EXPECT_TRUE(cable.is_rigged_over_strength());
  EXPECT_EQ(cable.rigged_lbf, 2001);
  for (const auto& figure :
       {cable.stretch_as_rigged_in, cable.travel_lost_in, cable.friction_lbf,
        cable.cut.cut_length_in, cable.pilot->tension_lbf, cable.pilot->strength_factor,
        cable.pilot->breakout_lbf, cable.spans[1].sag_in, cable.spans[1].natural_frequency_hz})
    EXPECT_FALSE(figure.has_value());
  ASSERT_EQ(cable.chart.size(), 1u);
  for (const ChartRow& row : cable.chart) {
    EXPECT_TRUE(row.over_strength);
    EXPECT_FALSE(row.tension_lbf || row.slack_in);
  }
  EXPECT_NEAR(cable.stretch_at_limit_load_in.value(), 0.2688, 1e-9) << "that load it stands";
  project.tension(30, 2001);
  EXPECT_FALSE(project.rigged().stretch_at_limit_load_in.has_value());
  EXPECT_TRUE(project.rigged().stretch_as_rigged_in.has_value());
}

TEST(Rig, OfTheWorkedCableHasTenTimesItsLimitLoad) {
  EXPECT_DOUBLE_EQ(hand_worked().rigged().strength_factor.value(), 10);
}

TEST(Rig, OfTheWorkedCableRubsAsTheCapstanEquationSays) {
  // exp(0.2 · 90°) = 1.369108: at 30 lbf it takes 11.07 lbf more to move it.
  const RiggedCable cable = hand_worked().rigged();
  EXPECT_NEAR(cable.friction.ratio(), 1.369108, 0.5e-6);
  EXPECT_NEAR(cable.friction_lbf.value(), 30 * 0.369108, 2e-5);
  ASSERT_EQ(cable.friction.turns.size(), 1u);
  EXPECT_EQ(cable.friction.turns[0].kind, GuideKind::sleeve);
  EXPECT_DOUBLE_EQ(cable.friction.turns[0].at_in, 120);
}

TEST(Rig, OfTheWorkedCableSagsAndSwingsSpanBySpan) {
  CableProject project = hand_worked();
  project.project.load_factor = {3.8, -1.5};
  project.project.excitation = Excitation{600, 2700, {}, 2, {}};
  const std::vector<RigSpan> spans = project.rigged().spans;
  ASSERT_EQ(spans.size(), 4u);
  // 30 in at 30 lbf: sag 0.0090625, at 3.8 g 0.0344375 in, 36.488 Hz.
  EXPECT_DOUBLE_EQ(spans[1].from_in, 30);
  EXPECT_DOUBLE_EQ(spans[1].to_in, 60);
  EXPECT_NEAR(spans[1].sag_in.value(), 0.0090625, 1e-9);
  EXPECT_NEAR(spans[1].sag_at_load_factor_in.value(), 0.0344375, 1e-9);
  EXPECT_NEAR(spans[1].natural_frequency_hz.value(), 36.488, 0.0005);
  // 60 in at 30 lbf: sag 0.036250 in, 18.244 Hz.
  EXPECT_NEAR(spans[3].sag_in.value(), 0.036250, 1e-9);
  EXPECT_NEAR(spans[3].natural_frequency_hz.value(), 18.244, 0.0005);
  // Sixty turns a minute for each hertz, and half as many where two blades pass in a turn.
  ASSERT_EQ(spans[1].meetings.size(), 2u);
  EXPECT_NEAR(spans[1].meetings[0].rpm, 36.488 * 60, 0.03);
  EXPECT_TRUE(spans[1].meetings[0].in_range);
  EXPECT_EQ(spans[3].meetings[1].times_per_turn, 2);
  EXPECT_NEAR(spans[3].meetings[1].rpm, 18.244 * 30, 0.03);
  EXPECT_FALSE(spans[3].meetings[1].in_range);
}

TEST(Rig, OfTheWorkedCableSagsMostAtItsColdest) {
  // Aluminium less steel 6.6e-6 per degF makes 0.7366 lb per degF [calculated]: 20 degrees colder
  // leaves 15.268 of the 30 lbf, so that the sag grows by 30/15.268.
  CableProject project = hand_worked();
  project.line().expansion_per_degf->value = 12.8e-6 - 6.6e-6;
  project.project.temperature = {50, 70, 90};
  const RiggedCable cable = project.rigged();
  ASSERT_EQ(cable.chart.size(), 5u);
  EXPECT_NEAR(cable.chart[0].tension_lbf.value(), 30 - 20 * 0.7366, 0.0011);
  EXPECT_NEAR(cable.chart[4].tension_lbf.value(), 30 + 20 * 0.7366, 0.0011);
  EXPECT_DOUBLE_EQ(cable.chart[2].tension_lbf.value(), 30);
  EXPECT_TRUE(cable.chart[2].as_rigged);
  EXPECT_NEAR(cable.minimum_rigged_lbf.value(), 20 * 0.7366, 0.0011);
  EXPECT_DOUBLE_EQ(cable.slackest_degf.value(), 50);
  EXPECT_NEAR(cable.spans[0].sag_at_load_factor_in.value(), 0.0090625 * 30 / 15.268, 2e-6);
}

TEST(Rig, AtTheLeastTensionIsJustTautWhenColdest) {
  CableProject project = hand_worked();
  project.project.temperature = {-20, 70, 120};
  const double least = project.rigged().minimum_rigged_lbf.value();
  project.tension(least, 200);
  const RiggedCable just = project.rigged();
  EXPECT_NEAR(just.chart.front().tension_lbf.value(), 0, 1e-9);
  EXPECT_NEAR(just.chart.front().slack_in.value(), 0, 1e-9);
  EXPECT_GT(just.chart[1].tension_lbf.value(), 1);
}

TEST(Rig, SaysHowMuchTooLongASlackCableIs) {
  // A rigid airframe of aluminium shrinks by 12.8e-6 − 6.5e-6 per degF against the cable: over 90
  // degrees and 150 in by 0.08505 in, of which the stretch at 10 lbf, 0.01344 in, was taken up.
  CableProject project = hand_worked();
  project.project.temperature = {-20, 70, 120};
  project.tension(10, 200);
  const ChartRow coldest = project.rigged().chart.front();
  EXPECT_EQ(coldest.tension_lbf.value(), 0);
  EXPECT_NEAR(coldest.slack_in.value(), 0.08505 - 0.01344, 1e-9);
}

TEST(Rig, OfStainlessCableChangesLessThanHalfAsMuch) {
  CableProject steel = hand_worked();
  steel.project.temperature = {-20, 70, 120};
  CableProject stainless = steel;
  stainless.cable().line = "cable-7x19-1/8-stainless";
  // Aluminium less either metal, 3.2e-6 and 6.3e-6 per degF [verified: engineering tables], times
  // their stretch by G 0.0000162 and 0.0000140 [verified, secondary: a wire-rope maker's table].
  EXPECT_NEAR(
      stainless.rigged().minimum_rigged_lbf.value() / steel.rigged().minimum_rigged_lbf.value(),
      3.2 / 6.3 * 0.0000140 / 0.0000162, 1e-9);
}

TEST(RigChart, StepsByTenDegreesBetweenTheEnds) {
  EXPECT_EQ(chart_temperatures({20, 70, 60}), (std::vector<double>{20, 30, 40, 50, 60, 70}));
  EXPECT_EQ(chart_temperatures({-13, 65, 12}), (std::vector<double>{-13, -10, 0, 10, 12, 65}));
  EXPECT_EQ(chart_temperatures({70, 70, 70}), (std::vector<double>{70}));
}

TEST(RigFriction, OfABallBearingPulleyIsTwoPerCentAQuarterTurn) {
  CableProject project({0, 0, 0}, {50, 50, 0}, {pulley({50, 0, 0}, 2.5)});
  project.tension(50);
  const RiggedCable cable = project.rigged();
  EXPECT_NEAR(cable.friction_lbf.value(), 1.0, 1e-9);
  // 50 + 50 less two tangents of 1.25, plus a quarter of the groove.
  EXPECT_NEAR(cable.length_in, 97.5 + std::numbers::pi / 2 * 1.25, 1e-9);
}

TEST(RigFriction, OfAFairleadFollowsTheTurnInIt) {
  // A fairlead at the limit of 3 degrees: exp(0.25 · 3°) − 1 = 1.3176 % [calculated].
  CableProject project({0, 0, 0}, {50 + 50 * std::cos(3 * degrees), 50 * std::sin(3 * degrees), 0},
                       {guided({50, 0, 0}, HoldKind::fairlead)});
  project.tension(100);
  EXPECT_NEAR(project.rigged().friction_lbf.value(), 1.3176, 0.5e-4);
}

TEST(RigFriction, OfOneGuideAfterAnotherMultiplies) {
  CableProject project({0, 0, 0}, {50, 50, 50},
                       {pulley({50, 0, 0}, 2.5), guided({50, 50, 0}, HoldKind::bushing)});
  project.tension(40);
  const double quarter = std::numbers::pi / 2;
  EXPECT_NEAR(project.rigged().friction_lbf.value(),
              40 * (1.02 * std::exp(fairlead_friction * quarter) - 1), 1e-9);
}

TEST(RigFriction, SharesABendBetweenASleeveAndTheFairleadItEndsIn) {
  RoutePoint bent = guided({50, 0, 0}, HoldKind::fairlead);
  bent.bend_in = 10;
  CableProject project({0, 0, 0}, {50, 50, 0}, {bent});
  project.tension(10);
  const double middle = 40 + 10 * std::numbers::pi / 4;
  project.cable().sleeves = {sleeve(20, middle), sleeve(30, middle - 2)};
  const RiggedCable cable = project.rigged();
  EXPECT_NEAR(cable.friction.turn_rad(GuideKind::sleeve), 45 * degrees, 1e-9);
  EXPECT_NEAR(cable.friction.turn_rad(GuideKind::fairlead), 45 * degrees, 1e-9);
}

TEST(RigFriction, OfACurvedSleeveIsThatOfItsWholeTurn) {
  // A quarter turn in a sleeve, at 0.1 and at 0.2: 1.170089 and 1.369108 (capstan equation
  // [calculated]).
  RoutePoint bent;
  bent.at = {50, 0, 0};
  bent.bend_in = 10;
  CableProject project({0, 0, 0}, {50, 50, 0}, {bent});
  project.tension(100);
  project.cable().sleeves = {sleeve(35, 60)};
  const RiggedCable cable = project.rigged();
  EXPECT_NEAR(cable.friction.turn_rad(GuideKind::sleeve), 90 * degrees, 1e-9);
  EXPECT_NEAR(cable.friction.ratio(), 1.369108, 0.5e-6);
  EXPECT_NEAR(cable.friction_lbf.value(), 36.9108, 0.5e-4);
}

TEST(RigFriction, IsNotKnownWhereNothingGuidesATurn) {
  RoutePoint corner;
  corner.at = {50, 0, 0};
  CableProject project({0, 0, 0}, {100, 2, 0}, {corner});
  project.tension(30, 200);
  const RiggedCable cable = project.rigged();
  EXPECT_FALSE(cable.friction_lbf.has_value());
  EXPECT_EQ(cable.missing,
            (std::vector<std::string>{"its travel (travel)",
                                      "what guides it where it turns at its point 1"}));
}

TEST(RigFriction, IsNotKnownInAClamp) {
  CableProject project({0, 0, 0}, {100, 0, 0}, {guided({50, 0, 0}, HoldKind::clamp)});
  project.tension(30, 200);
  const RiggedCable cable = project.rigged();
  EXPECT_FALSE(cable.friction_lbf.has_value());
  EXPECT_EQ(cable.missing.back(), "how it moves in the clamp at its point 1");
}

TEST(Rig, WithoutATensionNamesItAndInventsNothing) {
  CableProject project({0, 0, 0}, {100, 0, 0});
  project.project.excitation = Excitation{600, 2700, {}, 2, {}};
  const RiggedCable cable = project.rigged();
  EXPECT_EQ(cable.missing, (std::vector<std::string>{"its tension as rigged (tension.rigged)",
                                                     "its limit load (tension.limit_load)",
                                                     "its travel (travel)"}));
  EXPECT_DOUBLE_EQ(cable.length_in, 100);
  EXPECT_FALSE(cable.rigged_lbf || cable.friction_lbf || cable.stretch_as_rigged_in ||
               cable.stretch_at_limit_load_in || cable.travel_lost_in || cable.strength_factor);
  ASSERT_EQ(cable.chart.size(), 1u);
  EXPECT_FALSE(cable.chart[0].tension_lbf.has_value());
  ASSERT_EQ(cable.spans.size(), 1u);
  EXPECT_FALSE(cable.spans[0].sag_in || cable.spans[0].natural_frequency_hz);
  EXPECT_TRUE(cable.spans[0].meetings.empty());
}

TEST(Rig, OfALineWithoutStretchKnowsItsTensionOnlyAsRigged) {
  CableProject project = hand_worked();
  project.project.temperature = {60, 70, 80};
  project.line().axial_stiffness_lbf.reset();
  const RiggedCable cable = project.rigged();
  EXPECT_EQ(cable.missing, (std::vector<std::string>{"the stretch of cable-7x19-1/8-steel"}));
  ASSERT_EQ(cable.chart.size(), 3u);
  EXPECT_FALSE(cable.chart[0].tension_lbf.has_value());
  EXPECT_EQ(cable.chart[1].tension_lbf, 30);
  EXPECT_FALSE(cable.minimum_rigged_lbf.has_value());
  EXPECT_FALSE(cable.spans[0].sag_at_load_factor_in.has_value());
  EXPECT_TRUE(cable.spans[0].sag_in.has_value());
}

TEST(Rig, OfACableThatEndsInTheAirSaysSo) {
  CableProject project({0, 0, 0}, {100, 0, 0});
  project.tension(30, 200);
  project.project.nodes[1].kind = NodeKind::end;
  const RiggedCable cable = project.rigged();
  EXPECT_EQ(cable.missing.back(), "what holds the end of its span 1");
  EXPECT_FALSE(cable.spans[0].natural_frequency_hz.has_value());
}

TEST(Rig, LeavesOutWhatIsNoCable) {
  CableProject project({0, 0, 0}, {100, 0, 0});
  project.cable().line = "tube-nylon-1/4";
  const Rig rig = plan_rig(prepare(project.project));
  EXPECT_TRUE(rig.cables.empty());
  EXPECT_TRUE(rig.notes.empty());
}

// While the other cable of a pair is taut, half of the pull stretches each [calculated].
TEST(Rig, ALimitLoadUnderTheRiggedTensionCostsHalfOfItsStretch) {
  CableProject project = hand_worked();
  project.tension(30, 20);
  const RiggedCable cable = project.rigged();
  EXPECT_NEAR(*cable.stretch_at_limit_load_in, *cable.stretch_as_rigged_in * 40 / 30, 1e-12);
  EXPECT_NEAR(cable.travel_lost_in.value(), *cable.stretch_as_rigged_in / 3, 1e-12);
}

TEST(Rig, SaysWhatAnotherCablesPullLeaves) {
  CableProject project = hand_worked();
  project.project.temperature = {70, 70, 70};
  project.tension(30, 200);
  EXPECT_FALSE(project.rigged().slack_side.has_value());
  project.project.routes.push_back(project.cable());
  project.project.routes[1].name = "rudder-right";
  const std::vector<RiggedCable> both = plan_rig(prepare(project.project)).cables;
  ASSERT_EQ(both.size(), 2u);
  const RigSlackSide side = both[0].slack_side.value();
  EXPECT_EQ(side.pulled, "rudder-right");
  EXPECT_EQ(side.pull_lbf, 200);
  EXPECT_EQ(side.tension_lbf, 0);
  // (F - 2 T) L / (AE), the limit load's stretch by its share.
  EXPECT_NEAR(side.slack_in, *both[1].stretch_at_limit_load_in * (200 - 60) / 200, 1e-12);
}

/// The worked cable with a lever: 14 CFR 23.397(b), rudder 200 lbf [verified].
CableProject levered(double ratio, std::optional<double> force_lbf = {}) {
  CableProject project = hand_worked();
  project.cable().lever = ControlLever{ratio, force_lbf, {}};
  return project;
}

TEST(RigPilot, PullsByTheLeverRatioOnTheCable) {
  const PilotPull pilot = levered(1.5).rigged().pilot.value();
  EXPECT_EQ(pilot.force_lbf, 200);
  EXPECT_FALSE(pilot.stated);
  EXPECT_DOUBLE_EQ(*pilot.pull_lbf, 300);
  // The other of a pair is slack from twice the 30 lbf on: the pull is all there is.
  EXPECT_DOUBLE_EQ(*pilot.tension_lbf, 300);
  EXPECT_NEAR(*pilot.strength_factor, 2000.0 / 300, 1e-9);
}

TEST(RigPilot, OfALightPullCountsHalfOfItAboveTheHottestTension) {
  // Aluminium less steel 6.3e-6 · 111,607 lbf over 10 degF: 7.0313 lbf above 30.
  CableProject project = levered(1, 40);
  project.project.temperature = {70, 70, 80};
  const PilotPull pilot = project.rigged().pilot.value();
  EXPECT_TRUE(pilot.stated);
  EXPECT_NEAR(*pilot.tension_lbf, 37.0313 + 20, 1e-3);
}

TEST(RigPilot, StandsForALimitLoadThatIsNotStated) {
  CableProject project = levered(1.5);
  project.tension(30);
  const RiggedCable cable = project.rigged();
  EXPECT_DOUBLE_EQ(*cable.limit_load_lbf, 300);
  EXPECT_NEAR(*cable.stretch_at_limit_load_in, 1.5 * 0.2688, 1e-9);
  EXPECT_TRUE(cable.missing.empty());
}

TEST(RigPilot, FeelsTheFrictionThroughTheLever) {
  const RiggedCable cable = levered(1.5).rigged();
  EXPECT_NEAR(*cable.pilot->breakout_lbf, 30 * 0.369108 / 1.5, 2e-5);
  EXPECT_EQ(cable.pilot->breakout_all_lbf, cable.pilot->breakout_lbf);
}

TEST(RigPilot, FeelsAllCablesOfTheControl) {
  CableProject project = levered(1.5);
  project.project.routes.push_back(project.cable());
  project.project.routes[1].name = "rudder-right";
  project.project.routes[1].lever->ratio = 3;
  const std::vector<RiggedCable> both = plan_rig(prepare(project.project)).cables;
  ASSERT_EQ(both.size(), 2u);
  EXPECT_NEAR(*both[0].pilot->breakout_all_lbf, 30 * 0.369108 / 1.5 * 1.5, 2e-5);
  EXPECT_EQ(both[1].pilot->breakout_all_lbf, both[0].pilot->breakout_all_lbf);
  project.project.routes[1].lever.reset();
  EXPECT_FALSE(plan_rig(prepare(project.project)).cables[0].pilot->breakout_all_lbf.has_value());
}

TEST(RigPilot, OfAControlWithoutATableForceIsMissing) {
  CableProject project = levered(1.5);
  project.cable().control = "flap";
  const RiggedCable cable = project.rigged();
  EXPECT_FALSE(cable.pilot->pull_lbf.has_value());
  EXPECT_EQ(cable.missing,
            std::vector<std::string>{"the pilot's limit force on its control (pilot_force)"});
}

TEST(RigAirframe, ThatGivesChangesTheTensionAsSpringsInSeries) {
  // 150 in of 111,607 lbf are 744.05 lbf/in; an airframe as stiff halves the slope.
  CableProject project = hand_worked();
  project.project.temperature = {50, 70, 90};
  const double rigid = 6.3e-6 * 111'607.142857;
  EXPECT_NEAR(*project.rigged().tension_slope_lbf_per_degf, rigid, 1e-6);
  project.project.airframe_stiffness_lbf_per_in = 111'607.142857 / 150;
  const RiggedCable cable = project.rigged();
  EXPECT_NEAR(*cable.tension_slope_lbf_per_degf, rigid / 2, 1e-6);
  EXPECT_NEAR(*cable.minimum_rigged_lbf, 20 * rigid / 2, 1e-5);
  EXPECT_NEAR(*cable.chart.front().tension_lbf, 30 - 20 * rigid / 2, 1e-5);
}

TEST(RigAirframe, LeavesTheTensionAtTheRiggingTemperature) {
  for (const double stiffness : {1.0, 300.0, 1e4, 1e8}) {
    CableProject project = hand_worked();
    project.project.temperature = {-20, 70, 120};
    project.cable().airframe_stiffness_lbf_per_in = stiffness;
    const std::vector<ChartRow> chart = project.rigged().chart;
    const auto rigged =
        std::find_if(chart.begin(), chart.end(), [](const ChartRow& row) { return row.as_rigged; });
    ASSERT_NE(rigged, chart.end());
    EXPECT_EQ(rigged->temperature_degf, 70);
    EXPECT_EQ(rigged->tension_lbf, 30);
  }
}

TEST(RigAirframe, AtTheLeastTensionIsJustTautToo) {
  CableProject project = hand_worked();
  project.project.temperature = {-20, 70, 120};
  project.project.airframe_stiffness_lbf_per_in = 1200;
  project.tension(*project.rigged().minimum_rigged_lbf, 200);
  EXPECT_NEAR(*project.rigged().chart.front().tension_lbf, 0, 1e-9);
  EXPECT_NEAR(*project.rigged().chart.front().slack_in, 0, 1e-9);
}

class Reversal : public testing::Test {
 protected:
  double number(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  /// A cable that works its way aft over fairleads, pulleys and sleeved corners.
  CableProject random_cable() {
    std::vector<RoutePoint> points;
    Vec3 at{0, 0, 0};
    const int count = static_cast<int>(number(1, 7));
    for (int i = 0; i < count; ++i) {
      at = at + Vec3{number(20, 60), number(-12, 12), number(-12, 12)};
      points.push_back(number(0, 1) < 0.5 ? guided(at, HoldKind::fairlead)
                                          : pulley(at, number(1, 4)));
    }
    CableProject project({0, 0, 0}, at + Vec3{number(20, 60), number(-12, 12), number(-12, 12)},
                         points);
    project.tension(number(5, 100), number(50, 300));
    project.cable().travel = Travel{number(0.5, 3), number(0.5, 3), {}};
    project.cable().sleeves = {sleeve(number(5, 20), number(25, 60))};
    project.project.temperature = {-20, 70, 120};
    project.project.load_factor = {3.8, -1.5};
    return project;
  }

  static CableProject reversed(CableProject project, double length_in) {
    Route& cable = project.cable();
    std::swap(cable.from, cable.to);
    std::reverse(cable.points.begin(), cable.points.end());
    for (Sleeve& each : cable.sleeves)
      each = sleeve(length_in - each.to_in, length_in - each.from_in);
    return project;
  }

 private:
  std::mt19937 random_{20};
};

TEST_F(Reversal, LeavesTheTotalsAndMirrorsTheSpans) {
  for (int i = 0; i < 300; ++i) {
    const CableProject project = random_cable();
    const RiggedCable there = project.rigged();
    const RiggedCable back = reversed(project, there.length_in).rigged();
    ASSERT_NEAR(back.length_in, there.length_in, 1e-9);
    ASSERT_NEAR(back.friction_lbf.value(), there.friction_lbf.value(), 1e-9);
    ASSERT_NEAR(back.stretch_at_limit_load_in.value(), there.stretch_at_limit_load_in.value(),
                1e-9);
    ASSERT_NEAR(back.travel_lost_share.value(), there.travel_lost_share.value(), 1e-9);
    ASSERT_EQ(back.chart.size(), there.chart.size());
    for (std::size_t row = 0; row < there.chart.size(); ++row)
      ASSERT_EQ(back.chart[row].tension_lbf, there.chart[row].tension_lbf);
    ASSERT_EQ(back.spans.size(), there.spans.size());
    for (std::size_t span = 0; span < there.spans.size(); ++span) {
      const RigSpan& mirror = back.spans[back.spans.size() - 1 - span];
      ASSERT_NEAR(mirror.natural_frequency_hz.value(),
                  there.spans[span].natural_frequency_hz.value(), 1e-6);
      ASSERT_NEAR(mirror.sag_at_load_factor_in.value(),
                  there.spans[span].sag_at_load_factor_in.value(), 1e-9);
    }
  }
}

}  // namespace
}  // namespace linewright
