// Every row of every rule's limits, at its edge: a value at the limit passes, and so does one on
// its right side; one on its wrong side is given the row's verdict, the row's limit and the row's
// source.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include "rules/air/air_limit_edges.hpp"
#include "rules/cable/attached_limit_edges.hpp"
#include "rules/cable/cable_limit_edges.hpp"
#include "rules/cable/casing_limit_edges.hpp"
#include "rules/cable/end_limit_edges.hpp"
#include "rules/cable/pulley_limit_edges.hpp"
#include "rules/cable/rod_limit_edges.hpp"
#include "rules/limit_edge.hpp"
#include "rules/line/line_limit_edges.hpp"
#include "rules/space/access_limit_edges.hpp"
#include "rules/space/built_limit_edges.hpp"
#include "rules/space/bulkhead_limit_edges.hpp"
#include "rules/space/bundle_limit_edges.hpp"
#include "rules/space/gap_limit_edges.hpp"
#include "rules/space/hole_limit_edges.hpp"
#include "rules/space/space_limit_edges.hpp"

namespace linewright {
namespace {

/// Limits that are so many times a size, and gaps to round edges, are worked out to millionths.
constexpr double rounding = 5e-6;

bool near(double value, double wanted) {
  return std::abs(value - wanted) < rounding;
}

LimitEdges all_edges() {
  LimitEdges edges;
  for (const LimitEdges& some :
       {line_edges::all(), gap_edges::all(), space_edges::all(), air_edges::all(),
        hole_edges::all(), cable_edges::all(), pulley_edges::all(), attached_edges::all(),
        end_edges::all(), rod_edges::all(), bundle_edges::all(), access_edges::all(),
        built_edges::all(), casing_edges::all(), bulkhead_edges::all()})
    edges.insert(edges.end(), some.begin(), some.end());
  return edges;
}

const LimitRow& row_of(const std::string& rule_name, const std::string& row_name) {
  for (const LimitRow& row : find_rule(rule_name)->limits)
    if (row.name == row_name) return row;
  throw std::runtime_error(rule_name + " has no row " + row_name);
}

class LimitAtItsEdge : public testing::TestWithParam<LimitEdge> {
 protected:
  /// Those that rest on the row, among what is judged where so much is to spare.
  std::vector<Judgement> of_row(double spare) const {
    const LimitEdge& edge = GetParam();
    const std::string source = cite(row_of(edge.rule, edge.cited.empty() ? edge.row : edge.cited));
    EXPECT_TRUE(contains(source, edge.source)) << source;
    std::vector<Judgement> judgements = edge.judged(spare);
    std::erase_if(judgements, [&](const Judgement& each) {
      const bool other_limit = edge.limit && each.limit && !near(*each.limit, *edge.limit);
      return other_limit || !contains(each.source, source);
    });
    return judgements;
  }

  /// The judgement's margin is what was spared.
  bool is_measured(const Judgement& judgement, double spare) const {
    return !GetParam().measured || !judgement.margin() || near(*judgement.margin(), spare);
  }

