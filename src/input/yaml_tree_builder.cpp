#include "input/yaml_tree_builder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "input/utf8.hpp"
#include "input/yaml_parser_words.hpp"
#include "system/decimal.hpp"

namespace linewright {
namespace {

/// After so many errors the rest of the document is not read.
constexpr std::size_t most_yaml_errors = 100;

std::string given_twice(const std::string& key, int first_line) {
  return fmt::format("the key '{}' is given twice; the first is in line {}", printable(key, 60),
                     first_line);
}

bool holds_control_character(const std::string& value) {
  for (std::size_t offset = 0; offset < value.size();) {
    const std::size_t length = std::max<std::size_t>(1, utf8_length(value, offset));
    if (value[offset] != '\n' && value[offset] != '\t' &&
        is_control_character(value, offset, length))
      return true;
    offset += length;
  }
  return false;
}

std::optional<std::size_t> first_invisible(const std::string& value) {
  for (std::size_t offset = 0; offset < value.size();) {
    const std::size_t length = std::max<std::size_t>(1, utf8_length(value, offset));
    if (is_invisible_character(value, offset, length)) return offset;
    offset += length;
  }
  return std::nullopt;
}

}  // namespace

std::string nested_too_deeply() {
  return fmt::format("nested more than {} deep", deepest_nesting);
}
std::string too_many_values() {
  return fmt::format("more than {} values", most_nodes);
}

std::optional<std::size_t> YamlTreeBuilder::open_bracket() const {
  for (auto innermost = open_.rbegin(); innermost != open_.rend(); ++innermost)
    if (innermost->bracketed) return innermost->offset;
  return std::nullopt;
}

void YamlTreeBuilder::report(std::size_t offset, std::string message, std::string_view suggestion) {
  Diagnostic error = text_.error(offset, std::move(message), std::string(suggestion));
  for (const Diagnostic& known : errors_)
    if (known.where == error.where) return;
  errors_.push_back(std::move(error));
  if (errors_.size() < most_yaml_errors) return;
  errors_.push_back(text_.file_error("too many errors; the rest of the file is not read"));
  throw StopParsing{};
}

void YamlTreeBuilder::OnDocumentStart(const YAML::Mark& mark) {
  const std::size_t offset = seen(mark);
  if (++documents_ == 1) return;
  const auto rest = std::string_view(text_.text()).substr(offset);
  if (rest.starts_with("---"))
    report(offset, "a second document; a file holds one");
  else if (root_.kind == YamlNode::Kind::null)
    report(offset, fmt::format("expected a key or a value, found '{}'", rest.substr(0, 1)));
  else
    report(offset, "text after the end of the document", "check the indentation");
  throw StopParsing{};
}

void YamlTreeBuilder::OnNull(const YAML::Mark& mark, YAML::anchor_t) {
  const std::size_t offset = seen(mark);
  refuse_tag(offset, "");
  const std::size_t stands_at = null_offset(offset);
  refuse_missing_colon(stands_at);
  YamlNode node;
  node.where = text_.place(stands_at);
  add(std::move(node), offset);
}

// The parser takes a lone word for a key without a value, so a forgotten colon would pass.
void YamlTreeBuilder::refuse_missing_colon(std::size_t after_key) {
  if (open_.empty() || !open_.back().key_read || open_.back().key.empty()) return;
  const std::string& text = text_.text();
  if (after_key == 0 || text[after_key - 1] == ':' || text_.null_written_at(after_key)) return;
  const std::string& key = open_.back().key;
  const std::size_t start = open_.back().key_offset;
  const bool splits_number =
      start >= 2 && text[start - 1] == ',' && is_digit(text[start - 2]) && is_digit(text[start]);
  std::string_view mend;
  if (key.find(':') != std::string::npos) mend = "put a space after the ':'";
  if (splits_number) mend = "write decimals with a point";
  report(after_key, fmt::format("expected ':' after '{}'", printable(key, 60)), mend);
}

void YamlTreeBuilder::OnAlias(const YAML::Mark& mark, YAML::anchor_t) {
  const std::size_t offset = seen(mark);
  report(offset, std::string(alias_refused), alias_help);
  YamlNode node;
  node.where = text_.place(offset);
  add(std::move(node), offset);
}

void YamlTreeBuilder::OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                               const std::string& value) {
  const std::size_t offset = seen(mark);
  refuse_tag(offset, tag);
  YamlNode node;
  node.kind = YamlNode::Kind::scalar;
  node.text = value;
  node.quoted = tag == "!";  // the parser's tag for all that is not plain
  node.where = text_.place(offset);
  if (node.quoted && text_.unclosed_quote_at(offset)) {
    report(offset, std::string(quote_not_closed));
    throw StopParsing{};
  }
  if (node.quoted && holds_control_character(value))
    report(offset, "a text with a control character in it", "leave the escape out");
  if (const auto invisible = first_invisible(value)) report_invisible(offset, value, *invisible);
  add(std::move(node), offset);
}

