// `expand` writes a project as one file that says the same.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;

/// What is judged, without the places in files.
json judged(const std::string& project) {
  json report = json::parse(test::run({"check", project, "--format", "json"}).out);
  for (json& check : report.at("checks")) check.erase("location");
  return report.at("checks");
}

TEST(Expand, SaysTheSameOfTheDemoInOneFile) {
  for (const std::string name : {"as-drawn", "mended"}) {
    const std::string project = LINEWRIGHT_SOURCE_DIR "/routes/" + name + ".yaml";
    const test::TempFolder folder;
    const std::string whole = folder / "whole.yaml";
    ASSERT_EQ(test::run({"expand", project, "--output", whole}).code, 0);
    EXPECT_EQ(test::read(whole).find("include"), std::string::npos);
    EXPECT_TRUE(judged(whole) == judged(project)) << name;
  }
}

TEST(Expand, SaysTheSameAgainOfWhatItWrote) {
  const std::string project = LINEWRIGHT_SOURCE_DIR "/tests/input/fixtures/every-key";
  const test::TempFolder folder;
  const std::string once = test::run({"expand", project}).out;
  ASSERT_FALSE(once.empty());
  std::filesystem::copy(project + "/skin.stl", folder / "skin.stl");
  test::write(folder / "project.yaml", once);
  const std::string twice = test::run({"expand", folder.path().string()}).out;
  std::string without_comments;
  std::istringstream lines(once);
  // Ports follow from their fitting again.
  for (std::string line; std::getline(lines, line);)
    without_comments += line.find("  # ports in inches") != std::string::npos
                            ? line + "\n"
                            : line.substr(0, line.find("  # ")) + "\n";
  EXPECT_EQ(twice, without_comments);
}

TEST(Expand, KeepsEachFilesUnits) {
  const test::TempFolder folder;
  test::write(folder / "project.yaml",
              "linewright: 1\nname: a\nunits: in\ninclude: [b.yaml]\n"
              "nodes: [{name: n, kind: end, at: [1, 2, 3]}]\n");
  test::write(folder / "b.yaml",
              "linewright: 1\nunits: mm\n"
              "nodes: [{name: m, kind: tee, at: [25.4, 1 in, -2e1], volume: 16, mirror: k}, "
              "{name: v, kind: tee, at: [1, 2, 3], volume: 2 in3}]\n");
  EXPECT_EQ(
      test::run({"expand", folder.path().string()}).out,
      "linewright: 1\nunits: in\nname: a\nnodes:\n"
      "  - {name: n, kind: end, at: [1, 2, 3]}\n"
      "  - {name: m, kind: tee, at: [25.4 mm, 1 in, -2e1 mm], volume: 16 mm3}\n"
      "  - {name: k, kind: tee, at: [25.4 mm, -1 in, -2e1 mm], volume: 16 mm3}  # mirror image "
      "of m\n"
      "  - {name: v, kind: tee, at: [1 mm, 2 mm, 3 mm], volume: 2 in3}\n");
}

TEST(Expand, RefusesWhatCheckRefuses) {
  const test::TempFolder folder;
  test::write(folder / "project.yaml", "linewright: 1\nnodes: [{name: a}]\n");
  const test::CommandRun run = test::run({"expand", folder.path().string()});
  EXPECT_EQ(run.code, 2);
  EXPECT_EQ(run.out, "");
  EXPECT_NE(run.err.find("needs 'kind'"), std::string::npos) << run.err;
}

}  // namespace
}  // namespace linewright
