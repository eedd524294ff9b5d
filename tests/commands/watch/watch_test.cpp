#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "commands/watched_program.hpp"

namespace linewright {
namespace {

using test::contains;
using test::run;
using test::StarterCopy;
using test::WatchedProgram;
namespace fs = std::filesystem;

constexpr const char* wide_bend = "[142, 0, 18], bend: 1 1/4";
constexpr const char* tight_bend = "[142, 0, 18], bend: 0.5";
constexpr const char* less_tight_bend = "[142, 0, 18], bend: 0.6";

/// Replaces a part of a file as many editors do: the new text is written beside it and moved there.
void edit_by_rename(const StarterCopy& project, const std::string& name, const std::string& before,
                    const std::string& after) {
  std::string text = test::read(project.file(name));
  text.replace(text.find(before), before.size(), after);
  test::write(project.file(".new"), text);
  fs::rename(project.file(".new"), project.file(name));
}

/// As others do: the old file is moved away first.
void edit_by_backup(const StarterCopy& project, const std::string& name, const std::string& before,
                    const std::string& after) {
  std::string text = test::read(project.file(name));
  text.replace(text.find(before), before.size(), after);
  fs::rename(project.file(name), project.file(name + "~"));
  test::write(project.file(name), text);
  fs::remove(project.file(name + "~"));
}

TEST(Watch, ShowsFirstWhatCheckShows) {
  const StarterCopy project;
  project.bend_too_tightly();
  WatchedProgram program({project.root()});
  EXPECT_TRUE(program.says(run({"check", project.root()}).out)) << program.said();
  program.code_after(SIGINT);
  EXPECT_TRUE(contains(program.said(), "Ctrl-C ends"));
}

TEST(Watch, SaysWhatEverySaveChanges) {
  const StarterCopy project;
  WatchedProgram program({project.root(), "--quiet"});
  ASSERT_TRUE(program.says("airworthy: ")) << program.said();

  project.edit("static.yaml", wide_bend, tight_bend);
  EXPECT_TRUE(program.says(": 1 new\n\nstatic-altimeter: new, passed before\n")) << program.said();
  EXPECT_TRUE(program.says("fail: bend-radius: ")) << program.said();
  EXPECT_TRUE(program.says("1 failed, 0 unknown")) << program.said();

  edit_by_rename(project, "static.yaml", tight_bend, less_tight_bend);
  EXPECT_TRUE(program.says(": 1 changed\n\nstatic-altimeter: changed\n")) << program.said();
  EXPECT_TRUE(program.says("by how much: value 0.600 in")) << program.said();
  EXPECT_TRUE(program.says("was:         value 0.500 in")) << program.said();

  edit_by_backup(project, "static.yaml", less_tight_bend, wide_bend);
  EXPECT_TRUE(program.says(": 1 passes now\n\nstatic-altimeter: passes now, was fail\n"))
      << program.said();
  EXPECT_TRUE(program.says("0 failed, 0 unknown")) << program.said();

  test::write(project.file("project.yaml"), test::read(project.file("project.yaml")) + "\n");
  EXPECT_TRUE(program.says(": nothing changed\n5 routes: ")) << program.said();
  EXPECT_EQ(program.code_after(SIGINT), 0);
}

TEST(Watch, GoesOnAfterASaveWithAnError) {
  const StarterCopy project;
  WatchedProgram program({project.root()});
  ASSERT_TRUE(program.says("airworthy: ")) << program.said();
  const std::string good = test::read(project.file("static.yaml"));

  test::write(project.file("static.yaml"), good + "rout: []\n");
  EXPECT_TRUE(program.says(run({"check", project.root()}).err)) << program.said();
  test::write(project.file("static.yaml"), good);
  EXPECT_TRUE(program.says(": nothing changed\n")) << program.said();

  fs::remove(project.file("static.yaml"));
  EXPECT_TRUE(program.says("there is no such file")) << program.said();
  test::write(project.file("static.yaml"), good);
  EXPECT_TRUE(program.says(": nothing changed\n")) << program.said();
}

TEST(Watch, BeginsWithAProjectThatHasAnError) {
  const StarterCopy project;
  project.edit("static.yaml", wide_bend, "[142, 0, 18], bned: 1 1/4");
  WatchedProgram program({project.root()});
  EXPECT_TRUE(program.says("did you mean 'bend'?")) << program.said();
  project.edit("static.yaml", "bned", "bend");
  EXPECT_TRUE(program.says(run({"check", project.root()}).out)) << program.said();
}

TEST(Watch, TakesInFilesThatTheProjectComesToConsistOf) {
  const StarterCopy project;
  WatchedProgram program({project.root()});
  ASSERT_TRUE(program.says("airworthy: ")) << program.said();

  project.edit("project.yaml", "[structure.yaml, static.yaml]",
               "[structure.yaml, static.yaml, more/ports.yaml]");
  EXPECT_TRUE(program.says("'more/ports.yaml' cannot be included")) << program.said();
  fs::create_directory(project.file("more"));
  const std::string loose_port =
      "linewright: 1\nunits: in\nnodes:\n"
      "  - {name: port-spare, kind: static-port, at: [190, -9, 11]}\n";
  test::write(project.file("more/ports.yaml"), loose_port);
  EXPECT_TRUE(program.says("port-spare")) << program.said();
  test::write(project.file("more/ports.yaml"), "linewright: 1\nunits: in\n");
  EXPECT_TRUE(program.says(": 1 gone\n")) << program.said();
}

TEST(Watch, TakesInMeshes) {
  const StarterCopy project;
  const std::string triangle =
      "facet normal 0 0 0\nouter loop\nvertex 0 90 90\nvertex 1 90 90\nvertex 0 91 90\n"
      "endloop\nendfacet\n";
  test::write(project.file("far.stl"), "solid far\n" + triangle + "endsolid far\n");
  project.edit("structure.yaml", "structure:\n",
               "structure:\n  meshes:\n    - {name: far, file: far.stl, units: in, "
               "crease_angle: 30, thickness: 0}\n");
  WatchedProgram program({project.root()});
  ASSERT_TRUE(program.says("airworthy: ")) << program.said();

  test::write(project.file("far.stl"), "solid far\nnonsense\n");
  EXPECT_TRUE(program.says("far.stl")) << program.said();
  EXPECT_TRUE(program.says("nothing was judged")) << program.said();
  test::write(project.file("far.stl"), "solid far\n" + triangle + "endsolid far\n");
  EXPECT_TRUE(program.says(": nothing changed\n")) << program.said();
}

TEST(Watch, EndsWithTheCodeOfTheLastCheck) {
  const StarterCopy project;
  WatchedProgram passing({project.root()});
  ASSERT_TRUE(passing.says("airworthy: ")) << passing.said();
  EXPECT_EQ(passing.code_after(SIGTERM), 0);

  WatchedProgram failing({project.root()});
  ASSERT_TRUE(failing.says("airworthy: ")) << failing.said();
  project.bend_too_tightly();
  ASSERT_TRUE(failing.says("1 failed, 0 unknown")) << failing.said();
  EXPECT_EQ(failing.code_after(SIGINT), 1);

  WatchedProgram wrong({project.root()});
  ASSERT_TRUE(wrong.says("airworthy: ")) << wrong.said();
  test::write(project.file("static.yaml"), "linewright: 2\n");
  ASSERT_TRUE(wrong.says("nothing was judged")) << wrong.said();
  EXPECT_EQ(wrong.code_after(SIGINT), 2);
}

TEST(Watch, SaysALineOfJsonForEachCheck) {
  const StarterCopy project;
  project.bend_too_tightly();
  WatchedProgram program({project.root(), "--format", "json", "--quiet"});
  ASSERT_TRUE(program.says("\n")) << program.said();
  project.edit("static.yaml", tight_bend, wide_bend);
  ASSERT_TRUE(program.says("\n")) << program.said();
  EXPECT_EQ(program.code_after(SIGINT), 0);

  const std::vector<std::string> lines = test::lines_of(program.said());
  ASSERT_EQ(lines.size(), 2u) << program.said();
  const auto first = nlohmann::json::parse(lines[0]);
  EXPECT_EQ(first["judged"], true);
  EXPECT_EQ(first["summary"]["fail"], 1);
  ASSERT_EQ(first["changes"].size(), 1u);
  EXPECT_EQ(first["changes"][0]["change"], "new");
  EXPECT_EQ(first["changes"][0]["check"]["rule"], "bend-radius");
  EXPECT_EQ(first["changes"][0]["was"], nullptr);
  const auto second = nlohmann::json::parse(lines[1]);
  ASSERT_EQ(second["changes"].size(), 1u);
  EXPECT_EQ(second["changes"][0]["change"], "passes");
  EXPECT_EQ(second["changes"][0]["check"]["verdict"], "pass");
  EXPECT_EQ(second["changes"][0]["was"]["verdict"], "fail");
}

TEST(Watch, ASaveThatCannotBeJudgedIsALineOfJsonToo) {
  const StarterCopy project;
  project.edit("static.yaml", wide_bend, "[142, 0, 18], bned: 1 1/4");
  WatchedProgram program({project.root(), "--format", "json"});
  EXPECT_TRUE(program.says("did you mean 'bend'?")) << program.said();
  EXPECT_TRUE(program.says("\"judged\":false")) << program.said();
}

TEST(Watch, WillNotBeginWithoutAProjectOrWithWrongWords) {
  const StarterCopy project;
  const auto expect_refused = [](const std::vector<std::string>& words, const std::string& part) {
    const test::CommandRun refused = run(words);
    EXPECT_EQ(refused.code, 2);
    EXPECT_EQ(refused.out, "");
    EXPECT_TRUE(contains(refused.err, part)) << refused.err;
  };
  expect_refused({"watch", project.file("nowhere")}, "there is no such file");
  expect_refused({"watch", ""}, "the path of the project is empty");
  expect_refused({"watch", project.root(), "--rule", "chaff"}, "did you mean 'chafe'?");
  expect_refused({"watch", project.root(), "--format", "csv"}, "--format takes text, json");
  expect_refused({"watch", project.root(), "--output", "out.txt"}, "unknown option '--output'");
}

}  // namespace
}  // namespace linewright
