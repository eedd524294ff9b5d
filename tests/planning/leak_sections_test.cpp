#include "planning/leak_sections.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <map>
#include <random>
#include <set>

#include "planning/air_rig.hpp"
#include "planning/air_sections.hpp"
#include "planning/joint_doubt.hpp"

namespace linewright {
namespace {

using Names = std::vector<std::string>;

bool holds(const Names& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// The section that the key leads to when the leak is in `leaking`.
Names found_by_key(const std::vector<SplitStep>& steps, const std::string& leaking) {
  std::size_t number = 1;
  while (true) {
    const SplitStep& step = steps.at(number - 1);
    const bool loses = holds(step.if_loses, leaking);
    EXPECT_NE(loses, holds(step.if_holds, leaking)) << leaking << " at step " << number;
    const int next = loses ? step.step_if_loses : step.step_if_holds;
    if (next == 0) return loses ? step.if_loses : step.if_holds;
    EXPECT_GT(static_cast<std::size_t>(next), number) << "the key must not go back";
    number = static_cast<std::size_t>(next);
  }
}

/// A chain of three nodes of 1, 1 and 2 in3 with bores of next to nothing.
TubeProject chain() {
  TubeProject tubes;
  tubes.node("port", {0, 0, 0}, NodeKind::static_port, 1.0)
      .node("middle", {0.1, 0, 0}, NodeKind::union_fitting, 1.0)
      .node("altimeter", {0.2, 0, 0}, NodeKind::instrument, 2.0);
  tubes.route("aft", "port", "middle");
  tubes.route("forward", "middle", "altimeter");
  return tubes;
}

// From the port on, a joint counts 1 and half as much again at the altimeter, a union a quarter, a
// line a tenth, the port 1 and the altimeter's case 2: the altimeter with its joint is 3.5 of 7.95.
TEST(SplitOrder, PartsWhatIsMostToBeSuspectedFirst) {
  const AirRig rig(chain());
  const std::vector<SplitStep> steps = split_order(rig.system(), 0);
  ASSERT_FALSE(steps.empty());
  EXPECT_EQ(steps[0].route, "forward");
  EXPECT_EQ(steps[0].node, "altimeter");
  EXPECT_EQ(steps[0].if_holds, Names{"altimeter"});
  EXPECT_NEAR(steps[0].tested_in3, 2, 0.01);
}

// A litre of bore is no more likely to leak than a thimble: volume has no say.
TEST(SplitOrder, IsTheSameWhateverTheVolumes) {
  TubeProject larger = chain();
  larger.project.nodes[0].volume_in3 = 50;
  const AirRig small(chain());
  const AirRig large(std::move(larger));
  const std::vector<SplitStep> a = split_order(small.system(), 0);
  const std::vector<SplitStep> b = split_order(large.system(), 0);
  ASSERT_EQ(a.size(), b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    EXPECT_EQ(a[i].route, b[i].route);
    EXPECT_EQ(a[i].node, b[i].node);
  }
}

TEST(SplitOrder, LeadsToEverySection) {
  const AirRig rig(chain());
  const std::vector<SplitStep> steps = split_order(rig.system(), 0);
  EXPECT_EQ(steps.size(), 4u);  // five sections
  for (const char* name : {"port", "aft", "middle", "forward", "altimeter"})
    EXPECT_EQ(found_by_key(steps, name), Names{name});
}

TEST(SplitOrder, TestsWhatIsProvenTightAgainWithTheNextSuspects) {
  const AirRig rig(two_ports());
  const std::vector<SplitStep> steps = split_order(rig.system(), 0);
  int followed = 0;
  for (const SplitStep& step : steps) {
    if (step.step_if_holds == 0) continue;
    ++followed;
    const SplitStep& next = steps.at(static_cast<std::size_t>(step.step_if_holds) - 1);
    EXPECT_NEAR(next.tested_in3, step.tested_in3 + next.loses_in3, 1e-12);
  }
  EXPECT_GT(followed, 0);
}

TEST(SplitOrder, IsEmptyForALoop) {
  TubeProject tubes;
  tubes.node("a", {0, 0, 0}, NodeKind::static_port)
      .node("b", {30, 0, 0}, NodeKind::instrument, 1.0);
  tubes.route("one", "a", "b");
  tubes.route("two", "a", "b", {{{15, 20, 0}, 0}});
  const AirRig rig(std::move(tubes));
  EXPECT_TRUE(split_order(rig.system(), 0).empty());
}

TEST(SplitOrder, TakesALoopAsOneSection) {
  TubeProject tubes;
  tubes.node("port", {-10, 0, 0}, NodeKind::static_port)
      .node("a", {0, 0, 0}, NodeKind::tee)
      .node("b", {30, 0, 0}, NodeKind::tee)
      .node("altimeter", {40, 0, 0}, NodeKind::instrument, 1.0);
  tubes.route("in", "port", "a");
  tubes.route("one", "a", "b");
  tubes.route("two", "a", "b", {{{15, 20, 0}, 0}});
  tubes.route("out", "b", "altimeter");
  const AirRig rig(std::move(tubes));
  const std::vector<SplitStep> steps = split_order(rig.system(), 0);
  EXPECT_EQ(steps.size(), 4u);  // port, in, loop, out, altimeter
  EXPECT_EQ(found_by_key(steps, "loop of a + one + two + b"), Names{"loop of a + one + two + b"});
  for (const SplitStep& step : steps) EXPECT_TRUE(step.route == "in" || step.route == "out");
}

// Taken off the altimeter, the main line stays with the test set, so its end is sealed; taken off
// the tee it does not, so the tee's opening is.
TEST(SplitOrder, SealsTheNodeWhereTheRouteIsOnTheFarSide) {
  const AirRig rig(two_ports());
  struct Sealed {
    std::string route, node;
    bool node_side;
    bool operator==(const Sealed&) const = default;
  };
  std::vector<Sealed> sealed;
  for (const SplitStep& step : split_order(rig.system(), 0))
    sealed.push_back({step.route, step.node, step.node_side});
  EXPECT_TRUE(sealed == (std::vector<Sealed>{{"main", "tee", true},
                                             {"right", "tee", true},
                                             {"left", "tee", false},
                                             {"left", "port-left", true},
                                             {"right", "port-right", false},
                                             {"main", "altimeter", false}}));
}

/// A random tree of air lines with some more lines across it.
TubeProject random_network(std::mt19937_64& random, int node_count, int extra) {
  std::uniform_real_distribution<double> place(-50, 50);
  std::uniform_real_distribution<double> volume(0, 5);
  TubeProject tubes;
  const auto name = [](int i) { return "n" + std::to_string(i); };
  for (int i = 0; i < node_count; ++i)
    tubes.node(name(i), {place(random), place(random), place(random)}, NodeKind::tee,
               i % 3 == 0 ? std::optional<double>() : volume(random));
  int routes = 0;
  const auto join = [&](int a, int b) {
    tubes.route("r" + std::to_string(routes++), name(a), name(b));
  };
  for (int i = 1; i < node_count; ++i)
    join(std::uniform_int_distribution<int>(0, i - 1)(random), i);
  for (int i = 0; i < extra; ++i) {
    const int a = std::uniform_int_distribution<int>(0, node_count - 1)(random);
    const int b = (a + std::uniform_int_distribution<int>(1, node_count - 1)(random)) % node_count;
    join(a, b);
  }
  return tubes;
}

/// What is to be suspected on the root's side when one end of a link is taken off its node, by
/// walking the whole network; the link itself stays with its other end, and the joint that was
/// opened is on neither side. With no link opened (-1): of all.
double doubt_with_root(const AirSystem& system, int root, int opened, int detached_end) {
  const AirNetwork& network = system.network;
  const auto node_of = [&](int i) { return network.nodes[static_cast<std::size_t>(i)]->kind; };
  const auto link_of = [&](int i) { return network.links[static_cast<std::size_t>(i)]; };
  std::set<int> nodes{root};
  std::set<int> links;
  bool grew = true;
  while (grew) {
    grew = false;
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
      for (const auto& [near, far] :
           {std::pair{link_of(i).from, link_of(i).to}, {link_of(i).to, link_of(i).from}}) {
        if (!nodes.contains(near) || (i == opened && near == detached_end)) continue;
        grew = links.insert(i).second || grew;
        if (i == opened && far == detached_end) continue;
        grew = nodes.insert(far).second || grew;
      }
    }
  }
  double doubt = 0;
  for (const int node : nodes) doubt += node_doubt(node_of(node));
  for (const int i : links) {
    const LineKind line = link_of(i).route->line->kind;
    doubt += line_doubt(line);
    for (const int end : {link_of(i).from, link_of(i).to})
      if (i != opened || end != detached_end) doubt += joint_doubt(line, node_of(end));
  }
  return doubt;
}

/// The larger side that the most even joint leaves, found by trying every joint; what was opened
/// counts with the far side.
double most_even_by_trial(const AirSystem& system, int root) {
  const double all = doubt_with_root(system, root, -1, -1);
  double best = std::numeric_limits<double>::infinity();
  for (int link = 0; link < static_cast<int>(system.network.links.size()); ++link) {
    const AirLink& each = system.network.links[static_cast<std::size_t>(link)];
    const LineKind line = each.route->line->kind;
    for (const int end : {each.from, each.to}) {
      const double near = doubt_with_root(system, root, link, end);
      const NodeKind kind = system.network.nodes[static_cast<std::size_t>(end)]->kind;
      // A joint that parts nothing leaves all but itself with the root.
      if (all - near - joint_doubt(line, kind) < 1e-12) continue;
      best = std::min(best, std::max(near, all - near));
    }
  }
  return best;
}

/// The larger side of doubt that the first step leaves.
double larger_side_of(const SplitStep& step, const SectionTree& tree) {
  double loses = 0;
  double holds_doubt = 0;
  for (const Section& section : tree.sections)
    (holds(step.if_loses, section.name) ? loses : holds_doubt) += section.doubt;
  return std::max(loses, holds_doubt);
}

// Up to a tenth is given away for a joint that is less trouble; here all are the same.
TEST(SplitOrder, StartsWithTheMostEvenJointOfAnyNetwork) {
  std::mt19937_64 random(23'1325);
  int parted = 0;
  for (int round = 0; round < 150; ++round) {
    const AirRig rig(random_network(random, 3 + round % 12, round % 4));
    const AirSystem system = rig.system();
    const int root = round % static_cast<int>(system.network.nodes.size());
    const std::vector<SplitStep> steps = split_order(system, root);
    if (steps.empty()) continue;
    ++parted;
    EXPECT_NEAR(larger_side_of(steps[0], section_tree(system, root)),
                most_even_by_trial(system, root), 1e-9)
        << "round " << round;
  }
  EXPECT_GT(parted, 120);
}

TEST(SplitOrder, LeadsToEverySectionOfAnyNetworkWithVolumesThatAddUp) {
  std::mt19937_64 random(12'58);
  for (int round = 0; round < 150; ++round) {
    const AirRig rig(random_network(random, 2 + round % 15, round % 5));
    const AirSystem system = rig.system();
    const SectionTree tree = section_tree(system, 0);
    const std::vector<SplitStep> steps = split_order(system, 0);
    double all_in3 = 0;
    for (const Section& section : tree.sections) all_in3 += section.volume_in3;
    EXPECT_NEAR(all_in3, system.volume_in3(), 1e-9);
    EXPECT_EQ(steps.size(), tree.sections.size() - 1);
    for (const SplitStep& step : steps) {
      EXPECT_NEAR(step.suspect_in3, step.loses_in3 + step.holds_in3, 1e-12);
      EXPECT_FALSE(step.if_loses.empty());
      EXPECT_FALSE(step.if_holds.empty());
      EXPECT_LE(step.tested_in3, all_in3 + 1e-9);
    }
    if (steps.empty()) continue;
    for (const Section& section : tree.sections)
      EXPECT_EQ(found_by_key(steps, section.name), Names{section.name}) << "round " << round;
  }
}

TEST(SplitOrder, OfALongChainOfEqualPartsNeedsFewSteps) {
  TubeProject tubes;
  for (int i = 0; i <= 512; ++i)
    tubes.node("n" + std::to_string(i), {10.0 * i, 0, 0}, NodeKind::union_fitting);
  for (int i = 0; i < 512; ++i)
    tubes.route("r" + std::to_string(i), "n" + std::to_string(i), "n" + std::to_string(i + 1));
  const AirRig rig(std::move(tubes));
  const std::vector<SplitStep> steps = split_order(rig.system(), 0);
  ASSERT_EQ(steps.size(), 1024u);
  std::vector<int> depth(steps.size() + 1, 0);
  depth[1] = 1;
  int deepest = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    deepest = std::max(deepest, depth[i + 1]);
    for (const int next : {steps[i].step_if_loses, steps[i].step_if_holds})
      if (next > 0) depth[static_cast<std::size_t>(next)] = depth[i + 1] + 1;
  }
  EXPECT_LE(deepest, 11);  // 1,025 sections: ten halvings and the rest of one
}

}  // namespace
}  // namespace linewright