  void expect_pass(double spare) const {
    const std::vector<Judgement> judgements = of_row(spare);
    for (const Judgement& broken : not_passed(judgements))
      ADD_FAILURE() << broken.message << ", to spare: " << spare;
    if (!GetParam().listed) return;
    EXPECT_TRUE(std::any_of(judgements.begin(), judgements.end(),
                            [&](const Judgement& each) { return is_measured(each, spare); }))
        << judgements.size() << " judged, to spare: " << spare;
  }
};

TEST_P(LimitAtItsEdge, Passes) {
  if (GetParam().at_limit) expect_pass(0);
  expect_pass(GetParam().step);
  if (GetParam().let_pass > 0) expect_pass(GetParam().step - GetParam().let_pass);
}

TEST_P(LimitAtItsEdge, IsBrokenJustBeyond) {
  const LimitEdge& edge = GetParam();
  if (!edge.breakable) return;
  const double spare = -edge.let_pass - edge.step;
  const std::vector<Judgement> broken = not_passed(of_row(spare));
  ASSERT_EQ(broken.size(), 1u);
  EXPECT_EQ(broken[0].verdict, edge.broken) << broken[0].message;
  EXPECT_EQ(broken[0].limit.has_value(), broken[0].value.has_value());
  EXPECT_TRUE(is_measured(broken[0], spare)) << *broken[0].margin();
  if (edge.limit) {
    ASSERT_TRUE(broken[0].limit.has_value());
    EXPECT_NEAR(*broken[0].limit, *edge.limit, rounding);
  }
  EXPECT_FALSE(broken[0].mend.empty());
}

std::string test_name(const testing::TestParamInfo<LimitEdge>& edge) {
  std::string name = edge.param.rule + "__" + edge.param.row;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Rows, LimitAtItsEdge, testing::ValuesIn(all_edges()), test_name);

// Rows that are shown, while what is judged rests on another row, or on no number. The most that a
// pilot pulls: 14 CFR 23.397(b) [verified]. A stop close to each end [common practice, no source].
TEST(LimitEdges, ShowTheNumbersThatTheirProjectsAreMadeFor) {
  const auto value = [](const char* rule, const char* row) { return row_of(rule, row).value; };
  EXPECT_EQ(value("cable-tension", "rudder-most"), 200);
  EXPECT_EQ(value("cable-tension", "elevator-most"), 167);
  EXPECT_EQ(value("cable-tension", "aileron-most"), 67);
  EXPECT_EQ(value("cable-tension", "elevator-wheel-most"), 200);
  EXPECT_EQ(value("cable-tension", "aileron-wheel-most"), 100);
  EXPECT_EQ(value("sleeve-cover", "stop-gap"), 0.25);
  EXPECT_EQ(value("network", "routes-at-node"), 1);
  EXPECT_EQ(value("bend-fit", "missed-groove"), 0);
  EXPECT_EQ(value("cable-end", "turnbuckle-on-turning-part"), 1);
  EXPECT_EQ(value("casing-ends", "arm-follows"), 1);
  EXPECT_EQ(value("rod-travel", "arm-reaches"), 1);
  EXPECT_EQ(value("rod-travel", "over-centre"), 0);
  EXPECT_EQ(value("wiring", "drip-loop"), 1);
  EXPECT_EQ(value("bundle", "moving-control"), 0);
  EXPECT_EQ(value("bundle", "wire-to-vapour"), 0);
  EXPECT_EQ(value("bundle", "wire-to-pressure"), 0);
  EXPECT_EQ(value("chafe", "clamp-failed"), 1);
  EXPECT_EQ(value("chafe", "clamp-failed-by-vent"), 1);
  EXPECT_EQ(value("chafe", "tube-clamp-failed"), 1);
  EXPECT_EQ(value("cable-size", "secondary-cable"), 0);
  EXPECT_EQ(value("frame-crossing", "whole-guarded-hole"), 0);
  EXPECT_EQ(value("frame-crossing", "hole-in-wall"), 0);
}

TEST(LimitEdges, AreThoseOfAllRows) {
  std::set<std::string> tested;
  for (const LimitEdge& edge : all_edges())
    EXPECT_TRUE(tested.insert(edge.rule + " " + edge.row).second) << edge.row;
  // These need a mesh's file: `MeshStructure` and `MeshHole` have them.
  tested.insert({"frame-crossing mesh-in-hole", "frame-crossing mesh-hole",
                 "frame-crossing mesh-wider-hole"});
  std::set<std::string> rows;
  for (const Rule* rule : all_rules())
    for (const LimitRow& row : rule->limits)
      rows.insert(std::string(rule->name) + " " + std::string(row.name));
  std::vector<std::string> odd;
  std::set_symmetric_difference(tested.begin(), tested.end(), rows.begin(), rows.end(),
                                std::back_inserter(odd));
  EXPECT_EQ(odd, std::vector<std::string>());
}

}  // namespace
}  // namespace linewright
