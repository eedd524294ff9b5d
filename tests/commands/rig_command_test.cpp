#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;

/// Two cables, one of which is known by its line alone, and a tube.
class RigCommand : public testing::Test {
 protected:
  RigCommand() {
    test::write(project(),
                "linewright: 1\nname: rigged\n"
                "temperature: {min: 0 degF, rigged: 70 degF, max: 100 degF}\n"
                "load_factor: {positive: 3.8, negative: -1.5}\n"
                "build_tolerance: 0\n"
                "excitation: {propeller_rpm: [600, 2700], blades: 2}\n"
                "nodes:\n"
                "  - {name: pedal, kind: pedal, at: [0, 0, 0]}\n"
                "  - {name: horn, kind: horn, at: [150, 0, 0]}\n"
                "  - {name: lever, kind: pedal, at: [0, 5, 0]}\n"
                "  - {name: trim-horn, kind: horn, at: [150, 5, 0]}\n"
                "  - {name: port, kind: static-port, at: [0, 9, 0]}\n"
                "  - {name: altimeter, kind: instrument, at: [20, 9, 0], volume: 6 in3}\n"
                "routes:\n"
                "  - name: rudder\n"
                "    system: cable\n"
                "    control: rudder\n"
                "    line: cable-7x19-1/8-steel\n"
                "    from: pedal\n"
                "    to: horn\n"
                "    tension: {rigged: 40 lbf, limit_load: 200 lbf}\n"
                "    travel: {forward: 2.1, aft: 2.1}\n"
                "    points:\n"
                "      - {at: [30, 0, 0], hold: fairlead}\n"
                "      - {at: [90, 0, 0], hold: fairlead}\n"
                "  - name: trim\n"
                "    system: cable\n"
                "    control: trim\n"
                "    line: cable-7x7-1/16-steel\n"
                "    from: lever\n"
                "    to: trim-horn\n"
                "  - {name: static, system: static, line: tube-nylon-1/4, from: port, to: "
                "altimeter}\n");
  }

  std::string project() const { return folder_ / "project.yaml"; }
  CommandRun rig(std::vector<std::string> words) const {
    words.insert(words.begin(), {"rig", project()});
    return run(words);
  }

 private:
  test::TempFolder folder_;
};

std::vector<std::string> keys_of(const json& object) {
  std::vector<std::string> keys;
  for (const auto& [key, value] : object.items()) keys.push_back(key);
  return keys;
}

TEST_F(RigCommand, JsonHasTheKeysOfTheContract) {
  const CommandRun result = rig({"--format", "json"});
  EXPECT_EQ(result.code, 0);
  EXPECT_EQ(result.err, "");
  const json all = json::parse(result.out);
  ASSERT_EQ(all["cables"].size(), 2u);
  for (const json& cable : all["cables"]) {
    for (const char* key : {"name", "length_in", "tension", "stretch_at_limit_load_in",
                            "friction_lbf", "spans", "missing"})
      EXPECT_TRUE(cable.contains(key)) << key;
    ASSERT_FALSE(cable["tension"].empty());
    for (const json& row : cable["tension"]) {
      EXPECT_TRUE(row["temperature_degF"].is_number());
      EXPECT_TRUE(row.contains("tension_lbf"));
    }
    ASSERT_FALSE(cable["spans"].empty());
    for (const json& span : cable["spans"])
      for (const char* key : {"from_in", "to_in", "sag_in", "natural_frequency_hz"})
        EXPECT_TRUE(span.contains(key)) << key;
  }
}

TEST_F(RigCommand, JsonHoldsTheWorkedFigures) {
  // 150 in at 200 lbf stretches 0.2688 in [verified, secondary: maker's stretch table]; 60 in of
  // 2.90 lb per 100 ft [from memory] at 40 lbf sags w L²/8T = 0.0271875 in.
  const json rudder = json::parse(rig({"--format", "json"}).out)["cables"][0];
  EXPECT_EQ(rudder["name"], "rudder");
  EXPECT_EQ(rudder["control"], "rudder");
  EXPECT_EQ(rudder["length_in"], 150);
  EXPECT_EQ(rudder["cut_length_in"], nullptr);
  EXPECT_NEAR(rudder["stretch_at_limit_load_in"], 0.2688, 1e-9);
  EXPECT_NEAR(rudder["strength_factor"], 10, 1e-12);
  EXPECT_EQ(rudder["friction_lbf"], 0);
  EXPECT_EQ(rudder["missing"], json::array());
  ASSERT_EQ(rudder["spans"].size(), 3u);
  const json& middle = rudder["spans"][1];
  EXPECT_EQ(middle["from_in"], 30);
  EXPECT_EQ(middle["to_in"], 90);
  EXPECT_NEAR(middle["sag_in"], 0.0271875, 1e-9);
  EXPECT_EQ(middle["from"], "fairlead");
  EXPECT_EQ(keys_of(middle["excited_at"][0]),
            (std::vector<std::string>{"in_range", "propeller_rpm", "times_per_turn"}));
  ASSERT_EQ(rudder["tension"].size(), 11u);
  EXPECT_EQ(rudder["tension"][0]["temperature_degF"], 0);
  EXPECT_EQ(rudder["tension"][7]["tension_lbf"], 40);
  EXPECT_EQ(rudder["tension"][7]["as_rigged"], true);
}

