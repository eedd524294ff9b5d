// What is almost a mirror image is asked about.

#include "planning/near_twins.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

Node node(const std::string& name, Vec3 at) {
  Node made;
  made.name = name;
  made.at = at;
  return made;
}

Project with_nodes(std::vector<Node> nodes) {
  Project project;
  project.build_tolerance_in = 0.06;
  project.nodes = std::move(nodes);
  return project;
}

TEST(NearTwins, AreThoseOffByMoreThanTheToleranceAndLessThanAnEighth) {
  const auto asked = [](double off_in) {
    return near_twins(with_nodes({node("a", {100, -5, 10}), node("b", {100, 5, 10 + off_in})}))
        .size();
  };
  EXPECT_EQ(asked(0), 0u);
  EXPECT_EQ(asked(0.0599), 0u);
  EXPECT_EQ(asked(0.0601), 1u);
  EXPECT_EQ(asked(0.1249), 1u);
  EXPECT_EQ(asked(0.1251), 0u);
}

TEST(NearTwins, AreNamedWithHowFarOffTheyAre) {
  const auto questions =
      near_twins(with_nodes({node("a", {100, -5, 10}), node("b", {100, 5.1, 10})}));
  ASSERT_EQ(questions.size(), 1u);
  EXPECT_EQ(
      questions[0],
      "nodes a and b are each other's mirror image but for 0.100 in: a slip of the tape, or a "
      "part that goes on one way round only?");
}

TEST(NearTwins, AreNoneWhereThereIsATrueOneOrBothAreOnOneSide) {
  EXPECT_TRUE(near_twins(with_nodes({node("a", {100, -5, 10}), node("b", {100, 5, 10}),
                                     node("c", {100, 5.1, 10})}))
                  .empty());
  EXPECT_TRUE(
      near_twins(with_nodes({node("a", {100, -5, 10}), node("b", {100, -5.1, 10})})).empty());
}

TEST(NearTwins, AreHolesOfOneSizeInOneFrameAndPartsPlaceByPlace) {
  Project project = with_nodes({});
  Frame frame;
  frame.plane = at_station(190);
  frame.holes.resize(3);
  frame.holes[0].name = "left";
  frame.holes[0].shape = Circle{{-8, 14}, 0.5};
  frame.holes[1].name = "right";
  frame.holes[1].shape = Circle{{8.1, 14}, 0.5};
  frame.holes[2].name = "larger";
  frame.holes[2].shape = Circle{{8.09, 14}, 0.75};
  project.structure.frames = {frame};
  Channel channel;
  channel.name = "S1";
  channel.path = {{150, -12, 14}, {230, -8, 16}};
  project.structure.channels = {channel};
  channel.name = "S2";
  channel.path = {{230, 8, 16.1}, {150, 12, 14}};
  project.structure.channels.push_back(channel);
  const auto questions = near_twins(project);
  ASSERT_EQ(questions.size(), 2u);
  EXPECT_TRUE(questions[0].starts_with("holes left and right ")) << questions[0];
  EXPECT_TRUE(questions[1].starts_with("channels S1 and S2 ")) << questions[1];
}

}  // namespace
}  // namespace linewright
