#include "render/diagnostic_text.hpp"

#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "input/utf8.hpp"

namespace linewright {
namespace {

Diagnostic at_column(int column, std::string source_line) {
  return {{"static.yaml", 14, column}, "expected a length", "", std::move(source_line)};
}

std::vector<std::string> lines_of(const Diagnostic& diagnostic) {
  std::istringstream stream(diagnostic_text(diagnostic, ""));
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// The character of the shown source line that the caret stands under, and how many stand before.
std::size_t caret_column(const std::vector<std::string>& lines) {
  return lines.at(2).find('^');
}

TEST(DiagnosticText, ShowsPlaceMessageSourceLineCaretAndHelp) {
  const Diagnostic diagnostic{{"static.yaml", 14, 9},
                              "unknown rule 'clearence'",
                              "did you mean 'clearance'?",
                              "  rule: clearence"};
  EXPECT_EQ(diagnostic_text(diagnostic, ""),
            "static.yaml:14:9: error: unknown rule 'clearence'\n"
            "    rule: clearence\n"
            "          ^\n"
            "help: did you mean 'clearance'?\n");
}

TEST(DiagnosticText, ThePrefixStandsBeforeTheFileName) {
  EXPECT_TRUE(
      diagnostic_text(at_column(1, "x"), "routes/").starts_with("routes/static.yaml:14:1:"));
}

TEST(DiagnosticText, AnErrorOfTheWholeFileHasNoPlace) {
  const Diagnostic diagnostic{{"static.yaml", 0, 0}, "the file is empty", "", ""};
  EXPECT_EQ(diagnostic_text(diagnostic, "demo/"), "demo/static.yaml: error: the file is empty\n");
}

TEST(DiagnosticText, WithoutASourceLineThereIsNoCaret) {
  EXPECT_EQ(diagnostic_text(at_column(9, ""), ""), "static.yaml:14:9: error: expected a length\n");
}

TEST(DiagnosticText, WithoutAColumnTheLineIsShownWithoutCaret) {
  EXPECT_EQ(diagnostic_text(at_column(0, "a: b"), ""),
            "static.yaml:14: error: expected a length\n  a: b\n");
}

TEST(DiagnosticText, TabsAreExpandedUnderTheCaretToo) {
  const auto lines = lines_of(at_column(4, "a\t\tbend"));
  EXPECT_EQ(lines.at(1), "  a       bend");
  EXPECT_EQ(caret_column(lines), 10u);
}

TEST(DiagnosticText, ColumnsCountCharactersNotBytes) {
  const auto lines = lines_of(at_column(6, "é↗ü𝄞x!"));
  EXPECT_EQ(lines.at(1), "  é↗ü𝄞x!");
  EXPECT_EQ(caret_column(lines), 7u);
}

TEST(DiagnosticText, ThePlaceJustAfterTheLineAndBeyondGetTheCaretAtItsEnd) {
  EXPECT_EQ(caret_column(lines_of(at_column(6, "bend:"))), 7u);
  EXPECT_EQ(caret_column(lines_of(at_column(2'000'000'000, "bend:"))), 7u);
}

TEST(DiagnosticText, ALongLineIsCutAroundTheColumn) {
  const std::string line = std::string(500, 'a') + "!" + std::string(500, 'b');
  const auto lines = lines_of(at_column(501, line));
  EXPECT_EQ(character_count(lines.at(1)), 102u);
  EXPECT_TRUE(lines.at(1).starts_with("  …a"));
  EXPECT_TRUE(lines.at(1).ends_with("b…"));
  const std::string before_mark = lines.at(1).substr(0, lines.at(1).find('!'));
  EXPECT_EQ(caret_column(lines), character_count(before_mark));
}

TEST(DiagnosticText, ALongLineKeepsItsStartOrItsEndWhereTheColumnIsThere) {
  const std::string line = "first" + std::string(500, '.') + "last";
  EXPECT_TRUE(lines_of(at_column(1, line)).at(1).starts_with("  first."));
  EXPECT_EQ(caret_column(lines_of(at_column(1, line))), 2u);
  EXPECT_TRUE(lines_of(at_column(509, line)).at(1).ends_with(".last"));
  EXPECT_EQ(caret_column(lines_of(at_column(509, line))), 101u);
  EXPECT_EQ(caret_column(lines_of(at_column(510, line))), 102u);
}

TEST(DiagnosticText, ALineOfAHundredCharactersIsShownWhole) {
  EXPECT_EQ(lines_of(at_column(3, std::string(100, 'a'))).at(1), "  " + std::string(100, 'a'));
}

TEST(DiagnosticText, ControlCharactersReachNoTerminal) {
  const Diagnostic diagnostic{{"a\x1B[2J.yaml", 1, 2},
                              std::string("found '\x1B[31m\0\n\x7F'", 16),
                              "did you mean '\r'?",
                              "a\x07\x1B\xC2\x9B\xE2\x80\xAE b"};
  const std::string text = diagnostic_text(diagnostic, "b\b/");
  for (const char letter : text)
    EXPECT_TRUE(letter == '\n' || static_cast<unsigned char>(letter) >= 0x20) << text;
  EXPECT_EQ(text.find('\x7F'), std::string::npos);
  EXPECT_EQ(text.find("\xC2\x9B"), std::string::npos);      // C1 control sequence introducer
  EXPECT_EQ(text.find("\xE2\x80\xAE"), std::string::npos);  // right-to-left override
  EXPECT_EQ(lines_of(diagnostic).size(), 4u) << "a line end in a message starts no line";
}

TEST(DiagnosticText, BytesThatAreNotUtf8CountOneCharacterEach) {
  const auto lines = lines_of(at_column(4, "a\xFF\xC3!"));
  EXPECT_EQ(lines.at(1), "  a\xEF\xBF\xBD\xEF\xBF\xBD!");
  EXPECT_EQ(caret_column(lines), 5u);
}

TEST(DiagnosticText, AnEndlessMessageIsCut) {
  Diagnostic diagnostic = at_column(1, "x");
  diagnostic.message = std::string(1'000'000, 'm');
  EXPECT_LT(diagnostic_text(diagnostic, "").size(), 2000u);
}

}  // namespace
}  // namespace linewright
