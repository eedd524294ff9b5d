// A function of a header, inline in two headers under one name, is one function to the linker: it
// takes either, and what is tested could be the test's own.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <sstream>
#include <string>

namespace linewright {
namespace {

/// Inline functions that stand at the left margin of the headers below a folder, and where each is.
std::map<std::string, std::string> inline_functions(const std::string& folder) {
  static const std::regex definition(
      R"(\n(?:inline|template <[^\n]*>\n(?:inline )?) ?[A-Za-z][\w:<>,*& ]*?\b(\w+)\()");
  std::map<std::string, std::string> found;
  const std::filesystem::path root = std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / folder;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root)) {
    if (entry.path().extension() != ".hpp") continue;
    std::stringstream text;
    text << std::ifstream(entry.path()).rdbuf();
    const std::string words = text.str();
    for (std::sregex_iterator it(words.begin(), words.end(), definition), end; it != end; ++it)
      found.emplace((*it)[1], entry.path().lexically_relative(root).string());
  }
  return found;
}

TEST(FunctionNames, OfTheTestsAreNoneOfTheProgram) {
  const auto of_program = inline_functions("src");
  const auto of_tests = inline_functions("tests");
  EXPECT_TRUE(of_program.contains("side_by_side"));
  EXPECT_TRUE(of_tests.contains("some_of"));
  EXPECT_GT(of_program.size(), 40u);
  EXPECT_GT(of_tests.size(), 200u);
  for (const auto& [name, header] : of_tests) {
    const auto same = of_program.find(name);
    EXPECT_TRUE(same == of_program.end())
        << name << " of tests/" << header << " is one of src/" << same->second << ", too";
  }
}

}  // namespace
}  // namespace linewright
