// `--set`: a change judged without an edit.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;
using test::StarterCopy;

TEST(SetOption, JudgesAsIfTheFilesSaidSo) {
  const StarterCopy project;
  const CommandRun result = run({"check", project.root(), "--rule", "bend-radius", "--set",
                                 "routes.static-altimeter.points.1.bend=0.5"});
  EXPECT_EQ(result.code, 1) << result.err;
  EXPECT_TRUE(contains(result.out, "fail: bend-radius"));
  EXPECT_TRUE(
      result.out.starts_with("Judged as if the files said:\n  - "
                             "routes.static-altimeter.points.1.bend: 0.5 (it is 1 1/4 at\n"
                             "    static.yaml:"))
      << result.out;
  EXPECT_EQ(run({"check", project.root()}).code, 0);
}

TEST(SetOption, IsTheSameAsAnEdit) {
  const StarterCopy project;
  const auto checks_of = [](const CommandRun& result) {
    json checks = json::parse(result.out)["checks"];
    // A value that was set does not stand where the edited one does.
    for (json& check : checks) check.erase("location");
    return checks;
  };
  const json set = checks_of(run({"check", project.root(), "--format", "json", "--set",
                                  "routes.static-altimeter.points.1.bend=0.5"}));
  project.bend_too_tightly();
  EXPECT_EQ(set, checks_of(run({"check", project.root(), "--format", "json"})));
}

TEST(SetOption, MayBeGivenMoreThanOnceAndBeforeTheProject) {
  const StarterCopy project;
  const CommandRun result = run({"check", "--set", "build_tolerance=0.03", "--set",
                                 "climb=500 ft/min", project.root(), "--format", "json"});
  const json set = json::parse(result.out)["set"];
  ASSERT_EQ(set.size(), 2u);
  EXPECT_EQ(set[0], (json{{"path", "build_tolerance"}, {"value", "0.03"}, {"was", "0.06"}}));
  EXPECT_EQ(set[1], (json{{"path", "climb"}, {"value", "500 ft/min"}, {"was", nullptr}}));
}

TEST(SetOption, AListIsTakenAsItIsWritten) {
  const StarterCopy project;
  const CommandRun result =
      run({"check", project.root(), "--format", "json", "--set", "nodes.drain.at=[120, 0, 3]"});
  EXPECT_EQ(json::parse(result.out)["set"][0]["value"], "[120, 0, 3]") << result.err;
}

TEST(SetOption, APathThatIsNotThereIsShownInTheOption) {
  const StarterCopy project;
  const CommandRun result =
      run({"check", project.root(), "--set", "routes.static-lft.line=tube-nylon-1/4"});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_EQ(result.err,
            "--set:1:8: error: 'routes' has no 'static-lft'\n"
            "  routes.static-lft.line=tube-nylon-1/4\n"
            "         ^\n"
            "help: did you mean 'static-left'?\n"
            "linewright: 1 error in the project with what is set; nothing was judged\n");
}

}  // namespace
}  // namespace linewright
