#include "input/field_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "input/suggest_name.hpp"
#include "input/utf8.hpp"

namespace linewright {

namespace {

constexpr double unread = std::numeric_limits<double>::quiet_NaN();

constexpr NumberSpec coordinate{"a coordinate", Dimension::length, Sign::any};
constexpr NumberSpec direction_part{"a direction", Dimension::plain, Sign::any, largest_length_in,
                                    ""};

const std::vector<YamlNode>& no_items() {
  static const std::vector<YamlNode> none;
  return none;
}

/// What is out of range about a number, in words; empty for nothing.
std::string range_fault(double value, const NumberSpec& spec) {
  if (spec.sign == Sign::positive && value <= 0)
    return fmt::format("{} must be greater than zero", spec.words);
  if (spec.sign == Sign::not_negative && value < 0)
    return fmt::format("{} must not be less than zero", spec.words);
  if (spec.sign == Sign::positive && spec.dimension == Dimension::length &&
      value < smallest_length_in)
    return fmt::format("{} must be at least 0.000001 in", spec.words);
  if (std::abs(value) > spec.largest)
    return fmt::format("{} must not be beyond {}{}{}", spec.words, spec.largest,
                       spec.unit.empty() ? "" : " ", spec.unit);
  return {};
}

bool has_control_characters(std::string_view text) {
  for (std::size_t offset = 0; offset < text.size();) {
    const std::size_t length = std::max<std::size_t>(utf8_length(text, offset), 1);
    if (is_control_character(text, offset, length)) return true;
    offset += length;
  }
  return false;
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) all += i + 1 == words.size() ? " or " : ", ";
    all += words[i];
  }
  return all;
}

template <std::size_t Count>
std::array<double, Count> read_row(const YamlNode& node, const NumberSpec& spec,
                                   std::string_view list_words, ReadContext& context) {
  std::array<double, Count> row;
  row.fill(unread);
  if (node.kind != YamlNode::Kind::sequence || node.items.size() != Count) {
    const std::string found = node.kind == YamlNode::Kind::sequence
                                  ? fmt::format("a list of {}", node.items.size())
                                  : found_words(node);
    context.error(node.where, fmt::format("expected {}, found {}", list_words, found));
    return row;
  }
  for (std::size_t i = 0; i < Count; ++i) row[i] = read_number(node.items[i], spec, context);
  return row;
}

}  // namespace

std::string found_words(const YamlNode& node) {
  switch (node.kind) {
    case YamlNode::Kind::null:
      return "nothing";
    case YamlNode::Kind::scalar:
      return quoted_text(node.text);
    case YamlNode::Kind::sequence:
      return "a list";
    case YamlNode::Kind::map:
      return "a map";
  }
  return "nothing";
}

double read_number(const YamlNode& node, const NumberSpec& spec, ReadContext& context) {
  if (node.kind != YamlNode::Kind::scalar) {
    context.error(node.where, fmt::format("expected {}, found {}", dimension_words(spec.dimension),
                                          found_words(node)));
    return unread;
  }
  if (node.quoted) {
    context.error(node.where, "a number must not be in quotes",
                  fmt::format("write it without: {}", quoted_text(node.text)));
    return unread;
  }
  const QuantityReading reading = read_quantity(node.text, spec.dimension, context.bare);
  if (!reading.value || !std::isfinite(*reading.value)) {
    context.error(node.where, reading.error);
    return unread;
  }
  const std::string fault = range_fault(*reading.value, spec);
  if (fault.empty()) return *reading.value;
  const bool bounded = spec.dimension == Dimension::length && spec.largest != largest_length_in;
  const bool doubtful = bounded && *reading.value > spec.largest;
  context.error(node.where, fmt::format("{}, found {}", fault, printable(node.text, 60)),
                doubtful ? std::string(units_suggestion) : std::string());
  return unread;
}

std::string read_text(const YamlNode& node, std::string_view words, ReadContext& context) {
  if (node.kind != YamlNode::Kind::scalar) {
    context.error(node.where, fmt::format("expected {}, found {}", words, found_words(node)));
    return {};
  }
  if (node.text.find_first_not_of(" \t\r\n") == std::string::npos) {
    context.error(node.where, fmt::format("{} must not be empty", words));
    return {};
  }
  if (has_control_characters(node.text)) {
    context.error(node.where, fmt::format("{} must be one line without control characters", words));
    return {};
  }
  return node.text;
}

std::optional<std::size_t> read_word(const YamlNode& node, std::string_view words,
                                     const std::vector<std::string>& known, ReadContext& context) {
  const auto found = std::find(known.begin(), known.end(), node.text);
  if (node.kind == YamlNode::Kind::scalar && found != known.end())
    return static_cast<std::size_t>(found - known.begin());
  const bool is_word = node.kind == YamlNode::Kind::scalar;
  context.error(node.where,
                fmt::format("{} must be {}, found {}", words, joined(known), found_words(node)),
                is_word ? suggest_name(node.text, known) : std::string());
  return std::nullopt;
}

