#include "input/field_reader.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cassert>
#include <limits>

#include "input/field_words.hpp"
#include "input/suggest_name.hpp"

namespace linewright {

namespace {

constexpr double unread = std::numeric_limits<double>::quiet_NaN();
constexpr Vec3 unread_place{unread, unread, unread};

std::string number_words(const NumberFault& fault, const KeySpec& key, const YamlNode& node) {
  switch (fault.kind) {
    case NumberFault::Kind::unreadable:
      return fmt::format("{}: {}", key.name, fault.words);
    case NumberFault::Kind::quoted:
      return fmt::format("{}: expected {} without quotes, found \"{}\"", key.name,
                         dimension_words(key.number.dimension), node.text);
    case NumberFault::Kind::out_of_range:
    case NumberFault::Kind::slip:
      break;
  }
  return fmt::format("{}: {}, found {}", key.name, fault.words, quoted_text(node.text));
}

}  // namespace

FieldReader::FieldReader(const YamlNode& node, const MapSpec& map, ValueContext& context)
    : node_(node), map_(map), context_(context) {
  if (node.kind != YamlNode::Kind::map) {
    may_hide_names_ = true;
    context.error(node.where, no_map_words(map, node));
  }
  refuse_unknown_keys();
}

void FieldReader::refuse_unknown_keys() {
  for (const YamlEntry& entry : node_.entries) {
    if (map_.find(entry.key) != nullptr) continue;
    if (!entry.value.items.empty() || !entry.value.entries.empty()) may_hide_names_ = true;
    const std::string meant = suggest_name(entry.key, key_names(map_));
    context_.error(entry.key_where, unknown_key_words(map_, entry.key),
                   meant.empty() ? keys_words(map_) : meant + " " + keys_words(map_));
  }
}

void FieldReader::refuse_keys_of(std::string_view owner) {
  for (const YamlEntry& entry : node_.entries) {
    const KeySpec* key = map_.find(entry.key);
    if (key == nullptr || key->of != owner) continue;
    const bool by_key = map_.voice == Voice::by_key;
    context_.error(by_key ? entry.key_where : entry.value.where, misplaced_words(map_, *key));
  }
}

const YamlNode* FieldReader::find(const KeySpec& key) const {
  assert(map_.find(key.name) != nullptr && map_.find(key.name)->kind == key.kind);
  return node_.find(key.name);
}

bool FieldReader::lacks(const KeySpec& key) const {
  return node_.kind == YamlNode::Kind::map && !has(key) && !is_misspelt(node_, map_, key.name);
}

const SourceLocation& FieldReader::where_of(const KeySpec& key) const {
  const YamlNode* node = find(key);
  return node != nullptr ? node->where : node_.where;
}

const YamlNode* FieldReader::require(const KeySpec& key) {
  const YamlNode* node = find(key);
  if (lacks(key))
    context_.error(node_.where, missing_words(map_, key),
                   key.need == Need::sometimes ? std::string(key.says) : std::string());
  return node;
}

/// What the map says, or nullptr; after an error where it always has to.
const YamlNode* FieldReader::value_of(const KeySpec& key) {
  return key.need == Need::always ? require(key) : find(key);
}

double FieldReader::number_in_node(const KeySpec& key, const YamlNode& node) {
  if (node.kind == YamlNode::Kind::unread) return unread;
  if (map_.voice == Voice::by_thing) return read_number(node, key.number, context_);
  const auto number = number_in(node, key.number, context_.bare);
  if (number) return *number;
  context_.error(node.where, number_words(number.error(), key, node));
  return unread;
}

double FieldReader::number(const KeySpec& key) {
  const YamlNode* node = require(key);
  return node != nullptr ? number_in_node(key, *node) : unread;
}

std::optional<double> FieldReader::optional_number(const KeySpec& key) {
  const YamlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  return number_in_node(key, *node);
}

std::array<double, 2> FieldReader::pair(const KeySpec& key) {
  const YamlNode* node = value_of(key);
  if (node == nullptr) return {unread, unread};
  return read_pair(*node, key.number, key.words, context_);
}

std::string FieldReader::text_in(const YamlNode& node, const KeySpec& key, std::string_view words) {
  if (map_.voice == Voice::by_thing) return read_text(node, words, context_);
  if (has_text(node)) return node.text;
  context_.error(node.where,
                 fmt::format("{}: expected words, found {}", key.name, found_words(node)));
  return {};
}

std::string FieldReader::text(const KeySpec& key) {
  const YamlNode* node = require(key);
  return node != nullptr ? text_in(*node, key, key.words) : std::string();
}

std::string FieldReader::optional_text(const KeySpec& key) {
  const YamlNode* node = find(key);
  return node != nullptr ? text_in(*node, key, key.words) : std::string();
}

std::optional<bool> FieldReader::optional_flag(const KeySpec& key) {
  const YamlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == YamlNode::Kind::scalar && !node->quoted) {
    if (node->text == "true") return true;
    if (node->text == "false") return false;
  }
  context_.error(node->where, fmt::format("expected true or false, found {}", found_words(*node)));
  return std::nullopt;
}

