#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "input/project_folder.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;
using test::StarterCopy;

/// A clamp fewer leaves more free length than common practice allows: a warning, nothing worse.
void take_the_clamp_away(const StarterCopy& project) {
  project.edit("static.yaml", "      - {spaced: 12 1/2, hold: clamp, to: C1}\n", "");
}

void waive_the_bend(const StarterCopy& project) {
  project.edit(
      "static.yaml", "nodes:\n",
      "waivers:\n  - {rule: bend-radius, route: static-altimeter, reason: \"measured round "
      "after bending\"}\nnodes:\n");
}

/// A line of the builder's own whose spacing of supports nobody states.
void use_a_line_without_spacing(const StarterCopy& project) {
  project.edit("static.yaml", "nodes:\n",
               "lines:\n"
               "  - {name: tube-soft, kind: plastic-tube, material: nylon, outside: 0.25, "
               "inside: 0.17, minimum_bend_radius: 1, source: the maker's data sheet}\nnodes:\n");
  project.edit("static.yaml", "    line: tube-nylon-1/4\n    from: tee-drain\n    to: drain\n",
               "    line: tube-soft\n    from: tee-drain\n    to: drain\n");
}

/// A project of one file in which a slip is wrong in so many places.
std::string wrong_in_many_places(int places) {
  std::string text = "linewright: 1\nname: many\nunits: in\nnodes:\n";
  for (int i = 0; i < places; ++i)
    text += "  - {name: n" + std::to_string(i) + ", kind: teee, at: [0, 0, 0]}\n";
  return text;
}

TEST(CheckCommand, OfManyErrorsTheFirstTwentyAreShownAndAllAreCounted) {
  const test::TempFolder folder;
  for (const auto& [places, words] :
       {std::pair{1, "linewright: 1 error in the project's files; nothing was judged\n"},
        std::pair{20, "linewright: 20 errors in the project's files;"},
        std::pair{21, "linewright: 21 errors, the first 20 of them shown, in the project's files;"},
        std::pair{1500, "linewright: more than 1000 errors, the first 20 of them shown, in"}}) {
    test::write(folder / "project.yaml", wrong_in_many_places(places));
    const CommandRun result = run({"check", folder / "project.yaml"});
    EXPECT_EQ(result.code, 2);
    EXPECT_TRUE(contains(result.err, words)) << test::lines_of(result.err).back();
    std::size_t shown = 0;
    for (const std::string& line : test::lines_of(result.err)) shown += contains(line, ": error: ");
    EXPECT_EQ(shown, static_cast<std::size_t>(std::min(places, 20)));
  }
}

TEST(CheckCommand, ErrorsOfALinkedProjectNameFilesThatAreThere) {
  const StarterCopy project;
  project.edit("static.yaml", "kind: drain,", "kind: drainn,");
  const test::TempFolder elsewhere;
  std::filesystem::create_symlink(project.file("project.yaml"), elsewhere / "link.yaml");
  std::filesystem::create_directory_symlink(project.root(), elsewhere / "linked");
  for (const std::string& path : {elsewhere / "link.yaml", elsewhere / "linked"}) {
    const std::string told = run({"check", path}).err;
    const std::string named = told.substr(0, told.find(':'));
    EXPECT_TRUE(std::filesystem::exists(named)) << told;
    EXPECT_TRUE(named.ends_with("static.yaml")) << told;
  }
}

TEST(CheckCommand, TheStarterProjectIsClean) {
  const StarterCopy project;
  const CommandRun result = run({"check", project.root(), "--strict"});
  EXPECT_EQ(result.code, 0) << result.out;
  EXPECT_EQ(result.err, "");
  EXPECT_TRUE(contains(result.out, "5 routes: "));
  EXPECT_TRUE(contains(result.out, " 0 warnings, 0 failed, 0 unknown, 0 waived"));
}

TEST(CheckCommand, AProjectFileAndItsFolderAreTheSame) {
  const StarterCopy project;
  EXPECT_EQ(run({"check", project.file("project.yaml")}).out, run({"check", project.root()}).out);
}

