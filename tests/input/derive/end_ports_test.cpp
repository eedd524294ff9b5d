// Lines laid out from the faces of the ports that they begin at.

#include "input/derive/derived_project.hpp"
#include "input/load_project.hpp"

namespace linewright {
namespace {

/// From a tee whose port b looks aft to an elbow that takes the line from before and leads it up;
/// ports are 1 in from the middle.
std::string tee_to_elbow(const std::string& route_keys) {
  return tailcone(
      "  - {name: tee, kind: tee, at: [90, -8, 14], fitting: tee-mine, direction: [-1, 0, 0], "
      "branch: [0, 0, 1]}\n"
      "  - {name: elbow, kind: union, at: [150, -8, 14], fitting: elbow-mine, direction: [0, 0, "
      "1], branch: [-1, 0, 0]}\n"
      "fittings:\n"
      "  - {name: tee-mine, kind: tee, tube: 0.25, body_diameter: 0.5, take_up: [1], source: "
      "mine}\n"
      "  - {name: elbow-mine, kind: elbow-90, tube: 0.25, body_diameter: 0.5, take_up: [1], "
      "source: "
      "mine}\n"
      "routes:\n"
      "  - {name: r, system: static, line: tube-nylon-1/4, from: tee, to: elbow, " +
      route_keys + "}\n");
}

std::vector<RoutePoint> points_of(const std::string& route_keys) {
  const ProjectFolder folder;
  folder.write("project.yaml", tee_to_elbow(route_keys));
  const LoadResult result = load_project(folder.path(), small_catalogue());
  EXPECT_EQ(shown(result.errors), "");
  return result.project ? result.project->routes.front().points : std::vector<RoutePoint>();
}

// From FS 91 to FS 149 there are 58 in: two supports cut it in three.
TEST(LineFromAPort, HasItsSpacedSupportsBetweenTheFaces) {
  const std::vector<RoutePoint> points = points_of("points: [{spaced: 20, hold: clamp}]");
  ASSERT_EQ(points.size(), 2u);
  expect_place(points[0].at, {91 + 58.0 / 3, -8, 14});
  expect_place(points[1].at, {91 + 2 * 58.0 / 3, -8, 14});
}

// The tee's port c is 1 in above its middle, so that the line falls 1 in over 59 in.
TEST(LineFromAPort, IsStraightFromThePortThatItNames) {
  const std::vector<RoutePoint> points =
      points_of("from_port: c, straight: true, points: [{fs: 100}]");
  ASSERT_EQ(points.size(), 1u);
  expect_place(points[0].at, {100, -8, 15 - 10.0 / 59});
}

// Port c of the tee looks up: a line that climbs more steeply than 45 degrees leaves by it.
TEST(LineFromAPort, LeavesByThePortThatPointsTheWayItGoes) {
  const std::vector<RoutePoint> points =
      points_of("straight: true, points: [{fs: 90.5}, {at: [91, -8, 24]}]");
  ASSERT_EQ(points.size(), 2u);
  expect_place(points[0].at, {90.5, -8, 19.5});
}

TEST(LineFromAPort, MeetsTheWebWhereTheLineFromItsFaceDoes) {
  std::string text = tee_to_elbow("from_port: c");
  const std::string centre = "centre: [-8, 14]";
  text.replace(text.find(centre), centre.size(), "centre: {on: r}");
  const ProjectFolder folder;
  folder.write("project.yaml", text);
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(shown(result.errors), "");
  const Circle hole = std::get<Circle>(result.project->structure.frames[0].holes[0].shape);
  EXPECT_NEAR(hole.centre.u, -8, 2e-9);
  EXPECT_NEAR(hole.centre.v, 15 - 10.0 / 59, 2e-9);
}

TEST(Expanded, HasThePortsThatFollowFromAFitting) {
  const ProjectFolder folder;
  folder.write("project.yaml", tee_to_elbow("points: []"));
  const auto text = expand_project(folder.path(), small_catalogue());
  ASSERT_TRUE(text);
  EXPECT_NE(text->find("# ports in inches: a at [89, -8, 14], b at [91, -8, 14], c at [90, -8, "
                       "15]\n"),
            std::string::npos)
      << *text;
}

}  // namespace
}  // namespace linewright
