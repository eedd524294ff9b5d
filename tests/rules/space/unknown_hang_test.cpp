// What is answered of gaps to a cable whose hang nobody knows.

#include "rules/space/unknown_hang.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// A cable of 100 in with a fairlead halfway, and a second one 20 in beside it.
SmallProject two_cables() {
  SmallProject project = cable_project({held({50, 0, 10}, HoldKind::fairlead)});
  set_tension(project, 100, 200);
  set_travel(project, 0, 0);
  project.node("pedal-2", NodeKind::pedal, {0, 20, 10});
  project.node("horn-2", NodeKind::horn, {100, 20, 10});
  Route& second = project.route("rudder-right", eighth_steel, "pedal-2", "horn-2");
  second.control = "rudder";
  second.tension = Tension{100, 200, {}};
  second.travel = Travel{0, 0, {}};
  return project;
}

std::vector<Judgement> unknown_of(const SmallProject& project, const std::string& rule) {
  std::vector<Judgement> all = project.judged_by(rule);
  std::erase_if(all, [](const Judgement& each) { return each.verdict != Verdict::unknown; });
  return all;
}

TEST(UnknownHang, IsSaidOnceOfACableHoweverManySpansItHas) {
  SmallProject project = two_cables();
  project.project.routes[1].control = "elevator";
  for (const std::string rule : {"clearance", "separation"})
    EXPECT_TRUE(unknown_of(project, rule).empty()) << rule;
  the_route(project).tension.reset();
  for (const std::string rule : {"clearance", "separation"}) {
    const Judgement judgement = sole(unknown_of(project, rule));
    EXPECT_EQ(judgement.route, "rudder-left");
    EXPECT_TRUE(contains(judgement.message, "the rigged tension of rudder-left is missing"))
        << judgement.message;
    expect_complete(judgement);
  }
}

TEST(UnknownHang, IsSaidOfACableBesideOneOfItsControlThatIsNotKnown) {
  for (const std::string missing :
       {"the rigged tension of rudder-right", "the limit load of rudder-right"}) {
    SmallProject project = two_cables();
    Route& other = project.project.routes[1];
    if (contains(missing, "limit")) {
      // Of itself neither: else as much is taken for the other.
      set_tension(project, 100);
      other.tension->limit_load_lbf.reset();
    } else {
      other.tension.reset();
    }
    const Judgement judgement = unknown_of(project, "clearance").front();
    EXPECT_EQ(judgement.route, "rudder-left");
    EXPECT_TRUE(contains(judgement.message, missing)) << judgement.message;
  }
}

TEST(UnknownHang, IsNothingToALineThatIsNoCable) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {10, 0, 0});
  project.route("tube", "tube-nylon-1/4", "a", "b");
  project.line("tube-nylon-1/4").weight_lb_per_in.reset();
  EXPECT_TRUE(unknown_of(project, "clearance").empty());
}

TEST(UnknownHang, LeavesTheGapLessWhatIsKnownOfIt) {
  // The fairlead of 0.19 in leaves the nominal 0.125 in 0.0325 in of play, of which 48/50 are left
  // 2 in beside it; a span is looked at in pieces, each at its least.
  SmallProject project = two_cables();
  the_route(project).points[0].bore_in = 0.19;
  Solid box;
  box.name = "box";
  box.shape = Box{{48, -2, 0}, {52, 2, 9}};
  project.project.structure.solids.push_back(box);
  the_route(project).tension.reset();
  for (const Judgement& judgement : project.judged_by("clearance"))
    if (judgement.with == "box") {
      EXPECT_LT(*judgement.value, 1 - 0.0695 - 0.0325 * 48 / 50 + 1e-4);
      EXPECT_GE(*judgement.value, 1 - 0.0695 - 0.0325 - 1e-4);
    }
}

}  // namespace
}  // namespace linewright
