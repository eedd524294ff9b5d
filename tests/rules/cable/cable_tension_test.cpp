// Tension over the temperature range and strength at the limit load.

#include "physics/cable.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// Rigged at 70 degF, down to 20 and up to 110: with this airframe and cable the tension changes by
/// 1 lbf a degree, so it falls by 50 lbf and rises by 40.
SmallProject one_pound_a_degree(double rigged_lbf, std::optional<double> limit_load_lbf = 200) {
  SmallProject project = cable_project();
  project.project.temperature = {20, 70, 110};
  the_line(project).expansion_per_degf->value = airframe_expansion_per_degf - 1e-5;
  the_line(project).axial_stiffness_lbf->value = 1e5;
  set_tension(project, rigged_lbf, limit_load_lbf);
  return project;
}

bool asks_for_the_other_cable(const Judgement& judgement) {
  return contains(judgement.message, "only one cable");
}

/// What is said of the cable itself.
std::vector<Judgement> judged(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("cable-tension");
  std::erase_if(all, asks_for_the_other_cable);
  return all;
}

enum Part { cold, hot, strength };

Judgement part(const SmallProject& project, Part which) {
  const std::vector<Judgement> all = judged(project);
  EXPECT_EQ(all.size(), 3u);
  return all.at(which);
}

// No hazardous change of tension with temperature: 14 CFR 23.689(a)(2) [verified].
TEST(CableTension, CableThatGoesSlackInTheColdFails) {
  const Judgement judgement = part(one_pound_a_degree(30.5), cold);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -19.5, 1e-9);
  EXPECT_DOUBLE_EQ(*judgement.limit, 0);
  EXPECT_EQ(judgement.unit, Unit::pound_force);
  EXPECT_TRUE(contains(judgement.message, "20 degF"));
  EXPECT_TRUE(contains(judgement.message, "upper bound"));
  EXPECT_TRUE(contains(judgement.mend, "rig it to 50 lbf")) << judgement.mend;
  EXPECT_TRUE(contains(judgement.mend, "stainless"));
  EXPECT_TRUE(contains(judgement.source, "23.689(a)(2)"));
  EXPECT_EQ(judgement.location.line, 105);
  expect_complete(judgement);
}

TEST(CableTension, JustTautWhenColdPassesAndJustSlackFails) {
  EXPECT_EQ(part(one_pound_a_degree(50), cold).verdict, Verdict::pass);
  EXPECT_EQ(part(one_pound_a_degree(50.01), cold).verdict, Verdict::pass);
  EXPECT_EQ(part(one_pound_a_degree(49.99), cold).verdict, Verdict::fail);
}

// Per degF, aluminium 12.8e-6, steel 6.5e-6, stainless 9.6e-6 [verified: engineering tables].
TEST(CableTension, StainlessStaysTautWhereSteelGoesSlack) {
  for (const std::string metal : {"steel", "stainless"}) {
    SmallProject project = cable_project({}, {100, 0, 10}, "cable-7x19-1/8-" + metal);
    project.project.temperature = {0, 70, 110};
    set_tension(project, 30, 200);
    EXPECT_EQ(part(project, cold).verdict, metal == "steel" ? Verdict::fail : Verdict::pass);
  }
}

TEST(CableTension, CableThatOutgrowsTheAirframeIsJudgedSlackInTheHeat) {
  SmallProject project = one_pound_a_degree(30);
  the_line(project).expansion_per_degf->value = airframe_expansion_per_degf + 1e-5;
  const Judgement judgement = part(project, cold);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -10, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "110 degF"));
}

// Swaged ends are proved to 60 % of the breaking strength [verified, secondary: study page on AC
// 43.13-1B]; strengths from AC 43.13-1B Table 7-3 [verified], products [calculated].
TEST(CableTension, HottestTensionIsHeldAgainstTheProofLoad) {
  struct Row {
    std::string line;
    double proof_lbf;
  };
  for (const Row& row : {Row{"cable-7x7-1/16-steel", 288}, Row{"cable-7x7-3/32-steel", 552},
                         Row{"cable-7x19-1/8-steel", 1200}, Row{"cable-7x19-1/8-stainless", 1056},
                         Row{"cable-7x19-5/32-steel", 1680}}) {
    SCOPED_TRACE(row.line);
    SmallProject project = cable_project({}, {100, 0, 10}, row.line);
    set_tension(project, row.proof_lbf, 200);
    EXPECT_NEAR(*part(project, hot).limit, row.proof_lbf, 1e-9);
    EXPECT_EQ(part(project, hot).verdict, Verdict::pass);
    set_tension(project, row.proof_lbf + 0.01, 200);
    EXPECT_EQ(part(project, hot).verdict, Verdict::fail);
  }
}