Vec3 read_place(const YamlNode& node, ReadContext& context) {
  const auto [x, y, z] = read_row<3>(node, coordinate, "three lengths [FS, BL, WL]", context);
  return {x, y, z};
}

Vec2 read_plane_point(const YamlNode& node, ReadContext& context) {
  const auto [u, v] = read_row<2>(node, coordinate, "two lengths", context);
  return {u, v};
}

std::array<double, 2> read_pair(const YamlNode& node, const NumberSpec& spec,
                                std::string_view list_words, ReadContext& context) {
  return read_row<2>(node, spec, list_words, context);
}

const std::vector<YamlNode>& read_items(const YamlNode& node, ReadContext& context) {
  if (node.kind == YamlNode::Kind::sequence) return node.items;
  context.error(node.where, fmt::format("expected a list, found {}", found_words(node)),
                node.kind == YamlNode::Kind::null ? "leave the key out, or write []" : "");
  return no_items();
}

FieldReader::FieldReader(const YamlNode& node, std::string_view what, ReadContext& context,
                         std::vector<std::string> keys)
    : node_(node), what_(what), context_(context) {
  if (node.kind != YamlNode::Kind::map) {
    may_hide_names_ = true;
    context.error(node.where, fmt::format("expected {} as a map of keys and values, found {}", what,
                                          found_words(node)));
  }
  for (const YamlEntry& entry : node.entries) {
    if (std::find(keys.begin(), keys.end(), entry.key) != keys.end()) continue;
    if (!entry.value.items.empty() || !entry.value.entries.empty()) may_hide_names_ = true;
    context.error(entry.key_where,
                  fmt::format("unknown key {} in {}", quoted_text(entry.key), what),
                  suggest_name(entry.key, keys));
  }
}

const SourceLocation& FieldReader::where_of(std::string_view key) const {
  const YamlNode* node = find(key);
  return node != nullptr ? node->where : node_.where;
}

const YamlNode* FieldReader::require(std::string_view key) {
  const YamlNode* node = find(key);
  if (node == nullptr && node_.kind == YamlNode::Kind::map)
    context_.error(node_.where, fmt::format("{} needs '{}'", what_, key));
  return node;
}

double FieldReader::number(std::string_view key, const NumberSpec& spec) {
  const YamlNode* node = require(key);
  return node != nullptr ? read_number(*node, spec, context_) : unread;
}

std::optional<double> FieldReader::optional_number(std::string_view key, const NumberSpec& spec) {
  const YamlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  return read_number(*node, spec, context_);
}

std::string FieldReader::text(std::string_view key, std::string_view words) {
  const YamlNode* node = require(key);
  return node != nullptr ? read_text(*node, words, context_) : std::string();
}

std::string FieldReader::optional_text(std::string_view key, std::string_view words) {
  const YamlNode* node = find(key);
  return node != nullptr ? read_text(*node, words, context_) : std::string();
}

std::optional<bool> FieldReader::optional_flag(std::string_view key) {
  const YamlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == YamlNode::Kind::scalar && !node->quoted) {
    if (node->text == "true") return true;
    if (node->text == "false") return false;
  }
  context_.error(node->where, fmt::format("expected true or false, found {}", found_words(*node)));
  return std::nullopt;
}

Vec3 FieldReader::place(std::string_view key) {
  const YamlNode* node = require(key);
  return node != nullptr ? read_place(*node, context_) : Vec3{unread, unread, unread};
}

Vec3 FieldReader::direction(std::string_view key) {
  const YamlNode* node = require(key);
  if (node == nullptr) return {unread, unread, unread};
  const auto [x, y, z] =
      read_row<3>(*node, direction_part, "a direction of three numbers", context_);
  const Vec3 read{x, y, z};
  if (norm(read) < smallest_length_in)
    context_.error(node->where, fmt::format("'{}' must point somewhere: it is zero", key));
  return read;
}

std::vector<Vec3> FieldReader::places(std::string_view key) {
  std::vector<Vec3> read;
  for (const YamlNode& item : items(key)) read.push_back(read_place(item, context_));
  return read;
}

std::vector<Vec2> FieldReader::plane_points(std::string_view key) {
  std::vector<Vec2> read;
  for (const YamlNode& item : items(key)) read.push_back(read_plane_point(item, context_));
  return read;
}

const std::vector<YamlNode>& FieldReader::items(std::string_view key) {
  const YamlNode* node = find(key);
  return node != nullptr ? read_items(*node, context_) : no_items();
}

std::string FieldReader::give_name(Named kind) {
  std::string name = text("name", "a name");
  if (name.empty())
    context_.draft.names_complete = false;
  else
    context_.draft.given.push_back({kind, name, where_of("name")});
  return name;
}

std::string FieldReader::use_name(std::string_view key, Named kind) {
  require(key);
  return optional_use_name(key, kind);
}

std::string FieldReader::optional_use_name(std::string_view key, Named kind) {
  std::string name = optional_text(key, fmt::format("the name of a {}", kind_word(kind)));
  if (!name.empty()) context_.draft.used.push_back({kind, name, where_of(key)});
  return name;
}

}  // namespace linewright
