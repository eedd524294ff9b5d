// Whatever is judged, the verdict and the numbers beside it say the same.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "commands/mesh_store.hpp"
#include "lines/prepare.hpp"
#include "oracles/random_path.hpp"
#include "rules/judge.hpp"
#include "rules/project_text.hpp"
#include "rules/random_project.hpp"

namespace linewright {
namespace {

const std::filesystem::path source_folder = LINEWRIGHT_SOURCE_DIR;

void expect_agreement(const std::vector<Judgement>& judgements, const std::string& project) {
  for (const Judgement& each : judgements) {
    if (!each.margin() || each.verdict == Verdict::unknown) continue;
    const Verdict verdict = each.unwaived();
    EXPECT_EQ(verdict == Verdict::pass, *each.margin() >= 0)
        << project << ": " << each.rule << " on " << each.route << ": " << each.message
        << fmt::format(": value {}, limit {}", *each.value, *each.limit);
  }
}

std::vector<Judgement> judged_file(const std::filesystem::path& file) {
  const LoadResult result = load_project(file, built_in_catalogue());
  if (!result.project) throw std::runtime_error(file.string() + "\n" + shown(result.errors));
  MeshStore meshes;
  const auto fields = meshes.fields_of(*result.project, file);
  return judge(prepare(*result.project, *fields), {});
}

TEST(VerdictAndMargin, AgreeInTheDemo) {
  for (const char* name : {"as-drawn.yaml", "mended.yaml"}) {
    const std::vector<Judgement> judgements = judged_file(source_folder / "routes" / name);
    EXPECT_GT(judgements.size(), 300u) << name;
    expect_agreement(judgements, name);
  }
}

TEST(VerdictAndMargin, AgreeInTheExamples) {
  int projects = 0;
  for (const auto& folder : std::filesystem::directory_iterator(source_folder / "examples"))
    for (const char* name : {"project.yaml", "mended.yaml"})
      if (std::filesystem::exists(folder.path() / name)) {
        expect_agreement(judged_file(folder.path() / name), folder.path().string());
        ++projects;
      }
  EXPECT_GE(projects, 4);
}

TEST(VerdictAndMargin, AgreeInRandomProjects) {
  oracles::Random random(71);
  std::size_t judged = 0;
  for (int i = 0; i < 20; ++i) {
    const ProjectText project(RandomProject(random).sections({}));
    const std::vector<Judgement> judgements = judge(project.prepared(), {});
    judged += judgements.size();
    expect_agreement(judgements, fmt::format("random project {}", i));
  }
  EXPECT_GT(judged, 400u);
}

/// Lines of the rules' sources that give a verdict themselves.
std::vector<std::string> verdicts_given() {
  const std::regex gives(R"(\bverdict\s*=[^=])");
  std::vector<std::string> found;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(source_folder / "src")) {
    const std::string name = entry.path().filename().string();
    if (name == "limit.cpp" || name == "waivers.cpp" || name == "judgement.hpp") continue;
    if (entry.path().string().find("/rules/") == std::string::npos) continue;
    std::ifstream file(entry.path());
    std::string line;
    while (std::getline(file, line))
      if (std::regex_search(line, gives)) found.push_back(name + ": " + line);
  }
  return found;
}

// Waivers give one of their own: what was judged stays as it was, beside it.
TEST(VerdictAndMargin, OnlyTheOneFunctionGivesVerdicts) {
  const std::vector<std::string> given = verdicts_given();
  EXPECT_TRUE(given.empty()) << given.size() << " places, such as " << given.front();
}

}  // namespace
}  // namespace linewright
