// Each rule has a project that does not pass and one, a line away, that does; both say word for
// word what their folder expects, and `explain` shows it.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "commands/known_name.hpp"
#include "demo/program_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;

const std::filesystem::path rule_folders =
    std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / "examples/rules";

std::string rule_file(const std::string& rule, const std::string& file) {
  std::ifstream stream(rule_folders / rule / file, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// What `check` says by one rule: its judgements, or that it has nothing to judge.
std::string messages(const std::string& rule, const std::string& options) {
  const std::string silence = rule + " has nothing to judge in this project";
  std::string found;
  const std::string said = run_program("check --by route --rule " + rule + " " + options).output;
  bool within = false;
  for (const std::string& line : lines_of(said)) {
    if (line.find(silence) != std::string::npos) found += silence + "\n";
    if (line.empty()) {
      within = false;
      continue;
    }
    for (const char* verdict : {"pass", "warn", "fail", "unknown"}) {
      if (line.find(": " + std::string(verdict) + ": " + rule + ": ") == std::string::npos)
        continue;
      if (!found.empty()) found += "\n";
      within = true;
    }
    if (within) found += line + "\n";
  }
  return found;
}

std::string project_of(const std::string& rule, const std::string& file) {
  return "examples/rules/" + rule + "/" + file;
}

std::vector<json> judgements(const std::string& rule, const std::string& file) {
  const ProgramRun run =
      run_program("check --format json --rule " + rule + " " + project_of(rule, file));
  return json::parse(run.output).at("checks");
}

class RuleExample : public testing::TestWithParam<std::string> {};

TEST_P(RuleExample, DoesNotPassByItsRuleAndSaysWhy) {
  const std::vector<json> found = judgements(GetParam(), "fails.yaml");
  EXPECT_TRUE(std::any_of(found.begin(), found.end(),
                          [](const json& judgement) { return judgement.at("verdict") != "pass"; }));
  for (const json& judgement : found) EXPECT_EQ(judgement.at("rule"), GetParam());
  EXPECT_EQ(messages(GetParam(), project_of(GetParam(), "fails.yaml")),
            rule_file(GetParam(), "fails.txt"));
}

TEST_P(RuleExample, PassesByItsRuleAndSaysWhy) {
  const std::vector<json> found = judgements(GetParam(), "passes.yaml");
  for (const json& judgement : found) {
    EXPECT_EQ(judgement.at("rule"), GetParam());
    EXPECT_EQ(judgement.at("verdict"), "pass");
  }
  EXPECT_FALSE(found.empty());
  const std::string expected = rule_file(GetParam(), "passes.txt");
  EXPECT_FALSE(expected.empty());
  EXPECT_EQ(messages(GetParam(), "--verbose " + project_of(GetParam(), "passes.yaml")), expected);
}

TEST_P(RuleExample, DiffersFromItsOtherInOneLineWhichItsCommentNames) {
  const std::vector<std::string> fails = lines_of(rule_file(GetParam(), "fails.yaml"));
  const std::vector<std::string> passes = lines_of(rule_file(GetParam(), "passes.yaml"));
  ASSERT_FALSE(fails.empty());
  ASSERT_EQ(fails.size(), passes.size());
  EXPECT_LT(fails.size(), 40u);
  EXPECT_TRUE(fails.front().starts_with("# ")) << fails.front();
  EXPECT_TRUE(passes.front().starts_with("# ")) << passes.front();
  EXPECT_NE(fails.front(), passes.front());
  std::size_t different = 0;
  for (std::size_t i = 1; i < fails.size(); ++i) different += fails[i] != passes[i] ? 1 : 0;
  EXPECT_EQ(different, 1u);
}

/// The words alone: `explain` wraps the long lines of messages.
std::string words_of(const std::string& text) {
  std::istringstream stream(text);
  std::string words;
  for (std::string word; stream >> word;) words += word + " ";
  return words;
}

TEST_P(RuleExample, IsShownByExplain) {
  const std::string fails = rule_file(GetParam(), "fails.txt");
  const std::string passes = rule_file(GetParam(), "passes.txt");
  std::string manual = run_program("explain " + GetParam()).output;
  // What a key of the same name says comes after it, under its own heading.
  manual = manual.substr(0, manual.find("\n\n" + GetParam() + ": a key of project files\n"));
  const std::size_t section = manual.find("\nExamples\n");
  ASSERT_NE(section, std::string::npos);
  EXPECT_NE(words_of(manual.substr(section)).find(words_of(fails) + "But so: "), std::string::npos);
  const std::string last = words_of(manual.substr(manual.rfind("\n\n")));
  EXPECT_FALSE(last.empty());
  EXPECT_NE(words_of(passes).find(last), std::string::npos) << last;

  const json rule =
      json::parse(run_program("explain --format json " + GetParam()).output).at("rule");
  EXPECT_EQ(rule.at("examples").at("fails"), fails);
  EXPECT_EQ(rule.at("examples").at("passes"), passes);
}

INSTANTIATE_TEST_SUITE_P(EveryRule, RuleExample, testing::ValuesIn(rule_names()),
                         [](const testing::TestParamInfo<std::string>& each) {
                           std::string name = each.param;
                           std::erase(name, '-');
                           return name;
                         });

TEST(RuleExamples, AreOfRulesThatThereAre) {
  const std::vector<std::string> rules = rule_names();
  for (const auto& entry : std::filesystem::directory_iterator(rule_folders))
    EXPECT_NE(std::find(rules.begin(), rules.end(), entry.path().filename().string()), rules.end())
        << entry.path();
}

}  // namespace
}  // namespace linewright
