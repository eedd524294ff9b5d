// What was measured far from where it is drawn is asked about.

#include "planning/moved_places.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

Project measured(double off_in) {
  Project project;
  project.build_tolerance_in = 0.06;
  Node node;
  node.name = "tee";
  node.at = {100, 0, 10 + off_in};
  node.drawn_at = {100, 0, 10};
  project.nodes = {node};
  Route route;
  route.name = "static-left";
  RoutePoint drawn;
  drawn.at = {90, 0, 10};
  RoutePoint clamp;
  clamp.at = {95, off_in, 10};
  clamp.drawn_at = {95, 0, 10};
  clamp.hold = HoldKind::clamp;
  clamp.to = "S3L";
  route.points = {drawn, clamp};
  project.routes = {route};
  return project;
}

TEST(MovedPlaces, AreThoseFartherOffThanTheBuildTolerance) {
  EXPECT_TRUE(moved_places(measured(0)).empty());
  EXPECT_TRUE(moved_places(measured(0.0599)).empty());
  EXPECT_EQ(moved_places(measured(0.0601)).size(), 2u);
}

TEST(MovedPlaces, AreAskedAboutByNameAndByHowMuch) {
  const std::vector<std::string> questions = moved_places(measured(0.3125));
  ASSERT_EQ(questions.size(), 2u);
  EXPECT_EQ(questions[0],
            "tee was measured 0.312 in from where it is drawn, more than the build tolerance: was "
            "the drawing changed since, or is it to be moved?");
  EXPECT_TRUE(questions[1].starts_with("static-left: clamp on S3L was measured 0.312 in from"))
      << questions[1];
}

}  // namespace
}  // namespace linewright
