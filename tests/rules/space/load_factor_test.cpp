// The least load factor that regulations ask for: 2.1 + 24,000 / (W + 10,000), no more than 3.8 (14
// CFR 25.337(b) [verified]).

#include "rules/space/load_factor.hpp"

#include <gtest/gtest.h>

#include "rules/rule.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

std::vector<Judgement> of_load_factor(double positive, std::optional<double> weight_lbf = {}) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {110, 0, 10});
  project.route("line", "tube-nylon-1/4", "forward", "aft");
  project.project.load_factor = {positive, -1, SourceLocation{"project.yaml", 3, 15}};
  project.project.weight_lbf = weight_lbf;
  std::vector<Judgement> all = project.judged_by("chafe");
  std::erase_if(all, [](const Judgement& each) { return each.source != cite(load_factor_row); });
  return all;
}

TEST(LoadFactor, OfALightAeroplaneIsNotUnder3_8) {
  EXPECT_TRUE(of_load_factor(3.8).empty());
  EXPECT_TRUE(of_load_factor(6).empty());
  const Judgement judgement = of_load_factor(1.5).at(0);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.value, 1.5);
  EXPECT_EQ(judgement.limit, 3.8);
  EXPECT_EQ(judgement.location.line, 3);
  EXPECT_EQ(judgement.message,
            "lines were taken to sag under 1.5 g, and the least that is asked of a light aeroplane "
            "is 3.80 g");
  EXPECT_FALSE(judgement.mend.empty());
}

// 24,000 over 15,000 and 22,500.
TEST(LoadFactor, IsLessForAHeavyOne) {
  EXPECT_DOUBLE_EQ(least_load_factor(5000), 2.1 + 24.0 / 15);
  EXPECT_DOUBLE_EQ(least_load_factor(2000), 3.8);
  EXPECT_TRUE(of_load_factor(3.17, 12'500).empty());
  EXPECT_EQ(of_load_factor(3.16, 12'500).size(), 1u);
}

TEST(LoadFactor, ThatIsNotStatedIsTheUsualOne) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {110, 0, 10});
  project.route("line", "tube-nylon-1/4", "forward", "aft");
  for (const Judgement& each : project.judged_by("chafe"))
    EXPECT_NE(each.source, cite(load_factor_row));
}

}  // namespace
}  // namespace linewright
