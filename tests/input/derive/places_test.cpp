// Points and nodes whose place follows from a hole, a surface, or the line they lie on. Places are
// written to 1e-9 in, and worked out by hand here.

#include <cmath>

#include "input/derive/derived_project.hpp"

namespace linewright {
namespace {

TEST(PlaceThroughAHole, IsTheMiddleOfARoundHoleInTheMiddleOfItsWeb) {
  const Route route = route_of("", "{hold: grommet, through: round}");
  ASSERT_EQ(route.points.size(), 1u);
  expect_place(route.points[0].at, {100, -8, 14});
  EXPECT_EQ(route.points[0].through, "round");
}

TEST(PlaceThroughAHole, IsTheMiddleOfTheAreaOfAnother) {
  const Route route = route_of("", "{through: tall}");
  ASSERT_EQ(route.points.size(), 1u);
  expect_place(route.points[0].at, {100, 4, 7});
}

// The stringer climbs 4 in over 40 in; its upper flange's middle is at BL -9.75, 1 in above the
// path.
TEST(PlaceOnAChannel, IsBeforeTheFaceThatLooksThereAtTheStatedStation) {
  const Route route = route_of("", "{hold: clamp, on: S, fs: 120, side: up, off: 0.5}");
  ASSERT_EQ(route.points.size(), 1u);
  const Vec3 at = route.points[0].at;
  EXPECT_NEAR(at.x, 120, 1e-9);
  EXPECT_NEAR(at.y, -9.75, 1e-9);
  // Square to a channel that climbs 1 in 10: all heights are longer by the slope.
  EXPECT_NEAR(at.z, 16 + (1 + 0.02 + 0.5) * std::sqrt(1.01), 1e-9);
  EXPECT_EQ(route.points[0].to, "S");
}

TEST(PlaceOnAChannel, IsOffByHalfTheLineAndTheClampsCushionWhereNothingIsSaid) {
  const Route route = route_of("", "{hold: clamp, on: S, fs: 120, side: right}");
  ASSERT_EQ(route.points.size(), 1u);
  // The web stands at BL -10, half of its sheet is 0.02 in, of the line 0.125 in.
  expect_place(route.points[0].at, {120, -10 + 0.02 + 0.125 + 0.09, 16 + 0.5 * std::sqrt(1.01)});
}

TEST(PlaceOnAChannel, IsSoFarAlongItsPath) {
  const double along_in = std::hypot(20.0, 2.0);
  const Route route = route_of(
      "", "{hold: clamp, on: S, along: " + std::to_string(along_in) + ", side: left, off: 0.48}");
  ASSERT_EQ(route.points.size(), 1u);
  // Half of the web's 1 in, square to the channel.
  EXPECT_NEAR(route.points[0].at.x, 120 - 0.5 / std::sqrt(101), 1e-6);
  EXPECT_NEAR(route.points[0].at.y, -10.5, 1e-9);
}

TEST(PlaceOnAChannel, NeedsNoSideWhereWhatComesBeforeAndAfterIsOnOne) {
  const Route route = route_of(
      "", "{at: [105, -9, 15]}, {hold: clamp, on: S, fs: 120, off: 0.48}, {at: [135, -9, 17.9]}");
  ASSERT_EQ(route.points.size(), 3u);
  expect_place(route.points[1].at, {120, -9.5, 16 + 0.5 * std::sqrt(1.01)});
}

TEST(PlaceOnAChannel, AsksForTheSideWhereTwoServe) {
  EXPECT_EQ(fault_of("", "{at: [105, -9, 19]}, {hold: clamp, on: S, fs: 120}, {at: [135, -9, 22]}"),
            "more than one side of 'S' serves: up, right\n");
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, fs: 120, side: above}"),
            "a side must be up, down, left, right, forward or aft, found 'above'\n");
}

