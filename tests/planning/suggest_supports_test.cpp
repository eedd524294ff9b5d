// Where supports go, judged by the rules themselves: on lines by a channel that are drawn by
// chance, on small ones against every choice, and by figures.

#include "planning/suggest_supports.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "lines/prepare.hpp"
#include "planning/judged_supports.hpp"
#include "planning/support_way.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A 1 in angle along FS with a line beside it, from one bulkhead to another.
ProjectSections by_an_angle(double length, const std::string& line,
                            const std::string& points = "[]") {
  ProjectSections sections;
  sections.build_tolerance = "0.06";
  sections.structure = fmt::format(
      "  channels:\n    - {{name: angle, path: [[-5, 0, 0], [{}, 0, 0]], section: [[0, 1], [0, 0], "
      "[1, 0]], thickness: 0.04, edge: bare}}\n",
      length + 5);
  sections.nodes =
      held_node("a", "0, -0.8, 0.5") + held_node("b", fmt::format("{}, -0.8, 0.5", length));
  sections.routes = "  - {name: line, system: static, line: " + line +
                    ", from: a, to: b, points: " + points + "}\n";
  return sections;
}

// MIL-H-8891A Table II gives 1/4 in aluminium tube 13.5 in: 40 in take two supports, and the 1/2 in
// places leave 13.0 to 13.5 in for each of the three spans.
TEST(SuggestSupports, SpacesATubeByItsTable) {
  const ProjectText text(by_an_angle(40, "tube-aluminium-1/4"));
  const SupportSuggestion found = suggested(text.project());
  ASSERT_TRUE(found.possible);
  ASSERT_EQ(found.supports.size(), 2u);
  EXPECT_EQ(found.replaces, 0);
  double before = 0;
  for (const SuggestedSupport& each : found.supports) {
    EXPECT_EQ(each.on, "angle");
    EXPECT_EQ(each.hold, "clamp");
    EXPECT_NE(each.why.find("support-spacing: "), std::string::npos) << each.why;
    EXPECT_LE(each.distance_in - before, 13.5);
    EXPECT_NEAR(each.at.x, each.distance_in, 0.0005);
    before = each.distance_in;
  }
  EXPECT_LE(40 - before, 13.5);
}

TEST(SuggestSupports, LeavesOutClampsThatAreNotNeeded) {
  const ProjectText text(by_an_angle(
      24, "tube-aluminium-1/4",
      "[{at: [6, -0.8, 0.5], hold: clamp, to: angle}, {at: [12, -0.8, 0.5], hold: clamp, "
      "to: angle}, {at: [18, -0.8, 0.5], hold: clamp, to: angle}]"));
  const SupportSuggestion found = suggested(text.project());
  ASSERT_TRUE(found.possible);
  EXPECT_EQ(found.replaces, 3);
  ASSERT_EQ(found.supports.size(), 1u);
  EXPECT_TRUE(found.supports[0].drawn);
  EXPECT_DOUBLE_EQ(found.supports[0].at.x, 12);
  ASSERT_EQ(found.with.points.size(), 1u);
}

// Where `supports_on` names another part the angle is not asked; that part is out of reach of 20 in
// of the line, and the place is named.
TEST(SuggestSupports, SaysWhereNoPartIsNearEnough) {
  ProjectSections sections = by_an_angle(40, "tube-aluminium-1/4");
  sections.structure +=
      "    - {name: post, path: [[5, -2, -10], [5, -2, 10]], section: [[0, 0.75], [0, 0], [0.75, "
      "0]], thickness: 0.04, edge: bare}\n";
  sections.routes =
      "  - {name: line, system: static, line: tube-aluminium-1/4, from: a, to: b, supports_on: "
      "[post]}\n";
  const ProjectText text(sections);
  const SupportSuggestion found = suggested(text.project());
  EXPECT_FALSE(found.possible);
  EXPECT_FALSE(found.was_found);
  EXPECT_TRUE(found.supports.empty());
  ASSERT_FALSE(found.faults.empty());
  EXPECT_EQ(found.faults[0].judgement.rule, "support-spacing");
  EXPECT_GT(found.faults[0].distance_in, 10);
}

