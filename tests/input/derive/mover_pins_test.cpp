// Movers that are drawn from the nodes that lines are pinned to.

#include <string>

#include "input/derive/derived_project.hpp"

namespace linewright {
namespace {

/// A bellcrank with these points beside these nodes.
LoadResult pinned(const std::string& points, const std::string& nodes,
                  const std::string& more = {}) {
  const ProjectFolder folder;
  folder.write(
      "project.yaml",
      "linewright: 1\nname: a\nstructure:\n  movers:\n    - {name: bellcrank, pivot: [120, "
      "-4, 10], axis: [0, 1, 0], points: " +
          points + ", radius: 0.25, sweep: [-25, 25]" + more + "}\nnodes:\n" + nodes);
  return load_project(folder.path(), small_catalogue());
}

TEST(MoverPins, StandWhereTheNodesDo) {
  const LoadResult result =
      pinned("[upper, [120, -4, 6]]", "  - {name: upper, kind: horn, at: [120, -4, 13 1/2]}\n");
  ASSERT_EQ(shown(result.errors), "");
  EXPECT_EQ(result.project->structure.movers[0].points,
            (std::vector<Vec3>{{120, -4, 13.5}, {120, -4, 6}}));
}

// The node's arm asks for the mover, and the mover for the node's place.
TEST(MoverPins, MayBeOfAnArmThatIsOnTheMover) {
  const LoadResult result =
      pinned("[upper, lower]",
             "  - {name: upper, kind: horn, at: [120, -4, 14], arm: {on: bellcrank}}\n"
             "  - {name: lower, kind: horn, at: [120, -4, 6], arm: {on: bellcrank}}\n");
  ASSERT_EQ(shown(result.errors), "");
  EXPECT_EQ(result.project->structure.movers[0].points,
            (std::vector<Vec3>{{120, -4, 14}, {120, -4, 6}}));
  for (const Node& node : result.project->nodes)
    EXPECT_EQ(node.arm.value().pivot, (Vec3{120, -4, 10}));
}

TEST(MoverPins, HaveTheirImagesInTheTwin) {
  const LoadResult result = pinned(
      "[upper]",
      "  - {name: upper, kind: horn, at: [120, -4, 14], arm: {on: bellcrank}, mirror: other}\n",
      ", mirror: bellcrank-right");
  ASSERT_EQ(shown(result.errors), "");
  EXPECT_EQ(result.project->structure.movers[1].points, (std::vector<Vec3>{{120, 4, 14}}));
  EXPECT_EQ(result.project->nodes[1].arm.value().pivot, (Vec3{120, 4, 10}));
}

TEST(MoverPins, OfNoNodeAreRefusedOnce) {
  EXPECT_EQ(
      shown(pinned("[uper, [120, -4, 6]]", "  - {name: upper, kind: horn, at: [120, -4, 14]}\n")
                .errors),
      "project.yaml:5:73: there is no node 'uper' for part 'bellcrank' to be pinned to | give "
      "the place of this corner, or the name of a node that is there\n");
}

TEST(MoverPins, ThatLackBracketsAreNotTakenForNames) {
  const std::string errors =
      shown(pinned("[120, -4, 14]", "  - {name: upper, kind: horn, at: [120, -4, 14]}\n").errors);
  EXPECT_EQ(errors.find("no node"), std::string::npos);
  EXPECT_NE(errors.find("project.yaml:5:73: "), std::string::npos) << errors;
}

}  // namespace
}  // namespace linewright
