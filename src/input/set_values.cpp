#include "input/set_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <set>
#include <utility>

#include "input/field_words.hpp"
#include "input/keys/project_keys.hpp"
#include "input/suggest_name.hpp"
#include "input/utf8.hpp"

namespace linewright {

namespace {

/// More names under an error are no help.
constexpr std::size_t most_listed_names = 12;

int characters_of(std::string_view text) {
  int count = 0;
  for (std::size_t offset = 0; offset < text.size(); ++count)
    offset += std::max<std::size_t>(1, utf8_length(text, offset));
  return count;
}

std::string_view name_of(const YamlNode& item) {
  const YamlNode* name = item.find("name");
  return name != nullptr && name->kind == YamlNode::Kind::scalar ? std::string_view(name->text)
                                                                 : std::string_view();
}

/// True where `rest` goes on with this name: names may have dots in them.
bool goes_on_with(std::string_view rest, std::string_view name) {
  return !name.empty() && rest.starts_with(name) &&
         (rest.size() == name.size() || rest[name.size()] == '.');
}

/// A scalar or a list of them as the files would have it on a line.
std::string words_of_value(const YamlNode& node) {
  if (node.kind == YamlNode::Kind::scalar) return node.text;
  if (node.kind != YamlNode::Kind::sequence) return {};
  std::string text;
  for (const YamlNode& item : node.items) text += (text.empty() ? "" : ", ") + words_of_value(item);
  return "[" + text + "]";
}

/// Puts every part of the value to its place in the text that it was given in.
void move_to(YamlNode& node, int line, int columns_before) {
  node.where = {std::string(set_option), line, node.where.column + columns_before};
  for (YamlNode& item : node.items) move_to(item, line, columns_before);
  for (YamlEntry& entry : node.entries) {
    entry.key_where = {std::string(set_option), line, entry.key_where.column + columns_before};
    move_to(entry.value, line, columns_before);
  }
}

/// Where a path has come to: in a project of several files a section is in more than one.
struct Reached {
  std::vector<YamlNode*> nodes;
  const MapSpec* map = &project_map;  ///< of the nodes, or of the items where they are lists
  bool list = false;
  bool named = false;  ///< what is reached holds maps, each under a name
};

/// One value on its way into the trees.
class SetValueWalk {
 public:
  SetValueWalk(std::string_view text, int number, bool names_complete, ProjectDraft& draft,
               std::vector<SetValue>& values)
      : text_(text),
        number_(number),
        names_complete_(names_complete),
        draft_(draft),
        values_(values) {}

  void run(std::vector<ParsedFile>& files, std::set<std::string, std::less<>>& paths) {
    const std::size_t equals = text_.find('=');
    if (equals == std::string_view::npos || equals == 0)
      return error(0, "expected PATH=VALUE, as in routes.static-left.line=tube-aluminium-1/4");
    path_ = text_.substr(0, equals);
    if (!paths.emplace(path_).second)
      return error(0, fmt::format("{} is set twice", quoted_text(path_)), "leave one of them out");
    auto value = read_value(equals + 1);
    if (!value) return;
    Reached reached;
    for (ParsedFile& file : files)
      if (file.readable) reached.nodes.push_back(&file.root);
    while (at_ < path_.size())
      if (!step(reached, *value)) return;
    put(reached, *std::move(value));
  }

 private:
  std::optional<YamlNode> read_value(std::size_t from) {
    const std::string value(text_.substr(from));
    const int before = characters_of(text_.substr(0, from));
    if (value.find_first_not_of(" \t") == std::string::npos) {
      error(text_.size(), fmt::format("no value is given for {}", quoted_text(path_)));
      return {};
    }
    if (value.find_first_of("\n\r") != std::string::npos) {
      error(from, "a value must be of one line");
      return {};
    }
    YamlDocument document = read_yaml(value, std::string(set_option));
    if (document.errors.empty() && document.root.kind == YamlNode::Kind::map) {
      error(from, "a map cannot be set as a whole: name the key in it");
      return {};
    }
    for (Diagnostic& each : document.errors) {
      each.where = {std::string(set_option), number_, each.where.column + before};
      draft_.errors.add(std::move(each));
    }
    if (!document.errors.empty()) return {};
    move_to(document.root, number_, before);
    return std::move(document.root);
  }

