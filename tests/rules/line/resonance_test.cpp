// Spans against the propeller. Cable of 1/8 7x19 steel, 30 in at 30 lbf, swings at 36.488 Hz, and
// 60 in at 18.244 Hz; 1/4 × 0.035 aluminium tube clamped over 20 in at 138.14 Hz and over 24 in at
// 95.93 Hz (taut string and beam theory, vibration texts; figures [calculated]).

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "rules/line/excited_band.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// Cable held at both ends and by fairleads at these stations.
SmallProject cable_project(double length_in, const std::vector<double>& fairleads,
                           std::optional<double> tension_lbf) {
  SmallProject project;
  project.node("pedal", NodeKind::pedal, {0, 0, 0}).node("horn", NodeKind::horn, {length_in, 0, 0});
  std::vector<RoutePoint> points;
  for (const double station : fairleads)
    points.push_back(held({station, 0, 0}, HoldKind::fairlead));
  Route& route = project.route("rudder", "cable-7x19-1/8-steel", "pedal", "horn", points);
  if (tension_lbf) route.tension = Tension{*tension_lbf, {}, {}};
  project.project.excitation = Excitation{600, 2700, {}, 2, {}};
  return project;
}

SmallProject tube_project(const std::string& line, double length_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {length_in, 0, 0});
  project.route("static", line, "port", "altimeter");
  project.project.excitation = Excitation{600, 2700, {}, 2, {}};
  return project;
}

SmallProject cruising(SmallProject project, double low_rpm, double high_rpm) {
  project.project.excitation->cruise = SpeedBand{low_rpm, high_rpm};
  return project;
}

Judgement judged_alone(const SmallProject& project) {
  return sole(project.judged_by("resonance"));
}

TEST(Resonance, IsNotJudgedWithoutAnExcitation) {
  SmallProject project = cable_project(30, {}, 30);
  project.project.excitation.reset();
  EXPECT_TRUE(project.judged_by("resonance").empty());
}

TEST(Resonance, WithoutACruiseBandNamesTheSpeedsAndPasses) {
  const Judgement judgement = judged_alone(cable_project(30, {}, 30));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_NEAR(judgement.value.value(), 36.488, 0.0005);
  EXPECT_FALSE(judgement.limit.has_value());
  EXPECT_EQ(judgement.unit, Unit::hertz);
  EXPECT_EQ(judgement.message,
            "a span of 30.0 in swings at 36.5 Hz, which the propeller meets with its 1st order at "
            "2189 rpm and blade order at 1095 rpm; no cruise band is stated "
            "(excitation.cruise_rpm) to judge it against");
}

TEST(Resonance, WarnsOfACableMetByTheFirstOrderAtCruise) {
  // 36.488 Hz is 2189 rpm.
  const Judgement judgement = judged_alone(cruising(cable_project(30, {}, 30), 2100, 2400));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.message,
            "a span of 30.0 in swings at 36.5 Hz, which the propeller meets with its 1st order at "
            "2189 rpm, within 10 % of its cruise band of 2100 to 2400 rpm");
  // 2100 rpm less a tenth is 31.5 Hz, 2400 and a tenth 44 Hz: the nearer edge is the limit.
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 31.5);
  EXPECT_EQ(judgement.sense, LimitSense::at_most);
  EXPECT_NEAR(judgement.margin().value(), 31.5 - 36.488, 0.0005);
}

TEST(Resonance, WarnsOfACableMetByTheBladesAtCruise) {
  // 36.488 Hz is 1095 rpm of two blades.
  const Judgement judgement = judged_alone(cruising(cable_project(30, {}, 30), 1000, 1180));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_TRUE(contains(judgement.message, "blade order at 1095 rpm, within 10 %"));
}

TEST(Resonance, PassesBetweenTheOrders) {
  // 1300 to 1500 rpm: first order 19.5 to 27.5 Hz, blades 39 to 55 Hz.
  const Judgement judgement = judged_alone(cruising(cable_project(30, {}, 30), 1300, 1500));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 39);
  EXPECT_EQ(judgement.sense, LimitSense::at_most);
  EXPECT_EQ(judgement.mend, "");
}

// The margin of 10 % is [common practice, no source].
TEST(Resonance, CountsTheTenthAroundTheCruiseBandButNotItsEdge) {
  const double met_rpm = judged_alone(cable_project(30, {}, 30)).value.value() * 60;
  const double edge = met_rpm / 1.1;
  EXPECT_EQ(judged_alone(cruising(cable_project(30, {}, 30), edge - 100, edge)).verdict,
            Verdict::pass);
  EXPECT_EQ(judged_alone(cruising(cable_project(30, {}, 30), edge - 100, edge + 0.1)).verdict,
            Verdict::warn);
  EXPECT_EQ(
      judged_alone(cruising(cable_project(30, {}, 30), met_rpm / 0.9, met_rpm / 0.9 + 200)).verdict,
      Verdict::pass);
}

