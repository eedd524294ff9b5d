// A turnbuckle's drawn length against its adjustment.

#include "rules/cable/turnbuckle_length.hpp"

#include "lines/prepare.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// One of 4 to 6 in, drawn `length_in` long.
std::optional<Judgement> drawn(double length_in, bool states_adjustment = true) {
  SmallProject project = cable_project();
  Attachment turnbuckle{"turnbuckle", 50, length_in, 0.4, {"routes.yaml", 107, 17}};
  if (states_adjustment) turnbuckle.adjustment = Adjustment{4, 6};
  the_route(project).attached.push_back(turnbuckle);
  const PreparedProject prepared = prepare(project.project);
  const LineMotion motion = motion_of(prepared);
  return judge_drawn_length({*find_rule("attachment-travel"), prepared, motion, {}},
                            prepared.routes[0], the_route(project).attached[0]);
}

// Half of what it has each way [common practice, no source].
TEST(TurnbuckleLength, NearTheMiddleOfItsAdjustmentIsNotSpokenOf) {
  for (const double length : {4.5, 5.0, 5.5}) EXPECT_FALSE(drawn(length).has_value()) << length;
}

TEST(TurnbuckleLength, FarFromTheMiddleIsWarnedOf) {
  for (const double length : {4.4, 5.6}) {
    const auto judgement = drawn(length);
    ASSERT_TRUE(judgement.has_value()) << length;
    EXPECT_EQ(judgement->verdict, Verdict::warn);
    EXPECT_NEAR(*judgement->value, 0.6, 1e-9);
    EXPECT_NEAR(*judgement->limit, 0.5, 1e-9);
    EXPECT_EQ(judgement->location.line, 107);
    EXPECT_TRUE(contains(judgement->mend, "draw it 5.00 in long")) << judgement->mend;
    expect_complete(*judgement);
  }
}

TEST(TurnbuckleLength, WithoutAnAdjustmentIsTakenAtItsWord) {
  EXPECT_FALSE(drawn(4.4, false).has_value());
}

}  // namespace
}  // namespace linewright