// A bare hole of 1/2 in takes a grommet of 1/4 in bore, which holds the tube.
TEST(SuggestSupports, PutsAGrommetInABareHole) {
  ProjectSections sections = by_an_angle(20, "tube-nylon-1/4");
  sections.structure =
      "  frames:\n    - {name: F, station: 10, thickness: 0.03, outline: [[-9, -9], [9, -9], [9, "
      "9], "
      "[-9, 9]], holes: [{name: F-tube, centre: [-0.8, 0.5], diameter: 0.5625, edge: bare}]}\n";
  sections.routes =
      "  - {name: line, system: static, line: tube-nylon-1/4, from: a, to: b, points: [{at: [10, "
      "-0.8, 0.5], through: F-tube}]}\n";
  const ProjectText text(sections);
  const SupportSuggestion found = suggested(text.project());
  ASSERT_TRUE(found.was_found);
  ASSERT_EQ(found.supports.size(), 1u);
  EXPECT_EQ(found.supports[0].hold, "grommet");
  EXPECT_EQ(found.supports[0].on, "F-tube");
  ASSERT_EQ(found.with.points.size(), 1u);
  EXPECT_EQ(found.with.points[0].through, "F-tube");
}

// 0.19 in from the angle all along is too near, but within an inch of a support: clamps every 2 in
// would do, and are no mend of a line that is drawn too near.
TEST(SuggestSupports, PutsNoneInWhereTheLineIsTooNearAsDrawn) {
  ProjectSections sections = by_an_angle(40, "tube-aluminium-1/4");
  sections.nodes = held_node("a", "0, -0.34, 0.5") + held_node("b", "40, -0.34, 0.5");
  const SupportSuggestion found = suggested(ProjectText(sections).project());
  EXPECT_TRUE(found.was_found);
  EXPECT_LT(found.supports.size(), 8u);
}

// No clamp is put on a bend, and its corner stays.
TEST(SuggestSupports, KeepsOffBends) {
  ProjectSections sections = by_an_angle(40, "tube-aluminium-1/4");
  sections.nodes = held_node("a", "0, -0.8, 0.5") + held_node("b", "20, -0.8, 14.5");
  sections.structure +=
      "    - {name: post, path: [[20.8, 0, -5], [20.8, 0, 20]], section: [[0, 1], [0, 0], [1, 0]], "
      "thickness: 0.04, edge: bare}\n";
  sections.routes =
      "  - {name: line, system: static, line: tube-aluminium-1/4, from: a, to: b, points: [{at: "
      "[20, "
      "-0.8, 0.5], bend: 3}]}\n";
  const ProjectText text(sections);
  const SupportSuggestion found = suggested(text.project());
  ASSERT_TRUE(found.possible);
  EXPECT_FALSE(found.supports.empty());
  for (const SuggestedSupport& each : found.supports)
    EXPECT_TRUE(each.at.x <= 17.001 || each.at.z >= 3.499) << each.at.x << " " << each.at.z;
}

std::string line_by_chance(std::mt19937& dice, double length, ProjectSections& sections) {
  std::uniform_real_distribution<double> share(0, 1);
  const char* lines[] = {"tube-aluminium-1/4", "tube-nylon-1/4", "wire-1/4"};
  const std::string line = lines[static_cast<std::size_t>(share(dice) * 3)];
  sections = by_an_angle(length, line);
  sections.temperature = "{min: 30 degF, rigged: 70 degF, max: 110 degF}";
  sections.load_factor = "{positive: 3.8, negative: -1.5}";
  const bool hangs = share(dice) < 0.3;
  const double y0 = -0.4 - 1.2 * share(dice);
  const double y1 = -0.4 - 1.2 * share(dice);
  sections.nodes = held_node("a", fmt::format("0, {:.3f}, 0.5", y0)) +
                   fmt::format("  - {{name: b, kind: {}, at: [{}, {:.3f}, 0.5]}}\n",
                               hangs ? "tee" : "bulkhead", length, y1);
  const std::string system = line == "wire-1/4" ? "wire" : "static";
  std::string points = "[]";
  if (share(dice) < 0.5)
    points = fmt::format("[{{at: [{:.3f}, {:.3f}, 0.5], hold: clamp, to: angle}}]", length / 3,
                         y0 + (y1 - y0) / 3);
  sections.routes = "  - {name: line, system: " + system + ", line: " + line +
                    ", from: a, to: b, points: " + points + "}\n";
  if (share(dice) < 0.5)
    sections.rest =
        "excitation: {propeller_rpm: [600, 2700], blades: 2, cruise_rpm: [2150, 2450]}\n";
  return line;
}

