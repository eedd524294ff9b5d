#include "commands/still_working.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <string>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using namespace std::chrono_literals;

/// What was said, and how often.
struct Heard {
  std::mutex mutex;
  std::string text;
  std::atomic<int> times = 0;

  StillWorking::Say listener() {
    return [this](std::string_view words) {
      const std::lock_guard lock(mutex);
      text += words;
      ++times;
    };
  }
};

TEST(StillWorking, SaysNothingWhereTheWorkIsShort) {
  Heard heard;
  { const StillWorking working(heard.listener(), 1h, 1h); }
  EXPECT_EQ(heard.text, "");
}

TEST(StillWorking, SaysAgainAndAgainHowLongItTakesAndWipesThat) {
  Heard heard;
  {
    const StillWorking working(heard.listener(), 1ms, 1ms);
    while (heard.times < 3) std::this_thread::sleep_for(1ms);
  }
  EXPECT_TRUE(heard.text.starts_with("\rlinewright: working, 0 s\rlinewright: working, "))
      << heard.text;
  EXPECT_TRUE(heard.text.ends_with("\r" + std::string(40, ' ') + "\r")) << heard.text;
}

TEST(StillWorking, IsNotSaidWhereNoTerminalListens) {
  // Standard error of a test is a stream, and the program writes nothing to it.
  const test::CommandRun result =
      test::run({"check", LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml", "--quiet"});
  EXPECT_EQ(result.err, "");
}

}  // namespace
}  // namespace linewright
