#include <gtest/gtest.h>

#include <algorithm>
#include <cerrno>
#include <ostream>
#include <streambuf>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using test::CommandRun;
using test::contains;
using test::run;

/// As the program lists them.
std::vector<std::string> commands() {
  std::vector<std::string> names;
  bool listed = false;
  for (const std::string& line : test::lines_of(run({"--help"}).out)) {
    if (listed && line.starts_with("  ")) names.push_back(line.substr(2, line.find(' ', 2) - 2));
    if (line.empty()) listed = false;
    if (line == "Subcommands:") listed = true;
  }
  return names;
}

void expect_refused(const std::vector<std::string>& words, const std::string& part) {
  const CommandRun result = run(words);
  EXPECT_EQ(result.code, 2) << result.out;
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, part)) << result.err;
}

TEST(Usage, VersionAndHelpAreResults) {
  EXPECT_EQ(run({"--version"}).code, 0);
  EXPECT_TRUE(run({"--version"}).out.starts_with("linewright "));
  const CommandRun help = run({"--help"});
  EXPECT_EQ(help.code, 0);
  EXPECT_EQ(help.err, "");
  for (const std::string& line : test::lines_of(help.out))
    EXPECT_LE(columns_of(line), text_columns) << line;
  for (const std::string command : {"check", "watch", "cutlist", "schedule", "parts", "rules",
                                    "explain", "catalogue", "init", "compare", "walk-round", "draw",
                                    "report", "expand", "leak-test", "rig", "close-up", "schema"})
    EXPECT_EQ(std::ranges::count(commands(), command), 1) << command;
}

TEST(Usage, EveryCommandHasHelpWithAnExample) {
  for (const std::string& command : commands()) {
    const CommandRun help = run({command, "--help"});
    EXPECT_EQ(help.code, 0) << command;
    EXPECT_TRUE(contains(help.out, "Example: linewright " + command)) << help.out;
    EXPECT_EQ(run({command, "-h"}).out, help.out);
    for (const std::string& line : test::lines_of(help.out))
      EXPECT_LE(columns_of(line), text_columns) << line;
  }
}

TEST(Usage, NoCommandIsWrongUsage) {
  expect_refused({}, "no command is given");
}

TEST(Usage, MisspeltCommandsGetASuggestion) {
  expect_refused({"chekc", "."}, "no command is called 'chekc'; did you mean 'check'?");
  expect_refused({"catalog"}, "did you mean 'catalogue'?");
  expect_refused({"frobnicate"}, "no command is called 'frobnicate'");
}

TEST(Usage, MisspeltOptionsGetASuggestion) {
  expect_refused({"check", "--fromat", "json", "."}, "unknown option '--fromat'");
  expect_refused({"check", "--fromat", "json", "."}, "did you mean '--format'?");
  expect_refused({"check", "--stict=yes", "."}, "did you mean '--strict'?");
  expect_refused({"check", ".", "-x"}, "unknown option '-x'");
  expect_refused({"rules", "--strict"}, "unknown option '--strict'");
}

TEST(Usage, OptionsOfACommandComeAfterIt) {
  expect_refused({"--format", "json", "check", "."}, "come after it");
}

TEST(Usage, MisspeltValuesGetASuggestion) {
  expect_refused({"rules", "--format", "jsno"}, "--format takes text, json, not 'jsno'");
  expect_refused({"rules", "--format", "jsno"}, "did you mean 'json'?");
  expect_refused({"rules", "--format", "csv"}, "--format takes text, json, not 'csv'");
  expect_refused({"rules", "--color", "sometimes"}, "--color takes auto, always, never");
  expect_refused({"catalogue", "--units", "cm"}, "--units takes in, fraction, mm, not 'cm'");
}

