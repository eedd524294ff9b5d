// The tables of keys against what is read. The project in fixtures/every-key has every key of every
// table; each is made wrong, or left out, one at a time.

#include "input/keys.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <map>
#include <set>

#include "input/field_words.hpp"
#include "input/keys/project_keys.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

std::string text_of(const std::string& file) {
  std::ifstream stream(LINEWRIGHT_SOURCE_DIR "/" + file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

const std::string fixture = "tests/input/fixtures/every-key/";

/// A map of the project, and what it says by one key.
struct Use {
  const MapSpec* map = nullptr;
  const YamlNode* holder = nullptr;
  const YamlNode* value = nullptr;
};

using Uses = std::map<const KeySpec*, Use>;

/// The first use of each key in a map and in all that is in it.
void find_uses(const YamlNode& holder, const MapSpec& map, Uses& uses) {
  for (const YamlEntry& entry : holder.entries) {
    const KeySpec* key = map.find(entry.key);
    ASSERT_NE(key, nullptr) << entry.key;
    uses.try_emplace(key, Use{&map, &holder, &entry.value});
    if (key->kind == KeyKind::map) find_uses(entry.value, *key->map, uses);
    if (key->kind == KeyKind::maps)
      for (const YamlNode& item : entry.value.items) find_uses(item, *key->map, uses);
    if (key->kind == KeyKind::named_maps)
      for (const YamlEntry& named : entry.value.entries) find_uses(named.value, *key->map, uses);
  }
}

/// The project on one line, with a value replaced by another text or left out with its key.
class OneLine {
 public:
  OneLine(const YamlNode& root, const Use& changed, const std::string& replacement)
      : changed_(changed), replacement_(replacement) {
    write(root);
  }

  const std::string& text() const { return text_; }
  /// Of the value that was replaced.
  int value_column() const { return value_column_; }
  /// Of the map that has it.
  int holder_column() const { return holder_column_; }

 private:
  int column() const { return static_cast<int>(text_.size()) + 1; }

  void write(const YamlNode& node) {
    if (&node == changed_.holder) holder_column_ = column();
    if (&node == changed_.value) {
      value_column_ = column();
      text_ += replacement_;
    } else if (node.kind == YamlNode::Kind::map) {
      text_ += '{';
      for (const YamlEntry& entry : node.entries) {
        if (&entry.value == changed_.value && replacement_.empty()) continue;
        if (!text_.ends_with('{')) text_ += ", ";
        text_ += entry.key + ": ";
        write(entry.value);
      }
      text_ += '}';
    } else if (node.kind == YamlNode::Kind::sequence) {
      text_ += '[';
      for (const YamlNode& item : node.items) {
        if (!text_.ends_with('[')) text_ += ", ";
        write(item);
      }
      text_ += ']';
    } else {
      text_ += node.text;
    }
  }

  const Use& changed_;
  const std::string& replacement_;
  std::string text_;
  int value_column_ = 0;
  int holder_column_ = 0;
};

class EveryKey : public testing::Test {
 protected:
  EveryKey() : document_(read_yaml(text_of(fixture + "project.yaml"), "project.yaml")) {
    find_uses(document_.root, project_map, uses_);
    for (const std::string name : {"more.yaml", "skin.stl", "holes.csv", "points.csv"})
      folder_.write(name, text_of(fixture + name));
  }

  std::vector<Diagnostic> errors_of(const std::string& project) const {
    folder_.write("project.yaml", project);
    return load_project(folder_.path(), small_catalogue()).errors;
  }

  YamlDocument document_;
  Uses uses_;
  ProjectFolder folder_;
};

TEST_F(EveryKey, StandsInOneProjectThatIsRight) {
  EXPECT_EQ(shown(errors_of(text_of(fixture + "project.yaml"))), "");
  EXPECT_EQ(shown(errors_of(OneLine(document_.root, {}, "").text())), "");
  for (const MapSpec* map : all_maps())
    for (const KeySpec& key : map->keys)
      EXPECT_TRUE(uses_.contains(&key)) << map->name << ": " << key.name;
}

TEST_F(EveryKey, IsReadAndRefusesAValueOfAnotherKind) {
  for (const auto& [key, use] : uses_) {
    // No kind of value but a map is one; and what is a map is no list.
    const bool is_map = key->kind == KeyKind::map || key->kind == KeyKind::named_maps;
    const OneLine wrong(document_.root, use, is_map ? "[]" : "{a: 1, b: 2}");
    const std::vector<Diagnostic> errors = errors_of(wrong.text());
    const bool refused = std::any_of(errors.begin(), errors.end(), [&](const Diagnostic& error) {
      return error.where == SourceLocation{"project.yaml", 1, wrong.value_column()};
    });
    EXPECT_TRUE(refused) << use.map->name << ": " << key->name << "\n" << shown(errors);
  }
}

TEST_F(EveryKey, IsAskedForWhereItIsNeededAndNowhereElse) {
  for (const auto& [key, use] : uses_) {
    const OneLine without(document_.root, use, "");
    const std::vector<Diagnostic> errors = errors_of(without.text());
    const std::string quoted = fmt::format("'{}", key->name);
    const bool asked = std::any_of(errors.begin(), errors.end(), [&](const Diagnostic& error) {
      return error.where == SourceLocation{"project.yaml", 1, without.holder_column()} &&
             error.message.find(quoted) != std::string::npos;
    });
    if (key->need != Need::sometimes) {
      EXPECT_EQ(asked, key->need == Need::always) << use.map->name << ": " << key->name << "\n"
                                                  << shown(errors);
    }
  }
}

TEST(Keys, AreListedMapByMapWithNoneLeftOut) {
  std::set<const MapSpec*> listed;
  for (const MapSpec* map : all_maps())
    EXPECT_TRUE(listed.insert(map).second) << map->name << " is listed twice";
  std::set<const MapSpec*> reached{&project_map};
  for (const MapSpec* map : all_maps())
    for (const KeySpec& key : map->keys)
      if (key.map != nullptr) reached.insert(key.map);
  EXPECT_EQ(listed, reached);
  EXPECT_EQ(all_maps().front(), &project_map);
}

TEST(Keys, HaveNamesOfTheirOwnAndSayInALineWhatTheyTell) {
  for (const MapSpec* map : all_maps()) {
    std::set<std::string_view> names;
    for (const KeySpec& key : map->keys) {
      SCOPED_TRACE(fmt::format("{}: {}", map->name, key.name));
      EXPECT_TRUE(names.insert(key.name).second);
      EXPECT_FALSE(key.says.empty());
      EXPECT_EQ(key.says.find('\n'), std::string_view::npos);
      EXPECT_LE(key.says.size(), 100u);
      EXPECT_EQ(key.kind == KeyKind::word || key.kind == KeyKind::system, !key.choices.empty());
      EXPECT_EQ(
          key.kind == KeyKind::map || key.kind == KeyKind::maps || key.kind == KeyKind::named_maps,
          key.map != nullptr);
    }
  }
}

TEST(Keys, AreAllNamedWhereOneIsUnknown) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               "linewright: 1\nname: a\nattitudes: [{name: b, pitch: 1, yaw: 2}]\n");
  EXPECT_EQ(shown(load_project(folder.path(), small_catalogue()).errors),
            "project.yaml:3:33: unknown key 'yaw' in an attitude | keys of an attitude: name, "
            "pitch, roll\n");
  folder.write("project.yaml", "linewright: 1\nname: a\nlines: [{name: b, colour: red}]\n");
  const std::string errors = shown(load_project(folder.path(), small_catalogue()).errors);
  EXPECT_NE(errors.find("project.yaml:3:19: a line has no key 'colour' | keys of a line: name, "),
            std::string::npos)
      << errors;
}

}  // namespace
}  // namespace linewright