// By an escape the character stands nowhere in the file itself: then where its text begins.
void YamlTreeBuilder::report_invisible(std::size_t offset, const std::string& value,
                                       std::size_t at) {
  const std::string character = value.substr(at, utf8_length(value, at));
  const std::size_t written = text_.text().find(character, offset);
  const bool as_it_is = written <= offset + at + 1;
  report(as_it_is ? written : offset,
         fmt::format("an invisible character, U+{:04X}, in '{}'",
                     static_cast<std::uint32_t>(code_point(value, at, character.size())),
                     printable(value, 60)),
         "type it anew without what was pasted in with it");
}

void YamlTreeBuilder::OnAnchor(const YAML::Mark& mark, const std::string&) {
  report(seen(mark), std::string(anchor_refused), anchor_help);
}

std::size_t YamlTreeBuilder::seen(const YAML::Mark& mark) {
  const auto offset = static_cast<std::size_t>(std::max(mark.pos, 0));
  last_offset_ = std::max(last_offset_, std::min(offset, text_.text().size()));
  return std::min(offset, text_.text().size());
}

void YamlTreeBuilder::refuse_tag(std::size_t offset, const std::string& tag) {
  const bool written = offset < text_.text().size() && text_.text()[offset] == '!';
  const bool given = !tag.empty() && tag != "?" && tag != "!";
  if (written || given) report(offset, std::string(tag_refused), tag_help);
}

// The parser gives an empty value the place of the next thing, which may be lines away: it is put
// where the value should stand.
std::size_t YamlTreeBuilder::null_offset(std::size_t offset) const {
  if (open_.empty()) return offset;
  const Open& in = open_.back();
  if (text_.null_written_at(offset)) return offset;
  if (in.node.kind == YamlNode::Kind::map)
    return in.key_read ? text_.after_key(in.key_offset, in.key) : offset;
  return in.bracketed ? offset : text_.after_previous(offset);
}

void YamlTreeBuilder::count_node(std::size_t offset) {
  if (++nodes_ <= most_nodes) return;
  report(offset, too_many_values(), too_many_help);
  throw StopParsing{};
}

void YamlTreeBuilder::open(YamlNode::Kind kind, const YAML::Mark& mark, const std::string& tag,
                           YAML::EmitterStyle::value style) {
  const std::size_t offset = seen(mark);
  refuse_tag(offset, tag);
  if (open_.size() >= static_cast<std::size_t>(deepest_nesting)) {
    report(offset, nested_too_deeply(), too_deep_help);
    throw StopParsing{};
  }
  Open opened;
  opened.node.kind = kind;
  opened.node.where = text_.place(offset);
  opened.offset = offset;
  // A single pair inside a list ('[a: 1]') has the flow style too, but no bracket of its own.
  opened.bracketed = style == YAML::EmitterStyle::Flow &&
                     std::string_view("[{").find(text_.text()[offset]) != std::string_view::npos;
  open_.push_back(std::move(opened));
}

void YamlTreeBuilder::close() {
  Open closed = std::move(open_.back());
  open_.pop_back();
  add(std::move(closed.node), closed.offset);
}

void YamlTreeBuilder::add(YamlNode node, std::size_t offset) {
  count_node(offset);
  if (open_.empty()) {
    root_ = std::move(node);
    return;
  }
  Open& in = open_.back();
  if (in.node.kind == YamlNode::Kind::sequence) {
    in.node.items.push_back(std::move(node));
  } else if (!in.key_read) {
    take_key(in, std::move(node), offset);
  } else {
    in.key_read = false;
    if (!in.key_refused) in.node.entries.back().value = std::move(node);
  }
}

void YamlTreeBuilder::take_key(Open& in, YamlNode node, std::size_t offset) {
  in.key_read = true;
  in.key_offset = offset;
  in.key = node.text;
  in.key_refused = true;
  if (node.kind == YamlNode::Kind::sequence || node.kind == YamlNode::Kind::map)
    return report(offset, "a key must be a single word or text, not a list or map");
  if (node.kind == YamlNode::Kind::null) return report(offset, "expected a key, found nothing");
  if (node.text == "<<" && !node.quoted)
    return report(offset, "a merge key ('<<') is not read", "write the keys out");
  const auto [known, added] = in.lines_of_keys.emplace(node.text, node.where.line);
  if (!added) return report_second(in, node.text, known->second, offset);
  in.key_refused = false;
  in.node.entries.push_back({std::move(node.text), std::move(node.where), {}});
}

// Where the first key of an item comes again, the dash of the next item was left out: all its keys
// are there again then, for this one slip.
void YamlTreeBuilder::report_second(Open& in, const std::string& key, int first_line,
                                    std::size_t offset) {
  if (in.begins_anew) return;
  const bool is_item = open_.size() > 1 && !in.bracketed &&
                       open_[open_.size() - 2].node.kind == YamlNode::Kind::sequence;
  in.begins_anew = is_item && in.node.entries.front().key == key;
  report(offset, given_twice(key, first_line),
         in.begins_anew ? "put '- ' before it where the next item of the list begins" : "");
}

}  // namespace linewright
