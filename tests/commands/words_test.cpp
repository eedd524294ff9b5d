#include "commands/words.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

bool colour(const std::string& flag, bool terminal, bool refused) {
  Words words;
  words.color = flag;
  const auto form = read_form(words, {"text"}, {terminal, refused});
  return form->style.colour;
}

TEST(Colour, FollowsTheTerminalUnlessRefused) {
  EXPECT_TRUE(colour("auto", true, false));
  EXPECT_FALSE(colour("auto", false, false));
  EXPECT_FALSE(colour("auto", true, true));
}

TEST(Colour, TheFlagWinsOverTheEnvironment) {
  EXPECT_TRUE(colour("always", false, true));
  EXPECT_FALSE(colour("never", true, false));
}

TEST(Form, JsonPhrasesInInches) {
  Words words;
  words.units = "mm";
  words.format = "json";
  const auto json = *read_form(words, {"text", "json"}, {});
  EXPECT_EQ(json.phrasing().unit, LengthUnit::inch);
  words.format = "text";
  const auto text = *read_form(words, {"text", "json"}, {});
  EXPECT_EQ(text.phrasing().unit, LengthUnit::millimetre);
}

TEST(UnknownOption, LooksAtNothingAfterTheDoubleDash) {
  EXPECT_EQ(unknown_option({"a", "--", "--what"}, {"--format"}), "");
  EXPECT_EQ(unknown_option({"-", "--format=json"}, {"--format"}), "");
  EXPECT_EQ(unknown_option({"--what", "--", "a"}, {"--format"}), "unknown option '--what'");
}

}  // namespace
}  // namespace linewright