  /// One key, name or number further; false when the value is dealt with.
  bool step(Reached& reached, YamlNode& value) {
    if (reached.list) return step_into_list(reached);
    if (reached.named) return step_into_named(reached);
    if (reached.map != nullptr) return step_into_map(reached, value);
    error(at_, fmt::format("{} is no map and no list: nothing is in it", said()));
    return false;
  }

  bool step_into_map(Reached& reached, YamlNode& value) {
    const std::string_view rest = path_.substr(at_);
    const std::string_view key = rest.substr(0, rest.find('.'));
    const KeySpec* row = reached.map->find(key);
    if (row == nullptr) return refuse_key(*reached.map, key);
    if (reached.map == &project_map && key == "include") {
      error(at_, "which files a project includes cannot be set",
            "keep a second project file for it, and compare the two");
      return false;
    }
    const bool last = key.size() == rest.size();
    std::vector<YamlNode*> found;
    for (YamlNode* node : reached.nodes)
      if (YamlNode* child = node->find(key)) found.push_back(child);
    if (found.empty() && last && !reached.nodes.empty()) {
      add(*reached.nodes.front(), key, value);
      return false;
    }
    if (found.empty()) return refuse_absent(reached, key);
    at_ = std::min(path_.size(), at_ + key.size() + 1);
    reached.nodes = std::move(found);
    reached.map = row->map;
    reached.named = row->kind == KeyKind::named_maps;
    reached.list = row->kind == KeyKind::maps ||
                   (row->map == nullptr && reached.nodes.front()->kind == YamlNode::Kind::sequence);
    return true;
  }

  /// A map under its name.
  bool step_into_named(Reached& reached) {
    const std::string_view rest = path_.substr(at_);
    const std::string_view name = rest.substr(0, rest.find('.'));
    std::vector<YamlNode*> found;
    for (YamlNode* node : reached.nodes)
      if (YamlNode* child = node->find(name)) found.push_back(child);
    if (found.empty()) {
      error(at_, fmt::format("there is no {} in {}", quoted_text(name), said()));
      return false;
    }
    at_ = std::min(path_.size(), at_ + name.size() + 1);
    reached.nodes = std::move(found);
    reached.named = false;
    return true;
  }

  bool step_into_list(Reached& reached) {
    const std::string_view rest = path_.substr(at_);
    std::vector<YamlNode*> items;
    for (YamlNode* list : reached.nodes)
      for (YamlNode& item : list->items) items.push_back(&item);
    YamlNode* chosen = nullptr;
    std::size_t length = 0;
    for (YamlNode* item : items)
      if (goes_on_with(rest, name_of(*item)) && name_of(*item).size() > length) {
        chosen = item;
        length = name_of(*item).size();
      }
    if (chosen == nullptr) {
      const std::string_view written = rest.substr(0, rest.find('.'));
      std::size_t number = 0;
      const auto [end, wrong] =
          std::from_chars(written.data(), written.data() + written.size(), number);
      if (wrong != std::errc() || end != written.data() + written.size())
        return refuse_name(items, rest, written);
      if (number < 1 || number > items.size()) return refuse_number(written, items.size());
      chosen = items[number - 1];
      length = written.size();
    }
    at_ = std::min(path_.size(), at_ + length + 1);
    reached.nodes = {chosen};
    reached.list = chosen->kind == YamlNode::Kind::sequence;
    return true;
  }

  void put(Reached& reached, YamlNode value) {
    if (reached.nodes.size() > 1)
      return error(0, fmt::format("{} stands in {} files, each for itself", quoted_text(path_),
                                  reached.nodes.size()));
    if (reached.nodes.empty()) return;
    YamlNode& node = *reached.nodes.front();
    const bool of_maps =
        node.kind == YamlNode::Kind::sequence &&
        std::any_of(node.items.begin(), node.items.end(),
                    [](const YamlNode& item) { return item.kind == YamlNode::Kind::map; });
    if (node.kind == YamlNode::Kind::map)
      return error(0, fmt::format("{} is a map: name the key in it", quoted_text(path_)),
                   reached.map != nullptr ? keys_words(*reached.map) : std::string());
    if (of_maps)
      return error(0, fmt::format("{} is a list: name one of it, or its number from 1 to {}",
                                  quoted_text(path_), node.items.size()));
    values_.push_back(
        {std::string(path_), words_of_value(value), words_of_value(node), node.where});
    node = std::move(value);
  }

