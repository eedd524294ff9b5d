// Turnbuckles and sleeves of one cable (AC 43.13-1B para 7-147 a [verified]: nothing can jam at any
// point of travel). Stretch of 1/8 in 7x19 steel by 100 D²/G, G 0.0000140 [verified, secondary: a
// wire-rope maker's stretch table]; it breaks at 2,000 lbf (AC 43.13-1B Table 7-3 [verified]).

#include "rules/cable/attachment_sleeves.hpp"

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// A sleeve from 30 to 44 in of 0.18 in bore, clamped in its middle or not held, and a turnbuckle
/// of 4 in with its middle at `at_in`. 100 lbf stretch 100 in of cable by 0.0896 in.
SmallProject with_turnbuckle(double at_in, bool is_clamped = true, double diameter_in = 0.44) {
  std::vector<RoutePoint> points;
  if (is_clamped) points.push_back(clamped({37, 0, 10}));
  SmallProject project = cable_project(points);
  Route& route = the_route(project);
  route.sleeves.push_back({30, 44, 0.18, 0.25, {"routes.yaml", 108, 16}});
  route.attached = {{"turnbuckle", at_in, 4, diameter_in, {"routes.yaml", 109, 12}}};
  set_tension(project, 40, 100);
  set_travel(project, 2, 1);
  return project;
}

std::vector<Judgement> of_sleeves(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("sleeve-cover");
  std::erase_if(all, [](const Judgement& each) { return !contains(each.message, "turnbuckle"); });
  return all;
}

TEST(AttachmentAndSleeve, ThatTravelsIntoAClampedSleeveFails) {
  // Its end is at 46 in; 2 in forward and the stretch of the 52 in behind it.
  const double stretch = 100.0 * 52 / (100 * 0.125 * 0.125 / 0.0000140);
  EXPECT_TRUE(of_sleeves(with_turnbuckle(48.1)).empty());
  const Judgement judgement = sole(of_sleeves(with_turnbuckle(48)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -stretch, 1e-6);
  EXPECT_TRUE(contains(judgement.message, "runs at full travel into the sleeve from 30"))
      << judgement.message;
  EXPECT_EQ(judgement.location.line, 109);
  expect_complete(judgement);
}

TEST(AttachmentAndSleeve, ThatGoTogetherAreJudgedAsDrawn) {
  EXPECT_TRUE(of_sleeves(with_turnbuckle(46, false)).empty());
  const Judgement judgement = sole(of_sleeves(with_turnbuckle(45.9, false)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.1, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "does not go into")) << judgement.message;
}

TEST(AttachmentAndSleeve, ThatFitsTheBoreMayGoThroughIt) {
  EXPECT_TRUE(of_sleeves(with_turnbuckle(37, true, 0.18)).empty());
  EXPECT_EQ(sole(of_sleeves(with_turnbuckle(37, true, 0.19))).verdict, Verdict::fail);
}

TEST(AttachmentAndSleeve, WithoutTheTravelIsUnknownUnlessTheyMeetAsDrawn) {
  SmallProject project = with_turnbuckle(80);
  the_route(project).travel.reset();
  const Judgement judgement = sole(of_sleeves(project));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "travel of rudder-left")) << judgement.message;
  expect_complete(judgement);
  the_route(project).attached.front().at_in = 40;
  EXPECT_EQ(sole(of_sleeves(project)).verdict, Verdict::fail);
}

TEST(AttachmentAndSleeve, WithoutALimitLoadIsUnknownOnlyWhereStretchCouldReach) {
  // At most the 2000 lbf that it breaks at: 52 in stretch by 0.93 in.
  SmallProject project = with_turnbuckle(48.5);
  set_tension(project, 40);
  EXPECT_EQ(sole(of_sleeves(project)).verdict, Verdict::unknown);
  the_route(project).attached.front().at_in = 49;
  EXPECT_TRUE(of_sleeves(project).empty());
}

bool any_says(const std::vector<Judgement>& judgements, const std::string& words) {
  return std::any_of(judgements.begin(), judgements.end(),
                     [&](const Judgement& each) { return contains(each.message, words); });
}

