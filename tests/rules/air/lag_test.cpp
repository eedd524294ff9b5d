// Lag of instruments at a stated climb rate. Figures marked calc follow from the laminar formulas
// of NASA RP-1046 [from memory]; no published worked example could be found.

#include <gtest/gtest.h>

#include <string>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

constexpr double cm3_per_in3 = 2.54 * 2.54 * 2.54;
constexpr double five_metres_in = 5 / 0.0254;

/// A straight line of 5 m from a port to an altimeter of 300 cm3, 1,000 ft/min.
SmallProject five_metres(const std::string& line) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {five_metres_in, 0, 10})
      .node("altimeter", NodeKind::instrument, {0, 0, 10});
  project.project.nodes[1].volume_in3 = 300 / cm3_per_in3;
  project.route("static", line, "port", "altimeter");
  project.project.climb_ft_per_min = 1'000;
  return project;
}

TEST(Lag, AnOrdinaryStaticLineLagsTooLittleToSee) {
  // Bore 0.180 in: 0.0281 s at sea level (calc). At 10,000 ft it is longer by mu/p, 0.0340 over
  // 0.0247 (calc): 0.0387 s, 0.64 ft.
  const Judgement lag = sole(five_metres("tube-aluminium-1/4").judged_by("lag"));
  EXPECT_EQ(lag.verdict, Verdict::pass);
  EXPECT_EQ(lag.with, "altimeter");
  EXPECT_EQ(lag.route, "static");
  EXPECT_EQ(lag.unit, Unit::foot);
  EXPECT_NEAR(lag.value.value(), 0.0281 * 0.0340 / 0.0247 * 1'000 / 60, 0.005);
  EXPECT_EQ(lag.limit, 10);
  EXPECT_NEAR(lag.margin().value(), 10 - lag.value.value(), 1e-12);
  EXPECT_EQ(lag.message,
            "altimeter trails the air outside by 0.028 s at sea level and 0.039 s at 10,000 ft: "
            "0.64 ft at 1000 ft/min, too little to see");
  EXPECT_EQ(lag.location.line, SmallProject::line_of_route(0) + 2);
}

TEST(Lag, SmallerBoresLagMore) {
  // Bores of 0.171 and 0.1315 in: 0.0341 and 0.0930 s at sea level (calc).
  EXPECT_TRUE(contains(sole(five_metres("tube-nylon-1/4").judged_by("lag")).message,
                       "by 0.034 s at sea level"));
  SmallProject narrow = five_metres("tube-nylon-1/4");
  narrow.line("tube-nylon-1/4").inside_diameter_in = 0.1315;
  EXPECT_TRUE(contains(sole(narrow.judged_by("lag")).message, "by 0.093 s at sea level"));
}

// The limit of 10 ft, half of an altimeter's smallest division, is [common practice, no source].
TEST(Lag, ABoreOfOneMillimetreWarns) {
  // 10.86 s at sea level, 181 ft at 1,000 ft/min there (calc).
  SmallProject project = five_metres("tube-nylon-1/4");
  project.line("tube-nylon-1/4").inside_diameter_in = 1 / 25.4;
  const Judgement lag = sole(project.judged_by("lag"));
  EXPECT_EQ(lag.verdict, Verdict::warn);
  EXPECT_TRUE(contains(lag.message, "by 11 s at sea level")) << lag.message;
  EXPECT_NEAR(lag.value.value(), 181 * 0.0340 / 0.0247, 1);
  EXPECT_FALSE(lag.mend.empty());
  EXPECT_TRUE(contains(lag.source, "common practice"));
}

// US Standard Atmosphere 1976 at 10,000 ft: 268.338 K and 69,682 Pa; by Sutherland's formula air's
// viscosity is 1.6922e-5 Pa s there. 128 mu L V / (pi d4 p) with half of the tube's air makes
// 14.939 s, at 1,000 ft/min 248.98 ft (calc). Two hundred feet higher or lower would be 1.5 ft off.
TEST(Lag, IsJudgedInTheAirOfTenThousandFeet) {
  SmallProject project = five_metres("tube-nylon-1/4");
  project.line("tube-nylon-1/4").inside_diameter_in = 1 / 25.4;
  EXPECT_NEAR(sole(project.judged_by("lag")).value.value(), 248.98, 0.3);
}

// A tenth of an altimeter's smallest division [common practice, no source].
TEST(Lag, IsTooLittleToSeeBelowTwoFeet) {
  const auto message = [](double trails_ft) {
    SmallProject project = five_metres("tube-nylon-1/4");
    const double at_thousand_ft_per_min = sole(project.judged_by("lag")).value.value();
    project.project.climb_ft_per_min = 1'000 * trails_ft / at_thousand_ft_per_min;
    return sole(project.judged_by("lag")).message;
  };
  EXPECT_TRUE(contains(message(1.99), "too little to see"));
  EXPECT_FALSE(contains(message(2.01), "too little to see"));
}

TEST(Lag, TwoPortsLagLessThanOne) {
  SmallProject project = five_metres("tube-nylon-1/4");
  const double one = sole(project.judged_by("lag")).value.value();
  project.node("other-port", NodeKind::static_port, {five_metres_in, 1, 10});
  project.route("static-right", "tube-nylon-1/4", "other-port", "altimeter");
  const double two = sole(project.judged_by("lag")).value.value();
  // Half the resistance, the second tube's air besides: (300 + 74.1) / (300 + 74.1/2) / 2 (calc).
  EXPECT_NEAR(two / one, (300 + 74.1) / (300 + 74.1 / 2) / 2, 1e-4);
}

TEST(Lag, EveryInstrumentIsJudged) {
  SmallProject project = five_metres("tube-nylon-1/4");
  project.node("airspeed", NodeKind::instrument, {0, 10, 10});
  project.project.nodes[2].volume_in3 = 10;
  project.route("branch", "tube-nylon-1/4", "altimeter", "airspeed");
  const auto judged = project.judged_by("lag");
  ASSERT_EQ(judged.size(), 2u);
  EXPECT_EQ(judged[1].route, "branch");
  EXPECT_GT(judged[1].value.value(), judged[0].value.value());
}

TEST(Lag, APitotSystemIsFedByItsProbe) {
  SmallProject project = five_metres("tube-nylon-1/4");
  project.project.nodes[0].kind = NodeKind::pitot_probe;
  EXPECT_EQ(sole(project.judged_by("lag")).verdict, Verdict::unknown);
  project.project.routes[0].system = SystemKind::pitot;
  EXPECT_EQ(sole(project.judged_by("lag")).verdict, Verdict::pass);
}

TEST(Lag, AMissingVolumeIsUnknownAndNamed) {
  SmallProject project = five_metres("tube-nylon-1/4");
  project.project.nodes[1].volume_in3.reset();
  const Judgement lag = sole(project.judged_by("lag"));
  EXPECT_EQ(lag.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(lag.message, "the volume of altimeter, which is not stated"));
  EXPECT_FALSE(lag.value.has_value());
  project.project.nodes[1].volume_in3 = 0;
  EXPECT_EQ(sole(project.judged_by("lag")).verdict, Verdict::unknown) << "no instrument has none";
}

TEST(Lag, WithoutAClimbRateNothingIsJudged) {
  SmallProject project = five_metres("tube-nylon-1/4");
  project.project.nodes[1].volume_in3.reset();
  project.project.climb_ft_per_min.reset();
  EXPECT_TRUE(project.judged_by("lag").empty());
}

// Laminar below a Reynolds number of 2,000 [from memory: flow text-book figure].
TEST(Lag, FlowThatIsNotLaminarIsUnknown) {
  // The Reynolds number is 3.4 for 300 cm3 at 1,000 ft/min (calc), so that 100 times the rate and
  // 100 times the volume make the flow turbulent.
  SmallProject project = five_metres("tube-aluminium-1/4");
  project.project.climb_ft_per_min = 100'000;
  EXPECT_NE(sole(project.judged_by("lag")).verdict, Verdict::unknown);
  project.project.nodes[1].volume_in3 = 30'000 / cm3_per_in3;
  const Judgement lag = sole(project.judged_by("lag"));
  EXPECT_EQ(lag.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(lag.message, "not laminar")) << lag.message;
  // The number is as the rate of climb: 1,990 is known, 2,010 is not.
  const std::string words = "Reynolds number ";
  const double reynolds = std::stod(lag.message.substr(lag.message.find(words) + words.size()));
  project.project.climb_ft_per_min = 100'000 * 1'990 / reynolds;
  EXPECT_NE(sole(project.judged_by("lag")).verdict, Verdict::unknown);
  project.project.climb_ft_per_min = 100'000 * 2'010 / reynolds;
  EXPECT_EQ(sole(project.judged_by("lag")).verdict, Verdict::unknown);
}

}  // namespace
}  // namespace linewright
