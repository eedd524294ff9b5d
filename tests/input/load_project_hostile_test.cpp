// Files that are damaged, endless or sly: they are refused with a message, whatever they hold.

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <fstream>
#include <iterator>
#include <random>

#include "input/project_draft.hpp"
#include "input/project_files.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

namespace fs = std::filesystem;

const std::string head = "linewright: 1\nname: small\n";

std::string errors_of(const fs::path& path) {
  return shown(load_project(path, small_catalogue()).errors);
}

TEST(LoadProjectHostile, NamesAMissingFile) {
  const ProjectFolder folder;
  const fs::path missing = folder.path() / "absent.yaml";
  EXPECT_EQ(errors_of(missing), "absent.yaml:0:0: there is no such file\n");
}

TEST(LoadProjectHostile, SaysWhatAFolderWithoutAProjectLacks) {
  const ProjectFolder folder;
  EXPECT_EQ(errors_of(folder.path()),
            "project.yaml:0:0: there is no such file | a project's folder holds a "
            "'project.yaml'\n");
}

TEST(LoadProjectHostile, RefusesAPathThatIsEmptyOrHoldsNul) {
  const auto error = [](const std::string& path) {
    const LoadResult result = load_project(path, small_catalogue());
    EXPECT_FALSE(result.project.has_value());
    return result.errors.size() == 1 ? result.errors[0].message : "not one error";
  };
  EXPECT_EQ(error(""), "there is no such file");
  EXPECT_EQ(error(std::string("a\0b", 3)), "there is no such file: the name holds a NUL character");
}

TEST(LoadProjectHostile, DoesNotWaitForAPipe) {
  const ProjectFolder folder;
  ASSERT_EQ(mkfifo((folder.path() / "project.yaml").c_str(), 0600), 0);
  EXPECT_NE(errors_of(folder.path()).find("expected a regular file"), std::string::npos);
}

TEST(LoadProjectHostile, RefusesAnIncludeThatALinkLeadsOutside) {
  const ProjectFolder outside;
  outside.write("secret.yaml", "linewright: 1\n");
  const ProjectFolder folder;
  folder.write("project.yaml", head + "include: [inside.yaml, parts/secret.yaml]\n");
  fs::create_symlink(outside.path() / "secret.yaml", folder.path() / "inside.yaml");
  fs::create_directory_symlink(outside.path(), folder.path() / "parts");
  EXPECT_EQ(errors_of(folder.path()),
            "project.yaml:3:11: 'inside.yaml' is outside the project's folder\n"
            "project.yaml:3:24: 'parts/secret.yaml' is outside the project's folder\n");
}

TEST(LoadProjectHostile, RefusesAMeshThatALinkLeadsOutside) {
  const ProjectFolder outside;
  outside.write("skin.stl", "");
  const ProjectFolder folder;
  folder.write("project.yaml",
               head + "structure:\n  meshes:\n    - {name: skin, file: skin.stl, units: in}\n");
  fs::create_symlink(outside.path() / "skin.stl", folder.path() / "skin.stl");
  EXPECT_EQ(errors_of(folder.path()),
            "project.yaml:5:26: 'skin.stl' is outside the project's folder\n");
}

TEST(LoadProjectHostile, TakesALinkThatStaysInsideAsTheFileItLeadsTo) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + "include: [a.yaml, again.yaml]\n");
  folder.write("a.yaml", "linewright: 1\n");
  fs::create_symlink("a.yaml", folder.path() / "again.yaml");
  EXPECT_EQ(errors_of(folder.path()),
            "project.yaml:3:19: 'again.yaml' is included twice: first at project.yaml:3:11\n");
}

TEST(LoadProjectHostile, DoesNotTakeASiblingFolderOfLikeNameForItsOwn) {
  const ProjectFolder folder;
  folder.write("wing/project.yaml", head + "include: [../wing-2/a.yaml]\n");
  folder.write("wing-2/a.yaml", "linewright: 1\n");
  EXPECT_EQ(errors_of(folder.path() / "wing"),
            "project.yaml:3:11: '../wing-2/a.yaml' is outside the project's folder\n");
}

