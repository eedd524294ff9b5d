// The manual shows what `watch` really says of a save.

#include <gtest/gtest.h>

#include "commands/command_run.hpp"
#include "commands/watched_program.hpp"

namespace linewright {
namespace {

TEST(Manual, ShowsWhatWatchSaysOfASave) {
  const std::string page = test::read(LINEWRIGHT_SOURCE_DIR "/examples/manual/watching.md");
  const std::string after_time = ": 1 changed\n\nstatic-left: changed\n";
  const std::size_t start = page.find(after_time);
  ASSERT_NE(start, std::string::npos);
  const std::string shown = page.substr(start, page.find("```", start) - start);

  const test::TempFolder folder;
  std::filesystem::copy(LINEWRIGHT_SOURCE_DIR "/routes", folder / "routes");
  test::WatchedProgram program({folder / "routes/as-drawn.yaml", "--rule", "bend-radius"});
  ASSERT_TRUE(program.says("airworthy: ")) << program.said();
  const std::string file = folder / "routes/static-as-drawn.yaml";
  std::string text = test::read(file);
  const std::size_t bend = text.find("bend: 0.5}");
  ASSERT_NE(bend, std::string::npos);
  test::write(file, text.replace(bend, 9, "bend: 0.75"));
  EXPECT_TRUE(program.says(shown)) << program.said();
}

}  // namespace
}  // namespace linewright
