#include "planning/leak_test_plan.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "physics/atmosphere.hpp"
#include "planning/air_rig.hpp"

namespace linewright {
namespace {

using Names = std::vector<std::string>;

bool any_says(const Names& texts, const std::string& part) {
  for (const std::string& text : texts)
    if (text.find(part) != std::string::npos) return true;
  return false;
}

LeakTestPlan static_plan(const LeakTestSetup& setup = standard_day()) {
  static const AirRig rig(two_ports());
  return plan_of(rig.system(), setup);
}

LeakTestPlan pitot_plan(const LeakTestSetup& setup = standard_day()) {
  static const AirRig rig(pitot_side());
  return plan_of(rig.system("pitot"), setup);
}

TEST(StaticPlan, TakesTheAltimeterAThousandFeetAboveTheField) {
  const LeakTestPlan plan = static_plan();
  EXPECT_DOUBLE_EQ(plan.target, 1'000);
  // 14 CFR Part 43 Appendix E Table I: 28.856 inHg at 1,000 ft.
  EXPECT_NEAR(inhg_from_pascals(plan.target_pa), 28.856, 0.0005);
  EXPECT_NEAR(plan.differential_pa, 3608.43, 0.02);  // calculated from the standard atmosphere
}

TEST(StaticPlan, DrawsThreePointSixNinePercentOfTheVolume) {
  const LeakTestPlan plan = static_plan();
  EXPECT_NEAR(plan.stroke_in3 / plan.volume_in3, 0.0369, 0.00005);
}

TEST(StaticPlan, CountsTheStrokesOfASyringe) {
  LeakTestSetup setup = standard_day();
  setup.syringe_in3 = 0.2;
  const LeakTestPlan plan = static_plan(setup);
  // 13.07 in3 take 0.482 in3 in one stroke; each of 0.2 in3 thrown away takes the same factor.
  EXPECT_NEAR(plan.stroke_in3, 0.482, 0.001);
  EXPECT_EQ(plan.strokes, 3);
  setup.syringe_in3 = 60 / 16.387064;
  EXPECT_EQ(static_plan(setup).strokes, 1);
}

TEST(StaticPlan, AllowsAHundredFeetInAMinute) {
  const LeakTestPlan plan = static_plan();
  EXPECT_EQ(plan.limit.loss, 100);
  EXPECT_EQ(plan.limit.period_s, 60);
  EXPECT_NE(plan.limit.source.text.find("23.1325(b)(2)(i)"), std::string::npos);
  // 3608.43 Pa to 3252.34 Pa in 60 s [calculated from the standard atmosphere].
  EXPECT_NEAR(plan.limit_change_pa, 3608.43 - 3252.34, 0.02);
  EXPECT_NEAR(plan.limit_time_constant_s, 577.5, 0.1);
  EXPECT_NEAR(plan.limit_leak_in3_per_min, plan.volume_in3 * 356.09 / 101'325, 1e-5);
}

TEST(StaticPlan, ListsReadingsFromTheTargetToTheLimit) {
  const LeakTestPlan plan = static_plan();
  ASSERT_EQ(plan.readings_at_limit.size(), 7u);
  EXPECT_NEAR(plan.readings_at_limit.front().reading, 1'000, 1e-9);
  EXPECT_NEAR(plan.readings_at_limit.back().reading, 900, 1e-6);
  for (std::size_t i = 1; i < 7; ++i) {
    EXPECT_DOUBLE_EQ(plan.readings_at_limit[i].time_s, 10 * static_cast<double>(i));
    // An exponential loses more at first, here 17.5 ft against 16.
    const double lost = plan.readings_at_limit[i - 1].reading - plan.readings_at_limit[i].reading;
    EXPECT_GT(lost, 15.5);
    EXPECT_LT(lost, 18);
  }
}

TEST(StaticPlan, SaysWhatADegreeDoes) {
  // One kelvin at 1,000 ft: -95.24 ft [calculated from the gas law]; a degree Fahrenheit 5/9 of it.
  EXPECT_NEAR(static_plan().effect_per_degf * 1.8, -95.4, 0.2);
}

TEST(StaticPlan, KnowsThatAnInchOfMercuryIsNotAThousandFeet) {
  const LeakTestPlan plan = static_plan();
  // [calculated from the standard atmosphere]
  EXPECT_NEAR(plan.one_inhg_reads_ft, 937.6, 0.1);
  EXPECT_NEAR(plan.thousand_ft_inhg, 1.0656, 0.0001);
  EXPECT_TRUE(any_says(plan.notes, "1 inHg reads 938 ft"));
}

TEST(StaticPlan, TakesASuctionWhereOneIsAskedFor) {
  LeakTestSetup setup = standard_day();
  setup.drop_inhg = 1;
  const LeakTestPlan plan = static_plan(setup);
  EXPECT_NEAR(plan.target, 937.6, 0.1);
  EXPECT_NEAR(inhg_from_pascals(plan.differential_pa), 1, 1e-9);
  EXPECT_NEAR(plan.readings_at_limit.back().reading, plan.target - 100, 1e-6);
  EXPECT_TRUE(any_says(plan.notes, "a suction of 1.000 inHg"));
}

TEST(StaticPlan, WarnsOfTheAirspeedThatAnOpenPitotShows) {
  const LeakTestPlan plan = static_plan();
  // 3,608 Pa is 148 kt [calculated from the impact pressure formula].
  ASSERT_TRUE(plan.open_pitot_kt);
  EXPECT_NEAR(*plan.open_pitot_kt, 148, 0.5);
  EXPECT_TRUE(any_says(plan.cautions, "drives it to 149 kt"));
}

TEST(StaticPlan, GoesUpWithTheField) {
  LeakTestSetup setup = standard_day();
  setup.elevation_ft = 5'000;
  const LeakTestPlan plan = static_plan(setup);
  // 14 CFR Part 43 Appendix E Table I: 23.978 inHg at 6,000 ft.
  EXPECT_DOUBLE_EQ(plan.target, 6'000);
  EXPECT_NEAR(inhg_from_pascals(plan.target_pa), 23.978, 0.0005);
  EXPECT_LT(plan.differential_pa, 3'300);
}

TEST(StaticPlan, KeepsItsTargetWhateverTheAltimeterSetting) {
  LeakTestSetup setup = standard_day();
  setup.altimeter_setting_inhg = 30.5;
  const LeakTestPlan plan = static_plan(setup);
  EXPECT_DOUBLE_EQ(plan.target, 1'000);
  EXPECT_NEAR(inhg_from_pascals(plan.gauge.ambient_pa), 30.5, 1e-9);
}

TEST(StaticPlan, ConnectsAtAPortAndSealsTheOthers) {
  const LeakTestPlan plan = static_plan();
  EXPECT_EQ(plan.connection.at, "port-left");
  EXPECT_EQ(plan.connection.cap, Names{"port-right"});
  EXPECT_EQ(plan.connection.instruments, Names{"altimeter"});
}

TEST(StaticPlan, ConnectsAtADrainWhereThereIsNoPort) {
  TubeProject tubes = two_ports();
  tubes.project.nodes[0].kind = NodeKind::end;
  tubes.project.nodes[1].kind = NodeKind::drain;
  const AirRig rig(std::move(tubes));
  const LeakTestPlan plan = plan_of(rig.system(), standard_day());
  EXPECT_EQ(plan.connection.at, "port-right");
  EXPECT_EQ(plan.connection.mend, Names{"port-left"});
  EXPECT_TRUE(any_says(plan.notes, "leaves these open"));
}

TEST(StaticPlan, ASmallSectionLosesFaster) {
  // The whole, 13.074 in3, loses 3608.43 Pa of suction with a time constant of 577.5 s, and a part
  // of it in proportion to its volume, 20 in3 of the test set with it: of the 23.074 in3 without
  // the altimeter the suction of 942.0 ft is left after a minute [calculated from the standard
  // atmosphere].
  const LeakTestPlan plan = static_plan();
  struct Part {
    double tested_in3, reading_ft;
  };
  const std::vector<Part> parts = {{20.52894, 935.1}, {20.27447, 934.3}, {20.25447, 934.2},
                                   {20, 933.4},       {20.52894, 935.1}, {23.07363, 942.0}};
  ASSERT_EQ(plan.sections.size(), parts.size());
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const SplitStep& step = plan.sections[i];
    SCOPED_TRACE(step.route + " at " + step.node);
    EXPECT_NEAR(step.tested_in3, parts[i].tested_in3, 1e-5);
    EXPECT_NEAR(step.reading, parts[i].reading_ft, 0.1);
    EXPECT_NEAR(step.loss, 1'000 - parts[i].reading_ft, 0.1);
  }
}

TEST(StaticPlan, SaysWhenVolumesAreNotKnown) {
  TubeProject tubes = two_ports();
  tubes.project.nodes[3].volume_in3.reset();
  const AirRig rig(std::move(tubes));
  const LeakTestPlan plan = plan_of(rig.system(), standard_day());
  EXPECT_TRUE(any_says(plan.notes, "counted as nothing: altimeter"));
  EXPECT_DOUBLE_EQ(plan.target, 1'000);
  EXPECT_NEAR(plan.limit_time_constant_s, 577.5, 0.1);
}

TEST(PitotPlan, TakesTheIndicatorTo150Knots) {
  const LeakTestPlan plan = pitot_plan();
  EXPECT_DOUBLE_EQ(plan.target, 150);
  // AC 43.13-1B para 12-59: 1.1 inHg, 14.9 in of water; a builders' table gives 14.86 at 20 C.
  EXPECT_NEAR(inhg_from_pascals(plan.differential_pa), 1.1, 0.05);
  EXPECT_NEAR(plan.differential_pa, 3694.4, 0.1);
  EXPECT_NEAR(plan.stroke_in3 / plan.volume_in3, 0.0365, 0.00005);
}

TEST(PitotPlan, AllowsTenKnotsInAMinute) {
  const LeakTestPlan plan = pitot_plan();
  EXPECT_EQ(plan.limit.loss, 10);
  // 3694.4 Pa to 3212.9 Pa in 60 s [calculated from the impact pressure formula].
  EXPECT_NEAR(plan.limit_change_pa, 3694.4 - 3212.9, 0.1);
  EXPECT_NEAR(plan.limit_time_constant_s, 429.7, 0.1);
  EXPECT_NEAR(plan.readings_at_limit.back().reading, 140, 1e-6);
}

TEST(PitotPlan, AtSeventyKnotsHasAShorterTimeConstant) {
  LeakTestSetup setup = standard_day();
  setup.airspeed_kt = 70;
  // 796.5 Pa to 584.8 Pa in 60 s [calculated from the impact pressure formula].
  EXPECT_NEAR(pitot_plan(setup).limit_time_constant_s, 194.1, 0.3);
}

TEST(PitotPlan, ReadsHighWhenItWarms) {
  // One kelvin at 150 kt: +7.13 kt [calculated from the gas law]; the curve bends by some 2 %.
  EXPECT_NEAR(pitot_plan().effect_per_degf * 1.8, 7.13, 0.15);
}

TEST(PitotPlan, ConnectsAtTheProbe) {
  const LeakTestPlan plan = pitot_plan();
  EXPECT_EQ(plan.connection.at, "probe");
  EXPECT_EQ(plan.connection.close, Names{"drain"});
  EXPECT_TRUE(any_says(plan.cautions, "never suction"));
}

TEST(EveryPlan, PutsTheMouthFirstAndTheSignatureLast) {
  for (const LeakTestPlan& plan : {static_plan(), pitot_plan()}) {
    EXPECT_NE(plan.cautions.front().find("by mouth"), std::string::npos);
    EXPECT_NE(plan.cautions.back().find("licenses"), std::string::npos);
    for (const char* part : {"test set does not leak", "limits of each", "flight configuration",
                             "Pump slowly", "never be below static"})
      EXPECT_TRUE(any_says(plan.cautions, part)) << part;
  }
}

TEST(EveryPlan, RefusesAlphaLines) {
  TubeProject tubes = pitot_side();
  for (Route& route : tubes.project.routes) {
    route.system = SystemKind::alpha;
    route.system_name = "alpha";
  }
  const AirRig rig(std::move(tubes));
  const auto plan = plan_leak_test(rig.system("alpha"), standard_day());
  ASSERT_TRUE(std::holds_alternative<std::string>(plan));
  EXPECT_NE(std::get<std::string>(plan).find("'alpha' is neither"), std::string::npos);
}

}  // namespace
}  // namespace linewright