TEST(LoadProjectHostile, StopsAtItsLargestNumberOfFiles) {
  const ProjectFolder folder;
  std::string list;
  for (std::size_t i = 0; i < most_project_files; ++i) {
    const std::string name = "f" + std::to_string(i) + ".yaml";
    list += "  - " + name + "\n";
    folder.write(name, "linewright: 1\n");
  }
  folder.write("project.yaml", head + "include:\n" + list);
  EXPECT_EQ(errors_of(folder.path()), "project.yaml:259:5: a project can have 256 files at most\n");
}

TEST(LoadProjectHostile, StopsAtItsLargestNumberOfBytes) {
  const ProjectFolder folder;
  const std::string half(most_project_bytes / 2, '#');
  folder.write("project.yaml", head + "include: [a.yaml, b.yaml]\n");
  folder.write("a.yaml", "linewright: 1\n" + half);
  folder.write("b.yaml", "linewright: 1\n" + half);
  EXPECT_NE(errors_of(folder.path())
                .find("project.yaml:3:19: the project's files together are larger than"),
            std::string::npos);
}

TEST(LoadProjectHostile, RefusesNestingDeeperThanAnyProjectNeeds) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + "nodes: " + std::string(100'000, '['));
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_FALSE(result.errors.empty());
  EXPECT_EQ(result.errors[0].where.line, 3);
}

TEST(LoadProjectHostile, KeepsItsListOfErrorsShort) {
  const ProjectFolder folder;
  std::string items;
  for (int i = 0; i < 20'000; ++i) items += "x, ";
  folder.write("project.yaml", head + "nodes: [" + items + "x]\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(result.errors.size(), most_errors + 1);
  EXPECT_EQ(result.errors.back().message, "there are more errors: only the first 1000 are listed");
  EXPECT_EQ(result.errors.front().source_line, "");
}

TEST(LoadProjectHostile, KeepsMessagesReadableWhateverANameHolds) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + "\"\\e[2J" + std::string(500, 'k') + "\": 1\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(result.errors.size(), 1u);
  EXPECT_EQ(result.errors[0].message.find('\x1b'), std::string::npos);
  EXPECT_LT(result.errors[0].message.size(), 150u);
}

std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The text with one to four random changes: a byte replaced, removed or doubled, or two pieces
/// swapped.
std::string mutated(std::string text, std::mt19937& random) {
  const std::string telling = "{}[]:,-#&*!|>'\"%@`\n\t 0123456789.xe~\\\xFF";
  const auto below = [&random](std::size_t end) {
    return std::uniform_int_distribution<std::size_t>(0, end - 1)(random);
  };
  for (std::size_t changes = 1 + below(4); changes > 0; --changes) {
    const std::size_t at = below(text.size());
    switch (below(5)) {
      case 0:
        text[at] = static_cast<char>(below(256));
        break;
      case 1:
        text[at] = telling[below(telling.size())];
        break;
      case 2:
        text.erase(at, 1 + below(8));
        break;
      case 3:
        text.insert(at, text.substr(below(text.size()), 1 + below(40)));
        break;
      default:
        text.resize(at + 1);
        break;
    }
  }
  return text;
}

// A damaged project is either still a project or refused with reasons, each at a place in it.
TEST(LoadProjectHostile, SurvivesRandomDamage) {
  const fs::path example = fs::path(LINEWRIGHT_SOURCE_DIR) / "tests/input/fixtures/example";
  const std::vector<std::string> names{"project.yaml", "structure.yaml", "static.yaml",
                                       "rudder.yaml", "tailcone.stl"};
  std::vector<std::string> texts;
  const ProjectFolder folder;
  for (const std::string& name : names) {
    texts.push_back(bytes_of(example / name));
    folder.write(name, texts.back());
  }
  ASSERT_EQ(errors_of(folder.path()), "");
  std::mt19937 random(20260101);
  int refused = 0;
  for (int round = 0; round < 800; ++round) {
    const std::size_t which = static_cast<std::size_t>(round) % 4;
    folder.write(names[which], mutated(texts[which], random));
    const LoadResult result = load_project(folder.path(), small_catalogue());
    EXPECT_NE(result.project.has_value(), !result.errors.empty());
    for (const Diagnostic& error : result.errors) {
      EXPECT_FALSE(error.message.empty());
      EXPECT_GE(error.where.line, 0);
    }
    refused += result.errors.empty() ? 0 : 1;
    folder.write(names[which], texts[which]);
  }
  EXPECT_GT(refused, 400);
}

}  // namespace
}  // namespace linewright
