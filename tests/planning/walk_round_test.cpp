#include "planning/walk_round.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "lines/as_built.hpp"
#include "lines/prepare.hpp"

namespace linewright {
namespace {

/// A tube with two clamps, a corner between them, and two nodes that structure holds.
Project tube_with_clamps() {
  Project project;
  Line line;
  line.name = "tube";
  line.outside_diameter_in = 0.25;
  project.catalogue.lines.push_back(line);
  for (const auto& [name, fs] : {std::pair("port", 0.0), std::pair("dial", 60.0)}) {
    Node node;
    node.name = name;
    node.kind = NodeKind::instrument;
    node.at = {fs, 0, 10};
    project.nodes.push_back(node);
  }
  Route route;
  route.name = "static";
  route.line = "tube";
  route.from = "port";
  route.to = "dial";
  for (const double fs : {20.0, 30.0, 40.0}) {
    RoutePoint point;
    point.at = {fs, 0, 10};
    if (fs != 30.0) point.hold = HoldKind::clamp;
    if (fs == 40.0) point.to = "stringer";
    route.points.push_back(point);
  }
  project.routes.push_back(route);
  return project;
}

Measurement found(int of, Vec3 at) {
  Measurement measured;
  measured.route = "static";
  measured.of = of;
  measured.at = at;
  measured.on = "2026-11-20";
  measured.by = "AB";
  return measured;
}

Judgement clearance(double distance_in, Seldom<Measured> measured = {}) {
  Judgement judgement;
  judgement.rule = "clearance";
  judgement.route = "static";
  judgement.with = "deck";
  judgement.distance_in = distance_in;
  judgement.value = 0.4;
  judgement.unit = Unit::inch;
  judgement.verdict = Verdict::pass;
  judgement.measured = measured;
  return judgement;
}

std::vector<WalkItem> items_of(const Project& project,
                               const std::vector<Judgement>& judgements = {}) {
  const PreparedProject prepared = prepare(project);
  return walk_round_sheets(prepared, judgements).front().items;
}

std::vector<std::string> names_of(const std::vector<WalkItem>& items) {
  std::vector<std::string> names;
  for (const WalkItem& item : items) names.push_back(item.what);
  return names;
}

TEST(WalkRoundSheet, NumbersSupportsAlongTheLineAndNamesNodes) {
  EXPECT_EQ(names_of(items_of(tube_with_clamps())),
            (std::vector<std::string>{"port", "1: clamp", "2: clamp on stringer", "dial"}));
}

TEST(WalkRoundSheet, HasWhatWasMeasuredInPlaceOfTheBlank) {
  Project project = tube_with_clamps();
  project.built = {found(2, {40, 0.2, 10}), found(Measurement::from_node, {0, 0, 10.1})};
  ASSERT_TRUE(take_measured(project).empty());
  const std::vector<WalkItem> items = items_of(project);
  EXPECT_EQ(items[0].found, (Vec3{0, 0, 10.1}));
  EXPECT_FALSE(items[1].found);
  EXPECT_EQ(items[2].found, (Vec3{40, 0.2, 10}));
  EXPECT_EQ(items[2].on, "2026-11-20");
  EXPECT_EQ(items[2].by, "AB");
  EXPECT_FALSE(items[3].found);
}

TEST(WalkRoundSheet, ListsMeasuredPlacesAtWhichNothingHoldsTheLine) {
  Project project = tube_with_clamps();
  project.built = {found(Measurement::a_distance, {50, 0.2, 10})};
  project.built[0].distance_in = 50;
  ASSERT_TRUE(take_measured(project).empty());
  const std::vector<WalkItem> items = items_of(project);
  ASSERT_EQ(items.size(), 5u);
  EXPECT_EQ(items[3].kind, WalkKind::place);
  EXPECT_EQ(items[3].found, (Vec3{50, 0.2, 10}));
}

TEST(WalkRoundSheet, ListsGuidesThatDoNotHoldTheLine) {
  Project project = tube_with_clamps();
  project.routes[0].points[0].hold = HoldKind::fairlead;
  project.routes[0].points[0].bore_in = 1;
  EXPECT_EQ(names_of(items_of(project))[1], "1: fairlead, which does not hold the line");
}

TEST(WalkRoundSheet, FillsInAGapWhereItWasMeasuredAndNowhereElse) {
  const std::vector<WalkItem> items =
      items_of(tube_with_clamps(),
               {clearance(10), clearance(10.4, Measured{0.3, "2026-11-20", "AB"}), clearance(25)});
  std::vector<std::optional<double>> measured;
  for (const WalkItem& item : items)
    if (item.kind == WalkKind::gap) measured.push_back(item.measured);
  EXPECT_EQ(measured, (std::vector<std::optional<double>>{0.3, 0.3, std::nullopt}));
}

}  // namespace
}  // namespace linewright
