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
    EXPECT_GT(answered_at_once(loaded_from(demo_folder() / name), edits, 11), edits * 3 / 4);
  }
}

TEST(JudgeAgain, IsTheFreshAnswerForRandomEditsOfTwoAeroplanesSideBySide) {
  const int edits = share_of(16);
  oracles::Random random(12);
  for (int pair = 0; pair < 2; ++pair) {
    const Project both = beside_each_other(
        {loaded_from(demo_folder() / "as-drawn.yaml"), loaded_from(demo_folder() / "mended.yaml")},
        some_way_apart(random, 1));
    EXPECT_GT(answered_at_once(both, edits, 13), edits * 3 / 4);
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

/// Lines of all kinds along FS, each a little to and fro, without structure.
Project lines_in_a_room(oracles::Random& random) {
  ProjectSections sections;
  constexpr std::array kinds{"system: static, line: tube-aluminium-1/4",
                             "system: vent, line: hose-rubber-1/4", "system: wire, line: wire-1/4",
                             "system: cable, line: cable-7x19-1/8-steel, "
                             "tension: {rigged: 40 lbf}, travel: {forward: 1, aft: 1}",
                             "system: pitot, line: tube-nylon-1/4"};
  for (int i = 0; i < 15; ++i) {
    const auto kind = static_cast<std::size_t>(i) % kinds.size();
    const Vec3 middle = random.point(8);
    const auto place = [&](double fs) {
      const Vec3 at = middle + random.point(1.5);
      return fmt::format("[{:.3f}, {:.3f}, {:.3f}]", fs, at.y, at.z);
    };
    for (const auto& [end, fs] : {std::pair("from", 0.0), std::pair("to", 60.0)})
      sections.nodes +=
          fmt::format("  - {{name: {}-{}, kind: bulkhead, at: {}}}\n", end, i, place(fs));
    sections.routes +=
        fmt::format("  - {{name: line-{}, from: from-{}, to: to-{}, {},\n", i, i, i, kinds[kind]);
    sections.routes += "     points: [";
    for (int k = 1; k < 4; ++k)
      sections.routes += fmt::format("{}{{at: {}, hold: {}}}", k == 1 ? "" : ", ", place(15.0 * k),
                                     kind == 3 ? "fairlead" : "clamp");
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
    EXPECT_GT(answered_at_once(lines_in_a_room(random), edits, 17), edits * 9 / 10);
  }
}

/// Three tubes side by side, the first two near each other.
struct ThreeTubes {
  Project project = ProjectText(sections()).project();
  Judged judged{project};

  static ProjectSections sections() {
    ProjectSections sections;
    for (const auto& [name, bl] : {std::pair("left", 0.0), {"beside", 1.0}, {"far", 40.0}}) {
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

TEST(JudgeAgain, KeepsWhatIsSaidOfALineThatNoChangeCanTouch) {
  const auto again = ThreeTubes().marked_again();
  ASSERT_TRUE(again);
  int of_far = 0;
  for (const Judgement& each : *again) {
    EXPECT_EQ(each.mend.ends_with(" (kept)"), each.route == "far") << words(each);
    of_far += each.route == "far" ? 1 : 0;
  }
  EXPECT_GT(of_far, 0);
}

TEST(JudgeAgain, AWaiverThatNoLongerWaivesAnythingIsFoundAmongWhatWasKept) {
  ProjectSections sections = ThreeTubes::sections();
  sections.rest = "waivers: [{rule: separation, route: left, reason: it is tied}]\n";
  sections.routes.replace(sections.routes.find("[10, 0, 0]"), 10, "[10, 0.7, 0]");
  ThreeTubes tubes{ProjectText(sections).project()};
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
  ThreeTubes tubes;
  for (const auto& change : std::vector<std::function<void(Project&)>>{
           [](Project& project) { project.nodes[5].at.x += 1; },
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

}  // namespace
}  // namespace linewright
