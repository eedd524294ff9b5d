// What is answered near a sleeve that does not say how thick it is.

#include "rules/space/unknown_girth.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

// 1/8 cable: 0.139 in across at the largest [verified: AC 43.13-1B Table 7-3]. In a bore of 0.17 in
// and two walls of 1/8 in the sleeve is 0.42 in across.
constexpr double bare_radius_in = 0.0695;
constexpr double thickest_radius_in = 0.21;

/// A cable that stays, sleeved from 40 to 60 in, with the top of a box `below_in` under its middle.
SmallProject sleeved(double below_in, std::optional<double> outside_in) {
  SmallProject project = cable_project();
  set_tension(project, 2000, 2100);
  set_travel(project, 0, 0);
  the_route(project).sleeves.push_back({40, 60, 0.17, outside_in, {"routes.yaml", 108, 16}});
  Solid box;
  box.name = "box";
  box.shape = Box{{49, -2, 0}, {51, 2, 10 - below_in}};
  project.project.structure.solids.push_back(box);
  return project;
}

std::vector<Judgement> unknown_of(const SmallProject& project, const std::string& rule) {
  std::vector<Judgement> all = project.judged_by(rule);
  std::erase_if(all, [](const Judgement& each) { return each.verdict != Verdict::unknown; });
  return all;
}

TEST(UnknownGirth, IsSaidOfClearanceWhereTheThickestSleeveWouldBreakIt) {
  // 1/2 in is wanted of a cable.
  const double wanted = 0.5 + thickest_radius_in + 0.01;
  EXPECT_TRUE(unknown_of(sleeved(wanted + 0.01, std::nullopt), "clearance").empty());
  const Judgement judgement = sole(unknown_of(sleeved(wanted - 0.02, std::nullopt), "clearance"));
  EXPECT_EQ(judgement.with, "box");
  EXPECT_EQ(judgement.location.line, 108);
  EXPECT_TRUE(contains(judgement.message, "0.420")) << judgement.message;
  EXPECT_TRUE(contains(judgement.mend, "outside"));
  expect_complete(judgement);
  EXPECT_TRUE(unknown_of(sleeved(wanted - 0.02, 0.25), "clearance").empty());
}

TEST(UnknownGirth, IsNotSaidWhereTheBareLineBreaksTheLimitAlike) {
  EXPECT_TRUE(unknown_of(sleeved(bare_radius_in + 0.1, std::nullopt), "separation").empty());
  const auto judgements = sleeved(bare_radius_in - 0.01, std::nullopt).judged_by("clearance");
  EXPECT_EQ(sole(judgements).verdict, Verdict::fail);
}

TEST(UnknownGirth, IsSaidOfSeparationFromAnotherLine) {
  SmallProject project = sleeved(5, std::nullopt);
  project.node("c", NodeKind::bulkhead, {45, -10, 10.6})
      .node("d", NodeKind::bulkhead, {45, 10, 10.6});
  project.route("aileron", eighth_steel, "c", "d");
  project.project.routes[1].tension = Tension{2000, 2100, {}};
  project.project.routes[1].travel = Travel{0, 0, {}};
  // 0.6 in less two bare cables leaves 0.46: it warns already. With 0.8 in it would not.
  for (Node& node : project.project.nodes)
    if (node.name == "c" || node.name == "d") node.at.z = 10.7;
  EXPECT_EQ(sole(unknown_of(project, "separation")).with, "aileron");
  for (Node& node : project.project.nodes)
    if (node.name == "c" || node.name == "d") node.at.z = 10.9;
  EXPECT_TRUE(unknown_of(project, "separation").empty());
}

TEST(UnknownGirth, IsSaidOfAHoleThatTheThickestSleeveWouldTouch) {
  SmallProject project = sleeved(5, std::nullopt);
  add_frame(project, "F1", 45, 1.2);
  EXPECT_EQ(sole(unknown_of(project, "frame-crossing")).with, "F1-a");
  the_route(project).sleeves[0].outside_in = 0.2;
  EXPECT_TRUE(unknown_of(project, "frame-crossing").empty());
}

}  // namespace
}  // namespace linewright
