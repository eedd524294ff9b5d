// `check` of several projects: each is judged as if it were alone.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;
using test::StarterCopy;
using test::TempFolder;

std::vector<json> lines_of(const std::string& text) {
  std::vector<json> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(json::parse(line));
  return lines;
}

/// One that is clean, one with a fault, and one that is not there.
struct ThreeProjects {
  StarterCopy clean;
  StarterCopy faulty;
  TempFolder empty;
  std::string missing = empty / "nowhere.yaml";

  ThreeProjects() { faulty.bend_too_tightly(); }
};

TEST(CheckMany, TextHasEachUnderItsNameAsIfItWereAlone) {
  const ThreeProjects projects;
  const CommandRun both = run({"check", projects.clean.root(), projects.faulty.root()});
  EXPECT_EQ(both.code, 1);
  EXPECT_EQ(both.err, "");
  EXPECT_EQ(both.out, "== " + projects.clean.root() + "\n" +
                          run({"check", projects.clean.root()}).out +
                          "\n== " + projects.faulty.root() + "\n" +
                          run({"check", projects.faulty.root()}).out);
}

TEST(CheckMany, TheExitCodeIsTheWorstAndAnErrorStopsNoOther) {
  const ThreeProjects projects;
  const CommandRun all =
      run({"check", projects.missing, projects.clean.root(), projects.faulty.root()});
  EXPECT_EQ(all.code, 2);
  EXPECT_EQ(all.err, run({"check", projects.missing}).err);
  EXPECT_TRUE(contains(all.out, "== " + projects.clean.root()));
  EXPECT_TRUE(contains(all.out, "== " + projects.faulty.root()));
  EXPECT_EQ(run({"check", projects.clean.root(), projects.clean.root()}).code, 0);
}

TEST(CheckMany, JsonlIsALineForEachWithWhatItsOwnCheckHas) {
  const ThreeProjects projects;
  const CommandRun all = run({"check", projects.clean.root(), projects.missing,
                              projects.faulty.root(), "--format", "jsonl"});
  EXPECT_EQ(all.code, 2);
  const std::vector<json> lines = lines_of(all.out);
  ASSERT_EQ(lines.size(), 3u);
  EXPECT_EQ(lines[0].at("project_file"), projects.clean.root());
  EXPECT_EQ(lines[0].at("exit"), 0);
  EXPECT_EQ(lines[1].at("exit"), 2);
  EXPECT_EQ(lines[1].at("errors"), run({"check", projects.missing}).err);
  EXPECT_FALSE(lines[1].contains("check"));
  EXPECT_EQ(lines[2].at("exit"), 1);
  EXPECT_EQ(lines[2].at("check"),
            json::parse(run({"check", projects.faulty.root(), "--format", "json"}).out));
}

TEST(CheckMany, JsonlOfOneProjectIsOneLine) {
  const StarterCopy project;
  const std::vector<json> lines = lines_of(run({"check", project.root(), "--format", "jsonl"}).out);
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_EQ(lines[0].at("check"),
            json::parse(run({"check", project.root(), "--format", "json"}).out));
}

TEST(CheckMany, OptionsHoldForEach) {
  const ThreeProjects projects;
  const CommandRun result = run({"check", projects.clean.root(), projects.faulty.root(), "--rule",
                                 "network", "--format", "jsonl"});
  for (const json& line : lines_of(result.out))
    for (const json& check : line.at("check").at("checks")) EXPECT_EQ(check.at("rule"), "network");
  EXPECT_EQ(lines_of(result.out).size(), 2u);
}

TEST(CheckMany, OutputTakesAllOfThem) {
  const ThreeProjects projects;
  const std::string file = projects.empty / "all.jsonl";
  const CommandRun result = run({"check", projects.clean.root(), projects.faulty.root(), "--format",
                                 "jsonl", "--output", file});
  EXPECT_EQ(result.out, "");
  EXPECT_EQ(lines_of(test::read(file)).size(), 2u);
}

TEST(CheckMany, FormsThatHoldOneProjectAreRefused) {
  const StarterCopy project;
  for (const std::string format : {"json", "sarif"}) {
    const CommandRun result = run({"check", project.root(), project.root(), "--format", format});
    EXPECT_EQ(result.code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_TRUE(contains(result.err, "use --format jsonl")) << result.err;
  }
}

}  // namespace
}  // namespace linewright
