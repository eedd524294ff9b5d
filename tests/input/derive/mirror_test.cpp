// Twins on the other side of BL 0.

#include <algorithm>
#include <stdexcept>

#include "input/derive/derived_project.hpp"

namespace linewright {
namespace {

LoadResult loaded(const std::string& text) {
  const ProjectFolder folder;
  folder.write("project.yaml", text);
  return load_project(folder.path(), small_catalogue());
}

std::string with(std::string text, const std::string& before, const std::string& after) {
  const std::size_t at = text.find(before);
  EXPECT_NE(at, std::string::npos) << before;
  return at == std::string::npos ? text : text.replace(at, before.size(), after);
}

const std::string route =
    "routes:\n  - {name: left, system: wire, line: wire-1/4, from: from, to: to, mirror: right, "
    "points: [{hold: grommet, through: round}, {hold: clamp, on: S, fs: 120, side: up, off: "
    "0.5}]}\n";

std::string mirrored_tailcone() {
  std::string text = tailcone(route);
  text = with(text, "edge: grommet, bore: 0.5}", "edge: grommet, bore: 0.5, mirror: round-right}");
  text = with(text, "edge: bare}\n  panels", "edge: bare, mirror: S-right}\n  panels");
  text = with(text, "at: [90, -8, 14]}", "at: [90, -8, 14], mirror: from-right}");
  return with(text, "at: [150, -8, 20]}", "at: [150, -8, 20], mirror: to-right}");
}

TEST(Mirror, MakesTheTwinOfAllThatARouteNames) {
  const LoadResult result = loaded(mirrored_tailcone());
  ASSERT_EQ(shown(result.errors), "");
  const Project& project = *result.project;
  ASSERT_EQ(project.routes.size(), 2u);
  const Route& right = project.routes[1];
  EXPECT_EQ(right.name, "right");
  EXPECT_EQ(right.from, "from-right");
  EXPECT_EQ(right.to, "to-right");
  ASSERT_EQ(right.points.size(), 2u);
  EXPECT_EQ(right.points[0].through, "round-right");
  EXPECT_EQ(right.points[1].to, "S-right");
  for (std::size_t i = 0; i < 2; ++i) {
    const Vec3 at = project.routes[0].points[i].at;
    EXPECT_EQ(right.points[i].at, (Vec3{at.x, -at.y, at.z}));
  }
  ASSERT_EQ(project.structure.channels.size(), 2u);
  EXPECT_EQ(project.structure.channels[1].path, (std::vector<Vec3>{{100, 10, 14}, {140, 10, 18}}));
  EXPECT_EQ(project.structure.channels[1].section,
            (std::vector<Vec2>{{0.5, 0}, {0, 0}, {0, 1}, {-0.5, 1}}));
  const std::vector<Hole>& holes = project.structure.frames[0].holes;
  ASSERT_EQ(holes.size(), 3u);
  EXPECT_EQ(holes[1].name, "round-right");
  EXPECT_EQ(std::get<Circle>(holes[1].shape).centre, (Vec2{8, 14}));
}

TEST(Mirror, SaysWhatHasNoTwin) {
  const std::string text =
      with(mirrored_tailcone(), "at: [90, -8, 14], mirror: from-right}", "at: [90, -8, 14]}");
  const std::vector<Diagnostic> errors = loaded(text).errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_EQ(errors[0].message,
            "route 'left' has no mirror image: node 'from' lies on one side and has no twin");
  EXPECT_EQ(
      errors[0].suggestion,
      "give 'from' 'mirror: NAME', in place of what stands there for its twin, if anything does");
}

TEST(Mirror, SaysOnceWhatIsWrongInAThingAndInItsImage) {
  const std::string text = with(mirrored_tailcone(), "points: [{hold: grommet, through: round}",
                                "points: [{at: [90, -8, 14]}, {hold: grommet, through: round}");
  const std::vector<Diagnostic> errors = loaded(text).errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_NE(errors[0].message.find("node 'from'"), std::string::npos) << errors[0].message;
}

TEST(Mirror, TellsWhereAnImageStandsThereByItselfToo) {
  const std::string text = with(mirrored_tailcone(), "nodes:\n",
                                "nodes:\n  - {name: from-right, kind: end, at: [90, 8, 14]}\n");
  const std::vector<Diagnostic> errors = loaded(text).errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_NE(errors[0].message.find("the node 'from-right' is given twice"), std::string::npos);
  EXPECT_EQ(errors[0].suggestion,
            "it is the mirror image of 'from' by itself: leave its own entry out, or its 'mirror'");
}

TEST(Mirror, TakesWhatLiesOnBothSidesForItsOwnTwin) {
  std::string text =
      with(mirrored_tailcone(), "at: [90, -8, 14], mirror: from-right}", "at: [90, 0, 14]}");
  text = with(text, "{hold: clamp, on: S, fs: 120, side: up, off: 0.5}",
              "{hold: clamp, on: floor, fs: 110, bl: -3, off: 0.5}");
  const LoadResult result = loaded(text);
  ASSERT_EQ(shown(result.errors), "");
  EXPECT_EQ(result.project->routes[1].from, "from");
  EXPECT_EQ(result.project->routes[1].points[1].to, "floor");
}

TEST(Mirror, RefusesANameThatIsTaken) {
  const std::string text = with(mirrored_tailcone(), "mirror: S-right", "mirror: floor");
  const std::string errors = shown(loaded(text).errors);
  EXPECT_NE(errors.find("floor"), std::string::npos) << errors;
  EXPECT_NE(errors.find("project.yaml:9:"), std::string::npos) << errors;
}

// Seen in a mirror a right-handed turn is left-handed: about the image of its axis the other way
// round it is right-handed again.
TEST(Mirror, TurnsAMoverTheOtherWayRound) {
  const LoadResult result =
      loaded(with(tailcone(""), "nodes:",
                  "  movers:\n    - {name: bellcrank, pivot: [105, -4, 10], axis: [1, 2, 3], "
                  "points: [[105, -4, "
                  "14]], radius: 0.4, sweep: [-28, 24], mirror: second}\nnodes:"));
  ASSERT_EQ(shown(result.errors), "");
  const Mover& second = result.project->structure.movers.at(1);
  EXPECT_EQ(second.name, "second");
  EXPECT_EQ(second.pivot, (Vec3{105, 4, 10}));
  EXPECT_EQ(second.axis, (Vec3{-1, 2, -3}));
  EXPECT_EQ(second.points, (std::vector<Vec3>{{105, 4, 14}}));
  EXPECT_EQ(second.sweep_from_deg, -28);
  EXPECT_EQ(second.sweep_to_deg, 24);
}

TEST(Mirror, KeepsABoxTheRightWayRound) {
  const LoadResult result =
      loaded(with(tailcone(""), "nodes:",
                  "  solids:\n    - {name: b, box: {min: [100, -9, 1], max: [110, -4, 3]}, mirror: "
                  "c}\nnodes:"));
  ASSERT_EQ(shown(result.errors), "");
  const Box box = std::get<Box>(result.project->structure.solids.at(1).shape);
  EXPECT_EQ(box.min, (Vec3{100, 4, 1}));
  EXPECT_EQ(box.max, (Vec3{110, 9, 3}));
}

TEST(Mirror, KeepsTheDigitsAsTheyAreWritten) {
  const LoadResult result =
      loaded(tailcone("  - {name: a, kind: end, at: [1, -0.1, 2], mirror: b}\n"
                      "  - {name: c, kind: end, at: [1, 2.5 mm, 2], mirror: d}\n"));
  ASSERT_EQ(shown(result.errors), "");
  EXPECT_EQ(result.project->find_node("b")->at.y, 0.1);
  EXPECT_EQ(result.project->find_node("d")->at.y, -result.project->find_node("c")->at.y);
}

TEST(Mirror, TakesThePartsHolesAlongUnderNamesOfTheirOwn) {
  const std::string holed = "edge: bare, holes: [{name: h, at: [120, -10, 16.5], diameter: 0.25";
  const std::string text = with(mirrored_tailcone(), "edge: bare, mirror: S-right",
                                holed + ", mirror: h-right}], mirror: S-right");
  const LoadResult result = loaded(text);
  ASSERT_EQ(shown(result.errors), "");
  EXPECT_EQ(result.project->structure.channels[1].holes.at(0).name, "h-right");
  EXPECT_EQ(result.project->structure.channels[1].holes.at(0).at, (Vec3{120, 10, 16.5}));
  const std::string errors = shown(loaded(with(mirrored_tailcone(), "edge: bare, mirror: S-right",
                                               holed + "}], mirror: S-right"))
                                       .errors);
  EXPECT_NE(errors.find("part 'S' has no mirror image: hole 'h' lies on one side and has no twin"),
            std::string::npos)
      << errors;
}

std::string rib_and_floor(const std::string& rib_hole, const std::string& floor_hole) {
  return with(
      tailcone(""), "  channels:",
      "    - {name: R, buttock_line: -30, thickness: 0.04, outline: [[100, 0], [140, 0], "
      "[140, 9], [100, 9]], holes: [{name: r, centre: [110, 4], diameter: 1, edge: bare" +
          rib_hole +
          "}]}\n    - {name: deck, waterline: 2, thickness: 0.04, outline: [[100, -9], [140, "
          "-9], [140, 9], [100, 9]], holes: [{name: d, centre: [110, -4], diameter: 1, edge: "
          "bare" +
          floor_hole + "}]}\n  channels:");
}

TEST(Mirror, OfAHoleInAFloorTurnsItsSecondNumber) {
  const LoadResult result = loaded(rib_and_floor("", ", mirror: d-right"));
  ASSERT_EQ(shown(result.errors), "");
  const Frame& floor = result.project->structure.frames.back();
  EXPECT_EQ(floor.holes.at(1).name, "d-right");
  EXPECT_EQ(std::get<Circle>(floor.holes[1].shape).centre, (Vec2{110, 4}));
}

TEST(Mirror, OfAHoleInARibIsNotInThatRib) {
  const std::vector<Diagnostic> errors = loaded(rib_and_floor(", mirror: r-right", "")).errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_EQ(
      errors[0].message,
      "hole 'r' has no mirror image in part 'R', which is not the same on both sides of BL 0");
}

const Frame& frame_of(const LoadResult& result, const std::string& name) {
  const std::vector<Frame>& frames = result.project->structure.frames;
  const auto found = std::ranges::find(frames, name, &Frame::name);
  return found != frames.end() ? *found : throw std::out_of_range("no frame " + name);
}

TEST(Mirror, OfARibStandsAtTheOtherButtockLineWithItsHoles) {
  const std::string text =
      with(rib_and_floor(", mirror: r-right", ""), "{name: R, ", "{name: R, mirror: R-right, ");
  const LoadResult result = loaded(text);
  ASSERT_EQ(shown(result.errors), "");
  const Frame& rib = frame_of(result, "R-right");
  EXPECT_EQ(rib.plane.in_space({110, 4}), (Vec3{110, 30, 4}));
  EXPECT_EQ(rib.outline, frame_of(result, "R").outline);
  ASSERT_EQ(rib.holes.size(), 1u);
  EXPECT_EQ(rib.holes[0].name, "r-right");
  EXPECT_EQ(std::get<Circle>(rib.holes[0].shape).centre, (Vec2{110, 4}));
}

std::string half_frame(const std::string& stands) {
  return with(tailcone(""), "  channels:",
              "    - {name: H, " + stands +
                  ", mirror: H-right, thickness: 0.04, outline: [[-9, 1], [-2, 1], [-2, 7], [-9, "
                  "5]], holes: [{name: h, centre: [-4, 3], diameter: 1, mirror: h-right}]}\n"
                  "  channels:");
}

TEST(Mirror, OfHalfAFrameTurnsWhatIsDrawnInBl) {
  const LoadResult result = loaded(half_frame("station: 120"));
  ASSERT_EQ(shown(result.errors), "");
  const Frame& right = frame_of(result, "H-right");
  EXPECT_EQ(right.plane.in_space(right.outline[3]), (Vec3{120, 9, 5}));
  EXPECT_EQ(right.plane.in_space(std::get<Circle>(right.holes.at(0).shape).centre),
            (Vec3{120, 4, 3}));
}

/// Every corner and hole of a slanted frame, in space, is that of its twin with BL the other way.
TEST(Mirror, OfASlantedFrameIsItsImageInSpace) {
  for (const std::string normal : {"[1, 0, 0.3]", "[1, 0.4, 0.3]", "[-1, 0.4, 0]"}) {
    const LoadResult result =
        loaded(half_frame("plane: {point: [120, -12, 3], normal: " + normal + ", up: [0, 0, 1]}"));
    ASSERT_EQ(shown(result.errors), "") << normal;
    const Frame& left = frame_of(result, "H");
    const Frame& right = frame_of(result, "H-right");
    ASSERT_EQ(left.outline.size(), right.outline.size());
    const auto expect_image = [&](Vec2 in_left, Vec2 in_right) {
      const Vec3 at = left.plane.in_space(in_left);
      EXPECT_LT(norm(right.plane.in_space(in_right) - Vec3{at.x, -at.y, at.z}), 1e-12) << normal;
    };
    for (std::size_t i = 0; i < left.outline.size(); ++i)
      expect_image(left.outline[i], right.outline[i]);
    expect_image(std::get<Circle>(left.holes.at(0).shape).centre,
                 std::get<Circle>(right.holes.at(0).shape).centre);
  }
}

TEST(Mirror, OfAFrameAcrossTheMiddleIsRefused) {
  const std::vector<Diagnostic> errors =
      loaded(with(tailcone(""), "{name: F2, ", "{name: F2, mirror: F3, ")).errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_EQ(errors[0].message,
            "part 'F2' has no twin: it reaches across BL 0, and is on both sides itself");
}

TEST(Mirror, OfAHoleThatARouteDrillsIsInTheTwinsWeb) {
  std::string text = rib_and_floor(", mirror: r-right", "");
  text = with(text, "{name: R, ", "{name: R, mirror: R-right, ");
  text = with(text, "centre: [110, 4]", "centre: {on: across}");
  text +=
      "  - {name: out, kind: end, at: [112, -40, 3]}\n  - {name: in, kind: end, at: [112, -20, "
      "5]}\nroutes:\n  - {name: across, system: wire, line: wire-1/4, from: out, to: in, "
      "straight: true, points: [{hold: grommet, through: r}]}\n";
  const LoadResult result = loaded(text);
  ASSERT_EQ(shown(result.errors), "");
  const Frame& right = frame_of(result, "R-right");
  EXPECT_EQ(std::get<Circle>(right.holes.at(0).shape).centre, (Vec2{112, 4}));
}

TEST(Mirror, OfAPanelOverRibsIsOverTheirTwins) {
  std::string text = rib_and_floor(", mirror: r-right", "");
  text = with(text, "{name: R, ", "{name: R, mirror: R-right, ");
  text =
      with(text, "  channels:",
           "    - {name: Q, buttock_line: -50, mirror: Q-right, thickness: 0.04, outline: [[100, "
           "0], [140, 0], [140, 9], [100, 9]]}\n  channels:");
  text =
      with(text, "  panels:\n",
           "  panels:\n    - {name: skin, over: [R, Q], corners: [1, 2], thickness: 0.04, mirror: "
           "skin-right}\n");
  const LoadResult result = loaded(text);
  ASSERT_EQ(shown(result.errors), "");
  std::vector<std::vector<Vec3>> corners;
  for (const Panel& panel : result.project->structure.panels)
    if (panel.name.starts_with("skin")) corners.push_back(panel.corners);
  ASSERT_EQ(corners.size(), 2u);
  ASSERT_EQ(corners[0].size(), corners[1].size());
  for (std::size_t i = 0; i < corners[0].size(); ++i)
    EXPECT_EQ(corners[1][i], (Vec3{corners[0][i].x, -corners[0][i].y, corners[0][i].z}));
}

TEST(Mirror, OfAPanelOverFramesIsNotTold) {
  const std::vector<Diagnostic> errors =
      loaded(with(tailcone(""), "  panels:\n",
                  "  panels:\n    - {name: side, over: [F1, F2], corners: [1, 4], thickness: 0.04, "
                  "mirror: other}\n"))
          .errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_NE(errors[0].message.find("part 'side' is stretched over frames"), std::string::npos);
}

}  // namespace
}  // namespace linewright
