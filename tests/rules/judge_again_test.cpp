// The next answer, of which most is kept from the last one, is the one that judging everything
// gives.

#include "rules/judge_again.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "one_case_in.hpp"
#include "rules/beside_each_other.hpp"
#include "rules/judge.hpp"
#include "rules/random_edit.hpp"
#include "rules/random_project.hpp"
#include "rules/registry.hpp"
#include "rules/same_judgements.hpp"

namespace linewright {
namespace {

/// A project and all that was said of it.
struct Judged {
  explicit Judged(const Project& judged_project)
      : project(judged_project), judgements(judge(prepare(project), Phrasing{})) {}

  Project project;
  std::vector<Judgement> judgements;
};

std::optional<std::vector<Judgement>> judged_again(const Project& project, const Judged& before) {
  return judge_again(prepare(project), Phrasing{}, before.project, before.judgements);
}

std::string shown(const Judgement& each) {
  return words(each) + fmt::format(", {}:{}, waived {}, {}, {}", each.location.file,
                                   each.location.line, each.waived ? each.waived->reason : "no",
                                   each.source, each.mend);
}

/// To the last digit and word, and in the same order.
void expect_no_difference(const std::vector<Judgement>& fresh,
                          const std::vector<Judgement>& again) {
  for (std::size_t i = 0; i < std::min(fresh.size(), again.size()); ++i)
    ASSERT_TRUE(again[i] == fresh[i]) << shown(again[i]) << "\nfresh: " << shown(fresh[i]);
  ASSERT_EQ(again.size(), fresh.size());
}

/// How many of some random edits, one after another, were answered at once; each such answer is the
/// fresh one.
int answered_at_once(Project project, int edits, std::uint64_t seed) {
  oracles::Random random(seed);
  Judged last(project);
  int answered = 0;
  for (int i = 0; i < edits; ++i) {
    RandomEdit(random).make(project);
    if (random.whole(0, 2) == 0)
      push_down(project, project.routes.back().where.file, random.whole(1, 80), random.whole(1, 9));
    const auto again = judged_again(project, last);
    last = Judged(project);
    if (!again) continue;
    ++answered;
    expect_no_difference(last.judgements, *again);
    if (testing::Test::HasFatalFailure()) break;
  }
  return answered;
}

int share_of(int edits) {
  return edits / static_cast<int>(test::one_case_in());
}

std::vector<double> some_way_apart(oracles::Random& random, std::size_t count) {
  std::vector<double> apart_in;
  while (apart_in.size() < count) apart_in.push_back(random.between(5, 25));
  return apart_in;
}

TEST(JudgeAgain, IsTheFreshAnswerForRandomEditsOfTheDemo) {
  const int edits = share_of(6);
  for (const char* name : {"as-drawn.yaml", "mended.yaml"}) {
    SCOPED_TRACE(name);
    answered_at_once(loaded_from(demo_folder() / name), edits, 11);
  }
}

TEST(JudgeAgain, IsTheFreshAnswerForRandomEditsOfTwoAeroplanesSideBySide) {
  const int edits = share_of(16);
  oracles::Random random(12);
  for (int pair = 0; pair < 2; ++pair) {
    const Project both = beside_each_other(
        {loaded_from(demo_folder() / "as-drawn.yaml"), loaded_from(demo_folder() / "mended.yaml")},
        some_way_apart(random, 1));
    EXPECT_GT(answered_at_once(both, edits, 13), 0);
  }
}

TEST(JudgeAgain, IsTheFreshAnswerForRandomEditsOfRandomLines) {
  const int edits = share_of(24);
  oracles::Random random(14);
  for (int all = 0; all < 2; ++all) {
    std::vector<Project> each;
    for (int i = 0; i < 4; ++i)
      each.push_back(ProjectText(RandomProject(random).sections({})).project());
    const Project several = beside_each_other(each, some_way_apart(random, 3));
    EXPECT_GT(answered_at_once(several, edits, 15), edits * 3 / 4);
  }
}

/// Lines of all kinds along FS, each a little to and fro, through a hole in a frame: every third
/// cable goes round a pulley, two work one control, and of one nobody knows how far its ends swing.
Project lines_in_a_room(oracles::Random& random) {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 31, thickness: 0.032, outline: [[-14, -14], [14, -14], [14, "
      "14], [-14, 14]],\n    holes: [{name: H, centre: [0, 0], diameter: 19, edge: bare}]}]\n";
  constexpr std::array kinds{"system: static, line: tube-aluminium-1/4",
                             "system: vent, line: hose-rubber-1/4, sleeves: [{from: 5, to: 15, "
                             "bore: 3/8, outside: 1/2}]",
                             "system: wire, line: wire-1/4",
                             "system: cable, line: cable-7x19-1/8-steel, "
                             "tension: {rigged: 40 lbf}, travel: {forward: 1, aft: 1}",
                             "system: pitot, line: tube-nylon-1/4"};
  for (int i = 0; i < 15; ++i) {
    const auto kind = static_cast<std::size_t>(i) % kinds.size();
    const bool is_cable = kind == 3;
    const Vec3 middle = random.point(8);
    const auto place = [&](double fs) {
      const Vec3 at = middle + random.point(1.5);
      return fmt::format("[{:.3f}, {:.3f}, {:.3f}]", fs, at.y, at.z);
    };
    for (const auto& [end, fs] : {std::pair("from", 0.0), std::pair("to", 60.0)})
      sections.nodes += fmt::format("  - {{name: {}-{}, kind: {}, at: {}}}\n", end, i,
                                    i == 13 ? "horn" : "bulkhead", place(fs));
    sections.routes += fmt::format("  - {{name: line-{}, from: from-{}, to: to-{}, {}{},\n", i, i,
                                   i, kinds[kind], is_cable && i < 13 ? ", control: rudder" : "");
    sections.routes += "     points: [";
    for (int k = 1; k < 4; ++k)
      sections.routes += fmt::format(
          "{}{{at: {}, hold: {}}}", k == 1 ? "" : ", ", place(15.0 * k),
          !is_cable          ? "clamp"
          : i == 8 && k == 2 ? "pulley, diameter: 3, width: 0.4, outside: 3.2, axis: [0, 1, 0]"
                             : "fairlead");
    sections.routes += "]}\n";
  }
  sections.rest =
      "waivers:\n"
      "  - {rule: separation, route: line-3, reason: they are tied}\n"
      "  - {rule: chafe, route: line-8, near: [30, 0, 0], within: 15, reason: in a sleeve}\n";
  return ProjectText(sections).project();
}

TEST(JudgeAgain, IsTheFreshAnswerForHundredsOfRandomEditsOfLinesInARoom) {
  oracles::Random random(16);
  for (int room = 0; room < 3; ++room) {
    const int edits = share_of(70);
    EXPECT_GT(answered_at_once(lines_in_a_room(random), edits, 17), edits / 2);
  }
}

/// Four tubes side by side, two near each other and two near each other elsewhere.
struct FourTubes {
  Project project = ProjectText(sections()).project();
  Judged judged{project};

  static ProjectSections sections() {
    ProjectSections sections;
    for (const auto& [name, bl] :
         {std::pair("left", 0.0), {"beside", 1.0}, {"far", 40.0}, {"next", 41.0}}) {
      sections.nodes += fmt::format(
          "  - {{name: {0}-from, kind: bulkhead, at: [0, {1}, 0]}}\n"
          "  - {{name: {0}-to, kind: bulkhead, at: [20, {1}, 0]}}\n",
          name, bl);
      sections.routes += fmt::format(
          "  - {{name: {0}, system: 'static: {0}', line: tube-aluminium-1/4, from: {0}-from, "
          "to: {0}-to,\n     points: [{{at: [10, {1}, 0], hold: clamp}}]}}\n",
          name, bl);
    }
    return sections;
  }

  /// What is said of all once the first tube's clamp has moved, with a mark on all that was kept.
  std::optional<std::vector<Judgement>> marked_again() {
    for (Judgement& each : judged.judgements) each.mend += " (kept)";
    project.routes[0].points[0].at.z += 0.25;
    return judged_again(project, judged);
  }
};

bool leaves_out_unasked(const Judgement& each) {
  return find_rule(each.rule)->leaves_out_unasked;
}

TEST(JudgeAgain, KeepsWhatIsSaidOfALineThatNoChangeCanTouch) {
  const auto again = FourTubes().marked_again();
  ASSERT_TRUE(again);
  int of_far = 0;
  for (const Judgement& each : *again) {
    const bool is_far = each.route == "far" || each.route == "next";
    const bool kept = each.mend.ends_with(" (kept)");
    EXPECT_EQ(kept, is_far && leaves_out_unasked(each)) << words(each);
    of_far += kept ? 1 : 0;
  }
  EXPECT_GT(of_far, 0);
}

TEST(JudgeAgain, AWaiverThatNoLongerWaivesAnythingIsFoundAmongWhatWasKept) {
  ProjectSections sections = FourTubes::sections();
  sections.rest = "waivers: [{rule: separation, route: left, reason: it is tied}]\n";
  sections.routes.replace(sections.routes.find("[10, 0, 0]"), 10, "[10, 0.7, 0]");
  FourTubes tubes{ProjectText(sections).project()};
  const auto is = [](const std::string& rule, Verdict verdict) {
    return [rule, verdict](const Judgement& each) {
      return each.rule == rule && each.verdict == verdict;
    };
  };
  const auto& before = tubes.judged.judgements;
  ASSERT_EQ(std::count_if(before.begin(), before.end(), is("separation", Verdict::waived)), 1);
  tubes.project.routes[0].points[0].at.y = 0;
  const auto again = judged_again(tubes.project, tubes.judged);
  ASSERT_TRUE(again);
  EXPECT_EQ(std::count_if(again->begin(), again->end(), is("waivers", Verdict::warn)), 1);
  expect_no_difference(Judged(tubes.project).judgements, *again);
}

TEST(JudgeAgain, SaysNothingWhereMoreThanRoutesChanged) {
  FourTubes tubes;
  for (const auto& change : std::vector<std::function<void(Project&)>>{
           [](Project& project) { project.nodes.back().at.x += 1; },
           [](Project& project) { project.build_tolerance_in = 0.1; },
           [](Project& project) { project.temperature.max_degf += 10; },
           [](Project& project) { project.routes.pop_back(); },
           [](Project& project) { project.routes[1].name = "renamed"; },
           [](Project& project) {
             project.structure.solids.push_back({"box", Box{}, {}});
           }}) {
    Project project = tubes.project;
    project.routes[0].points[0].at.z += 0.25;
    ASSERT_TRUE(judged_again(project, tubes.judged));
    change(project);
    EXPECT_FALSE(judged_again(project, tubes.judged));
  }
}

constexpr const char* travelling_cable =
    "system: cable, line: cable-7x19-1/8-steel, tension: {rigged: 40 lbf, limit_load: 150 lbf}, ";

/// What is told at once of `after`, if anything is, is the fresh answer.
void expect_no_wrong_answer(const ProjectSections& before, const ProjectSections& after) {
  const Judged last(ProjectText(before).project());
  const Project now = ProjectText(after).project();
  const std::vector<Judgement> fresh = Judged(now).judgements;
  ASSERT_TRUE(fresh != last.judgements) << "the change changes nothing";
  if (const auto again = judged_again(now, last)) expect_no_difference(fresh, *again);
}

ProjectSections with_routes(ProjectSections sections, const std::string& routes) {
  sections.routes = routes;
  return sections;
}

// A pulley that grows meets the pulley of a line that is nowhere near its own line.
TEST(JudgeAgain, SeesAPulleyThatMeetsThePulleyOfAFarLine) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: ca, kind: horn, at: [23.5, 0, 0]}\n"
      "  - {name: cb, kind: horn, at: [30, 0, -6.5]}\n"
      "  - {name: da, kind: horn, at: [19.5, 0, -4]}\n"
      "  - {name: db, kind: horn, at: [26, 0, -10.5]}\n";
  const auto routes = [](const std::string& outside) {
    const std::string cable = std::string(travelling_cable) + "travel: {forward: 1, aft: 1}, ";
    const std::string groove = "hold: pulley, diameter: 6, width: 0.4, ";
    return "  - {name: a, from: ca, to: cb, " + cable + "points: [{at: [30, 0, 0], " + groove +
           "axis: [0, 1, 0], outside: " + outside + "}]}\n  - {name: b, from: da, to: db, " +
           cable + "points: [{at: [19.5, 0, -10.5], " + groove +
           "axis: [0, -1, 0], outside: 6.4}]}\n";
  };
  expect_no_wrong_answer(with_routes(sections, routes("6.2")),
                         with_routes(sections, routes("6.7")));
}

// A slack hose comes out much farther than what lines share reaches.
TEST(JudgeAgain, SeesAPulleyThatASlackHoseReaches) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: ca, kind: horn, at: [45, -40, 9]}\n"
      "  - {name: cb, kind: horn, at: [45, 0, 40]}\n"
      "  - {name: ta, kind: bulkhead, at: [10, 1, 0]}\n"
      "  - {name: tb, kind: bulkhead, at: [80, 1, 0]}\n";
  const auto routes = [](const std::string& hold) {
    return "  - {name: c, system: cable, line: cable-7x19-1/8-steel, from: ca, to: cb, points: "
           "[{at: [45, 0, 9], " +
           hold +
           "}]}\n  - {name: t, system: vent, line: hose-rubber-1/4, from: ta, to: tb, length: "
           "74}\n";
  };
  expect_no_wrong_answer(
      with_routes(sections, routes("hold: fairlead, bore: 0.25")),
      with_routes(sections, routes("hold: pulley, diameter: 2, axis: [1, 0, 0]")));
}