TEST(CableTension, TooTightInTheHeatNamesTheTensionToRigTo) {
  const Judgement judgement = part(one_pound_a_degree(1170.5), hot);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 1210.5, 1e-9);
  EXPECT_TRUE(contains(judgement.mend, "rig it to 1160 lbf or less")) << judgement.mend;
  EXPECT_TRUE(contains(judgement.source, "restatement"));
  expect_complete(judgement);
}

// 200 lb on 1/8 in steel: 10.0 times; on 3/32 in 7x7: 4.6 [calculated from Table 7-3].
TEST(CableTension, MarginOfStrengthIsSaid) {
  for (const auto& [line, words] : {std::pair{"cable-7x19-1/8-steel", "10.00 times"},
                                    std::pair{"cable-7x7-3/32-steel", "4.60 times"}}) {
    SmallProject project = cable_project({}, {100, 0, 10}, line);
    set_tension(project, 30, 200);
    EXPECT_EQ(part(project, strength).verdict, Verdict::pass);
    EXPECT_TRUE(contains(part(project, strength).message, words));
  }
}

// 14 CFR 23.303, factor 1.5 [from memory].
TEST(CableTension, LimitLoadTimesOneAndAHalfMustNotPassTheBreakingStrength) {
  SmallProject project = one_pound_a_degree(60, 2000 / 1.5);
  EXPECT_EQ(part(project, strength).verdict, Verdict::pass);
  set_tension(project, 60, 1333.4);
  const Judgement judgement = part(project, strength);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*judgement.value, 1333.4);
  EXPECT_NEAR(*judgement.limit, 1333.3333, 1e-4);
  EXPECT_TRUE(contains(judgement.source, "from memory, not checked")) << judgement.source;
  EXPECT_TRUE(contains(judgement.mend, "2001 lbf")) << judgement.mend;
  EXPECT_TRUE(contains(judgement.mend, "cable-7x19-5/32-steel")) << judgement.mend;
  expect_complete(judgement);
}

TEST(CableTension, WithoutALimitLoadItsStrengthIsUnknown) {
  const Judgement judgement = part(one_pound_a_degree(60, std::nullopt), strength);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "limit load of rudder-left"));
  EXPECT_TRUE(contains(judgement.mend, "23.397"));
  expect_complete(judgement);
}

TEST(CableTension, WithoutABreakingStrengthOneUnknownSaysSo) {
  SmallProject project = one_pound_a_degree(60);
  the_line(project).breaking_strength_lbf.reset();
  EXPECT_EQ(verdicts(judged(project)), (std::vector{Verdict::pass, Verdict::unknown}));
}

TEST(CableTension, WithoutStretchOrExpansionOneUnknownSaysSo) {
  SmallProject project = one_pound_a_degree(60);
  the_line(project).axial_stiffness_lbf.reset();
  EXPECT_EQ(verdicts(judged(project)), (std::vector{Verdict::unknown, Verdict::pass}));
  EXPECT_TRUE(contains(judged(project).at(0).message, "stretch"));
  project = one_pound_a_degree(60);
  the_line(project).expansion_per_degf.reset();
  EXPECT_EQ(verdicts(judged(project)), (std::vector{Verdict::unknown, Verdict::pass}));
  EXPECT_TRUE(contains(judged(project).at(0).message, "expansion"));
}

SmallProject levered(double ratio, std::optional<double> force_lbf,
                     std::optional<double> limit_load_lbf) {
  SmallProject project = one_pound_a_degree(60, limit_load_lbf);
  the_route(project).lever = ControlLever{ratio, force_lbf, {"routes.yaml", 107, 18}};
  return project;
}

// 14 CFR 23.397(b): 200 lbf on a rudder pedal [verified].
TEST(CableTension, JudgesThePilotsPullWhereNoLimitLoadIsStated) {
  const Judgement judgement = part(levered(1.5, std::nullopt, std::nullopt), strength);
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_DOUBLE_EQ(*judgement.value, 300);
  EXPECT_NEAR(*judgement.limit, 2000 / 1.5, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "6.67 times")) << judgement.message;
  EXPECT_TRUE(contains(judgement.message, "200.0 lbf at the rudder pedal"));
  EXPECT_TRUE(contains(judgement.source, "14 CFR 23.397(b)"));
}

