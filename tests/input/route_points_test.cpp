// Routes' points as text to paste.

#include "input/route_points.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace linewright {
namespace {

std::string decimal(double inches, bool in_millimetres) {
  return fmt::format("{}", in_millimetres ? inches * 25.4 : inches);
}

Route route_with(const std::vector<RoutePoint>& points) {
  Route route;
  route.name = "line";
  route.points = points;
  return route;
}

RoutePoint point_at(Vec3 at) {
  RoutePoint point;
  point.at = at;
  return point;
}

TEST(RoutePointsText, HasEveryKeyThatAPointCanHave) {
  RoutePoint bend = point_at({1, -2.5, 3});
  bend.bend_in = 1.25;
  RoutePoint clamp = point_at({4, 0, 0});
  clamp.hold = HoldKind::clamp;
  clamp.to = "rib 4, left";
  RoutePoint grommet = point_at({5, 0, 0});
  grommet.hold = HoldKind::grommet;
  grommet.through = "F4-a";
  grommet.bore_in = 0.3125;
  RoutePoint pulley = point_at({6, 0, 0});
  pulley.hold = HoldKind::pulley;
  pulley.diameter_in = 2.5;
  pulley.axis = Vec3{0, 0, -1};
  pulley.given = PointGiven::centre;
  pulley.guards = 2;
  pulley.guard_gap_in = 0.05;
  pulley.outside_in = 2.75;
  pulley.width_in = 0.3;
  EXPECT_EQ(route_points_text({route_with({bend, clamp, grommet, pulley})}, decimal),
            "routes:\n"
            "  - name: line\n"
            "    points:\n"
            "      - {at: [1, -2.5, 3], bend: 1.25}\n"
            "      - {at: [4, 0, 0], hold: clamp, to: \"rib 4, left\"}\n"
            "      - {at: [5, 0, 0], hold: grommet, through: F4-a, bore: 0.3125}\n"
            "      - at: [6, 0, 0]\n"
            "        hold: pulley\n"
            "        diameter: 2.5\n"
            "        axis: [0, 0, -1]\n"
            "        given: centre\n"
            "        guards: 2\n"
            "        guard_gap: 0.05\n"
            "        outside: 2.75\n"
            "        width: 0.3\n");
}

TEST(RoutePointsText, PutsFairleadsThatArePassedFreeBetweenThePoints) {
  Route route = route_with({point_at({1, 0, 0}), point_at({3, 0, 0})});
  RoutePoint fairlead = point_at({2, 0, 0});
  fairlead.hold = HoldKind::fairlead;
  fairlead.bore_in = 0.5;
  route.free_fairleads.push_back({fairlead, 1});
  EXPECT_EQ(route_points_text({route}, decimal),
            "routes:\n  - name: line\n    points:\n      - {at: [1, 0, 0]}\n"
            "      - {at: [2, 0, 0], hold: fairlead, bore: 0.5, passes: free}\n"
            "      - {at: [3, 0, 0]}\n");
}

TEST(RoutePointsText, IsInTheUnitOfTheRoutesFile) {
  Route route = route_with({point_at({10, 0, -2})});
  route.in_millimetres = true;
  EXPECT_EQ(route_points_text({route}, decimal),
            "routes:\n  - name: line\n    points:\n      - {at: [254, 0, -50.8]}\n");
}

}  // namespace
}  // namespace linewright