TEST(CheckCommand, AFailGivesOneWhateverTheFormat) {
  const StarterCopy project;
  project.bend_too_tightly();
  EXPECT_EQ(run({"check", project.root()}).code, 1);
  EXPECT_EQ(run({"check", project.root(), "--format", "json"}).code, 1);
  EXPECT_EQ(run({"check", project.root(), "--quiet"}).code, 1);
}

const std::string without_routes =
    "linewright: 1\nname: bare\nunits: in\nbuild_tolerance: 0.06\n"
    "temperature: {min: 70 degF, rigged: 70 degF, max: 70 degF}\n"
    "load_factor: {positive: 3.8, negative: -1.5}\n";

// Silence about a project that holds nothing is no pass.
TEST(CheckCommand, NothingJudgedGivesOne) {
  const ProjectFolder folder;
  folder.write("project.yaml", without_routes);
  const CommandRun text = run({"check", folder.path().string()});
  EXPECT_EQ(text.code, 1) << text.out << text.err;
  EXPECT_TRUE(contains(text.out, "nothing was judged")) << text.out;
  const CommandRun data = run({"check", folder.path().string(), "--format", "json"});
  EXPECT_EQ(data.code, 1);
  EXPECT_TRUE(contains(json::parse(data.out).at("notes").at(0), "nothing was judged"));
}

TEST(CheckCommand, ARuleThatHasNothingToJudgeSaysSo) {
  const StarterCopy project;
  const CommandRun result = run({"check", project.root(), "--rule", "slack"});
  EXPECT_EQ(result.code, 0);
  EXPECT_TRUE(contains(result.out, "slack has nothing to judge in this project")) << result.out;
}

TEST(CheckCommand, AWarningGivesOneOnlyWhenStrict) {
  const StarterCopy project;
  take_the_clamp_away(project);
  const std::vector<std::string> words = {"check", project.root(), "--rule", "support-spacing"};
  const CommandRun lax = run(words);
  EXPECT_EQ(lax.code, 0) << lax.out;
  EXPECT_TRUE(contains(lax.out, "1 warning, 0 failed")) << lax.out;
  std::vector<std::string> strict = words;
  strict.push_back("--strict");
  EXPECT_EQ(run(strict).code, 1);
}

TEST(CheckCommand, AnUnknownIsNeverAPass) {
  const StarterCopy project;
  use_a_line_without_spacing(project);
  const CommandRun result = run({"check", project.root(), "--rule", "support-spacing"});
  EXPECT_EQ(result.code, 1) << result.out << result.err;
  EXPECT_TRUE(contains(result.out, "1 unknown")) << result.out;
}

TEST(CheckCommand, AWaivedFailPassesAndStaysVisible) {
  const StarterCopy project;
  project.bend_too_tightly();
  waive_the_bend(project);
  const CommandRun result = run({"check", project.root(), "--rule", "bend-radius"});
  EXPECT_EQ(result.code, 0) << result.out << result.err;
  EXPECT_TRUE(contains(result.out, "measured round after bending (was fail)")) << result.out;
  const json report =
      json::parse(run({"check", project.root(), "--rule", "bend-radius", "--format", "json"}).out);
  EXPECT_EQ(report["summary"]["waived"], 1);
  const auto waived = std::find_if(report["checks"].begin(), report["checks"].end(),
                                   [](const json& check) { return check["verdict"] == "waived"; });
  ASSERT_NE(waived, report["checks"].end());
  EXPECT_EQ((*waived)["was"], "fail");
  EXPECT_EQ((*waived)["waived_reason"], "measured round after bending");
}

TEST(CheckCommand, BadInputShowsAllErrorsAndNoResult) {
  const StarterCopy project;
  project.edit("static.yaml", "system: static\n    line: tube-nylon-1/4\n    from: port-left",
               "system: static\n    line: tube-nylon-1/4\n    form: port-left");
  project.edit("structure.yaml", "station: 166", "station: aft");
  for (const std::string format : {"text", "json"}) {
    const CommandRun result = run({"check", project.root(), "--format", format});
    EXPECT_EQ(result.code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_TRUE(contains(result.err, project.file("static.yaml:")));
    EXPECT_TRUE(contains(result.err, project.file("structure.yaml:")));
    EXPECT_TRUE(contains(result.err, "did you mean 'from'?")) << result.err;
  }
}

TEST(CheckCommand, AMissingProjectIsBadInput) {
  const test::TempFolder folder;
  const CommandRun result = run({"check", folder / "nowhere"});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, "nowhere")) << result.err;
}