TEST(CableTension, ThePilotsPullTimesOneAndAHalfMustNotPassTheBreakingStrength) {
  // 2000 / 1.5 / 200 is a ratio of 6.6667.
  EXPECT_EQ(part(levered(20.0 / 3, std::nullopt, std::nullopt), strength).verdict, Verdict::pass);
  const Judgement judgement = part(levered(6.67, std::nullopt, std::nullopt), strength);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.mend, "2001 lbf")) << judgement.mend;
  expect_complete(judgement);
}

TEST(CableTension, ALightPullIsCountedAboveTheHottestTension) {
  // 60 lbf and 40 more at the hottest; 150 lbf pull the other slack only from 200 on: 100 + 75.
  const std::vector<Judgement> all = judged(levered(1, 150, std::nullopt));
  EXPECT_DOUBLE_EQ(*all.at(strength).value, 175);
  EXPECT_TRUE(contains(all.at(strength).message, "above its own 100.0 lbf"));
}

// 14 CFR 23.397(b) [verified]: 200 lbf on a rudder pedal, 1.5 times by the lever.
TEST(CableTension, StatedLimitLoadMustCoverThePilotsPull) {
  const std::vector<Judgement> covered = judged(levered(1.5, std::nullopt, 300));
  ASSERT_EQ(covered.size(), 4u);
  EXPECT_EQ(covered[3].verdict, Verdict::pass);
  const std::vector<Judgement> less = judged(levered(1.5, std::nullopt, 299.9));
  ASSERT_EQ(less.size(), 4u);
  const Judgement& finding = less[3];
  EXPECT_EQ(finding.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*finding.value, 299.9);
  EXPECT_DOUBLE_EQ(*finding.limit, 300);
  EXPECT_TRUE(contains(finding.source, "14 CFR 23.397(b): limit pilot forces"));
  EXPECT_TRUE(contains(finding.mend, "300 lbf or more")) << finding.mend;
  EXPECT_EQ(finding.location.line, 105);
  expect_complete(finding);
  // The strength is judged by the larger load all the same.
  EXPECT_DOUBLE_EQ(*less[2].value, 300);
}

TEST(CableTension, StatedPilotForceMustNotBeUnderTheLeastThatCounts) {
  // 14 CFR 23.397(b) [verified]: 150 lbf on a rudder pedal however light it is.
  const std::vector<Judgement> least = judged(levered(1, 150, 200));
  ASSERT_EQ(least.size(), 5u);
  EXPECT_EQ(least[3].verdict, Verdict::pass);
  const Judgement under = judged(levered(1, 149.9, 200)).at(3);
  EXPECT_EQ(under.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*under.value, 149.9);
  EXPECT_DOUBLE_EQ(*under.limit, 150);
  EXPECT_EQ(under.location.line, 107);
  expect_complete(under);
}

// 14 CFR 23.397(b), minimum limit forces [verified].
TEST(CableTension, LeastForceIsThatOfTheControl) {
  for (const auto& [control, least] :
       {std::pair{"rudder", 150.0}, std::pair{"elevator", 100.0}, std::pair{"aileron", 40.0}}) {
    SmallProject project = levered(1, least, std::nullopt);
    the_route(project).control = control;
    EXPECT_EQ(judged(project).at(3).verdict, Verdict::pass) << control;
    EXPECT_DOUBLE_EQ(*judged(project).at(3).limit, least) << control;
  }
}

TEST(CableTension, LeverRatioOfAControlWithoutATableForceIsUnknown) {
  SmallProject project = levered(1, std::nullopt, 200);
  the_route(project).control = "flap";
  const std::vector<Judgement> all = judged(project);
  ASSERT_EQ(all.size(), 4u);
  EXPECT_EQ(all[2].verdict, Verdict::pass);  // by the stated limit load
  EXPECT_EQ(all[3].verdict, Verdict::unknown);
  EXPECT_TRUE(contains(all[3].message, "the control flap"));
  expect_complete(all[3]);
  the_route(project).lever->pilot_force_lbf = 80;
  EXPECT_EQ(verdicts(judged(project)), std::vector(4, Verdict::pass));
}

TEST(CableTension, WithoutALeverRatioJudgesTheStatedLoadAlone) {
  EXPECT_EQ(judged(one_pound_a_degree(60, 150)).size(), 3u);
}

