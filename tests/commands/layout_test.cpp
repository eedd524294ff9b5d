#include "render/layout.hpp"

#include <gtest/gtest.h>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

TEST(Layout, ColumnsCountCharactersNotBytes) {
  EXPECT_EQ(columns_of("3°"), 2u);
  EXPECT_EQ(columns_of(""), 0u);
}

TEST(Layout, WrappedTextHangsUnderItsLead) {
  const std::string words(70, 'a');
  EXPECT_EQ(wrapped("  - ", words + " bcdef ghi"), "  - " + words + " bcdef\n    ghi\n");
}

TEST(Layout, ALineOfExactlyEightyColumnsIsNotBroken) {
  const std::string first(39, 'a');
  const std::string second(40, 'b');
  EXPECT_EQ(wrapped("", first + " " + second), first + " " + second + "\n");
  EXPECT_EQ(wrapped("", first + " " + second + "b"), first + "\n" + second + "b\n");
}

TEST(Layout, AWordLongerThanTheLineStaysWhole) {
  const std::string path(120, 'p');
  EXPECT_EQ(wrapped("at: ", path), "at: " + path + "\n");
}

TEST(Layout, ControlCharactersCannotSteerTheTerminal) {
  EXPECT_EQ(one_line("a\x1b[31mb"), "a?[31mb");
  EXPECT_EQ(one_line("a\xc2\x9b"
                     "31mb"),
            "a?31mb");
  EXPECT_EQ(one_line(" two\n\twords "), "two words");
  EXPECT_EQ(one_line("é°"), "é°");
}

TEST(Layout, ParagraphsKeepTheirGaps) {
  EXPECT_EQ(paragraphs(2, "one\nline\n\nanother"), "  one line\n\n  another\n");
}

}  // namespace
}  // namespace linewright