TEST(CheckCommand, FiltersMustNameSomething) {
  const StarterCopy project;
  const CommandRun rule = run({"check", project.root(), "--rule", "bend-radios"});
  EXPECT_EQ(rule.code, 2);
  EXPECT_TRUE(contains(rule.err, "no rule is called 'bend-radios'; did you mean 'bend-radius'?"));
  const CommandRun route = run({"check", project.root(), "--route", "static-lfet"});
  EXPECT_EQ(route.code, 2);
  EXPECT_TRUE(contains(route.err, "no route is called 'static-lfet'; did you mean 'static-left'?"));
  EXPECT_EQ(run({"check", project.root(), "--rule", ""}).code, 2);
  EXPECT_EQ(run({"check", project.root(), "--route="}).code, 2);
}

TEST(CheckCommand, FiltersNarrowWhatIsJudged) {
  const StarterCopy project;
  const json report = json::parse(run({"check", project.root(), "--rule", "bend-radius", "--route",
                                       "static-left", "--format", "json"})
                                      .out);
  ASSERT_FALSE(report["checks"].empty());
  for (const json& check : report["checks"]) {
    EXPECT_EQ(check["rule"], "bend-radius");
    EXPECT_EQ(check["route"], "static-left");
  }
  ASSERT_EQ(report["routes"].size(), 1u);
  EXPECT_EQ(report["routes"][0]["name"], "static-left");
}

TEST(CheckCommand, JsonHoldsEveryPromisedKey) {
  const StarterCopy project;
  project.bend_too_tightly();
  const json report = json::parse(run({"check", project.root(), "--format", "json"}).out);
  EXPECT_EQ(report["linewright"]["format"], 1);
  EXPECT_TRUE(report["linewright"]["version"].is_string());
  EXPECT_EQ(report["project"]["name"], "example tail cone");
  EXPECT_TRUE(report["assumptions"].is_array());
  for (const char* key : {"pass", "warn", "fail", "unknown", "waived"})
    EXPECT_TRUE(report["summary"][key].is_number_integer()) << key;
  int judged = 0;
  for (const json& count : report["summary"]) judged += count.get<int>();
  EXPECT_EQ(static_cast<std::size_t>(judged), report["checks"].size());
  EXPECT_GT(judged, 20);
  ASSERT_EQ(report["routes"].size(), 5u);
  for (const json& check : report["checks"]) {
    for (const char* key :
         {"rule", "verdict", "route", "with", "at", "distance_in", "value", "limit", "unit",
          "margin", "message", "source", "mend", "location", "waived_reason", "was"})
      EXPECT_TRUE(check.contains(key)) << key;
    for (const char* key : {"file", "line", "column"})
      EXPECT_TRUE(check["location"].contains(key)) << key;
    if (!check["at"].is_null()) {
      for (const char* key : {"fs", "bl", "wl"}) EXPECT_TRUE(check["at"][key].is_number()) << key;
    }
  }
}

TEST(CheckCommand, JsonStaysInInchesWhateverTheUnit) {
  const StarterCopy project;
  project.bend_too_tightly();
  const std::vector<std::string> words = {"check", project.root(), "--format", "json"};
  std::vector<std::string> metric = words;
  metric.insert(metric.end(), {"--units", "mm"});
  EXPECT_EQ(run(metric).out, run(words).out);
  EXPECT_NE(run({"check", project.root(), "--units", "mm"}).out,
            run({"check", project.root()}).out);
}

TEST(CheckCommand, TextKeepsToEightyColumnsButForItsFirstLines) {
  const StarterCopy project;
  project.bend_too_tightly();
  take_the_clamp_away(project);
  std::size_t longest = 0;
  for (const std::string& line : test::lines_of(run({"check", project.root(), "--verbose"}).out)) {
    if (line.starts_with("static.yaml:") || line.starts_with("structure.yaml:")) continue;
    EXPECT_LE(columns_of(line), text_columns) << line;
    longest = std::max<std::size_t>(longest, columns_of(line));
  }
  EXPECT_GT(longest, text_columns - 10u);
}

