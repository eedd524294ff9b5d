#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using test::CommandRun;
using test::contains;
using test::run;
using test::TempFolder;
namespace fs = std::filesystem;

TEST(InitCommand, WritesItsFilesAndSaysWhatIsNext) {
  const TempFolder folder;
  const CommandRun result = run({"init", folder / "new/plane"});
  EXPECT_EQ(result.code, 0) << result.err;
  for (const char* name :
       {"project.yaml", "structure.yaml", "static.yaml", "linewright.schema.json"}) {
    EXPECT_TRUE(fs::exists(fs::path(folder / "new/plane") / name)) << name;
    EXPECT_TRUE(contains(result.out, name));
  }
  EXPECT_TRUE(contains(result.out, "linewright check"));
}

TEST(InitCommand, EveryFileTellsEditorsItsSchema) {
  const TempFolder folder;
  ASSERT_EQ(run({"init", folder / "plane"}).code, 0);
  for (const std::string name : {"project.yaml", "structure.yaml", "static.yaml"})
    EXPECT_TRUE(contains(test::read(folder / "plane/" + name),
                         "\n# yaml-language-server: $schema=linewright.schema.json\n"))
        << name;
  EXPECT_EQ(test::read(folder / "plane/linewright.schema.json"), run({"schema"}).out);
  EXPECT_EQ(run({"check", folder / "plane"}).code, 0);
}

// A beginner learns from these files how little has to be written down.
TEST(InitCommand, TheProjectIsWrittenInTheShortForms) {
  const test::StarterCopy project;
  const std::string text =
      test::read(project.file("structure.yaml")) + test::read(project.file("static.yaml"));
  for (const char* form :
       {"mirror: port-right", "mirror: static-right", "straight: true", "{through: F3-a}",
        "spaced: 12 1/2", "on: side-left", "fs: 190", "centre: {on: static-main}", "bend: 1 1/4"})
    EXPECT_TRUE(contains(text, form)) << form;
}

TEST(InitCommand, TheProjectInFullHasTheSameVerdicts) {
  const test::StarterCopy project;
  const auto checks_of = [](const std::string& path) {
    nlohmann::json checks =
        nlohmann::json::parse(run({"check", path, "--format", "json"}).out).at("checks");
    for (nlohmann::json& check : checks) check.erase("location");
    return checks;
  };
  const std::string full = project.file("in-full.yaml");
  ASSERT_EQ(run({"expand", project.root(), "--output", full}).code, 0);
  for (const char* form : {"mirror:", "straight:", "spaced:", " on:", "{on:"})
    EXPECT_FALSE(contains(test::read(full), form)) << form;
  EXPECT_EQ(checks_of(full), checks_of(project.root()));
}

// What only its builder knows: how fast it climbs, and what shakes it.
TEST(InitCommand, TheProjectLeavesToBeStatedWhatItCannotKnow) {
  const test::StarterCopy project;
  const std::string report = run({"check", project.root(), "--format", "json"}).out;
  EXPECT_EQ(nlohmann::json::parse(report).at("assumptions"),
            nlohmann::json::array(
                {"climb is not stated: whether instruments trail in a climb was not judged",
                 "excitation is not stated: whether spans swing with the propeller was not "
                 "judged",
                 "tees and unions that state no size: 2; they were taken as points",
                 "ports, probes, instruments, drains and valves that state no size: 4; they were "
                 "taken as points: what they fill is in the way only where it is drawn as a "
                 "solid"}));
}

TEST(InitCommand, FilesThatAreThereStayAndNothingIsAdded) {
  const TempFolder folder;
  test::write(folder / "static.yaml", "mine");
  const CommandRun result = run({"init", folder.path().string()});
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err, "static.yaml"));
  EXPECT_EQ(test::read(folder / "static.yaml"), "mine");
  EXPECT_FALSE(fs::exists(folder / "project.yaml"));
  EXPECT_FALSE(fs::exists(folder / "structure.yaml"));
}

TEST(InitCommand, AFileInPlaceOfTheFolderIsRefused) {
  const TempFolder folder;
  test::write(folder / "plane", "a file");
  EXPECT_EQ(run({"init", folder / "plane"}).code, 2);
  EXPECT_EQ(run({"init", folder / "plane/deeper"}).code, 2);
  EXPECT_EQ(test::read(folder / "plane"), "a file");
}

TEST(InitCommand, QuietSaysNothing) {
  const TempFolder folder;
  const CommandRun result = run({"init", folder / "plane", "--quiet"});
  EXPECT_EQ(result.code, 0);
  EXPECT_EQ(result.out + result.err, "");
}

}  // namespace
}  // namespace linewright