// 14 CFR 23.397(b): the least forces, 150, 100 and 40 lbf, and none on a flap [verified].
TEST(CableTension, ALimitLoadUnderTheLeastPilotForceIsAskedAboutWithoutALeverRatio) {
  for (const auto& [control, least] :
       {std::pair{"rudder", 150.0}, std::pair{"Elevator", 100.0}, std::pair{"AILERON", 40.0}}) {
    SmallProject project = one_pound_a_degree(60, least);
    the_route(project).control = control;
    EXPECT_EQ(judged(project).size(), 3u) << control;
    the_route(project).tension->limit_load_lbf = least - 0.1;
    const std::vector<Judgement> all = judged(project);
    ASSERT_EQ(all.size(), 4u) << control;
    EXPECT_EQ(all[3].verdict, Verdict::unknown);
    EXPECT_TRUE(contains(all[3].mend, "state lever_ratio")) << all[3].mend;
    expect_complete(all[3]);
    the_route(project).lever = ControlLever{0.5, least, {"routes.yaml", 107, 18}};
    for (const Judgement& each : judged(project)) EXPECT_EQ(each.verdict, Verdict::pass);
  }
  SmallProject flap = one_pound_a_degree(60, 20);
  the_route(flap).control = "flap";
  EXPECT_EQ(judged(flap).size(), 3u);
  // What may be one of the three by another name is asked about, against the least of them.
  for (const char* control : {"ailerons", "Rudder pedals", "elevators", "stabilator", ""}) {
    SmallProject unknown = one_pound_a_degree(60, 39.9);
    the_route(unknown).control = control;
    const std::vector<Judgement> all = judged(unknown);
    ASSERT_EQ(all.size(), 4u) << control;
    EXPECT_EQ(all[3].verdict, Verdict::unknown);
    EXPECT_EQ(*all[3].limit, 40);
    expect_complete(all[3]);
    the_route(unknown).tension->limit_load_lbf = 40;
    EXPECT_EQ(judged(unknown).size(), 3u) << control;
  }
  SmallProject tab = one_pound_a_degree(60, 20);
  the_route(tab).primary = false;
  EXPECT_EQ(judged(tab).size(), 3u);
}

/// A second cable beside it, of a control of that name.
SmallProject with_second(SmallProject project, const std::string& control,
                         const std::string& line = eighth_steel) {
  project.node("pedal-right", NodeKind::pedal, {0, 5, 10});
  project.node("horn-right", NodeKind::horn, {100, 5, 10});
  Route& right = project.route("rudder-right", line, "pedal-right", "horn-right", {});
  if (right.system == SystemKind::cable) right.control = control;
  right.tension = project.project.routes[0].tension;
  return project;
}

int asked(const SmallProject& project) {
  const std::vector<Judgement> all = project.judged_by("cable-tension");
  return static_cast<int>(std::count_if(all.begin(), all.end(), asks_for_the_other_cable));
}

// 60 lbf each, both of them pulling on 400 lbf/in: 0.30 in, where one alone would be 0.15.
TEST(CableTension, AsksWhatAnAirframeGivesUnderAllCablesOfAControl) {
  const auto gives = [](const SmallProject& project) {
    const std::vector<Judgement> judged = project.judged_by("cable-tension");
    return std::count_if(judged.begin(), judged.end(), [](const Judgement& each) {
      return each.verdict == Verdict::warn && each.limit == 0.25 && contains(each.message, "gives");
    });
  };
  SmallProject project = one_pound_a_degree(60);
  project.project.airframe_stiffness_lbf_per_in = 400;
  EXPECT_EQ(gives(project), 0);
  EXPECT_EQ(gives(with_second(project, "rudder")), 2);
  EXPECT_EQ(gives(with_second(project, "elevator")), 0);
}

TEST(CableTension, AControlThatOneCableNamesIsAskedAbout) {
  const SmallProject alone = one_pound_a_degree(60);
  EXPECT_EQ(asked(alone), 1);
  for (const Judgement& each : alone.judged_by("cable-tension"))
    if (asks_for_the_other_cable(each)) {
      EXPECT_EQ(each.verdict, Verdict::warn);
      expect_complete(each);
    }
  EXPECT_EQ(asked(with_second(alone, "rudder")), 0);
  EXPECT_EQ(asked(with_second(alone, "ruder")), 2);
  EXPECT_EQ(asked(with_second(alone, "rudder", "tube-nylon-1/4")), 1);
  SmallProject unnamed = alone;
  the_route(unnamed).control.clear();
  EXPECT_EQ(asked(unnamed), 0);
}