TEST(PlaceOnAChannel, IsNotBeyondItsEnds) {
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, fs: 145, side: up}"),
            "channel 'S' goes from FS 100.000 to 140.000: there is none of it at 145.000\n");
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, along: 50, side: up}"),
            "channel 'S' is 40.200 in long: there is no place 50.000 in along it\n");
}

TEST(PlaceOnAChannel, IsGivenByOneNumber) {
  const std::string fault =
      "a place on a channel is given by one of 'fs', 'bl', 'wl' and 'along'\n";
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, side: up}"), fault);
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, fs: 120, along: 3, side: up}"), fault);
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, fs: 120, wl: 16, side: up}"), fault);
}

TEST(PlaceOnASheet, IsGivenByTwoNumbers) {
  const Route floor = route_of("", "{hold: clamp, on: floor, fs: 110, bl: 3, off: 0.5}");
  ASSERT_EQ(floor.points.size(), 1u);
  expect_place(floor.points[0].at, {110, 3, 2.52});
  const Route web = route_of("", "{hold: clamp, on: F2, bl: -7, wl: 12, side: forward, off: 0.3}");
  ASSERT_EQ(web.points.size(), 1u);
  expect_place(web.points[0].at, {140 - 0.02 - 0.3, -7, 12});
  EXPECT_EQ(fault_of("", "{hold: clamp, on: floor, fs: 110, side: up}"),
            "a place on a sheet is given by two of 'fs', 'bl' and 'wl'\n");
  EXPECT_EQ(fault_of("", "{hold: clamp, on: floor, fs: 110, wl: 2, side: up}"),
            "sheet 'floor' lies along BL: state that, and leave out another\n");
}

TEST(PlaceOnAPart, HasOneAnswer) {
  EXPECT_EQ(fault_of("", "{at: [120, -9, 16], hold: clamp, on: S, fs: 120}"),
            "'at' says where the point is, and so does 'on'\n");
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, fs: 120, side: up, to: F1}"),
            "'on' is the part that the support is fixed to, and so is 'to'\n");
  EXPECT_EQ(fault_of("", "{hold: clamp, fs: 120}"),
            "the point needs 'on', the part that it is on\n");
  EXPECT_EQ(fault_of("", "{hold: clamp}"), "a point needs 'at'\n");
  EXPECT_EQ(fault_of("", "{hold: fairlead, on: S, fs: 120, side: up}"),
            "'off' is needed: how far the line's middle is off the surface\n");
  EXPECT_EQ(fault_of("", "{hold: clamp, on: nothing, fs: 120}"), "there is no part 'nothing'\n");
  EXPECT_EQ(fault_of("", "{hold: clamp, on: S, fs: 30 lbf, side: up}"),
            "expected a length (in, ft, mm, cm or m), found a force: '30 lbf'\n");
}

TEST(SpacedSupports, AreEvenAndNoFartherApartThanStated) {
  const Route route =
      route_of("", "{at: [100, -8, 14]}, {spaced: 12, hold: clamp, to: S}, {at: [130, -8, 14]}");
  ASSERT_EQ(route.points.size(), 4u);
  expect_place(route.points[1].at, {110, -8, 14});
  expect_place(route.points[2].at, {120, -8, 14});
  EXPECT_EQ(route.points[1].hold, HoldKind::clamp);
  EXPECT_EQ(route.points[2].to, "S");
}

TEST(SpacedSupports, AreNoneWhereTheSpacingIsKeptWithout) {
  EXPECT_EQ(route_of("", "{at: [100, -8, 14]}, {spaced: 30, hold: clamp}, {at: [130, -8, 14]}")
                .points.size(),
            2u);
  EXPECT_EQ(fault_of("", "{spaced: 0.0001, hold: clamp}"), "'spaced' would give 602992 supports\n");
  EXPECT_EQ(fault_of("", "{spaced: 6, hold: clamp}, {spaced: 5, hold: clamp}"),
            "two runs of 'spaced' supports follow each other\n");
}

