// What the commands print as JSON against the schemas that `schema --of` prints, by an independent
// validator: the demo, every worked example and every rule's examples.

#include "render/output_schemas.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>

#include "commands/command_run.hpp"
#include "commands/json_schema.hpp"
#include "one_case_in.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;
namespace fs = std::filesystem;

const std::string root = LINEWRIGHT_SOURCE_DIR;

const test::JsonSchema& schema_of(const std::string& command) {
  static std::map<std::string, test::JsonSchema> known;
  const auto found = known.find(command);
  if (found != known.end()) return found->second;
  const CommandRun printed = run({"schema", "--of", command});
  EXPECT_EQ(printed.code, 0) << printed.err;
  return known.try_emplace(command, json::parse(printed.out)).first->second;
}

/// Runs a command with JSON as its form; false where it refuses.
bool is_valid(std::vector<std::string> words) {
  const std::string command = words.front();
  words.insert(words.end(), {"--format", "json"});
  const CommandRun result = run(words);
  if (result.code == 2) return false;
  std::string shown;
  for (const std::string& word : words) shown += word + " ";
  EXPECT_EQ(schema_of(command).faults(json::parse(result.out)), "") << shown;
  return true;
}

std::vector<std::string> projects() {
  std::vector<std::string> all{root + "/routes/as-drawn.yaml", root + "/routes/mended.yaml"};
  for (const auto& entry : fs::recursive_directory_iterator(root + "/examples")) {
    const std::string name = entry.path().filename().string();
    if (name == "project.yaml" || name == "fails.yaml" || name == "passes.yaml")
      all.push_back(entry.path().string());
  }
  return all;
}

std::vector<std::string> leak_test(const std::string& action, const std::string& project,
                                   const std::string& system) {
  return {"leak-test", action,
          project,     "--system",
          system,      "--field-elevation",
          "1200",      "--altimeter-setting",
          "29.92",     "--temperature",
          "64"};
}

TEST(OutputSchemas, AreDraft7AndNameTheirCommand) {
  for (const EmbeddedSchema& each : embedded_schemas()) {
    const json schema = json::parse(each.text);
    EXPECT_EQ(schema.at("$schema"), "http://json-schema.org/draft-07/schema#") << each.name;
    const std::string command(each.name.substr(0, each.name.size() - 5));
    EXPECT_EQ(schema.at("title"), "linewright " + command + " --format json");
    EXPECT_EQ(schema.at("additionalProperties"), false);
  }
  EXPECT_GE(embedded_schemas().size(), 12u);
}

TEST(OutputSchemas, HoldForEveryProjectOfTheTree) {
  std::vector<std::vector<std::string>> asked;
  for (const std::string& project : projects()) {
    // Of a rule's examples those that fail have more to tell.
    if (project.ends_with("passes.yaml")) continue;
    for (const std::string command : {"check", "cutlist", "rig"})
      asked.push_back({command, project});
    if (project.ends_with("fails.yaml")) continue;
    for (const std::string command : {"schedule", "parts", "close-up", "suggest"})
      asked.push_back({command, project});
  }
  const std::vector<std::vector<std::string>> some = test::some_of(asked);
  const auto valid = static_cast<std::size_t>(std::count_if(some.begin(), some.end(), is_valid));
  // No rig of what has no cable, and no cut list of what has no line.
  EXPECT_GE(4 * valid, 3 * some.size());
  EXPECT_GE(valid * test::one_case_in(), 100u);
}

TEST(OutputSchemas, HoldForLeakTests) {
  int valid = 0;
  for (const std::string& project : projects())
    for (const std::string system : {"static", "pitot"})
      valid += is_valid(leak_test("plan", project, system)) ? 1 : 0;
  EXPECT_GE(valid, 10);
  for (const std::string log : {"tight", "leaking", "unsettled"}) {
    std::vector<std::string> words = leak_test("judge", root + "/routes/mended.yaml", "static");
    words.insert(words.end(), {"--readings", root + "/routes/leak-test-" + log + ".csv"});
    EXPECT_TRUE(is_valid(words));
  }
  std::vector<std::string> part = leak_test("plan", root + "/routes/mended.yaml", "static");
  part.insert(part.end(), {"--at", "tee-panel", "--cap", "tee-drain", "--syringe", "60 mL"});
  EXPECT_TRUE(is_valid(part));
}

TEST(OutputSchemas, HoldForWhatNeedsNoProject) {
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"rules"},
        {"catalogue"},
        {"catalogue", "elbow-1/4"},
        {"explain", "chafe"},
        {"explain", "bore"},
        {"explain", "keys"},
        {"compare", root + "/routes/as-drawn.yaml", root + "/routes/mended.yaml"},
        {"compare", root + "/routes/mended.yaml", "--set",
         "routes.static-left.line=tube-aluminium-1/4"}})
    EXPECT_TRUE(is_valid(words)) << words.back();
}

TEST(OutputSchemas, RefuseWhatLacksAKeyOrHasOneMore) {
  const json good =
      json::parse(run({"check", root + "/routes/mended.yaml", "--format", "json"}).out);
  const test::JsonSchema& schema = schema_of("check");
  json lacking = good;
  lacking["checks"][0].erase("margin");
  EXPECT_NE(schema.faults(lacking), "");
  json more = good;
  more["checks"][0]["colour"] = "red";
  EXPECT_NE(schema.faults(more), "");
  json another = good;
  another["checks"][0]["verdict"] = "perhaps";
  EXPECT_NE(schema.faults(another), "");
}

TEST(OutputSchemas, OfAnotherWordAreRefusedWithThoseThereAre) {
  const CommandRun result = run({"schema", "--of", "chekc"});
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err, "no JSON of a command is called 'chekc'")) << result.err;
  EXPECT_TRUE(contains(result.err, "check")) << result.err;
}

}  // namespace
}  // namespace linewright