TEST(SuggestSupports, MakesTheRulesPassOnLinesByChance) {
  std::mt19937 dice(7);
  int possible = 0;
  for (int round = 0; round < 24; ++round) {
    ProjectSections sections;
    const std::string line =
        line_by_chance(dice, std::uniform_real_distribution<double>(15, 60)(dice), sections);
    const ProjectText text(sections);
    const SupportSuggestion found = suggested(text.project());
    SCOPED_TRACE(fmt::format("round {}: {}\n{}", round, line, sections.text()));
    if (!found.possible) {
      EXPECT_TRUE(!found.faults.empty() || found.gave_up);
      continue;
    }
    ++possible;
    EXPECT_TRUE(faults_with(text.project(), found.with).empty());
    for (const SuggestedSupport& each : found.supports) {
      EXPECT_FALSE(each.why.empty());
      Route without = found.with;
      std::erase_if(without.points,
                    [&](const RoutePoint& point) { return point.at == each.at && point.hold; });
      EXPECT_EQ(without.points.size() + 1, found.with.points.size());
      EXPECT_FALSE(faults_with(text.project(), without).empty()) << each.at.x;
    }
  }
  EXPECT_GT(possible, 8);
}

/// Every choice of so many places. What rules beside those of supports find as drawn, or with
/// supports at all of them, is no fault of a choice.
class AllChoices {
 public:
  explicit AllChoices(const Project& project) : project_(project), bare_project_(project) {
    Route& drawn = route_of(bare_project_);
    BareRoute bare =
        without_clamps(drawn, project.find_node(drawn.from)->at, project.find_node(drawn.to)->at);
    drawn = bare.route;
    prepared_.emplace(prepare(bare_project_));
    places_ = support_places(*prepared_, line(), bare.clamps);
    std::erase_if(places_, [](const SupportPlace& place) { return !place.point.hold; });
    for (const auto& known : {faults(places_), faults_on(project, "line", rules_asked())})
      for (const RouteFault& each : known)
        with_all_.insert(each.judgement.rule + each.judgement.with.value_or(""));
  }

  bool any_does(std::size_t count) const {
    if (places_.size() < count) return false;
    std::vector<bool> chosen(places_.size(), false);
    std::fill(chosen.begin(), chosen.begin() + static_cast<std::ptrdiff_t>(count), true);
    do {
      std::vector<SupportPlace> supports;
      for (std::size_t i = 0; i < places_.size(); ++i)
        if (chosen[i]) supports.push_back(places_[i]);
      const std::vector<RouteFault> found = faults(supports);
      if (std::all_of(found.begin(), found.end(),
                      [this](const RouteFault& each) { return is_excused(each.judgement); }))
        return true;
    } while (std::prev_permutation(chosen.begin(), chosen.end()));
    return false;
  }

 private:
  const PreparedRoute& line() const { return *prepared_->find_route("line"); }

  std::vector<RouteFault> faults(const std::vector<SupportPlace>& supports) const {
    Project changed = project_;
    route_of(changed) = with_supports(line(), supports);
    return faults_on(changed, "line", rules_asked());
  }

  bool is_excused(const Judgement& judgement) const {
    return std::find(std::begin(rules_beside_supports), std::end(rules_beside_supports),
                     judgement.rule) != std::end(rules_beside_supports) &&
           with_all_.contains(judgement.rule + judgement.with.value_or(""));
  }

  const Project& project_;
  Project bare_project_;
  std::optional<PreparedProject> prepared_;
  std::vector<SupportPlace> places_;
  std::set<std::string> with_all_;
};

TEST(SuggestSupports, NoFewerWouldDoOnSmallLines) {
  std::mt19937 dice(11);
  int compared = 0;
  for (int round = 0; round < 30; ++round) {
    ProjectSections sections;
    line_by_chance(dice, std::uniform_real_distribution<double>(14, 22)(dice), sections);
    const ProjectText text(sections);
    const SupportSuggestion found = suggested(text.project());
    if (!found.possible || found.supports.size() > 2) continue;
    SCOPED_TRACE(sections.text());
    const AllChoices choices(text.project());
    for (std::size_t fewer = 0; fewer < found.supports.size(); ++fewer)
      EXPECT_FALSE(choices.any_does(fewer)) << fewer;
    compared += found.supports.empty() ? 0 : 1;
  }
  EXPECT_GT(compared, 4);
}

}  // namespace
}  // namespace linewright
