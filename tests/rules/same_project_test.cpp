// The same aeroplane, however it is written down, gets the same judgements.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "rules/random_project.hpp"

namespace linewright {
namespace {

constexpr int rounds = 3;
// Margins are searched to a millionth of an inch or better.
constexpr double margin_in = 1e-6;
/// Where along a line the least margin is found: near its minimum a margin changes by less than
/// 1e-6 in over this much. The gap there may change by as much as the reach.
constexpr double place_in = 0.02;

std::vector<Judgement> all_judged(const ProjectText& project) {
  std::vector<Judgement> all;
  for (const std::string rule : {"frame-crossing", "clearance", "chafe", "separation"})
    for (const Judgement& judgement : project.judged(rule)) all.push_back(judgement);
  return all;
}

/// The place along the route, from its forward end.
double from_forward_in(const Judgement& judgement, const ProjectText& project,
                       const std::string& reversed) {
  const double along = judgement.distance_in.value_or(0);
  if (judgement.route != reversed) return along;
  return project.route(reversed).length_in() - along;
}

bool near(std::optional<double> a, std::optional<double> b, double within) {
  if (!a || !b) return a.has_value() == b.has_value();
  return std::abs(*a - *b) <= within;
}

std::string words_of_place(const Judgement& judgement) {
  return judgement.rule + ": " + judgement.route + " with " + judgement.with.value_or("") + ": " +
         judgement.message + " at " + std::to_string(judgement.distance_in.value_or(-1)) +
         " value " + std::to_string(judgement.value.value_or(-1));
}

/// Every judgement on one has its like on the other.
void expect_the_same(const std::vector<Judgement>& expected, const ProjectText& other,
                     const std::string& reversed = "") {
  auto found = all_judged(other);
  EXPECT_EQ(expected.size(), found.size());
  for (const Judgement& judgement : expected) {
    const auto like = std::find_if(found.begin(), found.end(), [&](const Judgement& each) {
      return each.rule == judgement.rule && each.route == judgement.route &&
             each.with == judgement.with && each.verdict == judgement.verdict &&
             near(each.margin(), judgement.margin(), margin_in) &&
             near(each.value, judgement.value, place_in) &&
             near(from_forward_in(each, other, reversed), *judgement.distance_in, place_in);
    });
    if (like == found.end()) {
      ADD_FAILURE() << words_of_place(judgement);
      continue;
    }
    found.erase(like);
  }
  for (const Judgement& judgement : found)
    ADD_FAILURE() << "only there: " << words_of_place(judgement);
}

TEST(SameProject, IsJudgedAlikeWhicheverEndARouteIsDrawnFrom) {
  oracles::Random random(71);
  for (int round = 0; round < rounds; ++round) {
    const RandomProject drawn(random);
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    for (const std::string route : {"nylon", "metal", "wires", "cable"}) {
      SCOPED_TRACE(route + " in round " + std::to_string(round));
      expect_the_same(expected, ProjectText(drawn.sections({1, "in", {}, route})), route);
    }
  }
}

TEST(SameProject, IsJudgedAlikeWhereverItLies) {
  oracles::Random random(72);
  for (int round = 0; round < rounds; ++round) {
    SCOPED_TRACE(round);
    const RandomProject drawn(random);
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    expect_the_same(expected, ProjectText(drawn.sections({1, "in", {0, 2.625, 0}, ""})));
    expect_the_same(expected, ProjectText(drawn.sections({1, "in", {-60, 0, 7.5}, ""})));
  }
}

TEST(SameProject, IsJudgedAlikeInMillimetres) {
  oracles::Random random(73);
  for (int round = 0; round < rounds; ++round) {
    SCOPED_TRACE(round);
    const RandomProject drawn(random);
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    expect_the_same(expected, ProjectText(drawn.sections({25.4, "mm", {}, ""})));
  }
}

TEST(SameProject, IsJudgedAlikeMirrored) {
  oracles::Random random(74);
  for (int round = 0; round < rounds; ++round) {
    SCOPED_TRACE(round);
    const RandomProject drawn(random);
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    expect_the_same(expected, ProjectText(drawn.sections({1, "in", {}, "", -1})));
  }
}

Drawing turned(const std::string& stand, const std::array<Vec3, 3>& axes) {
  Drawing drawing;
  drawing.stand = stand;
  drawing.axes = axes;
  return drawing;
}

TEST(SameProject, IsJudgedAlikeTurnedSoThatItsFrameIsARibOrAFloor) {
  // A quarter turn about WL brings BL to FS and WL stays; the other brings BL to FS and WL to BL:
  // the frame's two coordinates keep their numbers.
  const std::array<Vec3, 3> to_rib{Vec3{0, -1, 0}, Vec3{1, 0, 0}, Vec3{0, 0, 1}};
  const std::array<Vec3, 3> to_floor{Vec3{0, 0, 1}, Vec3{1, 0, 0}, Vec3{0, 1, 0}};
  oracles::Random random(77);
  for (int round = 0; round < rounds; ++round) {
    SCOPED_TRACE(round);
    const RandomProject drawn(random);
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    expect_the_same(expected, ProjectText(drawn.sections(turned("plane", Drawing().axes))));
    expect_the_same(expected, ProjectText(drawn.sections(turned("buttock_line", to_rib))));
    expect_the_same(expected, ProjectText(drawn.sections(turned("plane", to_rib))));
    expect_the_same(expected, ProjectText(drawn.sections(turned("waterline", to_floor))));
    expect_the_same(expected, ProjectText(drawn.sections(turned("plane", to_floor))));
  }
}

TEST(SameProject, IsJudgedAlikeTurnedAnyWhichWayWithItsFrameInAPlane) {
  oracles::Random random(78);
  for (int round = 0; round < rounds; ++round) {
    SCOPED_TRACE(round);
    RandomProject drawn(random);
    drawn.channels.clear();  // their sections are drawn across an axis
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    const Vec3 aft = unit(random.direction());
    const Vec3 right = unit(cross(aft, random.direction()));
    const Drawing drawing = turned("plane", {aft, right, cross(aft, right)});
    expect_the_same(expected, ProjectText(drawn.sections(drawing)));
  }
}

TEST(SameProject, IsJudgedAlikeWithPointsAddedOnItsStraights) {
  oracles::Random random(75);
  for (int round = 0; round < rounds; ++round) {
    const RandomProject drawn(random);
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    for (const std::vector<double>& shares :
         {std::vector<double>{0.5}, std::vector<double>{0.35, 0.61}}) {
      SCOPED_TRACE(std::to_string(shares.size()) + " in round " + std::to_string(round));
      expect_the_same(expected, ProjectText(drawn.sections({1, "in", {}, "", 1, shares})));
    }
  }
}

TEST(SameProject, IsJudgedAlikeInWhateverOrderItsStructureIsListed) {
  oracles::Random random(76);
  for (int round = 0; round < rounds; ++round) {
    SCOPED_TRACE(round);
    const RandomProject drawn(random);
    const auto expected = all_judged(ProjectText(drawn.sections({})));
    expect_the_same(expected, ProjectText(drawn.sections({1, "in", {}, "", 1, {}, true})));
  }
}

TEST(SameProject, HasSomethingOfEveryVerdictAndRuleToBeJudgedAlike) {
  std::vector<std::string> seen;
  for (const std::uint64_t seed : {71U, 72U, 73U}) {
    oracles::Random random(seed);
    for (int round = 0; round < rounds; ++round)
      for (const Judgement& judgement : all_judged(ProjectText(RandomProject(random).sections({}))))
        seen.push_back(judgement.rule + std::to_string(static_cast<int>(judgement.verdict)));
  }
  for (const std::string rule : {"frame-crossing", "clearance", "chafe", "separation"})
    for (const Verdict verdict : {Verdict::pass, Verdict::warn, Verdict::fail})
      EXPECT_GT(
          std::count(seen.begin(), seen.end(), rule + std::to_string(static_cast<int>(verdict))), 0)
          << rule << static_cast<int>(verdict);
}

}  // namespace
}  // namespace linewright
