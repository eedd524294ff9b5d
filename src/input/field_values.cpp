#include "input/field_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "input/derive/quiet_values.hpp"
#include "input/field_words.hpp"
#include "input/project_draft.hpp"
#include "input/suggest_name.hpp"
#include "input/utf8.hpp"

namespace linewright {

namespace {

using Fault = NumberFault::Kind;

constexpr double unread = std::numeric_limits<double>::quiet_NaN();

constexpr NumberSpec coordinate{"a coordinate", Dimension::length, Sign::any};
constexpr NumberSpec direction_part{"a direction", Dimension::plain, Sign::any};

bool in_range(double value, const NumberSpec& spec) {
  if (spec.sign == Sign::positive && value <= 0) return false;
  if (spec.sign == Sign::not_negative && value < 0) return false;
  return std::abs(value) <= spec.largest;
}

/// "100 lbf", "100" of a plain number.
std::string bound_words(double bound, Dimension dimension) {
  const std::string_view unit = internal_unit(dimension);
  return fmt::format("{}{}{}", bound, unit.empty() ? "" : " ", unit);
}

std::optional<NumberFault> range_fault(double value, const NumberSpec& spec) {
  const bool is_length = spec.dimension == Dimension::length;
  const auto out_of_range = [](std::string words) {
    return NumberFault{Fault::out_of_range, std::move(words), {}};
  };
  if (!spec.range.empty()) {
    if (in_range(value, spec)) return std::nullopt;
    return out_of_range(fmt::format(fmt::runtime(spec.range), spec.largest));
  }
  if (spec.sign == Sign::positive && value <= 0) return out_of_range("must be greater than zero");
  if (spec.sign == Sign::not_negative && value < 0)
    return out_of_range("must not be less than zero");
  if (spec.sign == Sign::positive && is_length && value < smallest_length_in)
    return out_of_range("must be at least 0.000001 in");
  if (std::abs(value) > spec.largest) {
    NumberFault fault =
        out_of_range("must not be beyond " + bound_words(spec.largest, spec.dimension));
    const bool doubtful = is_length && spec.largest != largest_length_in && value > spec.largest;
    if (doubtful) fault.suggestion = units_suggestion;
    return fault;
  }
  if (spec.smallest > 0 && value < spec.smallest)
    return NumberFault{
        Fault::slip, "must not be less than " + bound_words(spec.smallest, spec.dimension), {}};
  if (spec.whole && value != std::floor(value))
    return NumberFault{Fault::slip, "must be a whole number", {}};
  return std::nullopt;
}

bool has_hidden_characters(std::string_view text) {
  for (std::size_t offset = 0; offset < text.size();) {
    const std::size_t length = std::max<std::size_t>(utf8_length(text, offset), 1);
    if (is_control_character(text, offset, length) || is_invisible_character(text, offset, length))
      return true;
    offset += length;
  }
  return false;
}

std::string alternatives(std::span<const std::string_view> words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) all += i + 1 == words.size() ? " or " : ", ";
    all += words[i];
  }
  return all;
}

/// True where a comma and nothing else stands between a whole number and the digits after it.
bool comma_splits(const YamlNode& whole, const YamlNode& decimals) {
  const auto has_only = [](std::string_view text, std::string_view letters) {
    return !text.empty() && text.find_first_not_of(letters) == std::string_view::npos;
  };
  return has_only(whole.text, "-0123456789") && has_only(decimals.text, "0123456789") &&
         !whole.quoted && !decimals.quoted && decimals.where.line == whole.where.line &&
         decimals.where.column == whole.where.column + static_cast<int>(whole.text.size()) + 1;
}

/// What to write where `surplus` items too many come of commas within numbers; empty for no such
/// slip.
std::string split_by_commas(const std::vector<YamlNode>& items, std::size_t surplus) {
  std::string whole = printable(items.front().text, 60);
  std::size_t splits = 0;
  for (std::size_t i = 1; i < items.size(); ++i) {
    const bool splits_here = comma_splits(items[i - 1], items[i]);
    if (splits_here) ++splits;
    whole += (splits_here ? "." : ", ") + printable(items[i].text, 60);
  }
  return splits == surplus ? fmt::format("write decimals with a point: [{}]", whole) : "";
}

/// Of these a builder who draws in millimetres may well mean newtons or degrees Celsius.
bool differs_in_metric(Dimension dimension) {
  return dimension == Dimension::force || dimension == Dimension::temperature ||
         dimension == Dimension::pressure || dimension == Dimension::stiffness ||
         dimension == Dimension::speed_vertical;
}

template <std::size_t Count>
std::array<double, Count> read_row(const YamlNode& node, const NumberSpec& spec,
                                   std::string_view list_words, ValueContext& context) {
  std::array<double, Count> row;
  row.fill(unread);
  if (node.kind == YamlNode::Kind::unread) return row;
  if (node.kind != YamlNode::Kind::sequence || node.items.size() != Count) {
    const std::string found = node.kind == YamlNode::Kind::sequence
                                  ? fmt::format("a list of {}", node.items.size())
                                  : found_words(node);
    const bool too_many = node.items.size() > Count && node.items.size() <= 2 * Count;
    const std::string split =
        too_many ? split_by_commas(node.items, node.items.size() - Count) : std::string();
    context.error(node.where, fmt::format("expected {}, found {}", list_words, found), split);
    return row;
  }
  for (std::size_t i = 0; i < Count; ++i) row[i] = read_number(node.items[i], spec, context);
  return row;
}

