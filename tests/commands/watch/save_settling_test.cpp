#include "commands/watch/save_settling.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

using std::chrono::milliseconds;

SaveSettling::Time at(int ms) {
  return SaveSettling::Time() + milliseconds(ms);
}

TEST(Concerns, AFileItselfAndTheFoldersAboveIt) {
  EXPECT_TRUE(concerns("/plane/static.yaml", "/plane/static.yaml"));
  EXPECT_TRUE(concerns("/plane", "/plane/static.yaml"));
  EXPECT_TRUE(concerns("", "/plane/static.yaml"));
}

TEST(Concerns, NoOtherFile) {
  EXPECT_FALSE(concerns("/plane/static.yaml~", "/plane/static.yaml"));
  EXPECT_FALSE(concerns("/plane/static", "/plane/static.yaml"));
  EXPECT_FALSE(concerns("/plane/other.yaml", "/plane/static.yaml"));
  EXPECT_FALSE(concerns("/plane/static.yaml/deeper", "/plane/static.yaml"));
}

TEST(SaveSettling, NothingIsOverBeforeItBegins) {
  EXPECT_EQ(SaveSettling().over_at(), std::nullopt);
}

TEST(SaveSettling, AWholeFileIsOverAfterAShortQuiet) {
  SaveSettling save;
  save.note("a", FileSign::complete, at(100));
  EXPECT_EQ(save.over_at(), at(100) + SaveSettling::quiet);
  save.note("b", FileSign::touched, at(105));
  EXPECT_EQ(save.over_at(), at(105) + SaveSettling::quiet);
}

TEST(SaveSettling, AFileThatWentAwayIsWaitedForUntilItIsBack) {
  SaveSettling save;
  save.note("a", FileSign::begun, at(100));
  EXPECT_EQ(save.over_at(), at(100) + SaveSettling::patience);
  save.note("b", FileSign::complete, at(140));
  EXPECT_EQ(save.over_at(), at(140) + SaveSettling::patience);
  save.note("a", FileSign::touched, at(145));
  EXPECT_EQ(save.over_at(), at(145) + SaveSettling::patience);
  save.note("a", FileSign::complete, at(150));
  EXPECT_EQ(save.over_at(), at(150) + SaveSettling::quiet);
}

TEST(SaveSettling, AFileWrittenToWithoutEndIsLookedAtAllTheSame) {
  SaveSettling save;
  for (int ms = 0; ms < 5000; ms += 5) save.note("a", FileSign::begun, at(ms));
  EXPECT_EQ(save.over_at(), at(0) + SaveSettling::longest);
}

}  // namespace
}  // namespace linewright
