// Which of the rules' judgements says how near a cable comes to anything.

#include "planning/least_gap.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

Judgement gap(const std::string& rule, const std::string& route, const std::string& with,
              double gap_in, double limit_in) {
  Judgement judgement;
  judgement.rule = rule;
  judgement.verdict = gap_in < limit_in ? Verdict::fail : Verdict::pass;
  judgement.route = route;
  judgement.with = with;
  judgement.distance_in = 12;
  judgement.value = gap_in;
  judgement.limit = limit_in;
  return judgement;
}

TEST(LeastGaps, AreThoseOfLeastMarginARuleEach) {
  const std::vector<LeastGap> gaps = least_gaps(
      {gap("chafe", "rudder", "S3L", 0.5, 0.1), gap("clearance", "rudder", "F4", 0.6, 0.5),
       gap("chafe", "rudder", "F4", 0.6, 0.4), gap("chafe", "elevator", "F4", 0.1, 0.4),
       gap("pulley", "rudder", "F4", 0.1, 0.4)},
      "rudder");
  ASSERT_EQ(gaps.size(), 2u);
  EXPECT_EQ(gaps[0].rule, "clearance");
  EXPECT_EQ(gaps[0].gap_in, 0.6);
  EXPECT_EQ(gaps[0].distance_in, 12);
  EXPECT_EQ(gaps[1].rule, "chafe");
  EXPECT_EQ(gaps[1].with, "F4");
  EXPECT_EQ(gaps[1].verdict, Verdict::pass);
}

TEST(LeastGaps, TakeAJudgementBetweenTwoRoutesFromEither) {
  Judgement between = gap("separation", "static", "rudder", 1.2, 1);
  between.with_is_route = true;
  const std::vector<LeastGap> gaps = least_gaps({between}, "rudder");
  ASSERT_EQ(gaps.size(), 1u);
  EXPECT_EQ(gaps[0].with, "static");
  EXPECT_FALSE(gaps[0].distance_in.has_value());  // it is along the other
}

TEST(LeastGaps, PutWhatIsNotKnownFirst) {
  Judgement unknown = gap("chafe", "rudder", "", 0, 0);
  unknown.value.reset();
  unknown.verdict = Verdict::unknown;
  const std::vector<LeastGap> gaps =
      least_gaps({gap("chafe", "rudder", "F4", -0.6, 0.4), unknown}, "rudder");
  ASSERT_EQ(gaps.size(), 1u);
  EXPECT_EQ(gaps[0].verdict, Verdict::unknown);
  EXPECT_FALSE(gaps[0].gap_in.has_value());
}

TEST(LeastGaps, AreNoneWhereNothingIsNear) {
  EXPECT_TRUE(least_gaps({}, "rudder").empty());
}

}  // namespace
}  // namespace linewright