/// A cable whose ends swing nobody knows how far, and a tube across it at a waterline.
ProjectSections tube_across_a_cable(const std::string& wl) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: ca, kind: horn, at: [100, 0, 10]}\n"
      "  - {name: cb, kind: horn, at: [160, 0, 10]}\n"
      "  - {name: ta, kind: bulkhead, at: [101, -30, 10]}\n"
      "  - {name: tb, kind: bulkhead, at: [101, 30, 10]}\n";
  sections.routes = "  - {name: c, from: ca, to: cb, " + std::string(travelling_cable) +
                    "travel: {forward: 4, aft: 4}}\n  - {name: t, system: vent, line: "
                    "tube-aluminium-1/4, from: ta, to: tb, points: [{at: [101, -20, " +
                    wl + "], hold: clamp}, {at: [101, 20, " + wl + "], hold: clamp}]}\n";
  return sections;
}

TEST(JudgeAgain, SeesALineThatComesNearAnEndWhoseSwingIsNotKnown) {
  expect_no_wrong_answer(tube_across_a_cable("19"), tube_across_a_cable("13"));
  expect_no_wrong_answer(tube_across_a_cable("13"), tube_across_a_cable("19"));
}

TEST(JudgeAgain, SeesAHoleThatAGuideIsTakenToHave) {
  ProjectSections sections;
  sections.structure =
      "  panels: [{name: wall, corners: [[50, -20, -20], [50, 20, -20], [50, 20, 20], [50, -20, "
      "20]], thickness: 0.04}]\n";
  for (const auto& [name, bl] : {std::pair("r", 0.0), {"s", 2.2}})
    sections.nodes += fmt::format(
        "  - {{name: {0}a, kind: bulkhead, at: [40, {1}, 0]}}\n"
        "  - {{name: {0}b, kind: bulkhead, at: [60, {1}, 0]}}\n",
        name, bl);
  const auto routes = [](const std::string& bore) {
    return "  - {name: r, system: wire, line: wire-1/4, from: ra, to: rb, points: [{at: [50, 0, "
           "0], hold: fairlead, bore: " +
           bore +
           "}]}\n  - {name: s, system: wire, line: wire-1/4, from: sa, to: sb, points: [{at: [50, "
           "2.2, 0], hold: grommet, bore: 0.28}]}\n";
  };
  expect_no_wrong_answer(with_routes(sections, routes("0.3")), with_routes(sections, routes("5")));
  expect_no_wrong_answer(with_routes(sections, routes("5")), with_routes(sections, routes("0.3")));
}

// Two bundles in one hole, far apart in it, of which one is led out of it.
TEST(JudgeAgain, SeesALineThatLeavesAHoleThatItShared) {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 106, thickness: 0.032, outline: [[-20, -20], [20, -20], [20, "
      "40], [-20, 40]], holes: [{name: H, centre: [0, 10], diameter: 6, edge: grommet}]}]\n";
  for (const auto& [name, bl] : {std::pair("1", -2), {"2", 2}})
    sections.nodes += fmt::format(
        "  - {{name: a{0}, kind: end, fixed: true, at: [95, {1}, 10]}}\n"
        "  - {{name: b{0}, kind: end, fixed: true, at: [117, {1}, 10]}}\n",
        name, bl);
  const auto routes = [](const std::string& bl) {
    return "  - {name: w1, system: wire, line: wire-1/4, from: a1, to: b1}\n"
           "  - {name: w2, system: wire, line: wire-1/4, from: a2, to: b2, points: [{at: [100, " +
           bl + ", 10]}, {at: [112, " + bl + ", 10]}]}\n";
  };
  expect_no_wrong_answer(with_routes(sections, routes("2")), with_routes(sections, routes("9")));
}

}  // namespace
}  // namespace linewright
