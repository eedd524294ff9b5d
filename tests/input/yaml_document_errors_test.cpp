#include <gtest/gtest.h>

#include <string_view>

#include "input/yaml_document.hpp"
#include "input/yaml_reading.hpp"

namespace linewright {
namespace {

TEST(YamlDocumentErrors, AFileWithoutAValueIsEmpty) {
  for (const std::string_view text : {"", "\n \n", "# only a comment\n", "---\n", "\xEF\xBB\xBF"}) {
    const Diagnostic error = only_error(text);
    EXPECT_EQ(error.message, "the file is empty") << text;
    EXPECT_EQ(error.where, at(0, 0)) << text;
  }
}

TEST(YamlDocumentErrors, EveryDuplicatedKeyIsFound) {
  const YamlDocument document = read("a: 1\nb: {c: 1, c: 2}\na: 2\n'a': 3\nd: 4\n");
  ASSERT_EQ(document.errors.size(), 3u);
  EXPECT_EQ(document.errors[0].where, at(2, 11));
  EXPECT_EQ(document.errors[0].message, "the key 'c' is given twice; the first is in line 2");
  EXPECT_EQ(document.errors[1].where, at(3, 1));
  EXPECT_EQ(document.errors[1].message, "the key 'a' is given twice; the first is in line 1");
  EXPECT_EQ(document.errors[1].source_line, "a: 2");
  EXPECT_EQ(document.errors[2].where, at(4, 1));
}

TEST(YamlDocumentErrors, ASecondDocumentIsRefused) {
  expect_error("a: 1\n---\nb: 2\n", at(2, 1), "a second document");
  expect_error("a: 1\n---\n", at(2, 1), "a second document");
  expect_error("---\na: 1\n--- b\n", at(3, 1), "a second document");
}

TEST(YamlDocumentErrors, TextAfterTheDocumentIsRefused) {
  expect_error("[1, 2]\nmore: 1\n", at(2, 1), "text after the end of the document");
  expect_error("{a: 1} b\n", at(1, 8), "text after the end of the document");
  expect_error("- a\nb: 1\n", at(2, 1), "text after the end of the document");
  expect_error("  a: 1\nb: 2\n", at(2, 1), "text after the end of the document");
  expect_error("a: 1\n...\nb: 2\n", at(3, 1), "text after the end of the document");
}

TEST(YamlDocumentErrors, ACommaAloneEndsInsteadOfRepeating) {
  expect_error(",", at(1, 1), "expected a key or a value, found ','");
  expect_error(repeated(",", 1000), at(1, 1), "expected a key or a value, found ','");
}

TEST(YamlDocumentErrors, AnAliasIsRefusedWhereItIsUsed) {
  const YamlDocument document = read("a: &anchor 1\nb: [0, *anchor]\n");
  ASSERT_EQ(document.errors.size(), 2u);
  EXPECT_EQ(document.errors[0].where, at(1, 4));
  EXPECT_EQ(document.errors[0].message, "an anchor ('&name') is not read here");
  EXPECT_EQ(document.errors[1].where, at(2, 8));
  EXPECT_EQ(document.errors[1].message, "an alias ('*name') is not read here");
  EXPECT_EQ(document.errors[1].source_line, "b: [0, *anchor]");
}

TEST(YamlDocumentErrors, AnAliasOfNothingIsRefusedToo) {
  expect_error("a: 1\nb: *none\n", at(2, 4), "an alias");
  expect_error("b: *\n", at(1, 4), "an alias");
  expect_error("b: & x\n", at(1, 4), "an anchor");
}

TEST(YamlDocumentErrors, AnchorsAreRefusedOnEveryKindOfNode) {
  for (const std::string_view text :
       {"a: &x\nb: 1\n", "a: &x [1]\n", "a: &x {b: 1}\n", "a: &x ~\n"})
    expect_error(text, at(1, 4), "an anchor");
  expect_error("&x a: 1\n", at(1, 1), "an anchor");
}

TEST(YamlDocumentErrors, TagsAreRefusedOnEveryKindOfNode) {
  for (const std::string_view text :
       {"a: !t 1\n", "a: !!str 1\n", "a: ! 1\n", "a: !<t:x> 1\n", "a: !t [1]\n", "a: !t {b: 1}\n",
        "a: !t\nb: 1\n", "a: !t ~\n", "a: ! \"1\"\n"})
    expect_error(text, at(1, 4), "a tag");
}

TEST(YamlDocumentErrors, AMergeKeyIsRefused) {
  expect_error("a: 1\n<<: {b: 2}\n", at(2, 1), "a merge key");
  EXPECT_EQ(root_of("\"<<\": 1\n").entries[0].key, "<<");
}

TEST(YamlDocumentErrors, AKeyMustBeAScalar) {
  expect_error("? [a]\n: 1\n", at(1, 3), "a key must be a single word or text");
  expect_error("{{a: 1}: 2}\n", at(1, 2), "a key must be a single word or text");
  expect_error(": 1\n", at(1, 1), "expected a key");
  expect_error("~: 1\n", at(1, 1), "expected a key");
}

TEST(YamlDocumentErrors, AForgottenColonIsNotTakenForAnEmptyValue) {
  expect_error("a: 1\nbend\n", at(2, 5), "expected ':' after 'bend'");
  expect_error("{a, b: 1}\n", at(1, 3), "expected ':' after 'a'");
  const Diagnostic joined = only_error("{a:1}\n");
  EXPECT_EQ(joined.message, "expected ':' after 'a:1'");
  EXPECT_EQ(joined.suggestion, "put a space after the ':'");
  EXPECT_EQ(only_error("{a: 1,5 in}\n").suggestion, "write decimals with a point");
}

TEST(YamlDocumentErrors, AnUnclosedBracketIsShownWhereItOpens) {
  expect_error("a: [1, 2\n", at(1, 4), "a '[' is never closed");
  expect_error("a:\n  - {x: [1, 2]\n\n\n", at(2, 5), "a '{' is never closed");
  expect_error("[", at(1, 1), "a '[' is never closed");
  expect_error("holes: {name", at(1, 8), "a '{' is never closed");
  expect_error("[a: 1, b: 2", at(1, 1), "a '[' is never closed");
  const Diagnostic later = only_error("a: [1, 2\nb: 3\n");
  EXPECT_EQ(later.where, at(2, 2));
  EXPECT_EQ(later.suggestion, "the bracket opened in line 1, column 4 is not closed yet");
}

TEST(YamlDocumentErrors, AnUnclosedQuoteIsShownWhereItOpens) {
  for (const std::string_view text : {"a: \"x", "a: \"x\n", "a: 'x\nb: 2\n", "a: 'it''s\n",
                                      "a: \"x\\\"\n", "a: \"\n", "a: \"x\\"})
    expect_error(text, at(1, 4), "a quoted text is never closed");
  expect_error("a: ['b', 'c]\nd: 1\n", at(1, 10), "a quoted text is never closed");
}

TEST(YamlDocumentErrors, WhatTheParserRefusesIsSaidInPlainWords) {
  expect_error("a: [1}\n", at(1, 6), "a closing bracket that matches no opening one");
  expect_error("a: ]\n", at(1, 4), "a closing bracket that matches no opening one");
  expect_error("a: b: c\n", at(1, 5), "a ':' that follows no key");
  expect_error("a: 1\n b: 2\n", at(2, 3), "a ':' that follows no key");
  expect_error("a:\n  b: 1\n c: 2\n", at(3, 2), "expected 'key: value' in the column of the keys");
  expect_error("- a\n - b\n- c\n d: 1\n", at(3, 3), "expected 'key: value', found 'c'");
  expect_error("a: @x\n", at(1, 4), "a character that cannot start a value");
  expect_error("a: \"é\\q\"\n", at(1, 8), "an unknown escape");
  expect_error("%YAML 3.0\n---\na: 1\n", at(1, 1), "not valid YAML: YAML major version too large");
}

/// The mend that goes with the one error, which must be there.
std::string mend_at(std::string_view text, SourceLocation where, std::string_view part) {
  expect_error(text, where, part);
  return only_error(text).suggestion;
}

TEST(YamlDocumentErrors, ABracketLeftOpenIsShownWhereItOpensWhateverComesAfter) {
  EXPECT_EQ(mend_at("a:\n  - {b: 1\n  - {b: 2}\n  - {b: 3}\n", at(2, 5), "a '{' is not closed"),
            "line 4 cannot stand in it: close it before");
  EXPECT_EQ(mend_at("a:\n  - {b: [1, 2, c: 3}\n", at(2, 20), "a closing bracket that matches no"),
            "the '[' opened in line 2 is not closed yet");
  // A mark of inches, a comment and a text open none.
  EXPECT_EQ(mend_at("a: 5' 2\" # [\nb: '['\nc: ]\n", at(3, 4), "a closing bracket"), "");
}

TEST(YamlDocumentErrors, ADashLeftOutIsShownWhereItBelongs) {
  EXPECT_EQ(mend_at("a:\n  - {b: 1}\n  {b: 2}\n", at(3, 3), "expected an item ('- ')"),
            "put '- ' before it, or check the indentation");
  EXPECT_EQ(mend_at("a:\n  {b: 1}\n  - {b: 2}\n", at(2, 3), "expected an item ('- ')"),
            "put '- ' before it");
  EXPECT_EQ(mend_at("a:\n  - b: 1\n    c: 2\n\n    b: 3\n    c: 4\n", at(5, 5),
                    "the key 'b' is given twice; the first is in line 2"),
            "put '- ' before it where the next item of the list begins");
}

TEST(YamlDocumentErrors, AColonLeftOutIsShownInItsOwnLine) {
  const std::string missing = "a ':' is missing after the key";
  EXPECT_EQ(mend_at("a: 1\nline b\nc: 3\n", at(2, 1), "expected 'key: value', found 'line b'"),
            missing);
  EXPECT_EQ(mend_at("a: 1\n# what comes\nb\n\n  # is a list\n  - c: 3\n", at(3, 1), "found 'b'"),
            missing);
  EXPECT_EQ(mend_at("- a b\n  c: 3\n", at(1, 3), "found 'a b'"), missing);
  EXPECT_EQ(mend_at("a: 1\nb:2\nc: 3\n", at(2, 1), "found 'b:2'"), "put a space after the ':'");
}

TEST(YamlDocumentErrors, ATabInTheIndentationIsNamed) {
  const Diagnostic error = only_error("a:\n\tb: 1\n");
  EXPECT_EQ(error.where.line, 2);
  EXPECT_EQ(error.message, "a tab in the indentation");
  EXPECT_EQ(error.suggestion, "indent with spaces");
}

TEST(YamlDocumentErrors, ErrorsBeforeTheParserGivesUpAreKept) {
  const YamlDocument document = read("a: 1\na: 2\nb: !t 3\nc: ]\nd: 1\nd: 2\n");
  ASSERT_EQ(document.errors.size(), 3u);
  EXPECT_EQ(document.errors[0].where, at(2, 1));
  EXPECT_EQ(document.errors[1].where, at(3, 4));
  EXPECT_EQ(document.errors[2].where, at(4, 4));
}

}  // namespace
}  // namespace linewright
