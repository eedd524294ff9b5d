#include <gtest/gtest.h>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

// Holding every place against every other would take 400 million comparisons of texts here, which
// ctest does not wait for where it is sanitized.
TEST(ManyFindings, OfOneKindAreFoldedWithoutASquare) {
  constexpr int count = 20'000;
  const test::TempFolder folder;
  std::string text = "linewright: 1\nname: many\nunits: in\nnodes:\n";
  for (int i = 0; i < count; ++i)
    text += "- {name: n" + std::to_string(i) + ", kind: tee, at: [0, 0, " +
            std::to_string(i % 100) + "]}\n";
  test::write(folder / "project.yaml", text);
  const test::CommandRun result = test::run({"check", folder / "project.yaml", "--verbose"});
  EXPECT_TRUE(test::contains(result.out, "n19999")) << result.err;
  EXPECT_TRUE(test::contains(result.out, std::to_string(count) + " warnings"));
}

}  // namespace
}  // namespace linewright
