// The worked examples: each says word for word what its folder expects, with the figures its README
// works out by hand, and passes once mended.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "demo/program_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

struct Example {
  std::string folder;
  std::string rule;
  double value;
  double limit;
  double tolerance;  ///< the README's last figure
};

std::ostream& operator<<(std::ostream& stream, const Example& example) {
  return stream << example.folder;
}

class WorkedExample : public testing::TestWithParam<Example> {
 protected:
  std::string path(const std::string& file) const { return "examples/" + GetParam().folder + file; }
};

TEST_P(WorkedExample, SaysWhatItsFolderExpects) {
  const ProgramRun run = run_program("check " + path(""));
  EXPECT_EQ(run.exit_status, 1);
  const std::string expected =
      text_of(std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / path("/expected.txt"));
  ASSERT_FALSE(expected.empty());
  EXPECT_EQ(run.output, expected);
}

TEST_P(WorkedExample, HasTheOneFaultWorkedOutByHand) {
  std::vector<json> faults;
  const json report = check_as_json(path("/project.yaml"));
  for (const json& check : report.at("checks"))
    if (check.at("verdict") != "pass") faults.push_back(check);
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults.front().at("verdict"), "fail");
  EXPECT_EQ(faults.front().at("rule"), GetParam().rule);
  EXPECT_NEAR(faults.front().at("value").get<double>(), GetParam().value, GetParam().tolerance);
  EXPECT_NEAR(faults.front().at("limit").get<double>(), GetParam().limit, GetParam().tolerance);
}

TEST_P(WorkedExample, PassesOnceMended) {
  const ProgramRun run = run_program("check --strict " + path("/mended.yaml"));
  EXPECT_EQ(run.exit_status, 0) << run.output;
}

INSTANTIATE_TEST_SUITE_P(
    Examples, WorkedExample,
    testing::Values(Example{"tight-bend", "bend-radius", 0.5, 0.5625, 1e-9},
                    Example{"clamp-spacing", "support-spacing", 14.0, 13.5, 1e-9},
                    Example{"chafe-near-a-channel", "chafe", 0.40, 0.5916, 1e-4},
                    Example{"frame-hole", "frame-crossing", 0.300, 0.375, 1e-6},
                    Example{"as-built", "clearance", 0.215, 0.25, 1e-6},
                    Example{"mesh-bracket", "chafe", 0.075, 0.1669, 1e-4}),
    [](const testing::TestParamInfo<Example>& each) {
      std::string name = each.param.folder;
      std::erase(name, '-');
      return name;
    });

TEST(WorkedExamples, AreAllListedHere) {
  std::size_t folders = 0;
  for (const auto& entry : std::filesystem::directory_iterator(
           std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / "examples"))
    folders += std::filesystem::exists(entry.path() / "project.yaml") ? 1 : 0;
  EXPECT_EQ(folders, 6u);
}

}  // namespace
}  // namespace linewright
