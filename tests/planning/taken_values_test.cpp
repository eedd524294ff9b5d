// What was taken because a project does not say is said, a sentence for each kind of thing.

#include "planning/taken_values.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

bool says(const SmallProject& project, const std::string& words) {
  const std::vector<std::string> sentences = taken_values(project.project);
  return std::any_of(sentences.begin(), sentences.end(), [&](const std::string& sentence) {
    return sentence.find(words) != std::string::npos;
  });
}

SmallProject straight_cable() {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {50, 0, 0});
  project.route("cable", "cable-7x19-1/8-steel", "a", "b");
  project.project.routes[0].system = SystemKind::cable;
  return project;
}

TEST(TakenValues, NameTheCablesThatDoNotSayTheirTravelOrTheirControl) {
  SmallProject project = straight_cable();
  EXPECT_TRUE(says(project, "travel is not stated for cable"));
  EXPECT_TRUE(says(project, "control is not stated for cable"));
  project.project.routes[0].travel = Travel{1, 1, {}};
  project.project.routes[0].control = "rudder";
  EXPECT_FALSE(says(project, "travel is not stated"));
  EXPECT_FALSE(says(project, "control is not stated"));
}

TEST(TakenValues, SayWhereNothingIsKnownOfWhatShakesTheAeroplane) {
  SmallProject project = straight_cable();
  EXPECT_TRUE(says(project, "excitation is not stated"));
  project.project.excitation = Excitation{};
  EXPECT_FALSE(says(project, "excitation is not stated"));
}

TEST(TakenValues, AreSilentOfAProjectWithNothingInIt) {
  EXPECT_TRUE(taken_values(SmallProject().project).empty());
}

}  // namespace
}  // namespace linewright
