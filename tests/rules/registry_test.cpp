// Each rule is its own manual: no part of it may be missing.

#include "rules/registry.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

bool is_kebab_case(std::string_view name) {
  const auto allowed = [](char c) { return (c >= 'a' && c <= 'z') || c == '-'; };
  return !name.empty() && std::all_of(name.begin(), name.end(), allowed) && name.front() != '-' &&
         name.back() != '-' && !contains(name, "--");
}

using Names = std::vector<std::string_view>;

// A name is never dropped, nor used again for something else: projects waive rules by name.
TEST(Registry, ListsEveryRule) {
  Names names;
  for (const Rule* rule : all_rules()) names.push_back(rule->name);
  EXPECT_EQ(names, (Names{"bend-radius",
                          "bend-fit",
                          "support-spacing",
                          "support-mount",
                          "straight-run",
                          "slack",
                          "wiring",
                          "frame-crossing",
                          "hole-edge",
                          "clearance",
                          "chafe",
                          "separation",
                          "bundle",
                          "network",
                          "drainage",
                          "lag",
                          "resonance",
                          "cable-size",
                          "fairlead-angle",
                          "pulley",
                          "cable-end",
                          "cable-tension",
                          "control-feel",
                          "rod-travel",
                          "casing-bends",
                          "casing-ends",
                          "attachment-travel",
                          "sleeve-cover",
                          "access",
                          "as-built"}));
}

TEST(Registry, EveryRuleHasLimitsOrTakesTheCatalogues) {
  for (const Rule* rule : all_rules())
    EXPECT_FALSE(rule->limits.empty() && rule->catalogue_limits.empty()) << rule->name;
}

TEST(Registry, NamesAreUniqueAndInKebabCase) {
  std::set<std::string_view> names;
  for (const Rule* rule : all_rules()) {
    EXPECT_TRUE(is_kebab_case(rule->name)) << rule->name;
    EXPECT_TRUE(names.insert(rule->name).second) << rule->name;
  }
}

TEST(Registry, EveryRuleSaysWhatItIsForHowItJudgesAndHowToMend) {
  for (const Rule* rule : all_rules()) {
    EXPECT_FALSE(rule->purpose.empty()) << rule->name;
    EXPECT_FALSE(contains(rule->purpose, "\n")) << rule->name;
    EXPECT_FALSE(rule->purpose.ends_with('.')) << rule->name;
    EXPECT_TRUE(rule->explanation.ends_with('.')) << rule->name;
    EXPECT_TRUE(rule->mend.ends_with('.')) << rule->name;
    EXPECT_NE(rule->judge, nullptr) << rule->name;
  }
}

TEST(Registry, EveryLimitHasASubjectANumberAndASource) {
  for (const Rule* rule : all_rules())
    for (const LimitRow& row : rule->limits) {
      EXPECT_FALSE(row.subject.empty()) << rule->name;
      EXPECT_FALSE(row.source.empty()) << rule->name << ": " << row.subject;
      EXPECT_TRUE(std::isfinite(row.value)) << rule->name << ": " << row.subject;
    }
}

// Some published limits only warn, where what they forbid is not sure to happen.
TEST(Registry, BreakingCommonPracticeNeverFails) {
  for (const Rule* rule : all_rules())
    for (const LimitRow& row : rule->limits) {
      EXPECT_TRUE(row.broken == Verdict::fail || row.broken == Verdict::warn) << row.subject;
      EXPECT_FALSE(row.mark == Mark::common_practice && row.broken == Verdict::fail)
          << rule->name << ": " << row.subject;
    }
}

TEST(Registry, OnlyCommonPracticeWarns) {
  EXPECT_EQ(broken_limit(Mark::common_practice), Verdict::warn);
  for (const Mark mark : {Mark::verified, Mark::verified_secondary, Mark::from_memory,
                          Mark::calculated, Mark::builder})
    EXPECT_EQ(broken_limit(mark), Verdict::fail);
}

TEST(Registry, EveryRuleIsFoundByItsName) {
  for (const Rule* rule : all_rules()) EXPECT_EQ(find_rule(rule->name), rule);
  EXPECT_EQ(find_rule("bend-radii"), nullptr);
  EXPECT_EQ(find_rule(""), nullptr);
  EXPECT_EQ(find_rule("Bend-radius"), nullptr);
}

TEST(Registry, EveryRuleStandsAnEmptyProject) {
  const SmallProject empty;
  for (const Rule* rule : all_rules())
    EXPECT_TRUE(empty.judged_by(rule->name).empty()) << rule->name;
}

}  // namespace
}  // namespace linewright