// The straight line from [90, -8, 14] to [150, -8, 20] climbs 1 in 10.
TEST(StraightRoute, HasItsGuidesWhereTheLineMeetsWhatTheyGoThrough) {
  const Route route = route_of("straight: true, ",
                               "{hold: grommet, through: round}, {hold: clamp, fs: 120}, {hold: "
                               "clamp, to: F2}");
  ASSERT_EQ(route.points.size(), 3u);
  expect_place(route.points[0].at, {100, -8, 15});
  expect_place(route.points[1].at, {120, -8, 17});
  expect_place(route.points[2].at, {140, -8, 19});
}

TEST(StraightRoute, TurnsWhereAPointHasAPlaceOfItsOwn) {
  const Route route =
      route_of("straight: true, ", "{hold: clamp, fs: 100}, {at: [120, -8, 14]}, {fs: 135}");
  ASSERT_EQ(route.points.size(), 3u);
  expect_place(route.points[0].at, {100, -8, 14});
  expect_place(route.points[2].at, {135, -8, 17});
}

TEST(StraightRoute, SaysWhereItDoesNotCome) {
  EXPECT_EQ(
      fault_of("straight: true, ", "{fs: 160}"),
      "the straight line from FS 90.000 BL -8.000 WL 14.000 to FS 150.000 BL -8.000 WL 20.000 "
      "does not come to FS 160.000\n");
  EXPECT_EQ(fault_of("straight: true, ", "{fs: 120, wl: 17}"),
            "'fs' says where on the straight line the point is, and so does 'wl'\n");
  EXPECT_EQ(fault_of("straight: true, ", "{hold: clamp}"),
            "a point on a straight line needs one thing that says how far along\n");
  EXPECT_EQ(fault_of("straight: maybe, ", "{at: [120, -8, 17]}"),
            "'straight' must be true or false\n");
}

TEST(HoleOnALine, HasItsMiddleWhereTheLineMeetsTheFrame) {
  const ProjectFolder folder;
  std::string text = tailcone(
      "routes:\n  - {name: r, system: wire, line: wire-1/4, from: from, to: to, straight: true, "
      "points: [{hold: grommet, through: round}]}\n");
  text.replace(text.find("centre: [-8, 14]"), 16, "centre: {on: r}");
  folder.write("project.yaml", text);
  const LoadResult loaded = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(shown(loaded.errors), "");
  const Circle hole = std::get<Circle>(loaded.project->structure.frames[0].holes[0].shape);
  EXPECT_NEAR(hole.centre.u, -8, 1e-9);
  EXPECT_NEAR(hole.centre.v, 15, 1e-9);
  expect_place(loaded.project->routes[0].points[0].at, {100, -8, 15});
}

TEST(HoleOnALine, ThatHasItsPlaceFromTheHoleIsACircle) {
  const ProjectFolder folder;
  std::string text = tailcone(
      "routes:\n  - {name: r, system: wire, line: wire-1/4, from: from, to: to, points: [{hold: "
      "grommet, through: round}]}\n");
  text.replace(text.find("centre: [-8, 14]"), 16, "centre: {on: r}");
  folder.write("project.yaml", text);
  const std::vector<Diagnostic> errors = load_project(folder.path(), small_catalogue()).errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_EQ(errors[0].message,
            "hole 'round' takes its place from route 'r', which takes it from hole 'round'");
  EXPECT_EQ(errors[0].where.line, 6);
}

TEST(NodeInAHole, IsInItsMiddle) {
  const ProjectFolder folder;
  folder.write("project.yaml", tailcone("  - {name: wall, kind: bulkhead, through: round}\n"
                                        "  - {name: plate, kind: end, on: F2, bl: 1, wl: 3, side: "
                                        "aft}\n"));
  const LoadResult loaded = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(shown(loaded.errors), "");
  expect_place(loaded.project->find_node("wall")->at, {100, -8, 14});
  expect_place(loaded.project->find_node("plate")->at, {140.02, 1, 3});
}

