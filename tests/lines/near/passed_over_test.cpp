#include "lines/near/passed_over.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A tube from a fitting on a panel across FS 100, and with it a second one from the same tee.
ProjectText from_a_panel(const std::string& kind) {
  ProjectSections sections;
  sections.structure =
      "  panels: [{name: skin, thickness: 0.02, corners: [[99.9, -4, 6], [99.9, 4, 6], [99.9, 4, "
      "14], [99.9, -4, 14]]}]\n";
  sections.nodes = "  - {name: start, kind: " + kind + ", at: [100, 0, 10]}\n" +
                   held_node("up", "112, 0, 20") + held_node("down", "112, 0, 0");
  sections.routes =
      "  - {name: first, system: vent, line: tube-nylon-1/4, from: start, to: up}\n"
      "  - {name: second, system: vent, line: tube-nylon-1/4, from: down, to: start}\n";
  return ProjectText(sections);
}

TEST(PassedOver, NamesWhatAFittingStandsOnWithItsGapAndWhy) {
  const ProjectText project = from_a_panel("bulkhead");
  const std::vector<PassedOver> all = passed_over_near_fittings(project.prepared());
  ASSERT_EQ(all.size(), 3u);
  EXPECT_EQ(all[0].route, "first");
  EXPECT_EQ(all[0].with, "skin");
  // 0.1 in from the panel's middle, less half of the panel and of the tube.
  const double radius = project.route("first").line->largest_radius_in();
  EXPECT_NEAR(all[0].gap_in, 0.1 - 0.01 - radius, 1e-9);
  EXPECT_NEAR(all[0].distance_in, 0, 1e-9);
  EXPECT_EQ(all[0].reason, "the fitting at start stands on it");
  EXPECT_EQ(all[2].route, "second");
  EXPECT_EQ(all[2].with, "skin");
  EXPECT_NEAR(all[2].distance_in, project.route("second").length_in(), 1e-9);
}

TEST(PassedOver, NamesTheLineThatEndsAtTheSameNode) {
  const std::vector<PassedOver> all =
      passed_over_near_fittings(from_a_panel("bulkhead").prepared());
  ASSERT_EQ(all.size(), 3u);
  EXPECT_EQ(all[1].route, "first");
  EXPECT_EQ(all[1].with, "second");
  EXPECT_NE(all[1].reason.find("both end at start"), std::string::npos);
}

TEST(PassedOver, HasNoStructureWhereNothingHoldsTheFitting) {
  const std::vector<PassedOver> all = passed_over_near_fittings(from_a_panel("tee").prepared());
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].with, "second");
}

TEST(PassedOver, IsAskedForOneRoute) {
  const ProjectText project = from_a_panel("bulkhead");
  EXPECT_EQ(passed_over_near_fittings(project.prepared(), "second").size(), 2u);
  EXPECT_TRUE(passed_over_near_fittings(project.prepared(), "third").empty());
}

}  // namespace
}  // namespace linewright
