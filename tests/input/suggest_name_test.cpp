#include "input/suggest_name.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace linewright {
namespace {

const std::vector<std::string> rule_names = {"bend-radius", "clearance", "chafe", "lag", "slack"};

TEST(SuggestName, OneLetterWrongMissingOrTooMany) {
  EXPECT_EQ(suggest_name("clearence", rule_names), "did you mean 'clearance'?");
  EXPECT_EQ(suggest_name("clearanc", rule_names), "did you mean 'clearance'?");
  EXPECT_EQ(suggest_name("clearrance", rule_names), "did you mean 'clearance'?");
}

TEST(SuggestName, SwappedNeighboursCountOne) {
  EXPECT_EQ(suggest_name("chaef", rule_names), "did you mean 'chafe'?");
  EXPECT_EQ(suggest_name("lga", rule_names), "did you mean 'lag'?");
}

TEST(SuggestName, LetterCaseAndSeparatorsAreSlips) {
  EXPECT_EQ(suggest_name("CLEARANCE", rule_names), "did you mean 'clearance'?");
  EXPECT_EQ(suggest_name("bend_radius", rule_names), "did you mean 'bend-radius'?");
  EXPECT_EQ(suggest_name("bendradius", rule_names), "did you mean 'bend-radius'?");
}

TEST(SuggestName, UnlikeWordsGetNoSuggestion) {
  EXPECT_EQ(suggest_name("temperature", rule_names), "");
  EXPECT_EQ(suggest_name("x", rule_names), "");
  EXPECT_EQ(suggest_name("gal", rule_names), "");  // two edits in three letters
  EXPECT_EQ(suggest_name("", rule_names), "");
  EXPECT_EQ(suggest_name("chafe", {}), "");
}

TEST(SuggestName, OneLetterWordsAreNeverGuessed) {
  EXPECT_EQ(suggest_name("x", {"y", "z"}), "");
}

TEST(SuggestName, TheNearestWinsAndTheFirstOfEquals) {
  EXPECT_EQ(suggest_name("frame-3", {"frame-12", "frame-4", "frame-5"}), "did you mean 'frame-4'?");
  EXPECT_EQ(suggest_name("static-lefr", {"static-right", "static-left"}),
            "did you mean 'static-left'?");
}

TEST(SuggestName, AnotherSizeIsNeverOffered) {
  EXPECT_EQ(suggest_name("tube-aluminium-5/32", {"tube-aluminium-5/16"}), "");
  EXPECT_EQ(suggest_name("wire-0.25", {"wire-1/2"}), "");
  EXPECT_EQ(suggest_name("tube-alumnium-1/4", {"tube-aluminium-1/4"}),
            "did you mean 'tube-aluminium-1/4'?");
}

TEST(SuggestName, AChangedLetterInAShortWordIsAnotherWord) {
  EXPECT_EQ(suggest_name("cm", {"in", "mm"}), "");
  EXPECT_EQ(suggest_name("MM", {"in", "mm"}), "did you mean 'mm'?");
  EXPECT_EQ(suggest_name("lb", {"lbf", "kgf"}), "did you mean 'lbf'?");
}

TEST(SuggestName, AKnownNameNeedsNoSuggestion) {
  EXPECT_EQ(suggest_name("slack", rule_names), "");
  EXPECT_EQ(suggest_name("slack", {"slack1", "slack"}), "");
}

TEST(SuggestName, OfAFewChoicesThatWhichIsPartOfTheWordIsMeant) {
  const std::vector<std::string> systems{"static", "pitot", "cable", "rod", "push-pull"};
  EXPECT_EQ(suggest_choice("pushrod", systems), "did you mean 'rod'?");
  EXPECT_EQ(suggest_choice("Control Cable", systems), "did you mean 'cable'?");
  EXPECT_EQ(suggest_choice("cabel", systems), "did you mean 'cable'?");
  EXPECT_EQ(suggest_choice("pitot-static", systems), "");
  EXPECT_EQ(suggest_choice("hydraulic", systems), "");
}

TEST(SuggestName, AHugeWordCostsNothing) {
  EXPECT_EQ(suggest_name(std::string(20'000'000, 'a'), rule_names), "");
  EXPECT_EQ(suggest_name("slck", {std::string(20'000'000, 'a'), "slack"}), "did you mean 'slack'?");
}

}  // namespace
}  // namespace linewright