TEST(AttachmentAndSleeve, LeaveNoPassForABoreThatSuitsTheCableAlone) {
  EXPECT_TRUE(any_says(with_turnbuckle(80).judged_by("sleeve-cover"), "the sleeve fits"));
  EXPECT_FALSE(any_says(with_turnbuckle(40).judged_by("sleeve-cover"), "the sleeve fits"));
}

TEST(AttachmentAndSleeve, CountAClampedSleeveAgainstTheLongestOfTheAdjustment) {
  // Its end is at 48 in as drawn and at 46.9 in at its longest: 2 in forward and the stretch in it.
  SmallProject project = with_turnbuckle(50);
  EXPECT_TRUE(of_sleeves(project).empty());
  the_route(project).attached.front().adjustment = Adjustment{3.4, 6.2};
  EXPECT_TRUE(of_sleeves(project).empty());
  the_route(project).attached.front().adjustment = Adjustment{4, 8.2};
  EXPECT_EQ(sole(of_sleeves(project)).verdict, Verdict::fail);
}

TEST(AttachmentAndSleeve, ThatStopsAMovingSleeveMayBeScrewedOut) {
  SmallProject project = with_turnbuckle(46.1, false);
  the_route(project).attached.front().adjustment = Adjustment{3, 5};
  EXPECT_TRUE(of_sleeves(project).empty()) << "it pushes the sleeve along";
}

std::string mend_of_unheld(double turnbuckle_in, double aft_in = 1) {
  SmallProject project = with_turnbuckle(turnbuckle_in, false, 0.17);
  set_travel(project, 2, aft_in);
  for (const Judgement& each : project.judged_by("sleeve-cover"))
    if (contains(each.message, "nothing holds the sleeve")) return each.mend;
  return {};
}

TEST(UnheldSleeve, IsNotToBeClampedOverAnAttachment) {
  EXPECT_TRUE(contains(mend_of_unheld(80), "clamp it to structure between 30.0 in and 44.0 in"))
      << mend_of_unheld(80);
  // The 4 in of it at 44 in sweep from 40 in on, forward and the stretch; 2 in more are kept
  // (the splice's distance of AC 43.13-1B para 7-147 a, borrowed: common practice, no source).
  EXPECT_TRUE(contains(mend_of_unheld(44), "between 30.0 in and 37.9 in")) << mend_of_unheld(44);
  EXPECT_TRUE(contains(mend_of_unheld(36), "between 41.1 in and 44.0 in")) << mend_of_unheld(36);
  EXPECT_TRUE(mend_of_unheld(36, 4).starts_with("fix a stop to the cable"))
      << mend_of_unheld(36, 4);
}

// Half an inch is about a clamp's own width [common practice, no source]. Its sweep ends 4 in, the
// travel and the stretch of 64 in, 0.057 in, aft of 36 in: 0.505 in or 0.495 in short of the end.
TEST(UnheldSleeve, IsNotToBeClampedWhereItIsShorterThanAClamp) {
  EXPECT_TRUE(contains(mend_of_unheld(36, 3.438), "clamp it to structure"));
  EXPECT_TRUE(mend_of_unheld(36, 3.448).starts_with("fix a stop to the cable"));
}

TEST(AttachmentTravelMend, DoesNotSendAnAttachmentIntoASleeve) {
  // The nearest place that is clear of the clamp at 37 in lies in the sleeve.
  SmallProject project = with_turnbuckle(37);
  const Judgement judgement = sole(not_passed(project.judged_by("attachment-travel")));
  const std::size_t at = judgement.mend.find("middle is ");
  ASSERT_NE(at, std::string::npos) << judgement.mend;
  the_route(project).attached.front().at_in = std::stod(judgement.mend.substr(at + 10));
  EXPECT_TRUE(of_sleeves(project).empty()) << judgement.mend;
  EXPECT_TRUE(not_passed(project.judged_by("attachment-travel")).empty()) << judgement.mend;
}

}  // namespace
}  // namespace linewright