std::optional<std::size_t> FieldReader::word_in(const YamlNode& node, const KeySpec& key) {
  if (map_.voice == Voice::by_thing) return read_word(node, key.words, key.choices, context_);
  const std::string written = text_in(node, key, {});
  if (written.empty()) return std::nullopt;
  for (std::size_t i = 0; i < key.choices.size(); ++i)
    if (key.choices[i] == written) return i;
  context_.error(node.where,
                 fmt::format("{}: expected one of {}, found {}", key.name,
                             fmt::join(key.choices, ", "), quoted_text(written)),
                 suggest_choice(written, {key.choices.begin(), key.choices.end()}));
  return std::nullopt;
}

std::optional<std::size_t> FieldReader::word(const KeySpec& key) {
  const YamlNode* node = require(key);
  return node != nullptr ? word_in(*node, key) : std::nullopt;
}

std::optional<std::size_t> FieldReader::optional_word(const KeySpec& key) {
  const YamlNode* node = find(key);
  return node != nullptr ? word_in(*node, key) : std::nullopt;
}

Vec3 FieldReader::place(const KeySpec& key) {
  const YamlNode* node = require(key);
  return node != nullptr ? read_place(*node, context_) : unread_place;
}

std::optional<Vec3> FieldReader::optional_place(const KeySpec& key) {
  const YamlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  return read_place(*node, context_);
}

Vec2 FieldReader::plane_point(const KeySpec& key) {
  const YamlNode* node = require(key);
  return node != nullptr ? read_plane_point(*node, context_) : Vec2{unread, unread};
}

Vec3 FieldReader::direction_in(const YamlNode& node, const KeySpec& key) {
  const Vec3 read = read_direction(node, context_);
  if (norm(read) < smallest_length_in)
    context_.error(node.where, fmt::format("'{}' must point somewhere: it is zero", key.name));
  return read;
}

Vec3 FieldReader::direction(const KeySpec& key) {
  const YamlNode* node = require(key);
  return node != nullptr ? direction_in(*node, key) : unread_place;
}

std::optional<Vec3> FieldReader::optional_direction(const KeySpec& key) {
  const YamlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  return direction_in(*node, key);
}

std::vector<Vec3> FieldReader::places(const KeySpec& key) {
  std::vector<Vec3> read;
  for (const YamlNode& item : items(key)) read.push_back(read_place(item, context_));
  return read;
}

std::vector<Vec2> FieldReader::plane_points(const KeySpec& key) {
  std::vector<Vec2> read;
  for (const YamlNode& item : items(key)) read.push_back(read_plane_point(item, context_));
  return read;
}

const std::vector<YamlNode>& FieldReader::items(const KeySpec& key) {
  const YamlNode* node = value_of(key);
  return node != nullptr ? read_items(*node, context_) : no_items();
}

std::string FieldReader::own_name(const KeySpec& key, ProjectDraft& draft) {
  std::string name = text(key);
  if (name.empty())
    draft.names_complete = false;
  else
    draft.given.push_back({key.named, name, where_of(key)});
  return name;
}

std::string FieldReader::name(const KeySpec& key, ProjectDraft& draft) {
  require(key);
  return optional_name(key, draft);
}

std::string FieldReader::optional_name(const KeySpec& key, ProjectDraft& draft) {
  const YamlNode* node = find(key);
  if (node == nullptr) return {};
  std::string name = text_in(*node, key, fmt::format("the name of a {}", kind_word(key.named)));
  if (!name.empty()) draft.used.push_back({key.named, name, node->where});
  return name;
}

}  // namespace linewright
