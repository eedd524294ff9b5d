// In which order closures go on, and which of them covers a place first.

#include "lines/closed_over.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

namespace linewright {
namespace {

using Names = std::vector<std::string>;

Closure closure(const std::string& name, const Names& after, const Names& covers = {}) {
  Closure made;
  made.name = name;
  made.after = after;
  made.covers = covers;
  return made;
}

Task task(const std::string& name, const Names& after) {
  Task made;
  made.name = name;
  made.after = after;
  return made;
}

TEST(ClosuresInOrder, AreInFileOrderWhereNothingIsStated) {
  Project project;
  project.closures = {closure("deck", {}), closure("belly", {})};
  EXPECT_EQ(closures_in_order(project), (Names{"deck", "belly"}));
}

// The deck waits for the bolt, and the bolt for the belly.
TEST(ClosuresInOrder, FollowAnOrderThatGoesThroughATask) {
  Project project;
  project.closures = {closure("deck", {"bolt"}), closure("belly", {})};
  project.tasks = {task("bolt", {"belly"})};
  EXPECT_EQ(closures_in_order(project), (Names{"belly", "deck"}));
}

TEST(ClosuresInOrder, AreNotHeldUpByATaskThatWaitsForNothing) {
  Project project;
  project.closures = {closure("deck", {"bolt"}), closure("belly", {})};
  project.tasks = {task("bolt", {"pin"}), task("pin", {})};
  EXPECT_EQ(closures_in_order(project), (Names{"deck", "belly"}));
}

TEST(ClosuresInOrder, AreAllThereInACircle) {
  Project project;
  project.closures = {closure("deck", {"bolt"}), closure("belly", {}), closure("side", {"deck"})};
  project.tasks = {task("bolt", {"side"})};
  EXPECT_EQ(closures_in_order(project), (Names{"belly", "deck", "side"}));
}

// Both lie over the place; the skin that `covers` names goes on first, by way of the bolt.
TEST(FirstClosureOver, IsOfPanelsThatTheClosureNames) {
  Project project;
  Panel skin;
  skin.name = "skin";
  skin.corners = {{0, 0, 5}, {10, 0, 5}, {10, 10, 5}, {0, 10, 5}};
  Panel lid = skin;
  lid.name = "lid";
  lid.closure = "deck";
  project.structure.panels = {lid, skin};
  project.closures = {closure("deck", {"bolt"}), closure("belly", {}, {"skin"})};
  project.tasks = {task("bolt", {"belly"})};
  const Names order = closures_in_order(project);
  EXPECT_EQ(first_closure_over(project, order, {5, 5, 0}), "belly");
  EXPECT_EQ(first_closure_over(project, order, {15, 5, 0}), std::nullopt);
}

}  // namespace
}  // namespace linewright