TEST(Resonance, JudgesATubeAsAClampedBeamOfItsOwnWeight) {
  const Judgement judgement = judged_alone(tube_project("tube-aluminium-1/4", 20));
  EXPECT_NEAR(judgement.value.value(), 138.14, 0.005);
  EXPECT_TRUE(contains(judgement.message, "meets at no speed from idle to redline"));
}

TEST(Resonance, WarnsOfALongTubeMetByTheBlades) {
  // 95.93 Hz is 2878 rpm of two blades: over redline, but within a tenth of 2650.
  const Judgement judgement =
      judged_alone(cruising(tube_project("tube-aluminium-1/4", 24), 2400, 2650));
  EXPECT_NEAR(judgement.value.value(), 95.93, 0.005);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
}

TEST(Resonance, JudgesATailAsABeamThatIsFreeAtOneEnd) {
  SmallProject project = tube_project("tube-aluminium-1/4", 20);
  project.project.nodes[1].kind = NodeKind::end;
  EXPECT_NEAR(judged_alone(project).value.value(), 138.14 * 3.516 / 22.373, 0.005);
}

TEST(Resonance, JudgesARunOverAHangingTeeAsOne) {
  SmallProject project = tube_project("tube-aluminium-1/4", 12);
  project.project.nodes[1].kind = NodeKind::tee;
  project.node("dial", NodeKind::instrument, {20, 0, 0});
  project.route("tail", "tube-aluminium-1/4", "altimeter", "dial");
  const Judgement judgement = judged_alone(project);
  EXPECT_EQ(judgement.route, "static");
  EXPECT_EQ(judgement.with, "tail");
  EXPECT_NEAR(judgement.value.value(), 138.14, 0.005);
}

TEST(Resonance, LeavesHosesAndWiresOut) {
  EXPECT_TRUE(tube_project("hose-rubber-1/4", 20).judged_by("resonance").empty());
}

TEST(Resonance, OfACableWithoutTensionIsUnknownOnceForAllItsSpans) {
  const Judgement judgement = judged_alone(cable_project(90, {30, 60}, std::nullopt));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "the rigged tension of rudder is not known"));
  EXPECT_EQ(judgement.mend, "state tension.rigged of rudder");
}

TEST(Resonance, OfALineWithoutWeightOrModulusIsUnknown) {
  SmallProject project = tube_project("tube-nylon-1/4", 10);
  project.line("tube-nylon-1/4").youngs_modulus_psi.reset();
  EXPECT_TRUE(contains(judged_alone(project).message, "Young's modulus of tube-nylon-1/4"));
  project.line("tube-nylon-1/4").weight_lb_per_in.reset();
  const Judgement judgement = judged_alone(project);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "the weight of tube-nylon-1/4"));
}

TEST(Resonance, OfALineThatNothingHoldsIsUnknown) {
  SmallProject project = tube_project("tube-nylon-1/4", 10);
  for (Node& node : project.project.nodes) node.kind = NodeKind::end;
  EXPECT_EQ(judged_alone(project).verdict, Verdict::unknown);
}

TEST(Resonance, MendsWithASupportBetweenPlacesThatBothServe) {
  SmallProject project = cruising(cable_project(30, {}, 30), 2100, 2400);
  const Judgement judgement = judged_alone(project);
  double first = 0;
  double last = 0;
  ASSERT_EQ(
      std::sscanf(judgement.mend.c_str(), "add a fairlead between %lf and %lf in", &first, &last),
      2)
      << judgement.mend;
  ASSERT_LT(first, last);
  for (const double at : {first, (first + last) / 2, last}) {
    const SmallProject mended = cruising(cable_project(30, {at}, 30), 2100, 2400);
    EXPECT_EQ(verdicts(mended.judged_by("resonance")), (std::vector{Verdict::pass, Verdict::pass}))
        << at;
  }
}

// A tenth over 2018 rpm is 37.0 Hz: 30 in swing at 36.5 Hz, and 29 in at 37.7 Hz, clear of the only
// order of one blade. Nearer than an inch to its end no support is asked for [common practice, no
// source]; places are told in tenths.
TEST(Resonance, MendsWithNoSupportNearerThanAnInchToAnother) {
  SmallProject project = cruising(cable_project(29.99, {}, 30), 2000, 2018);
  project.project.excitation->blades = 1;
  const Judgement judgement = judged_alone(project);
  EXPECT_TRUE(judgement.mend.starts_with("add a fairlead between 1.00 and 28.9 in from pedal"))
      << judgement.mend;
}

