#include <gtest/gtest.h>

#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "input/yaml_document.hpp"
#include "input/yaml_reading.hpp"

namespace linewright {
namespace {

/// Every place an error gives lies in the text or just after a line of it.
void expect_places_inside(const YamlDocument& document, const std::string& text) {
  for (const Diagnostic& error : document.errors) {
    EXPECT_FALSE(error.message.empty()) << text;
    if (error.where.line == 0) continue;
    ASSERT_LE(static_cast<std::size_t>(error.where.line), document.lines.size()) << text;
    const std::string& line = document.lines[static_cast<std::size_t>(error.where.line) - 1];
    EXPECT_GE(error.where.column, 1) << text;
    EXPECT_LE(static_cast<std::size_t>(error.where.column), line.size() + 1) << text;
    EXPECT_EQ(error.source_line, line) << text;
  }
}

TEST(YamlDocumentHostile, BytesThatAreNotUtf8AreShownByPlace) {
  expect_error("a: 1\nb: é\xFFx\n", at(2, 5), "a byte that is not UTF-8: 0xFF");
  expect_error("a: \xC3", at(1, 4), "0xC3");                // ends in the middle of a character
  expect_error("a: \xC0\xAF\n", at(1, 4), "0xC0");          // overlong
  expect_error("a: \xE0\x80\xAF\n", at(1, 4), "0xE0");      // overlong
  expect_error("a: \xED\xA0\x80\n", at(1, 4), "0xED");      // surrogate
  expect_error("a: \xF4\x90\x80\x80\n", at(1, 4), "0xF4");  // beyond U+10FFFF
  expect_error("a: \x80\n", at(1, 4), "0x80");              // continuation without a lead
  expect_error("# comment \xFF\n", at(1, 11), "0xFF");
}

TEST(YamlDocumentHostile, NulBytesAndOtherControlCharactersAreShownByPlace) {
  expect_error(std::string_view("a: 1\nb: x\0y\n", 12), at(2, 5), "a NUL byte");
  expect_error("a: \x1B[31m\n", at(1, 4), "a control character: 0x1B");
  expect_error("a: x\x04: b: 1\n", at(1, 5), "a control character: 0x04");
  expect_error("a: \x7F\n", at(1, 4), "a control character: 0x7F");
  expect_error("a: \xC2\x9B\n", at(1, 4), "steers the terminal");       // C1
  expect_error("a: \xE2\x80\xAEx\n", at(1, 4), "steers the terminal");  // right-to-left override
}

TEST(YamlDocumentHostile, ControlCharactersByEscapeAreRefused) {
  expect_error("a: \"\\e[31m\"\n", at(1, 4), "a text with a control character");
  expect_error("a: \"x\\0y\"\n", at(1, 4), "a text with a control character");
  EXPECT_EQ(root_of("a: \"x\\ty\\nz\"\n").find("a")->text, "x\ty\nz");
}

TEST(YamlDocumentHostile, InvisibleCharactersAreShownByPlace) {
  expect_error("a: port\u200Bleft\n", at(1, 8), "an invisible character, U+200B, in");
  expect_error("po\u00ADrt: 1\n", at(1, 3), "U+00AD");                    // soft hyphen
  expect_error("a: [x, 'y\u200Ez']\n", at(1, 10), "U+200E");              // left-to-right mark
  expect_error("a: y\uFEFFz\n", at(1, 5), "U+FEFF");                      // byte order mark inside
  expect_error("a: y\U000E0041\n", at(1, 5), "U+E0041");                  // tag
  expect_error("a: \"x\\u2060y\"\n", at(1, 4), "U+2060, in 'x\uFFFDy'");  // by escape
  EXPECT_EQ(root_of("a: 1  # \u26A0\uFE0F\nb: \u00FCber\n").find("b")->text, "\u00FCber");
}

TEST(YamlDocumentHostile, Utf16IsNamed) {
  const Diagnostic error =
      only_error(std::string_view("\xFF\xFE"
                                  "a\0:\0",
                                  6));
  EXPECT_EQ(error.message, "the file is not UTF-8 but looks like UTF-16");
  EXPECT_EQ(error.where, at(1, 1));
}

TEST(YamlDocumentHostile, BinaryBytesGiveOneError) {
  std::mt19937 random(7);
  std::string bytes(100'000, '\0');
  for (char& byte : bytes) byte = static_cast<char>(random() & 0xFF);
  EXPECT_EQ(read(bytes).errors.size(), 1u);
}

TEST(YamlDocumentHostile, NestingUpToTheLimitIsRead) {
  const auto depth = static_cast<std::size_t>(deepest_nesting);
  root_of(repeated("[", depth) + repeated("]", depth));
  root_of(repeated("- ", depth) + "x");
  expect_error(repeated("[", depth + 1) + repeated("]", depth + 1), at(1, deepest_nesting + 1),
               "nested more than 64 deep");
  expect_error(repeated("- ", depth + 1) + "x", at(1, 2 * deepest_nesting + 1),
               "nested more than 64 deep");
}

TEST(YamlDocumentHostile, TenThousandDeepNestingGivesOneError) {
  std::string block;
  for (std::size_t i = 0; i < 2000; ++i) block += std::string(i, ' ') + "a:\n";
  for (const std::string& text :
       {repeated("[", 10'000), repeated("[", 10'000) + repeated("]", 10'000),
        repeated("{a: ", 10'000), repeated("- ", 10'000), repeated("? ", 10'000),
        repeated("[a: ", 10'000), repeated("{? ", 10'000), repeated("a: [", 10'000), block}) {
    EXPECT_EQ(only_error(text).message, "nested more than 64 deep") << text.substr(0, 20);
  }
}

TEST(YamlDocumentHostile, AnAliasBombNeverGrows) {
  std::string bomb = "a0: &a0 [x, x]\n";
  for (int i = 1; i < 40; ++i) {
    const std::string last = "*a" + std::to_string(i - 1);
    bomb +=
        "a" + std::to_string(i) + ": &a" + std::to_string(i) + " [" + last + ", " + last + "]\n";
  }
  const YamlDocument document = read(bomb);
  EXPECT_GE(document.errors.size(), 100u);
  EXPECT_LE(document.errors.size(), 101u);
  EXPECT_EQ(document.errors[0].where, at(1, 5));
}

TEST(YamlDocumentHostile, AnAliasToItselfEnds) {
  const YamlDocument document = read("a: &x [*x]\n");
  ASSERT_EQ(document.errors.size(), 2u);
  EXPECT_EQ(document.errors[1].where, at(1, 8));
}

TEST(YamlDocumentHostile, AfterAHundredErrorsTheRestIsNotRead) {
  const YamlDocument document = read(repeated("a: 1\n", 100'000));
  ASSERT_EQ(document.errors.size(), 101u);
  EXPECT_EQ(document.errors.back().message, "too many errors; the rest of the file is not read");
  EXPECT_EQ(document.errors[99].where, at(101, 1));
}

TEST(YamlDocumentHostile, AFileOfFiftyMegabytesIsRefusedBySize) {
  const std::string text(50'000'000, ' ');
  const Diagnostic error = only_error(text);
  EXPECT_EQ(error.where, at(0, 0));
  EXPECT_EQ(error.message, "the file is too large: more than 16 MiB are not read");
}

TEST(YamlDocumentHostile, MoreValuesThanMemoryShouldHoldAreRefusedBeforeParsing) {
  EXPECT_NE(only_error("[" + repeated(",", 5'000'000)).message.find("more than"),
            std::string::npos);
  EXPECT_NE(only_error(repeated("a: ", 4'500'000)).message.find("more than"), std::string::npos);
  EXPECT_EQ(only_error(repeated("[", 5'000'000)).message, "nested more than 64 deep");
}

TEST(YamlDocumentHostile, EightHundredThousandValuesAreReadAndNoMore) {
  EXPECT_EQ(root_of(repeated("- 1\n", most_nodes - 1)).items.size(), most_nodes - 1);
  expect_error(repeated("- 1\n", most_nodes + 1), at(800'001, 3), "more than 800000 values");
}

// Counting columns from the line's start for every value would take 400 thousand million steps
// here, which ctest does not wait for.
TEST(YamlDocumentHostile, ManyValuesFarAlongOneLineKnowTheirColumns) {
  const std::string text = "[" + repeated("é", 2'000'000) + repeated(", 1", 200'000) + "]";
  const YamlNode root = root_of(text);
  ASSERT_EQ(root.items.size(), 200'001u);
  EXPECT_EQ(root.items.back().where, at(1, 1 + 2'000'000 + 3 * 200'000));
}

TEST(YamlDocumentHostile, AVeryLongSourceLineIsNotCarriedByEveryError) {
  const YamlDocument document = read("{" + repeated("a: 1, ", 20'000) + "}");
  ASSERT_EQ(document.errors.size(), 101u);
  EXPECT_EQ(document.errors[0].source_line, "");
  EXPECT_EQ(document.errors[0].where, at(1, 8));
}

TEST(YamlDocumentHostile, ManyKeysAreComparedWithoutASquare) {
  std::string text;
  for (int i = 0; i < 20'000; ++i) text += "k" + std::to_string(i) + ": 1\n";
  EXPECT_EQ(root_of(text).entries.size(), 20'000u);
}

TEST(YamlDocumentHostile, RandomTextsGiveATreeOrErrorsWithPlaces) {
  const std::vector<std::string> pieces = {
      "a",   "é",    ":",     ": ",    "- ",    "? ", "\n",    "\n  ", "\n    ", " ",
      "{",   "}",    "[",     "]",     ", ",    "\"", "'",     " #",   "|\n",    ">",
      "!t ", "&a ",  "*a",    "---\n", "...\n", "\t", "~",     "null", "\\",     "<<: ",
      "%",   "\r\n", "key: ", "\n- ",  "\n? ",  "@",  "1.5 in"};
  std::mt19937 random(20240229);
  int refused = 0;
  for (int round = 0; round < 5'000; ++round) {
    std::string text;
    const std::size_t length = 1 + random() % 30;
    for (std::size_t i = 0; i < length; ++i) text += pieces[random() % pieces.size()];
    const YamlDocument document = read(text);
    expect_places_inside(document, text);
    if (testing::Test::HasFailure()) return;
    refused += document.errors.empty() ? 0 : 1;
  }
  EXPECT_GT(refused, 2'000);
  EXPECT_LT(refused, 4'950);
}

TEST(YamlDocumentHostile, ATextCutInsideBracketsOrQuotesNeverPassesForTheWhole) {
  for (const std::string text : {"[[1, 2], {to: \"x\\\"y\", at: ~}, 'a: b']",
                                 "{a: [1, 2], b: {c: d}, e: ' # '}", "\"a: b\\\" # c\""}) {
    root_of(text);
    for (std::size_t length = 1; length < text.size(); ++length)
      for (const std::string_view end : {"", "\n", "\n\n"}) {
        const std::string cut = text.substr(0, length).append(end);
        const YamlDocument document = read(cut);
        EXPECT_FALSE(document.errors.empty()) << cut;
        expect_places_inside(document, cut);
      }
  }
}

}  // namespace
}  // namespace linewright