/// What to write in place of a number in quotes, which may be wrong by itself, too.
std::string without_quotes_words(std::string_view text, Dimension dimension, BareLength bare) {
  const auto number = read_quantity(text, dimension, bare);
  if (number) return fmt::format("write it without: {}", printable(text, 60));
  return "write it without, but as it stands it is no number: " + number.error();
}

}  // namespace

bool holds_tape_marks(const YamlNode& node, Dimension dimension) {
  return dimension == Dimension::length && node.text.find_first_of("'\"") != std::string::npos;
}

Expected<double, NumberFault> number_in(const YamlNode& node, const NumberSpec& spec,
                                        BareLength bare) {
  if (node.kind != YamlNode::Kind::scalar)
    return NumberFault{
        Fault::unreadable,
        fmt::format("expected {}, found {}", dimension_words(spec.dimension), found_words(node)),
        {}};
  if (node.quoted && !holds_tape_marks(node, spec.dimension))
    return NumberFault{Fault::quoted, {}, {}};
  const auto value = read_quantity(node.text, spec.dimension, bare);
  if (!value) return NumberFault{Fault::unreadable, value.error(), {}};
  if (auto fault = range_fault(*value, spec)) return *std::move(fault);
  return *value;
}

double read_number(const YamlNode& node, const NumberSpec& spec, ValueContext& context) {
  const auto number = number_in(node, spec, context.bare);
  if (number && context.bare == BareLength::millimetre && differs_in_metric(spec.dimension) &&
      is_bare(node))
    ++context.taken_beside_mm;
  if (number) return *number;
  const NumberFault& fault = number.error();
  switch (fault.kind) {
    case Fault::unreadable:
      context.error(node.where, fault.words);
      break;
    case Fault::quoted:
      context.error(node.where, "a number must not be in quotes",
                    without_quotes_words(node.text, spec.dimension, context.bare));
      break;
    case Fault::out_of_range:
      context.error(
          node.where,
          fmt::format("{} {}, found {}", spec.words, fault.words, printable(node.text, 60)),
          fault.suggestion);
      break;
    case Fault::slip:
      context.error(node.where, fmt::format("{} {}", spec.words, fault.words));
      break;
  }
  return unread;
}

bool has_text(const YamlNode& node) {
  return node.kind == YamlNode::Kind::scalar &&
         node.text.find_first_not_of(" \t\r\n") != std::string::npos;
}

std::string read_text(const YamlNode& node, std::string_view words, ValueContext& context) {
  if (node.kind != YamlNode::Kind::scalar) {
    context.error(node.where, fmt::format("expected {}, found {}", words, found_words(node)));
    return {};
  }
  if (!has_text(node)) {
    context.error(node.where, fmt::format("{} must not be empty", words));
    return {};
  }
  if (has_hidden_characters(node.text)) {
    context.error(
        node.where,
        fmt::format("{} must be one line without control or invisible characters", words));
    return {};
  }
  return node.text;
}

std::optional<std::size_t> read_word(const YamlNode& node, std::string_view words,
                                     std::span<const std::string_view> known,
                                     ValueContext& context) {
  const bool is_word = node.kind == YamlNode::Kind::scalar;
  const auto found = std::find(known.begin(), known.end(), node.text);
  if (is_word && found != known.end()) return static_cast<std::size_t>(found - known.begin());
  context.error(
      node.where,
      fmt::format("{} must be {}, found {}", words, alternatives(known), found_words(node)),
      is_word ? suggest_choice(node.text, {known.begin(), known.end()}) : std::string());
  return std::nullopt;
}

Vec3 read_place(const YamlNode& node, ValueContext& context) {
  const auto [x, y, z] = read_row<3>(node, coordinate, "three lengths [FS, BL, WL]", context);
  return {x, y, z};
}

Vec2 read_plane_point(const YamlNode& node, ValueContext& context) {
  const auto [u, v] = read_row<2>(node, coordinate, "two lengths", context);
  return {u, v};
}

Vec3 read_direction(const YamlNode& node, ValueContext& context) {
  const auto [x, y, z] = read_row<3>(node, direction_part, "a direction of three numbers", context);
  return {x, y, z};
}

std::array<double, 2> read_pair(const YamlNode& node, const NumberSpec& spec,
                                std::string_view list_words, ValueContext& context) {
  return read_row<2>(node, spec, list_words, context);
}

const std::vector<YamlNode>& read_items(const YamlNode& node, ValueContext& context) {
  if (node.kind == YamlNode::Kind::sequence) return node.items;
  if (node.kind == YamlNode::Kind::unread) return no_items();
  std::string mend;
  if (node.kind == YamlNode::Kind::null) mend = "leave the key out, or write []";
  if (node.kind == YamlNode::Kind::map) mend = "put '- ' before each item of the list";
  context.error(node.where, fmt::format("expected a list, found {}", found_words(node)), mend);
  return no_items();
}

const std::vector<YamlNode>& no_items() {
  static const std::vector<YamlNode> none;
  return none;
}

}  // namespace linewright