TEST(CheckCommand, VerboseShowsWhatPassed) {
  const StarterCopy project;
  EXPECT_FALSE(contains(run({"check", project.root()}).out, ": pass: "));
  EXPECT_TRUE(contains(run({"check", project.root(), "--verbose"}).out, ": pass: bend-radius: "));
}

TEST(CheckCommand, TheSameProjectGivesTheSameBytes) {
  const StarterCopy first;
  const StarterCopy second;
  for (const StarterCopy* project : {&first, &second}) {
    project->bend_too_tightly();
    take_the_clamp_away(*project);
  }
  for (const std::string format : {"text", "json"}) {
    const std::string once = run({"check", first.root(), "--format", format}).out;
    EXPECT_EQ(run({"check", first.root(), "--format", format}).out, once);
    EXPECT_EQ(run({"check", second.root(), "--format", format}).out, once);
  }
}

TEST(CheckCommand, ColourComesWhenAskedForAndOnlyInText) {
  const StarterCopy project;
  project.bend_too_tightly();
  EXPECT_FALSE(contains(run({"check", project.root()}).out, "\x1b["));
  EXPECT_TRUE(contains(run({"check", project.root(), "--color", "always"}).out, "\x1b["));
  EXPECT_FALSE(contains(run({"check", project.root(), "--color", "never"}).out, "\x1b["));
  EXPECT_FALSE(contains(run({"check", project.root(), "--color", "always", "--format", "json"}).out,
                        "\x1b["));
}

TEST(CheckCommand, SaysWhatItTookForAPilotsForce) {
  const test::TempFolder folder;
  const auto assumptions = [&](const std::string& more) {
    test::write(folder / "project.yaml",
                "linewright: 1\nname: a\nunits: in\nnodes:\n  - {name: a, kind: pedal, at: [0, 0, "
                "0]}\n  - {name: b, kind: horn, at: [50, 0, 0]}\nroutes:\n  - {name: left, system: "
                "cable, control: rudder, line: cable-7x19-1/8-steel, from: a, to: b, points: []" +
                    more + "}\n");
    const std::string out = run({"check", folder / "project.yaml", "--format", "json"}).out;
    return json::parse(out).at("assumptions").dump();
  };
  EXPECT_TRUE(contains(assumptions(", lever_ratio: 1.4"),
                       "pilot_force is not stated for left: 200 lbf at the rudder pedal was taken, "
                       "the most of 14 CFR 23.397(b)"));
  EXPECT_FALSE(contains(assumptions(", lever_ratio: 1.4, pilot_force: 160 lbf"), "pilot_force"));
  EXPECT_FALSE(contains(assumptions(""), "pilot_force"));
  EXPECT_TRUE(contains(assumptions(", lever_ratio: 1.4"),
                       "dual_controls is not stated: one pilot was taken to pull on left"));
  EXPECT_FALSE(contains(assumptions(""), "dual_controls"));
}

TEST(CheckCommand, SaysWhichCablesItTookToBeAlone) {
  const test::TempFolder folder;
  const auto assumptions = [&](const std::string& keys) {
    test::write(folder / "project.yaml",
                "linewright: 1\nname: a\nunits: in\nnodes:\n  - {name: a, kind: pedal, at: [0, 0, "
                "0]}\n  - {name: b, kind: horn, at: [50, 0, 0]}\nroutes:\n  - {name: left, system: "
                "cable, line: cable-7x19-1/8-steel, from: a, to: b, tension: {rigged: 40 lbf}" +
                    keys + "}\n");
    const std::string out = run({"check", folder / "project.yaml", "--format", "json"}).out;
    return json::parse(out).at("assumptions").dump();
  };
  const std::string said = "control is not stated for left";
  EXPECT_TRUE(contains(assumptions(""), said));
  EXPECT_FALSE(contains(assumptions(", control: rudder"), said));
  EXPECT_FALSE(contains(assumptions(", primary: false"), said));
}

}  // namespace
}  // namespace linewright