TEST(Resonance, MendsWithATensionThatClearsEverySpan) {
  SmallProject project = cruising(cable_project(58, {30}, 30), 2100, 2400);
  const std::vector<Judgement> judgements = project.judged_by("resonance");
  ASSERT_EQ(judgements.front().verdict, Verdict::warn);
  const std::string& mend = judgements.front().mend;
  double tension = 0;
  const std::size_t place = mend.find("or rig it to ");
  ASSERT_NE(place, std::string::npos) << mend;
  ASSERT_EQ(std::sscanf(mend.c_str() + place, "or rig it to %lf lbf", &tension), 1);
  EXPECT_EQ(verdicts(cruising(cable_project(58, {30}, tension), 2100, 2400).judged_by("resonance")),
            (std::vector{Verdict::pass, Verdict::pass}))
      << mend;
}

TEST(Resonance, DoesNotMendWithATensionThatGoesSlackInTheCold) {
  // The tension that would serve, about 22 lbf, is less than the cold takes away.
  SmallProject project = cruising(cable_project(30, {}, 30), 2100, 2700);
  EXPECT_TRUE(contains(judged_alone(project).mend, "or rig it to 22 lbf"));
  project.project.temperature = {30, 70, 90};
  // 40 degrees take 6.3e-6 of 111,607 lbf each, 28 lbf. 56 lbf swing at 36.488 √(56/30) = 49.85 Hz,
  // over the 49.5 that 2700 rpm and a tenth reach.
  EXPECT_TRUE(contains(judged_alone(project).mend, "or rig it to 56 lbf"))
      << judged_alone(project).mend;
}

// Twice as taut as it is rigged at the most [common practice, no source]. The cold forbids less
// tension; a tenth over the cruise band is 51.33 Hz or 51.88 Hz, which takes 30 lbf by the square
// of that over 36.488 Hz: 59.4 lbf or 60.7 lbf [calculated].
TEST(Resonance, MendsWithNoMoreThanTwiceTheTension) {
  const auto mend = [](double cruise_rpm) {
    SmallProject project = cruising(cable_project(30, {}, 30), 2100, cruise_rpm);
    project.project.excitation->redline_rpm = 3000;
    project.project.temperature = {30, 70, 90};
    return judged_alone(project).mend;
  };
  EXPECT_TRUE(contains(mend(2800), "or rig it to ")) << mend(2800);
  EXPECT_FALSE(contains(mend(2830), "or rig it to ")) << mend(2830);
}

TEST(Resonance, MendsATubeSoThatEveryPlaceItNamesServes) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> lengths(6, 60), speeds(800, 2000), widths(100, 700);
  const std::vector<std::string> lines = {"tube-aluminium-1/4", "tube-nylon-1/4"};
  int mended_by_one = 0;
  for (int i = 0; i < 300; ++i) {
    const double length = lengths(random);
    const double low = speeds(random);
    const double high = low + widths(random);
    const SmallProject project =
        cruising(tube_project(lines[static_cast<std::size_t>(i) % 2], length), low, high);
    const Judgement judgement = judged_alone(project);
    if (judgement.verdict == Verdict::pass) continue;
    double first = 0;
    double last = 0;
    if (std::sscanf(judgement.mend.c_str(), "add a clamp between %lf and %lf in", &first, &last) !=
        2) {
      ASSERT_EQ(std::sscanf(judgement.mend.c_str(),
                            "add clamps so that no part of it is longer than %lf", &last),
                1)
          << judgement.mend;
      const SmallProject part =
          cruising(tube_project(lines[static_cast<std::size_t>(i) % 2], last), low, high);
      ASSERT_EQ(judged_alone(part).verdict, Verdict::pass) << judgement.mend;
      continue;
    }
    ++mended_by_one;
    for (const double share : {0.0, 0.3, 1.0}) {
      SmallProject mended = project;
      mended.project.routes[0].points = {clamped({first + share * (last - first), 0, 0})};
      ASSERT_EQ(verdicts(mended.judged_by("resonance")),
                (std::vector{Verdict::pass, Verdict::pass}))
          << judgement.mend;
    }
  }
  EXPECT_GT(mended_by_one, 20);
}

TEST(ExcitedBands, OfOrdersThatOverlapAreOne) {
  const Excitation apart{600, 2700, SpeedBand{1300, 1500}, 2, {}};
  ASSERT_EQ(excited_bands(apart, 0.1).size(), 2u);
  const Excitation overlapping{600, 2700, SpeedBand{1300, 2600}, 2, {}};
  const std::vector<ExcitedBand> one = excited_bands(overlapping, 0.1);
  ASSERT_EQ(one.size(), 1u);
  EXPECT_DOUBLE_EQ(one[0].low_hz, 19.5);
  EXPECT_NEAR(one[0].high_hz, 2600 * 1.1 * 2 / 60, 1e-9);
  const Excitation single{600, 2700, SpeedBand{1300, 1500}, 1, {}};
  EXPECT_EQ(excited_bands(single, 0.1).size(), 1u);
}

}  // namespace
}  // namespace linewright
