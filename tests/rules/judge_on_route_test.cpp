// One route by some rules, quickly: the same as what all of them say of it.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "rules/judge.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

constexpr std::string_view asked[] = {"support-spacing", "bend-fit",  "chafe",         "resonance",
                                      "support-mount",   "clearance", "frame-crossing"};

std::vector<std::string> as_lines(const std::vector<Judgement>& judgements) {
  std::vector<std::string> lines;
  for (const Judgement& each : judgements)
    if (each.rule != "waivers")
      lines.push_back(each.rule + " " + each.route + " " + each.with.value_or("") + ": " +
                      each.message + " at " + std::to_string(each.distance_in.value_or(0)));
  std::sort(lines.begin(), lines.end());
  return lines;
}

TEST(JudgeOnRoute, SaysWhatTheRulesSayOfThatRoute) {
  for (const char* name : {"as-drawn.yaml", "mended.yaml"}) {
    const LoadResult loaded = load_project(
        std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / "routes" / name, built_in_catalogue());
    ASSERT_TRUE(loaded.project);
    const PreparedProject prepared = prepare(*loaded.project);
    std::vector<Judgement> all;
    for (const std::string_view rule : asked)
      for (Judgement& each : judge(prepared, {}, std::string(rule))) all.push_back(std::move(each));
    for (const PreparedRoute& route : prepared.routes) {
      const std::string& wanted = route.route->name;
      std::vector<Judgement> of_route;
      std::copy_if(all.begin(), all.end(), std::back_inserter(of_route), [&](const auto& each) {
        return each.route.empty() || each.route == wanted ||
               (each.with_is_route && each.with == wanted);
      });
      EXPECT_EQ(as_lines(judge_on_route(prepared, {}, asked, wanted)), as_lines(of_route))
          << wanted;
    }
  }
}

// A hose whose end hangs free swings to everything; the line beside it that is asked about is held
// against the hose with that end still, as where all are judged.
TEST(JudgeOnRoute, TakesTheFreeEndsOfOtherLinesStill) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: port, kind: static-port, at: [0, 0, 0]}\n"
      "  - {name: loose, kind: end, at: [20, 0, 0]}\n"
      "  - {name: left, kind: bulkhead, at: [0, 0, 4]}\n"
      "  - {name: right, kind: bulkhead, at: [20, 0, 4]}\n";
  sections.routes =
      "  - {name: hose, system: static, line: hose-rubber-1/4, from: port, to: loose}\n"
      "  - {name: tube, system: vent, line: tube-aluminium-1/4, from: left, to: right}\n";
  const ProjectText project(sections);
  constexpr std::string_view chafe[] = {"chafe"};
  std::vector<Judgement> of_tube = project.judged("chafe");
  std::erase_if(of_tube, [](const Judgement& each) {
    return each.route != "tube" && !(each.with_is_route && each.with == "tube");
  });
  EXPECT_EQ(as_lines(judge_on_route(project.prepared(), {}, chafe, "tube")), as_lines(of_tube));
}

}  // namespace
}  // namespace linewright
