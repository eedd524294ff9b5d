#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;
using test::StarterCopy;

const std::string tight = "routes.static-altimeter.points.1.bend=0.5";

TEST(CompareCommand, AProjectWithAChangeThatBreaksALimitIsWorse) {
  const StarterCopy project;
  const CommandRun result = run({"compare", project.root(), "--set", tight});
  EXPECT_EQ(result.code, 1) << result.err;
  EXPECT_TRUE(contains(result.out, "static-altimeter: new, passed before"));
  EXPECT_TRUE(contains(result.out, "fail: bend-radius"));
  EXPECT_TRUE(
      contains(result.out, "B as if the files said:\n  - " + tight.substr(0, tight.find('='))));
  for (const std::string& line : test::lines_of(result.out))
    EXPECT_LE(columns_of(line), text_columns) << line;
}

TEST(CompareCommand, AProjectThatMendsWhatTheOtherFailsIsNot) {
  const StarterCopy good;
  const StarterCopy bad;
  bad.bend_too_tightly();
  const CommandRun mended = run({"compare", bad.root(), good.root()});
  EXPECT_EQ(mended.code, 0) << mended.out;
  EXPECT_TRUE(contains(mended.out, "static-altimeter: passes now, was fail"));
  EXPECT_EQ(run({"compare", good.root(), bad.root()}).code, 1);
}

TEST(CompareCommand, AFailThatBothHaveIsNoReasonToFail) {
  const StarterCopy project;
  project.bend_too_tightly();
  const CommandRun result = run({"compare", project.root(), "--set", "name=the same again"});
  EXPECT_EQ(result.code, 0) << result.out;
  EXPECT_TRUE(contains(result.out, "From A to B: nothing changed"));
  EXPECT_TRUE(contains(result.out, "Every line has the same length, volume and mass in both."));
}

// Another line: what is bought of the one is gone, and of the other new.
TEST(CompareCommand, ListsPartsLostAndGained) {
  const StarterCopy project;
  const std::vector<std::string> words{"compare", project.root(), "--set",
                                       "routes.static-altimeter.line=tube-aluminium-1/4"};
  std::vector<std::string> as_json = words;
  as_json.insert(as_json.end(), {"--format", "json"});
  const json compared = json::parse(run(as_json).out);
  ASSERT_FALSE(compared["parts"].empty());
  bool gained = false;
  for (const json& part : compared["parts"]) {
    EXPECT_NE(part["a"], part["b"]) << part;
    gained = gained || (part["item"] == "tube" && part["size"] == "tube-aluminium-1/4" &&
                        part["a"].is_null() && part["b"] > 0);
  }
  EXPECT_TRUE(gained) << compared["parts"];
  EXPECT_TRUE(contains(run(words).out, "Parts to buy"));
}

TEST(CompareCommand, ListsNoPartsWhereTheSameAreBought) {
  const StarterCopy project;
  const CommandRun result =
      run({"compare", project.root(), "--format", "json", "--set", "name=the same again"});
  EXPECT_TRUE(json::parse(result.out)["parts"].empty());
}

TEST(CompareCommand, LaysLengthsAndVolumesSideBySide) {
  const StarterCopy project;
  const CommandRun result = run({"compare", project.root(), "--format", "json", "--set",
                                 "routes.static-altimeter.line=tube-aluminium-1/4"});
  const json compared = json::parse(result.out);
  ASSERT_EQ(compared["routes"].size(), 5u);
  const json& changed = compared["routes"][3];
  EXPECT_EQ(changed["name"], "static-altimeter");
  EXPECT_EQ(changed["a"]["line"], "tube-nylon-1/4");
  EXPECT_EQ(changed["b"]["line"], "tube-aluminium-1/4");
  // The way is the same, the bore is not.
  EXPECT_EQ(changed["a"]["length_in"], changed["b"]["length_in"]);
  EXPECT_NE(changed["a"]["volume_in3"], changed["b"]["volume_in3"]);
  EXPECT_EQ(compared["routes"][1]["a"], compared["routes"][1]["b"]);
  const json& system = compared["systems"][0];
  EXPECT_NEAR(system["b"]["volume_in3"].get<double>() - system["a"]["volume_in3"].get<double>(),
              changed["b"]["volume_in3"].get<double>() - changed["a"]["volume_in3"].get<double>(),
              1e-9);
  EXPECT_EQ(compared["b"]["set"].size(), 1u);
  EXPECT_EQ(compared["a"]["set"].size(), 0u);
  EXPECT_EQ(compared["worse"], result.code == 1);
  EXPECT_TRUE(compared.contains("changes"));
}

TEST(CompareCommand, ARouteThatOnlyOneHasIsShownOnItsSide) {
  const StarterCopy whole;
  const StarterCopy less;
  less.edit("static.yaml", "  - name: static-left\n", "  - name: static-port\n");
  const json compared =
      json::parse(run({"compare", whole.root(), less.root(), "--format", "json"}).out);
  ASSERT_EQ(compared["routes"].size(), 6u);
  EXPECT_EQ(compared["routes"][0]["name"], "static-port");
  EXPECT_TRUE(compared["routes"][0]["a"].is_null());
  EXPECT_EQ(compared["routes"][5]["name"], "static-left");
  EXPECT_TRUE(compared["routes"][5]["b"].is_null());
}

TEST(CompareCommand, NeedsSomethingToCompareWith) {
  const StarterCopy project;
  const CommandRun result = run({"compare", project.root()});
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err, "nothing to compare: give a second project, or a change"));
}

TEST(CompareCommand, AProjectThatCannotBeReadIsRefused) {
  const StarterCopy project;
  const CommandRun result = run({"compare", project.root(), project.file("missing.yaml")});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, "missing.yaml"));
}

}  // namespace
}  // namespace linewright
