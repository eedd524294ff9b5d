// What holds of every cable, tried on random runs.

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "lines/prepare.hpp"
#include "oracles/random_path.hpp"
#include "rules/cable_project.hpp"
#include "rules/registry.hpp"

namespace linewright {
namespace {

// A search inside a search finds a margin to well under this.
constexpr double search_in = 1e-5;

/// A cable over one or two pulleys given by their centres, by fairleads, past some boxes.
SmallProject random_cable(oracles::Random& random) {
  std::vector<RoutePoint> points;
  Vec3 at{random.between(15, 25), random.between(-1, 1), 10};
  RoutePoint first = pulley_at(at, random.between(1.5, 3), {0, 0, -1});
  first.given = PointGiven::centre;
  points.push_back(first);
  double side = -1;
  if (random.whole(0, 1) == 1) {
    RoutePoint second = pulley_at({at.x + random.between(12, 20), at.y - random.between(8, 14), 10},
                                  random.between(1.5, 3), {0, 0, 1});
    second.given = PointGiven::centre;
    points.push_back(second);
    side = 1;
  }
  const Vec3 last = points.back().at;
  const Vec3 horn{last.x + random.between(30, 60), last.y + side * random.between(5, 20),
                  random.between(9.8, 10.2)};
  SmallProject project = cable_project(points, horn);
  project.project.temperature = {20, 70, 110};
  project.project.load_factor = {3.8, -1.5};
  set_tension(project, random.between(5, 60), random.between(50, 150));
  set_travel(project, random.between(0.5, 2), random.between(0.5, 2));
  for (Node& node : project.project.nodes)
    node.arm = Arm{node.at + Vec3{random.between(-1, 1), random.between(3, 6), 0},
                   {0, random.between(-0.2, 0.2), 1}};
  for (RoutePoint& point : the_route(project).points) {
    point.guards = random.whole(0, 3);
    if (point.guards > 0) point.guard_gap_in = random.between(0.02, 0.2);
  }
  FreeFairlead ring;
  ring.fairlead = held(between(last, horn, random.between(0.3, 0.7)), HoldKind::fairlead);
  ring.fairlead.bore_in = random.between(0.3, 6);
  ring.fairlead.where = {"routes.yaml", 130, 9};
  ring.leg = static_cast<int>(points.size());
  the_route(project).free_fairleads.push_back(ring);
  for (int i = 0; i < 4; ++i) {
    Solid box;
    box.name = "box-" + std::to_string(i);
    const double share = random.between(0.2, 0.8);
    const Vec3 near = between(last, horn, share) + Vec3{0, 0, -random.between(0.8, 1.6)};
    box.shape = Box{near - Vec3{1, 1, 1}, near + Vec3{1, 1, 0.5}};
    project.project.structure.solids.push_back(box);
  }
  return project;
}

/// How a rule judges each part: the gravest verdict, and the least margin with it. A fail and a
/// warning of chafe speak of two reaches, so margins compare only within a verdict.
struct Standing {
  Verdict verdict = Verdict::pass;
  double margin_in = 0;
};

std::map<std::string, Standing> standings(const SmallProject& project, std::string_view rule) {
  std::map<std::string, Standing> worst;
  for (const Judgement& judgement : project.judged_by(rule)) {
    if (!judgement.with || !judgement.margin()) continue;
    const Standing standing{judgement.verdict, *judgement.margin()};
    const auto [known, added] = worst.emplace(*judgement.with, standing);
    const bool graver =
        standing.verdict > known->second.verdict ||
        (standing.verdict == known->second.verdict && standing.margin_in < known->second.margin_in);
    if (!added && graver) known->second = standing;
  }
  return worst;
}

TEST(LessTension, NeverRaisesACablesMarginOfClearanceOrChafe) {
  oracles::Random random(411);
  int smaller = 0;
  for (int round = 0; round < 30; ++round) {
    const SmallProject taut = random_cable(random);
    SmallProject loose = taut;
    Tension& tension = *the_route(loose).tension;
    tension.rigged_lbf *= random.between(0.2, 0.9);
    for (const std::string_view rule : {"clearance", "chafe"}) {
      const auto when_loose = standings(loose, rule);
      for (const auto& [part, when_taut] : standings(taut, rule)) {
        SCOPED_TRACE(std::string(rule));
        ASSERT_TRUE(when_loose.contains(part)) << part << " in round " << round;
        const Standing& standing = when_loose.at(part);
        EXPECT_GE(standing.verdict, when_taut.verdict) << part << " in round " << round;
        if (standing.verdict != when_taut.verdict) continue;
        EXPECT_LE(standing.margin_in, when_taut.margin_in + search_in)
            << part << " in round " << round;
        smaller += standing.margin_in < when_taut.margin_in - search_in ? 1 : 0;
      }
    }
  }
  EXPECT_GT(smaller, 30);
}

TEST(LargerPulley, NeverLowersItsRatio) {
  oracles::Random random(412);
  for (int round = 0; round < 50; ++round) {
    const SmallProject small = random_cable(random);
    SmallProject large = small;
    for (RoutePoint& point : the_route(large).points) *point.diameter_in += random.between(0.1, 1);
    const auto ratios = [](const SmallProject& project) {
      std::vector<Judgement> found = project.judged_by("pulley");
      std::erase_if(found, [](const Judgement& each) {
        return !contains(each.source, "table above para 3.1.1.17.8");
      });
      return found;
    };
    const auto before = ratios(small);
    const auto after = ratios(large);
    ASSERT_FALSE(before.empty());
    ASSERT_EQ(before.size(), after.size());
    for (std::size_t i = 0; i < before.size(); ++i) {
      EXPECT_GT(*after[i].value, *before[i].value);
      EXPECT_EQ(*after[i].limit, *before[i].limit);
      EXPECT_LE(after[i].verdict, before[i].verdict);
    }
  }
}

/// Rule, other thing, verdict, and value in thousandths of its unit.
using Said = std::multiset<std::tuple<std::string, std::string, Verdict, long>>;

Said said_of(const SmallProject& project) {
  Said said;
  for (const Judgement& each : project.judged())
    said.emplace(each.rule, each.with.value_or(""), each.verdict,
                 each.value ? std::lround(*each.value * 1000) : -1);
  return said;
}

/// Two sets of judgements are the same but for a value on the edge of a thousandth.
void expect_same(const Said& there, const Said& back, int round) {
  ASSERT_EQ(there.size(), back.size()) << "round " << round;
  for (auto a = there.begin(), b = back.begin(); a != there.end(); ++a, ++b) {
    EXPECT_EQ(std::get<0>(*a), std::get<0>(*b)) << "round " << round;
    EXPECT_EQ(std::get<1>(*a), std::get<1>(*b)) << std::get<0>(*a) << " in round " << round;
    EXPECT_EQ(std::get<2>(*a), std::get<2>(*b)) << std::get<0>(*a) << " in round " << round;
    EXPECT_LE(std::abs(std::get<3>(*a) - std::get<3>(*b)), 1)
        << std::get<0>(*a) << " " << std::get<1>(*a) << " in round " << round;
  }
}

TEST(LessTension, NeverRaisesTheMarginInAFairleadPassedFree) {
  oracles::Random random(414);
  int warned = 0;
  for (int round = 0; round < 30; ++round) {
    const SmallProject taut = random_cable(random);
    SmallProject loose = taut;
    the_route(loose).tension->rigged_lbf *= random.between(0.2, 0.9);
    const Judgement when_taut = sole(taut.judged_by("fairlead-angle"));
    const Judgement when_loose = sole(loose.judged_by("fairlead-angle"));
    EXPECT_GE(when_loose.verdict, when_taut.verdict) << "round " << round;
    EXPECT_LE(*when_loose.margin(), *when_taut.margin() + search_in) << "round " << round;
    warned += when_taut.verdict == Verdict::warn ? 1 : 0;
  }
  EXPECT_GT(warned, 0);
}

TEST(CableWrittenFromItsOtherEnd, IsJudgedTheSame) {
  oracles::Random random(413);
  int wrapped = 0;
  for (int round = 0; round < 30; ++round) {
    SmallProject project = random_cable(random);
    wrapped += prepare(project.project).routes[0].wrap_faults[0] ? 0 : 1;
    if (round % 2 == 0) {
      Route& route = the_route(project);
      route.attached.push_back({"turnbuckle", 8, 4.5, 0.44, {"routes.yaml", 120, 5}});
      route.sleeves.push_back({2, 5, 0.17, 0.25, {"routes.yaml", 121, 5}});
    }
    expect_same(said_of(project), said_of(reversed(project)), round);
  }
  EXPECT_GT(wrapped, 20);
}

}  // namespace
}  // namespace linewright
