// The README and the manual show what the program really says and the project file that they
// explain loads; the README lists every rule.

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "demo/program_run.hpp"

namespace linewright {
namespace {

const std::filesystem::path root = LINEWRIGHT_SOURCE_DIR;

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::string readme() {
  return text_of(root / "README.md");
}

/// The README and every page of the manual.
std::string all_pages() {
  std::string text = readme();
  for (const auto& page : std::filesystem::directory_iterator(root / "examples/manual"))
    text += text_of(page.path());
  return text;
}

/// What stands between each ```LANGUAGE line and its closing fence.
std::vector<std::string> blocks(const std::string& language) {
  const std::string text = all_pages();
  const std::string opening = "```" + language + "\n";
  std::vector<std::string> found;
  for (std::size_t at = text.find(opening); at != std::string::npos; at = text.find(opening, at)) {
    at += opening.size();
    found.push_back(text.substr(at, text.find("```\n", at) - at));
  }
  return found;
}

struct Session {
  std::string arguments;
  std::vector<std::string> excerpts;  ///< what is shown between lines of three dots
};

Session session(const std::string& block) {
  const std::string prompt = "$ linewright ";
  EXPECT_TRUE(block.starts_with(prompt)) << block;
  const std::size_t line_end = block.find('\n');
  Session shown{block.substr(prompt.size(), line_end - prompt.size()), {""}};
  std::istringstream rest(block.substr(line_end + 1));
  for (std::string line; std::getline(rest, line);) {
    if (line == "...")
      shown.excerpts.emplace_back();
    else
      shown.excerpts.back() += line + "\n";
  }
  return shown;
}

TEST(Readme, ShowsWhatTheProgramSays) {
  const std::vector<std::string> sessions = blocks("console");
  ASSERT_GE(sessions.size(), 12u);
  for (const std::string& block : sessions) {
    const Session shown = session(block);
    const std::string said = run_program(shown.arguments).output;
    std::size_t at = 0;
    for (const std::string& excerpt : shown.excerpts) {
      const std::size_t found = said.find(excerpt, at);
      ASSERT_NE(found, std::string::npos) << shown.arguments << " does not say\n"
                                          << excerpt << "but\n"
                                          << said;
      at = found + excerpt.size();
    }
    if (shown.excerpts.size() == 1) {
      EXPECT_EQ(said, shown.excerpts.front());
    }
  }
}

TEST(Readme, ListsEveryRuleWithItsPurpose) {
  const std::string text = readme();
  const nlohmann::json listing = nlohmann::json::parse(run_program("rules --format json").output);
  ASSERT_FALSE(listing.at("rules").empty());
  for (const nlohmann::json& rule : listing.at("rules")) {
    const std::string row = "| `" + rule.at("name").get<std::string>() + "` | " +
                            rule.at("purpose").get<std::string>() + " |";
    EXPECT_NE(text.find(row), std::string::npos) << row;
  }
}

TEST(Readme, StaysShort) {
  const std::string text = readme();
  EXPECT_LT(std::count(text.begin(), text.end(), '\n'), 300);
}

TEST(Readme, LinksToWhatIsThere) {
  for (const std::string folder : {"", "examples/manual"}) {
    for (const auto& page : std::filesystem::directory_iterator(root / folder)) {
      if (page.path().extension() != ".md") continue;
      const std::string text = text_of(page.path());
      for (std::size_t at = text.find("]("); at != std::string::npos; at = text.find("](", at)) {
        at += 2;
        const std::string target = text.substr(at, text.find(')', at) - at);
        if (target.starts_with("#")) continue;
        EXPECT_TRUE(exists(root / folder / target)) << page.path() << ": " << target;
      }
    }
  }
}

TEST(Readme, ShowsAProjectFileThatLoads) {
  std::vector<std::string> projects = blocks("yaml");
  std::erase_if(projects,
                [](const std::string& text) { return !text.starts_with("linewright: 1"); });
  ASSERT_EQ(projects.size(), 1u);
  const std::filesystem::path folder =
      std::filesystem::path(testing::TempDir()) / ("linewright_readme_" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "project.yaml", std::ios::binary) << projects.front();
  std::ofstream(folder / "wing.yaml", std::ios::binary) << "linewright: 1\n";
  const ProgramRun run = run_program("cutlist '" + folder.string() + "'");
  EXPECT_EQ(run.exit_status, 0) << run.output;
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace linewright