TEST(CableTension, AControlIsOneHoweverItIsWritten) {
  const SmallProject alone = one_pound_a_degree(60);
  EXPECT_EQ(asked(with_second(alone, "Rudder")), 0);
  EXPECT_EQ(asked(with_second(alone, "RUDDER")), 0);
}

// Unlike cables share the pull by stiffness: this one takes two thirds of it beside one half as
// stiff, a third beside one twice as stiff [calculated].
TEST(CableTension, AnUnlikePairSharesThePullByStiffness) {
  for (const double other : {0.5, 2.0}) {
    SmallProject project =
        with_second(levered(1, 150, std::nullopt), "rudder", "cable-7x19-1/8-stainless");
    Line& line = project.line("cable-7x19-1/8-stainless");
    line.axial_stiffness_lbf->value = 1e5 * other;
    line.expansion_per_degf->value = airframe_expansion_per_degf - 1e-5 / other;
    // Both are at 100 lbf at the hottest.
    EXPECT_NEAR(*judged(project).at(strength).value, 100 + 150 / (1 + other), 1e-9) << other;
  }
}

// 14 CFR 23.399(b): two pilots at 0.75 of the force of one.
TEST(CableTension, TwoPilotsPullHalfAsMuchAgain) {
  SmallProject project = levered(1.5, std::nullopt, 300);
  the_route(project).lever->two_pilots = true;
  const std::vector<Judgement> all = judged(project);
  EXPECT_DOUBLE_EQ(*all.at(strength).value, 450);
  EXPECT_EQ(all.at(3).verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*all.at(3).limit, 450);
  EXPECT_TRUE(contains(all.at(3).message, "two pilots together, 1.5 times 200.0 lbf"))
      << all.at(3).message;
}

TEST(CableTension, InAnAirframeThatGivesFallsLess) {
  // 1000 lbf/in of cable in an airframe as stiff: half a pound a degree.
  SmallProject project = one_pound_a_degree(25);
  the_route(project).airframe_stiffness_lbf_per_in = 1000;
  EXPECT_EQ(part(project, cold).verdict, Verdict::pass);
  EXPECT_NEAR(*part(project, cold).value, 0, 1e-9);
  EXPECT_NEAR(*part(project, hot).value, 45, 1e-9);
  set_tension(project, 24.9, 200);
  const Judgement slack = part(project, cold);
  EXPECT_EQ(slack.verdict, Verdict::fail);
  EXPECT_TRUE(contains(slack.message, "in an airframe of 1000 lbf/in")) << slack.message;
  EXPECT_FALSE(contains(slack.message, "upper bound"));
  EXPECT_TRUE(contains(slack.mend, "rig it to 25 lbf")) << slack.mend;
}

// 30 lbf would draw the ends of a cable 30 in together.
TEST(CableTension, AsksAboutAnAirframeSoSoftThatNothingSlackensACable) {
  SmallProject project = one_pound_a_degree(30);
  the_route(project).airframe_stiffness_lbf_per_in = 1;
  const std::vector<Judgement> judged = project.judged_by("cable-tension");
  const auto asked = std::find_if(judged.begin(), judged.end(), [](const Judgement& each) {
    return contains(each.message, "gives 30.0 in under 30.0 lbf as rigged, the cables");
  });
  ASSERT_NE(asked, judged.end());
  EXPECT_EQ(asked->verdict, Verdict::warn);
  EXPECT_EQ(asked->limit, 0.25);
  EXPECT_TRUE(contains(asked->mend, "or leave it out")) << asked->mend;
}

// One unknown a missing figure is enough: chafe needs the tension too, and says so.
TEST(CableTension, CableWithoutATensionIsUnknownHereAndInChafe) {
  const SmallProject project = cable_project();
  const Judgement judgement = sole(judged(project));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "the tension of rudder-left is not stated"));
  expect_complete(judgement);
  const std::vector<Judgement> chafe = not_passed(project.judged("chafe"));
  ASSERT_EQ(chafe.size(), 1u);
  EXPECT_EQ(chafe.front().verdict, Verdict::unknown);
  EXPECT_TRUE(contains(chafe.front().message, "rigged tension of rudder-left"));
}

TEST(CableTension, SaysTheSameOfAReversedRun) {
  SmallProject project = one_pound_a_degree(30);
  the_route(project).points = {held({20, 0, 11}, HoldKind::fairlead)};
  the_route(project).points.front().where = {"routes.yaml", 110, 9};
  expect_same_reversed(project, "cable-tension");
}

}  // namespace
}  // namespace linewright