TEST_F(RigCommand, WhatIsNotKnownIsNullNamedAndNoFailure) {
  const json trim = json::parse(rig({"--format", "json"}).out)["cables"][1];
  EXPECT_EQ(trim["missing"], (json{"its tension as rigged (tension.rigged)",
                                   "its limit load (tension.limit_load)", "its travel (travel)"}));
  for (const char* key : {"friction_lbf", "stretch_at_limit_load_in", "travel_lost_in",
                          "strength_factor", "rigged_tension_lbf"})
    EXPECT_EQ(trim[key], nullptr) << key;
  EXPECT_EQ(trim["tension"][0]["tension_lbf"], nullptr);
  EXPECT_EQ(trim["spans"][0]["sag_in"], nullptr);
  EXPECT_EQ(trim["spans"][0]["natural_frequency_hz"], nullptr);
}

TEST_F(RigCommand, TextFitsTheTerminalAndSaysWhatItRestsOn) {
  for (const char* unit : {"in", "mm"}) {
    const CommandRun result = rig({"--units", unit});
    EXPECT_EQ(result.code, 0);
    for (const std::string& line : test::lines_of(result.out))
      EXPECT_LE(columns_of(line), text_columns) << line;
    for (const char* part :
         {"rudder: cable-7x19-1/8-steel, from pedal to horn\n", "terminals not included",
          "       70 degF      40.0 lbf  ", " rigged\n", "10.00 times the limit load",
          "  not known: its tension as rigged (tension.rigged)\n", "an upper bound",
          "Coefficients are common practice, no source", "* Between idle and redline."})
      EXPECT_TRUE(contains(result.out, part)) << part << "\nis not in\n" << result.out;
  }
}

TEST_F(RigCommand, TextSaysWhereACableIsSlack) {
  // 70 degrees at 6.3e-6 · 111,607 lbf take 49.2 of the 40 lbf: 9.22 lbf of stretch too long.
  const CommandRun result = rig({"--route", "rudder"});
  EXPECT_TRUE(contains(result.out, "49.3 lbf or more keeps it taut at 0 degF")) << result.out;
  EXPECT_TRUE(contains(result.out, "        0 degF       0.0 lbf  slack: 0.012 in too long\n"))
      << result.out;
}

TEST_F(RigCommand, CsvHasAWholeRowForEachRecord) {
  const std::vector<std::string> lines = test::lines_of(rig({"--format", "csv"}).out);
  ASSERT_EQ(lines.size(), 1u + 2 * (1 + 11) + 3 + 1);
  const auto commas = std::count(lines[0].begin(), lines[0].end(), ',');
  EXPECT_TRUE(lines[0].starts_with("record,cable,line,control,from,to,length_in,"));
  for (const std::string& line : lines)
    if (!contains(line, "\"")) {
      EXPECT_EQ(std::count(line.begin(), line.end(), ','), commas) << line;
    }
  EXPECT_TRUE(
      lines[1].starts_with("cable,rudder,cable-7x19-1/8-steel,rudder,pedal,horn,150.0000,"));
  EXPECT_TRUE(lines[2].starts_with("tension,rudder,"));
  EXPECT_TRUE(lines[13].starts_with("span,rudder,"));
  EXPECT_TRUE(test::lines_of(rig({"--format", "csv", "--units", "mm"}).out)[0].starts_with(
      "record,cable,line,control,from,to,length_mm,"));
}

TEST_F(RigCommand, ShowsOneCableWhereItIsNamed) {
  const json all = json::parse(rig({"--format", "json", "--route", "trim"}).out);
  ASSERT_EQ(all["cables"].size(), 1u);
  EXPECT_EQ(all["cables"][0]["name"], "trim");
}

TEST_F(RigCommand, RefusesARouteThatIsNoCable) {
  const CommandRun misspelt = rig({"--route", "ruder"});
  EXPECT_EQ(misspelt.code, 2);
  EXPECT_EQ(misspelt.out, "");
  EXPECT_TRUE(contains(misspelt.err, "did you mean 'rudder'?")) << misspelt.err;
  const CommandRun tube = rig({"--route", "static"});
  EXPECT_EQ(tube.code, 2);
  EXPECT_TRUE(contains(tube.err, "route 'static' is no control cable")) << tube.err;
}

TEST(RigCommandAlone, OfAProjectWithoutCablesSaysSo) {
  const test::TempFolder folder;
  test::write(folder / "project.yaml", "linewright: 1\nname: none\n");
  const CommandRun result = run({"rig", folder / "project.yaml"});
  EXPECT_EQ(result.code, 0);
  EXPECT_EQ(result.out, "no control cables\n");
  EXPECT_EQ(json::parse(run({"rig", folder / "project.yaml", "--format", "json"}).out)["cables"],
            json::array());
}

}  // namespace
}  // namespace linewright
