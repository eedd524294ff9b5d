// All rules over a project: what is left out, and in which order the rest comes.

#include "rules/judge.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "rules/registry.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// Two tubes side by side, an inch apart, named against the alphabet, and a bundle of wires.
SmallProject three_lines() {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("altimeter", NodeKind::instrument, {30, 10, 0})
      .node("probe", NodeKind::pitot_probe, {0, 0, 1})
      .node("airspeed", NodeKind::instrument, {30, 10, 1})
      .node("switch", NodeKind::end, {0, 0, 2}, true)
      .node("lamp", NodeKind::end, {30, 0, 2}, true);
  project.route("static-line", "tube-nylon-1/4", "port", "altimeter",
                {bent({15, 0, 0}, 0.9), bent({20, 10, 0}, 2)});
  Route& pitot = project.route("pitot-line", "tube-aluminium-1/4", "probe", "airspeed",
                               {bent({15, 0, 1}, 0.5), bent({20, 10, 1}, 2)});
  pitot.system = SystemKind::pitot;
  pitot.system_name = "pitot";
  project.route("lamp-wires", "wire-1/4", "switch", "lamp");
  return project;
}

std::size_t place_of_rule(const std::string& name) {
  const std::vector<const Rule*>& rules = all_rules();
  return static_cast<std::size_t>(std::find(rules.begin(), rules.end(), find_rule(name)) -
                                  rules.begin());
}

TEST(Judge, ComesByRouteInFileOrderThenByRuleThenAlongTheRoute) {
  const std::vector<Judgement> judgements = three_lines().judged();
  const std::map<std::string, int> file_order{
      {"static-line", 1}, {"pitot-line", 2}, {"lamp-wires", 3}};
  std::vector<std::tuple<int, std::size_t, double>> places;
  for (const Judgement& each : judgements)
    places.emplace_back(file_order.at(each.route), place_of_rule(each.rule),
                        each.distance_in.value_or(0));
  EXPECT_TRUE(std::is_sorted(places.begin(), places.end()));
  EXPECT_GT(judgements.size(), 20u);
}

TEST(Judge, EveryRouteAndSeveralRulesSpeak) {
  const std::vector<Judgement> judgements = three_lines().judged();
  for (const char* rule :
       {"bend-radius", "bend-fit", "support-spacing", "straight-run", "separation", "network"})
    EXPECT_TRUE(std::any_of(judgements.begin(), judgements.end(), [&](const Judgement& each) {
      return each.rule == rule;
    })) << rule;
}

TEST(Judge, OneRuleLeavesTheRestOut) {
  const std::vector<Judgement> judgements = three_lines().judged("bend-radius");
  ASSERT_EQ(judgements.size(), 4u);
  for (const Judgement& each : judgements) EXPECT_EQ(each.rule, "bend-radius");
  EXPECT_EQ(judgements[0].route, "static-line");
  EXPECT_EQ(judgements[3].route, "pitot-line");
}

TEST(Judge, OneRouteKeepsItsPairsWithOthers) {
  const SmallProject project = three_lines();
  const std::vector<Judgement> judgements = project.judged(std::nullopt, "pitot-line");
  bool pair_named_first_by_the_other = false;
  for (const Judgement& each : judgements) {
    EXPECT_TRUE(each.route == "pitot-line" || each.with == "pitot-line") << each.message;
    pair_named_first_by_the_other |= each.route != "pitot-line";
  }
  EXPECT_TRUE(pair_named_first_by_the_other);
  const auto all = project.judged();
  EXPECT_EQ(static_cast<std::size_t>(std::count_if(all.begin(), all.end(),
                                                   [](const Judgement& each) {
                                                     return each.route == "pitot-line" ||
                                                            each.with == "pitot-line";
                                                   })),
            judgements.size());
}

TEST(Judge, OneRuleOnOneRouteIsBoth) {
  const std::vector<Judgement> judgements = three_lines().judged("bend-radius", "pitot-line");
  ASSERT_EQ(judgements.size(), 2u);
  EXPECT_EQ(judgements[0].verdict, Verdict::fail);
  EXPECT_EQ(judgements[1].verdict, Verdict::pass);
}

TEST(Judge, UnusedWaiverIsToldLastOnItsRoute) {
  SmallProject project = three_lines();
  project.waive("slack", "static-line");
  const std::vector<Judgement> judgements = project.judged(std::nullopt, "static-line");
  ASSERT_FALSE(judgements.empty());
  const auto own = std::find_if(judgements.rbegin(), judgements.rend(),
                                [](const Judgement& each) { return each.route == "static-line"; });
  EXPECT_EQ(own->rule, "waivers");
}

// Asking for one route must not make the waivers of another look unused, or used ones fail.
TEST(Judge, WaiversCountTheSameWhateverIsAskedFor) {
  SmallProject project = three_lines();
  project.waive("bend-radius", "static-line");
  const std::vector<Judgement> of_pitot = project.judged(std::nullopt, "pitot-line");
  EXPECT_GT(of_pitot.size(), 5u);
  for (const Judgement& each : of_pitot) EXPECT_NE(each.rule, "waivers") << each.message;
  EXPECT_EQ(project.judged("bend-radius", "static-line").at(0).verdict, Verdict::waived);
}

TEST(Judge, WhatConcernsNoRouteComesFirst) {
  SmallProject project = three_lines();
  Closure closure;
  closure.name = "deck";
  project.project.closures.push_back(closure);
  const std::vector<Judgement> judgements = project.judged();
  EXPECT_EQ(judgements.front().rule, "access");
  EXPECT_EQ(judgements.front().with, "deck");
  EXPECT_EQ(judgements.front().verdict, Verdict::unknown);
}

TEST(Judge, SaysTheSameEveryTime) {
  const auto words = [] {
    std::string all;
    for (const Judgement& each : three_lines().judged())
      all += each.rule + each.route + each.message + each.mend + "\n";
    return all;
  };
  const std::string once = words();
  EXPECT_GT(once.size(), 1'000u);
  for (int again = 0; again < 5; ++again) EXPECT_EQ(words(), once);
}

TEST(Judge, EveryBrokenOneHasAMendAndEveryOneASourceAndAMessage) {
  SmallProject project = three_lines();
  project.waive("slack", "static-line");
  const std::vector<Judgement> judgements = project.judged();
  EXPECT_GT(judgements.size(), 20u);
  EXPECT_GT(not_passed(judgements).size(), 5u);
  for (const Judgement& each : judgements) {
    EXPECT_FALSE(each.message.empty()) << each.rule;
    EXPECT_FALSE(each.message.ends_with('.')) << each.message;
    EXPECT_FALSE(each.source.empty()) << each.rule << ": " << each.message;
    EXPECT_EQ(each.mend.empty(), each.verdict == Verdict::pass) << each.rule << each.message;
  }
}

TEST(Judge, EmptyProjectGivesNothing) {
  EXPECT_TRUE(SmallProject().judged().empty());
}

}  // namespace
}  // namespace linewright
