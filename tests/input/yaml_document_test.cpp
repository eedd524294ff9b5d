#include "input/yaml_document.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "input/yaml_reading.hpp"

namespace linewright {
namespace {

TEST(YamlDocument, ScalarsSequencesAndMapsBecomeATree) {
  const YamlNode root = root_of("name: level flight\npitch: [0, 12.5]\nholes:\n  - {edge: bare}\n");
  ASSERT_EQ(root.kind, YamlNode::Kind::map);
  ASSERT_EQ(root.entries.size(), 3u);
  EXPECT_EQ(root.find("name")->text, "level flight");
  ASSERT_EQ(root.find("pitch")->items.size(), 2u);
  EXPECT_EQ(root.find("pitch")->items[1].text, "12.5");
  EXPECT_EQ(root.find("holes")->items.at(0).find("edge")->text, "bare");
  EXPECT_EQ(root.find("nothing"), nullptr);
}

TEST(YamlDocument, KeysAndValuesKnowTheirPlaces) {
  const YamlNode root = root_of("a: 1\nlist:\n  - {b: 2, c: 3}\n");
  EXPECT_EQ(root.where, at(1, 1));
  EXPECT_EQ(root.entries[0].key_where, at(1, 1));
  EXPECT_EQ(root.entries[0].value.where, at(1, 4));
  const YamlNode& list = root.entries[1].value;
  EXPECT_EQ(list.where, at(3, 3));
  EXPECT_EQ(list.items[0].where, at(3, 5));
  EXPECT_EQ(list.items[0].entries[1].key_where, at(3, 12));
  EXPECT_EQ(list.items[0].entries[1].value.where, at(3, 15));
}

TEST(YamlDocument, ColumnsCountCharactersNotBytes) {
  const YamlNode root = root_of("{é: ü, 𝄞↗: x}\n");
  EXPECT_EQ(root.entries[0].value.where, at(1, 5));
  EXPECT_EQ(root.entries[1].key_where, at(1, 8));
  EXPECT_EQ(root.entries[1].value.where, at(1, 12));
}

TEST(YamlDocument, ColumnsStayRightFarAlongALineOfWideCharacters) {
  const std::string filler = repeated("é", 1000);
  const YamlNode root = root_of("[" + filler + ", x]");
  EXPECT_EQ(root.items[1].where, at(1, 1004));
}

TEST(YamlDocument, QuotedAndBlockTextIsMarkedAsSuch) {
  const YamlNode root = root_of("a: \"12\"\nb: '12'\nc: 12\nd: |\n  12\n");
  EXPECT_TRUE(root.find("a")->quoted);
  EXPECT_TRUE(root.find("b")->quoted);
  EXPECT_FALSE(root.find("c")->quoted);
  EXPECT_TRUE(root.find("d")->quoted);
  EXPECT_EQ(root.find("a")->text, "12");
}

TEST(YamlDocument, ScalarTextIsKeptAsWritten) {
  const YamlNode root = root_of("[010, 0x10, .nan, yes, 1.50 in]");
  EXPECT_EQ(root.items[0].text, "010");
  EXPECT_EQ(root.items[1].text, "0x10");
  EXPECT_EQ(root.items[2].text, ".nan");
  EXPECT_EQ(root.items[3].text, "yes");
  EXPECT_EQ(root.items[4].text, "1.50 in");
}

TEST(YamlDocument, AnEmptyValueStandsJustAfterItsKey) {
  const YamlNode root = root_of("bend:   # to come\n\n\nhold: clamp\n\"a # b\" :\n");
  EXPECT_EQ(root.find("bend")->kind, YamlNode::Kind::null);
  EXPECT_EQ(root.find("bend")->where, at(1, 6));
  EXPECT_EQ(root.find("a # b")->where, at(5, 10));
  const YamlNode flow = root_of("{a: , b: }");
  EXPECT_EQ(flow.find("a")->where, at(1, 4));
  EXPECT_EQ(flow.find("b")->where, at(1, 9));
}

TEST(YamlDocument, AnEmptyItemStandsJustAfterItsDash) {
  const YamlNode root = root_of("list:\n  - a\n  -   # nothing yet\n\n  -\nnull-like: 3\n");
  const YamlNode& list = *root.find("list");
  ASSERT_EQ(list.items.size(), 3u);
  EXPECT_EQ(list.items[1].where, at(3, 4));
  EXPECT_EQ(list.items[2].where, at(5, 4));
}

TEST(YamlDocument, AWrittenNullHasItsOwnPlace) {
  const YamlNode root = root_of("a: ~\nb: null\nc:\n  NULL\nd: [~, Null]\n");
  EXPECT_EQ(root.find("a")->where, at(1, 4));
  EXPECT_EQ(root.find("b")->where, at(2, 4));
  EXPECT_EQ(root.find("c")->where, at(4, 3));
  EXPECT_EQ(root.find("d")->items[0].where, at(5, 5));
  EXPECT_EQ(root.find("d")->items[1].where, at(5, 8));
  for (const auto* key : {"a", "b", "c"})
    EXPECT_EQ(root.find(key)->kind, YamlNode::Kind::null) << key;
}

TEST(YamlDocument, LinesAreKeptForCarets) {
  EXPECT_EQ(read("a: 1\n\nb: é\n").lines, (std::vector<std::string>{"a: 1", "", "b: é"}));
  EXPECT_EQ(read("a: 1").lines, (std::vector<std::string>{"a: 1"}));
}

TEST(YamlDocument, WindowsAndOldLineEndsAreLineEnds) {
  for (const std::string_view text : {"a: 1\r\nb:\r\n  - x\r\n", "a: 1\rb:\r  - x\r"}) {
    const YamlNode root = root_of(text);
    EXPECT_EQ(root.find("a")->text, "1");
    EXPECT_EQ(root.find("b")->items.at(0).text, "x");
    EXPECT_EQ(root.find("b")->items.at(0).where, at(3, 5));
    EXPECT_EQ(read(text).lines, (std::vector<std::string>{"a: 1", "b:", "  - x"}));
  }
}

TEST(YamlDocument, AByteOrderMarkIsAcceptedAndCountsNoColumn) {
  const YamlNode root = root_of(
      "\xEF\xBB\xBF"
      "a: 1\n");
  EXPECT_EQ(root.find("a")->where, at(1, 4));
}

TEST(YamlDocument, DocumentMarkersAroundOneDocumentAreAccepted) {
  EXPECT_EQ(root_of("%YAML 1.2\n---\na: 1\n...\n# end\n").find("a")->text, "1");
}

TEST(YamlDocument, QuotedKeysAreKeys) {
  EXPECT_EQ(root_of("{\"a\":1, 'b': 2}").find("b")->text, "2");
}

}  // namespace
}  // namespace linewright
