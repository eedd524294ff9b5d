// The same aeroplane gets the same answer from every rule in whatever unit and in however many
// files it is written.

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "rules/random_project.hpp"
#include "rules/rewritten_files.hpp"
#include "rules/same_judgements.hpp"

namespace linewright {
namespace {

constexpr int random_rounds = 3;

/// A project's files by name, the project file first.
using Files = std::vector<std::pair<std::string, std::string>>;

Files demo(const std::string& file) {
  Files files{{"project.yaml", file_text(demo_folder() / file)}};
  const std::string& text = files.front().second;
  const std::size_t begin = text.find("include: [") + 10;
  std::istringstream names(text.substr(begin, text.find(']', begin) - begin));
  for (std::string name; std::getline(names >> std::ws, name, ',');)
    files.emplace_back(name, file_text(demo_folder() / name));
  return files;
}

std::vector<Files> aeroplanes() {
  std::vector<Files> all{demo("as-drawn.yaml"), demo("mended.yaml")};
  oracles::Random random(83);
  for (int round = 0; round < random_rounds; ++round)
    all.push_back({{"project.yaml", RandomProject(random).sections({}).text()}});
  return all;
}

Answer answer(const ProjectFolder& folder) {
  return Answer(loaded_from(folder.path() / "project.yaml"));
}

Answer answer(const Files& files) {
  const ProjectFolder folder;
  for (const auto& [name, text] : files) folder.write(name, text);
  return answer(folder);
}

ProjectPieces pieces_of(const Files& files) {
  ProjectPieces pieces;
  for (const auto& [name, text] : files) pieces.add(text, name == "project.yaml");
  return pieces;
}

TEST(SameFiles, AnswerAlikeInMillimetres) {
  for (const Files& files : aeroplanes()) {
    Files rewritten = files;
    for (auto& [name, text] : rewritten) text = in_millimetres(text);
    ASSERT_NE(rewritten.front().second.find("units: mm"), std::string::npos);
    expect_the_same(answer(files), answer(rewritten));
  }
}

TEST(SameFiles, AnswerAlikeAllInOne) {
  for (const Files& files : aeroplanes())
    expect_the_same(answer(files), answer(Files{{"project.yaml", pieces_of(files).in_one()}}));
}

TEST(SameFiles, AnswerAlikeEachThingInAFileOfItsOwn) {
  for (const Files& files : aeroplanes()) {
    const ProjectFolder folder;
    pieces_of(files).write_apart(folder);
    expect_the_same(answer(files), answer(folder), {true, rounding_in, false});
  }
}

}  // namespace
}  // namespace linewright
