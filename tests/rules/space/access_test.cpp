#include <gtest/gtest.h>

#include <string>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

ProjectSections two_nodes() {
  ProjectSections sections;
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", "130, 0, 10");
  sections.routes =
      "  - {name: route, system: static, line: tube-nylon-1/4, from: forward, to: aft}\n";
  return sections;
}

TEST(Access, IsUnknownForEveryClosureThatIsStated) {
  ProjectSections sections = two_nodes();
  sections.rest =
      "closures:\n"
      "  - {name: deck, reach: 26}\n"
      "  - {name: belly, after: [deck], reach: 20}\n";
  const auto judgements = judged(sections, "access");
  ASSERT_EQ(judgements.size(), 2u);
  EXPECT_EQ(judgements[0].verdict, Verdict::unknown);
  EXPECT_EQ(judgements[0].with, "deck");
  EXPECT_EQ(judgements[0].message, "closure deck is stated, but this version does not judge it");
  EXPECT_FALSE(judgements[0].mend.empty());
  EXPECT_EQ(judgements[0].location.line, line_number(sections.text(), "{name: deck"));
  EXPECT_EQ(judgements[1].with, "belly");
}

TEST(Access, SaysNothingWhereNoClosureIsStated) {
  EXPECT_TRUE(judged(two_nodes(), "access").empty());
}

}  // namespace
}  // namespace linewright