TEST(TableOfPoints, IsReadAsPointsWithTheirPlacesInTheTable) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               tailcone("routes:\n  - {name: r, system: wire, line: wire-1/4, from: from, to: to, "
                        "points_from: way.csv}\n"));
  folder.write("way.csv",
               "# from the tape\nfs,bl,wl,hold,to,bend\n100,-8,14,grommet,,\n\n"
               "\"120\", -8.5 ,16,clamp,S,3\n");
  const LoadResult loaded = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(shown(loaded.errors), "");
  const std::vector<RoutePoint>& points = loaded.project->routes[0].points;
  ASSERT_EQ(points.size(), 2u);
  expect_place(points[1].at, {120, -8.5, 16});
  EXPECT_EQ(points[1].to, "S");
  EXPECT_EQ(points[1].bend_in, 3);
  EXPECT_EQ(points[1].where.file, "way.csv");
  EXPECT_EQ(points[1].where.line, 5);
}

TEST(TableOfPoints, HasTenThousandRowsAtMost) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               tailcone("routes:\n  - {name: r, system: wire, line: wire-1/4, from: from, to: to, "
                        "points_from: way.csv}\n"));
  std::string table = "fs,bl,wl\n";
  for (int i = 0; i < 10'000; ++i) table += std::to_string(100 + i % 2) + ",0,14\n";
  const auto told = [&](const std::string& text) {
    folder.write("way.csv", text);
    return shown(load_project(folder.path(), small_catalogue()).errors);
  };
  EXPECT_EQ(told(table).find("rows at most"), std::string::npos);
  EXPECT_EQ(told(table + "100,0,14\n").find("way.csv:10002:1: a table has 10000 rows at most"), 0u);
}

TEST(TableOfPoints, IsRefusedWithTheCellThatIsWrong) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               tailcone("routes:\n  - {name: r, system: wire, line: wire-1/4, from: from, to: to, "
                        "points_from: way.csv}\n"));
  folder.write("way.csv", "fs,bl,wl,colour\n100,-8,x,red,4\n");
  const std::vector<Diagnostic> errors = load_project(folder.path(), small_catalogue()).errors;
  EXPECT_NE(shown(errors).find("way.csv:1:10: unknown column 'colour' | columns: fs, bl, wl, "),
            std::string::npos)
      << shown(errors);
  EXPECT_NE(shown(errors).find("way.csv:2:8: expected a length"), std::string::npos)
      << shown(errors);
  EXPECT_NE(
      shown(errors).find("way.csv:2:14: the row has more cells than the table has columns, 4"),
      std::string::npos)
      << shown(errors);
  EXPECT_EQ(errors.front().source_line.empty(), false);
  folder.write("way.csv", "");
  EXPECT_NE(shown(load_project(folder.path(), small_catalogue()).errors)
                .find("way.csv:1:1: the table is empty"),
            std::string::npos);
}

TEST(TableOfHoles, GivesAFrameItsHoles) {
  const ProjectFolder folder;
  std::string text = tailcone("");
  text.replace(text.find("    - {name: F2,"), 16, "    - {holes_from: f2.csv, name: F2,");
  folder.write("project.yaml", text);
  folder.write("f2.csv", "name,bl,wl,diameter\nleft,-8,14,0.5\nright,8,14,0.5\n");
  const LoadResult loaded = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(shown(loaded.errors), "");
  const std::vector<Hole>& holes = loaded.project->structure.frames[1].holes;
  ASSERT_EQ(holes.size(), 2u);
  EXPECT_EQ(holes[1].name, "right");
  EXPECT_EQ(std::get<Circle>(holes[1].shape).centre, (Vec2{8, 14}));
}

}  // namespace
}  // namespace linewright