  void add(YamlNode& map, std::string_view key, YamlNode& value) {
    values_.push_back({std::string(path_), words_of_value(value), {}, {}});
    const SourceLocation where{std::string(set_option), number_,
                               characters_of(text_.substr(0, at_)) + 1};
    if (map.kind == YamlNode::Kind::null) map.kind = YamlNode::Kind::map;
    map.entries.push_back({std::string(key), where, std::move(value)});
  }

  bool refuse_key(const MapSpec& map, std::string_view written) {
    std::vector<std::string> known;
    for (const KeySpec& key : map.keys) known.emplace_back(key.name);
    std::string help = suggest_name(written, known);
    if (help.empty()) help = keys_words(map);
    error(at_, fmt::format("{} has no key {}", said(), quoted_text(written)), std::move(help));
    return false;
  }

  bool refuse_absent(const Reached& reached, std::string_view key) {
    const std::string table = std::string(key) + "_from";
    for (const YamlNode* node : reached.nodes)
      if (const YamlNode* from = node->find(table)) {
        error(
            at_,
            fmt::format("the {} of {} stand in the table {}", key, said(), quoted_text(from->text)),
            fmt::format("set '{}' to the name of another table", table));
        return false;
      }
    if (names_complete_) error(at_, fmt::format("{} has no '{}' to set a part of", said(), key));
    return false;
  }

  bool refuse_name(const std::vector<YamlNode*>& items, std::string_view rest,
                   std::string_view written) {
    std::vector<std::string> known;
    for (const YamlNode* item : items) {
      if (!name_of(*item).empty()) known.emplace_back(name_of(*item));
      const YamlNode* twin = item->find("mirror");
      if (twin == nullptr || !goes_on_with(rest, twin->text)) continue;
      error(at_,
            fmt::format("{} is the mirror image of '{}'", quoted_text(twin->text), name_of(*item)),
            fmt::format("set it there: '{}' follows", twin->text));
      return false;
    }
    if (!names_complete_) return false;
    std::string help = suggest_name(written, known);
    if (help.empty()) help = listed(known, items.size());
    error(at_, fmt::format("{} has no {}", said(), quoted_text(written)), std::move(help));
    return false;
  }

  bool refuse_number(std::string_view written, std::size_t count) {
    error(at_, count == 0 ? fmt::format("{} has nothing in it", said())
                          : fmt::format("{} has {} in it, counted from 1: there is no {}", said(),
                                        count, written));
    return false;
  }

  static std::string listed(const std::vector<std::string>& known, std::size_t count) {
    if (known.empty()) return count == 0 ? "" : fmt::format("give a number from 1 to {}", count);
    std::string names;
    for (std::size_t i = 0; i < std::min(known.size(), most_listed_names); ++i)
      names += (i > 0 ? ", " : "") + known[i];
    return "there are: " + names + (known.size() > most_listed_names ? ", ..." : "");
  }

  /// What the path has come to, in words.
  std::string said() const {
    return at_ == 0 ? "a project" : quoted_text(path_.substr(0, at_ - 1));
  }

  void error(std::size_t offset, std::string message, std::string suggestion = {}) {
    draft_.add_error({std::string(set_option), number_, characters_of(text_.substr(0, offset)) + 1},
                     std::move(message), std::move(suggestion));
  }

  std::string_view text_;
  int number_;
  bool names_complete_;  ///< false: what is not found may be in a file that could not be read
  ProjectDraft& draft_;
  std::vector<SetValue>& values_;
  std::string_view path_;
  std::size_t at_ = 0;  ///< how far the path is followed
};

}  // namespace

ValuesSet set_values(std::vector<ParsedFile>& files, const std::vector<std::string>& texts,
                     ProjectDraft& draft) {
  const bool names_complete = draft.errors.list.empty();
  std::set<std::string, std::less<>> paths;
  ValuesSet set;
  int number = 0;
  for (const std::string& text : texts)
    SetValueWalk(text, ++number, names_complete, draft, set.values).run(files, paths);
  set.shown.name = set_option;
  set.shown.lines = texts;
  return set;
}

}  // namespace linewright
