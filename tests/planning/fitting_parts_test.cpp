// Fittings of known size in what is cut and bought.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "planning/cutlist.hpp"
#include "planning/parts.hpp"
#include "planning/taken_values.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// Two tubes of nylon on an elbow that they are pushed into, 0.5 in each.
ProjectSections on_elbow(const std::string& fitting) {
  ProjectSections sections;
  sections.rest =
      "fittings: [{name: push-elbow, kind: elbow-90, tube: 0.25, take_up: [0.75], body_diameter: "
      "0.5, insertion: 0.5, source: measured}]\n";
  sections.nodes = held_node("a", "130.75, 0, 10") + held_node("b", "100, 0, 40.75") +
                   "  - {name: elbow, kind: union, at: [100, 0, 10], fitting: " + fitting +
                   ", direction: [1, 0, 0], branch: [0, 0, 1]}\n";
  sections.routes =
      "  - {name: one, system: static, line: tube-nylon-1/4, from: a, to: elbow}\n"
      "  - {name: two, system: static, line: tube-nylon-1/4, from: elbow, to: b}\n";
  return sections;
}

// From face to face 30 in; half an inch goes into the fitting, and an inch is trimmed off.
TEST(FittingParts, TubeIsCutFromTheFaceWithWhatGoesIn) {
  const ProjectText text(on_elbow("push-elbow"));
  const CutList cuts = cut_list(text.prepared());
  EXPECT_NEAR(cuts.routes.at(0).length_in, 30, 1e-9);
  EXPECT_NEAR(cuts.routes.at(0).cut_length_in, 31.5, 1e-9);
  EXPECT_NEAR(cuts.routes.at(1).cut_length_in, 31.5, 1e-9);
}

TEST(FittingParts, FittingIsBoughtByItsKindAndSize) {
  const ProjectText text(on_elbow("elbow-1/4"));
  const PartsList list = parts_list(text.prepared(), {});
  const auto row = std::find_if(list.rows.begin(), list.rows.end(),
                                [](const PartRow& each) { return each.size == "elbow-1/4"; });
  ASSERT_NE(row, list.rows.end());
  EXPECT_EQ(row->item, "elbow, 90 degrees");
  EXPECT_EQ(row->standard, "AN821");
  EXPECT_DOUBLE_EQ(row->quantity, 1);
  for (const PartRow& each : list.rows) EXPECT_NE(each.item, "union");
}

// Besides the elbow there are the two bulkhead unions at the far ends.
TEST(FittingParts, WhatIsTakenAsAPointIsCounted) {
  const auto counted = [](const ProjectSections& sections, const std::string& number) {
    const ProjectText text(sections);
    const std::vector<std::string> taken = taken_values(text.project());
    return std::any_of(taken.begin(), taken.end(), [&](const std::string& each) {
      return each ==
             "tees and unions that state no size: " + number + "; they were taken as points";
    });
  };
  EXPECT_TRUE(counted(on_elbow("elbow-1/4"), "2"));
  ProjectSections plain = on_elbow("elbow-1/4");
  const std::string fitting = ", fitting: elbow-1/4, direction: [1, 0, 0], branch: [0, 0, 1]";
  plain.nodes.erase(plain.nodes.find(fitting), fitting.size());
  EXPECT_TRUE(counted(plain, "3"));
}

}  // namespace
}  // namespace linewright
