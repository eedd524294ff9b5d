// What is told at once after a save, and what once everything is judged anew.

#include "commands/watch/telling.hpp"

#include <gtest/gtest.h>

#include <string>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using test::contains;

constexpr const char* wide_bend = "[142, 0, 18], bend: 1 1/4";
constexpr const char* tight_bend = "[142, 0, 18], bend: 0.5";

/// A starter project that is told of once.
class TellingOfStarter : public testing::Test {
 protected:
  void SetUp() override { ASSERT_EQ(telling.of(read()).code, ExitCode::nothing_failed); }

  OpenedProject read() const { return open_with_files(options.check.project); }

  static WatchOptions options_for(const std::string& project) {
    WatchOptions options;
    options.check.project = project;
    return options;
  }

  test::StarterCopy project;
  WatchOptions options = options_for(project.root());
  Telling telling{options, nullptr};
};

TEST_F(TellingOfStarter, TellsAtOnceWhatOneRouteChangesAndConfirmsIt) {
  project.edit("static.yaml", wide_bend, tight_bend);
  const OpenedProject opened = read();
  const auto at_once = telling.at_once(opened);
  ASSERT_TRUE(at_once);
  EXPECT_EQ(at_once->code, ExitCode::failed);
  EXPECT_TRUE(contains(at_once->result, ": 1 new\n")) << at_once->result;
  EXPECT_TRUE(contains(at_once->result, "static.yaml:")) << at_once->result;
  EXPECT_TRUE(at_once->result.ends_with("\nnot confirmed yet: everything is judged once more\n"));
  const Outcome all = telling.of(opened);
  EXPECT_EQ(all.code, ExitCode::failed);
  EXPECT_EQ(all.result, "confirmed\n");
  EXPECT_EQ(all.errors, "");
}

TEST_F(TellingOfStarter, TellsNothingAtOnceWhereMoreThanARouteChanged) {
  project.edit("project.yaml", "build_tolerance: 0.06", "build_tolerance: 0.05");
  const OpenedProject opened = read();
  ASSERT_TRUE(opened.project) << opened.project.error().errors;
  EXPECT_FALSE(telling.at_once(opened));
}

TEST_F(TellingOfStarter, TellsNothingAtOnceAfterAnError) {
  project.edit("static.yaml", wide_bend, "[142, 0, 18], bned: 1");
  const OpenedProject wrong = read();
  EXPECT_FALSE(telling.at_once(wrong));
  EXPECT_EQ(telling.of(wrong).code, ExitCode::bad_input);
  project.edit("static.yaml", "bned: 1", "bend: 1 1/4");
  const OpenedProject right = read();
  EXPECT_FALSE(telling.at_once(right));
  EXPECT_TRUE(contains(telling.of(right).result, ": nothing changed\n"));
}

// Whatever was told at once: what all is judged to be is told after it.
TEST_F(TellingOfStarter, SetsRightWhatWasToldAtOnce) {
  const OpenedProject wide = read();
  project.edit("static.yaml", wide_bend, tight_bend);
  const OpenedProject tight = read();
  const auto at_once = telling.at_once(wide);
  ASSERT_TRUE(at_once);
  EXPECT_TRUE(contains(at_once->result, ": nothing changed\n")) << at_once->result;
  const Outcome all = telling.of(tight);
  EXPECT_TRUE(contains(all.result, ": 1 new\n")) << all.result;
  EXPECT_TRUE(contains(all.errors, "the answer before this one was wrong")) << all.errors;
  EXPECT_EQ(all.code, ExitCode::failed);
}

// Whoever is told may look at the page: it is there by then.
TEST_F(TellingOfStarter, WhereAPageIsWrittenNothingIsToldBeforeIt) {
  options.report = std::filesystem::path(project.file("report.html"));
  Telling with_page(options, nullptr);
  with_page.of(read());
  project.edit("static.yaml", wide_bend, tight_bend);
  EXPECT_FALSE(with_page.at_once(read()));
}

// What reads the lines of JSON takes each for the answer.
TEST_F(TellingOfStarter, AsJsonNothingIsToldBeforeItIsConfirmed) {
  options.check.form.format = Format::json;
  project.edit("static.yaml", wide_bend, tight_bend);
  EXPECT_FALSE(telling.at_once(read()));
}

TEST_F(TellingOfStarter, OfOneRuleOrRouteNothingIsToldAtOnce) {
  options.check.only_rule = "bend-radius";
  Telling of_rule(options, nullptr);
  of_rule.of(read());
  project.edit("static.yaml", wide_bend, tight_bend);
  const OpenedProject opened = read();
  EXPECT_FALSE(of_rule.at_once(opened));
  EXPECT_TRUE(contains(of_rule.of(opened).result, ": 1 new\n"));
}

}  // namespace
}  // namespace linewright
