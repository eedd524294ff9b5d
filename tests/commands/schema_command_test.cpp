// `schema` by an independent validator, on projects that load and on broken ones.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <charconv>
#include <nlohmann/json.hpp>
#include <set>

#include "commands/command_run.hpp"
#include "commands/json_schema.hpp"
#include "input/keys.hpp"
#include "input/yaml_document.hpp"

namespace linewright {
namespace {

using nlohmann::json;
namespace fs = std::filesystem;

json printed_schema() {
  return json::parse(test::run({"schema"}).out);
}

json json_of_scalar(const YamlNode& node) {
  if (node.quoted) return node.text;
  if (node.text == "true" || node.text == "false") return node.text == "true";
  const char* begin = node.text.data();
  const char* end = begin + node.text.size();
  int whole = 0;
  if (std::from_chars(begin, end, whole).ptr == end) return whole;
  double number = 0;
  if (std::from_chars(begin, end, number).ptr == end) return number;
  return node.text;
}

json json_of(const YamlNode& node) {
  json list = json::array();
  json map = json::object();
  switch (node.kind) {
    case YamlNode::Kind::sequence:
      for (const YamlNode& item : node.items) list.push_back(json_of(item));
      return list;
    case YamlNode::Kind::map:
      for (const YamlEntry& entry : node.entries) map[entry.key] = json_of(entry.value);
      return map;
    case YamlNode::Kind::scalar:
      return json_of_scalar(node);
    case YamlNode::Kind::null:
    case YamlNode::Kind::unread:
      break;
  }
  return nullptr;
}

/// Holds project files against the printed schema.
class Validator {
 public:
  /// What is wrong with a file; empty where nothing is.
  std::string faults(const std::string& yaml) const {
    const YamlDocument document = read_yaml(yaml, "a.yaml");
    return document.errors.empty() ? schema_.faults(json_of(document.root)) : "no YAML";
  }

 private:
  test::JsonSchema schema_{printed_schema()};
};

TEST(SchemaCommand, PrintsDraft7WithADefinitionForEveryMap) {
  const json schema = printed_schema();
  EXPECT_EQ(schema.at("$schema"), "http://json-schema.org/draft-07/schema#");
  EXPECT_EQ(schema.at("definitions").size(), all_maps().size());
  std::set<std::string> titles;
  for (const json& definition : schema.at("definitions")) {
    EXPECT_EQ(definition.at("additionalProperties"), false);
    titles.insert(definition.at("title"));
  }
  for (const MapSpec* map : all_maps()) EXPECT_TRUE(titles.contains(std::string(map->name)));
}

TEST(SchemaCommand, HasEveryKeyWithWhatItSays) {
  const json schema = printed_schema();
  for (const MapSpec* map : all_maps())
    for (const json& definition : schema.at("definitions")) {
      if (definition.at("title") != map->name) continue;
      EXPECT_EQ(definition.at("properties").size(), map->keys.size()) << map->name;
      for (const KeySpec& key : map->keys)
        EXPECT_TRUE(definition.at("properties")
                        .at(std::string(key.name))
                        .at("description")
                        .get<std::string>()
                        .ends_with(key.says));
    }
}

TEST(SchemaCommand, TakesEveryFileThatLoads) {
  const Validator validator;
  const fs::path source = LINEWRIGHT_SOURCE_DIR;
  int files = 0;
  for (const auto* folder :
       {"routes", "examples", "tests/input/fixtures/every-key", "tests/input/fixtures/example"})
    for (const auto& entry : fs::recursive_directory_iterator(source / folder)) {
      if (entry.path().extension() != ".yaml") continue;
      EXPECT_EQ(validator.faults(test::read(entry.path())), "") << entry.path();
      ++files;
    }
  EXPECT_GE(files, 70);  // the demo, five examples, and two files a rule
}

const std::string head = "linewright: 1\nname: a\n";

TEST(SchemaCommand, TakesReferencesAndBothFormsOfASystem) {
  const Validator validator;
  const std::string route = "routes: [{{name: a, line: b, from: c, to: d, system: {}}}]\n";
  for (const std::string system : {"static", "'static: alternate'", "{static: alternate}"})
    EXPECT_EQ(validator.faults(head + fmt::format(fmt::runtime(route), system)), "") << system;
  const std::string frame =
      "structure: {{frames: [{{name: F, station: 1, thickness: 0.03, outline: [[0, 0], [1, 0], "
      "[0, 1 in]], holes: [{{name: h, diameter: 1/2 in, centre: {}}}]}}]}}\n";
  for (const std::string centre : {"[0.1, 0.1]", "{on: rudder}"})
    EXPECT_EQ(validator.faults(head + fmt::format(fmt::runtime(frame), centre)), "") << centre;
}

TEST(SchemaCommand, RefusesWhatTheLoaderRefuses) {
  const Validator validator;
  ASSERT_EQ(validator.faults(head), "");
  for (const std::string broken :
       {"colour: red\n", "units: cm\n", "build_tolerance: -0.1\n", "dual_controls: perhaps\n",
        "nodes: [{name: a}]\n", "nodes: [{name: a, kind: tee, at: [1, 2]}]\n",
        "temperature: {min: 10, max: 20}\n", "routes: {name: a}\n", "include: more.yaml\n",
        "routes: [{name: a, line: b, from: c, to: d, system: steam}]\n",
        "excitation: {propeller_rpm: [600, 2700], blades: 2.5}\n"})
    EXPECT_NE(validator.faults(head + broken), "") << broken;
  EXPECT_NE(validator.faults("linewright: 1\nbuild_tolerance: 0.1\n"), "") << "no name";
  EXPECT_NE(validator.faults("name: a\n"), "") << "no format";
}

}  // namespace
}  // namespace linewright
