// `close-up`: what comes before each closure, and a circle that must be solved.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;

const std::string mended = LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml";

const json& closure(const json& plan, const std::string& name) {
  for (const json& each : plan.at("closures"))
    if (each.at("name") == name) return each;
  throw std::runtime_error("no closure " + name);
}

TEST(CloseUpCommand, ListsWhatTheDeckPutsOutOfReach) {
  const test::CommandRun run = test::run({"close-up", mended, "--format", "json"});
  ASSERT_EQ(run.code, 0) << run.err;
  const json plan = json::parse(run.out);
  EXPECT_EQ(plan.at("order"), (json{"belly", "deck"}));
  EXPECT_TRUE(plan.at("circles").empty());
  const json& deck = closure(plan, "deck");
  EXPECT_EQ(deck.at("tests"), json{"static"});
  bool task = false;
  for (const json& item : deck.at("before")) {
    EXPECT_FALSE(item.at("reached_now_by").is_null()) << item;
    EXPECT_FALSE(item.at("why").get<std::string>().empty());
    task = task || item.at("name") == "T198-anchor-bolt";
  }
  EXPECT_TRUE(task);
}

// The rows of `parts --by closure`, each under its closure.
TEST(CloseUpCommand, HasInHandWhatIsNeededBeforeEachClosure) {
  const json plan = json::parse(test::run({"close-up", mended, "--format", "json"}).out);
  const json parts =
      json::parse(test::run({"parts", mended, "--by", "closure", "--format", "json"}).out);
  std::size_t rows = 0;
  for (const json& part : parts.at("parts")) {
    if (part.at("needed_before").is_null()) continue;
    ++rows;
    const json& in_hand = closure(plan, part.at("needed_before")).at("in_hand");
    EXPECT_NE(std::find(in_hand.begin(), in_hand.end(), part), in_hand.end()) << part;
  }
  EXPECT_GT(rows, 0u);
}

TEST(CloseUpCommand, FailsOnACircleAndNamesIt) {
  const test::TempFolder folder;
  test::write(folder / "project.yaml",
              "linewright: 1\nname: ring\nstructure:\n  panels:\n"
              "    - {name: top, corners: [[0, 0, 9], [9, 0, 9], [9, 9, 9]]}\n"
              "    - {name: side, corners: [[0, 0, 0], [9, 0, 0], [9, 0, 9]]}\n"
              "closures:\n  - {name: a, covers: [top], after: [b]}\n"
              "  - {name: b, covers: [side], after: [a]}\n");
  const test::CommandRun text = test::run({"close-up", folder.path().string()});
  EXPECT_EQ(text.code, 1);
  EXPECT_TRUE(test::contains(text.out, "A circle: a, then b, then a again.")) << text.out;
  const json plan =
      json::parse(test::run({"close-up", folder.path().string(), "--format", "json"}).out);
  EXPECT_EQ(plan.at("circles"), json::array({json::array({"a", "b"})}));
}

}  // namespace
}  // namespace linewright