TEST(Usage, MissingAndSurplusWordsAreRefused) {
  expect_refused({"check"}, "PROJECT");
  expect_refused({"explain"}, "WORD");
  expect_refused({"init"}, "DIR");
  expect_refused({"check", ".", "more"}, "more");
  expect_refused({"check", ".", "--rule"}, "--rule");
  expect_refused(
      {"rules", "--format", "json", "--format", "text"},
      "--format is given twice, and takes one value: run linewright rules once for each");
  expect_refused({"check", ".", "--rule=slack", "--rule", "lag", "--rule=lag"},
                 "--rule is given 3 times");
  expect_refused({"check", ".", "--set", "a=1", "--set", "a=2", "--rule", "slak"}, "project.yaml");
  expect_refused({"check", ""}, "the path of the project is empty");
  expect_refused({"init", ""}, "empty name");
}

TEST(Usage, AProjectMayBeNamedLikeACommand) {
  const test::TempFolder folder;
  ASSERT_EQ(run({"init", folder / "check"}).code, 0);
  EXPECT_EQ(run({"check", folder / "check"}).code, 0);
  expect_refused({"check", "cutlist"}, "cutlist");
}

/// Takes nothing, as a full disk or a closed pipe does.
class FullDevice : public std::streambuf {};

TEST(Usage, OutputThatCannotBeWrittenIsAnError) {
  FullDevice device;
  std::ostream out(&device);
  std::ostringstream err;
  const char* const words[] = {"linewright", "rules"};
  EXPECT_EQ(run_command_line(2, words, out, err), 2);
  EXPECT_TRUE(contains(err.str(), "could not be written"));
}

/// A pipe whose reader has gone away, as `head -1` does.
class ClosedPipe : public std::streambuf {
  int overflow(int) override {
    errno = EPIPE;
    return traits_type::eof();
  }
};

TEST(Usage, AReaderThatHasSeenEnoughIsNoError) {
  ClosedPipe pipe;
  std::ostream out(&pipe);
  std::ostringstream err;
  const char* const words[] = {"linewright", "rules"};
  EXPECT_EQ(run_command_line(2, words, out, err), 0);
  EXPECT_EQ(err.str(), "");
}

TEST(Usage, AReaderThatHasGoneKeepsTheVerdict) {
  const test::StarterCopy project;
  project.bend_too_tightly();
  ClosedPipe pipe;
  std::ostream out(&pipe);
  std::ostringstream err;
  const std::string root = project.root();
  const char* const words[] = {"linewright", "check", root.c_str()};
  EXPECT_EQ(run_command_line(3, words, out, err), 1);
  EXPECT_EQ(err.str(), "");
}

TEST(Usage, AnErrorOfTheProgramItselfIsCaughtAtTheEdge) {
  class Throwing : public std::streambuf {
    int overflow(int) override { throw std::runtime_error("device on fire"); }
  };
  Throwing device;
  std::ostream out(&device);
  out.exceptions(std::ios::badbit);
  std::ostringstream err;
  const char* const words[] = {"linewright", "rules"};
  EXPECT_EQ(run_command_line(2, words, out, err), 3);
  EXPECT_TRUE(contains(err.str(), "internal error: device on fire")) << err.str();
}

TEST(Usage, LeakTestSaysThatItsActionIsMissing) {
  expect_refused({"leak-test", "routes/mended.yaml"},
                 "'leak-test plan routes/mended.yaml' or 'leak-test judge routes/mended.yaml'");
  expect_refused({"leak-test", "a.yaml", "--system", "static"}, "needs to know what to do");
  expect_refused({"leak-test"}, "'leak-test plan PROJECT'");
  EXPECT_EQ(run({"leak-test", "--help"}).code, 0);
}

TEST(Usage, TheProjectThatIsMissingIsNamedOnce) {
  const test::TempFolder folder;
  const std::string root = folder / "routes";
  std::filesystem::create_directory(root);
  EXPECT_TRUE(run({"check", root}).err.starts_with(root + "/project.yaml: error: "));
  EXPECT_TRUE(run({"check", folder / "nope/x.yaml"})
                  .err.starts_with(folder / "nope/x.yaml: error: there is no such file"));
  EXPECT_TRUE(run({"check", folder / "nope/"})
                  .err.starts_with(folder / "nope/project.yaml: error: there is no such file"));
}

}  // namespace
}  // namespace linewright
