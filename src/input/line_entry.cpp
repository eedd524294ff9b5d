#include "input/line_entry.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "input/line_vocabulary.hpp"
#include "input/suggest_name.hpp"

namespace linewright {
namespace {

std::string found_words(const YamlNode& node) {
  switch (node.kind) {
    case YamlNode::Kind::null:
      return "nothing";
    case YamlNode::Kind::scalar:
      return fmt::format("'{}'", node.text);
    case YamlNode::Kind::sequence:
      return "a list";
    case YamlNode::Kind::map:
      return "a map";
  }
  return "";
}

/// Reads the parts of one entry and gathers what is wrong with them.
class EntryReader {
 public:
  EntryReader(const YamlNode& entry, BareLength bare, bool built_in,
              std::vector<Diagnostic>& errors)
      : entry_(entry), bare_(bare), built_in_(built_in), errors_(errors) {}

  void error(const SourceLocation& where, std::string message, std::string suggestion = "") {
    errors_.push_back({where, std::move(message), std::move(suggestion), ""});
  }

  void check_keys(std::optional<LineKind> kind) {
    std::vector<std::string> known;
    for (const LineKey& key : line_keys) known.emplace_back(key.name);
    if (built_in_) known.emplace_back("mark");
    for (const YamlEntry& given : entry_.entries) {
      if (std::find(known.begin(), known.end(), given.key) == known.end()) {
        error(given.key_where, fmt::format("a line has no key '{}'", given.key),
              suggest_name(given.key, known));
        continue;
      }
      const auto key = std::find_if(line_keys.begin(), line_keys.end(),
                                    [&](const LineKey& each) { return each.name == given.key; });
      if (key != line_keys.end() && kind && !applies(key->scope, *kind))
        error(given.key_where,
              fmt::format("'{}' is a key for {} only", given.key, scope_words(key->scope)));
    }
  }

  /// The text of a key; empty, with an error where it is `required`, when it is left out.
  std::string text(const YamlNode& map, std::string_view key, bool required) {
    const YamlNode* node = map.find(key);
    if (!node) {
      if (required) error(map.where, fmt::format("'{}' is missing", key));
      return "";
    }
    const bool blank = node->text.find_first_not_of(" \t\r\n") == std::string::npos;
    if (node->kind == YamlNode::Kind::scalar && !blank) return node->text;
    error(node->where, fmt::format("{}: expected words, found {}", key, found_words(*node)));
    return "";
  }

  std::optional<LineKind> kind() {
    const std::string written = text(entry_, "kind", true);
    if (written.empty()) return std::nullopt;
    std::vector<std::string> known;
    for (const KindName& each : kind_names) {
      if (each.name == written) return each.kind;
      known.emplace_back(each.name);
    }
    error(entry_.find("kind")->where,
          fmt::format("kind: expected one of {}, found '{}'", fmt::join(known, ", "), written),
          suggest_name(written, known));
    return std::nullopt;
  }

  /// The `source` of a map, with its `mark` where the entry is built in.
  Source source(const YamlNode& map) {
    Source result{text(map, "source", true), Mark::builder};
    if (!built_in_) return result;
    const std::string written = text(map, "mark", true);
    const auto named = std::find_if(mark_names.begin(), mark_names.end(),
                                    [&](const MarkName& each) { return each.name == written; });
    if (named != mark_names.end())
      result.mark = named->mark;
    else if (!written.empty())
      error(map.find("mark")->where, fmt::format("mark: no such mark as '{}'", written));
    return result;
  }

  /// A number of the entry with its source: the entry's own unless the value states another.
  std::optional<SourcedValue> value(std::string_view key, Dimension dimension, LineRange range,
                                    const Source& entry_source) {
    const YamlNode* node = entry_.find(key);
    if (!node) return std::nullopt;
    Source from = entry_source;
    if (built_in_ && node->kind == YamlNode::Kind::map) {
      check_value_keys(key, *node);
      from = source(*node);
      const YamlNode* inner = node->find("value");
      if (!inner) {
        error(node->where, fmt::format("{}: 'value' is missing", key));
        return std::nullopt;
      }
      node = inner;
    }
    const std::optional<double> number = quantity(key, *node, dimension, range);
    if (!number) return std::nullopt;
    return SourcedValue{*number, from};
  }

  std::optional<double> number(std::string_view key, Dimension dimension, LineRange range) {
    const YamlNode* node = entry_.find(key);
    return node ? quantity(key, *node, dimension, range) : std::nullopt;
  }

  std::optional<double> required_number(std::string_view key, Dimension dimension,
                                        LineRange range) {
    if (!entry_.find(key)) error(entry_.where, fmt::format("'{}' is missing", key));
    return number(key, dimension, range);
  }

  const YamlNode& entry() const { return entry_; }

  const SourceLocation& where(std::string_view key) const {
    const YamlNode* node = entry_.find(key);
    return node ? node->where : entry_.where;
  }

 private:
  void check_value_keys(std::string_view key, const YamlNode& map) {
    for (const YamlEntry& given : map.entries)
      if (given.key != "value" && given.key != "source" && given.key != "mark")
        error(given.key_where, fmt::format("{}: a value has no key '{}'", key, given.key));
  }

  std::optional<double> quantity(std::string_view key, const YamlNode& node, Dimension dimension,
                                 LineRange range) {
    if (node.kind != YamlNode::Kind::scalar) {
      error(node.where, fmt::format("{}: expected {}, found {}", key, dimension_words(dimension),
                                    found_words(node)));
      return std::nullopt;
    }
    if (node.quoted) {
      error(node.where, fmt::format("{}: expected {} without quotes, found \"{}\"", key,
                                    dimension_words(dimension), node.text));
      return std::nullopt;
    }
    const QuantityReading reading = read_quantity(node.text, dimension, bare_);
    if (!reading.value) {
      error(node.where, fmt::format("{}: {}", key, reading.error));
      return std::nullopt;
    }
    const std::string objection = out_of_range(range, *reading.value);
    if (objection.empty()) return reading.value;
    error(node.where, fmt::format("{}: {}, found '{}'", key, objection, node.text));
    return std::nullopt;
  }

  const YamlNode& entry_;
  BareLength bare_;
  bool built_in_;
  std::vector<Diagnostic>& errors_;
};

void read_size(EntryReader& reader, Line& line) {
  line.outside_diameter_in =
      reader.required_number("outside", Dimension::length, LineRange::positive).value_or(0);
  line.plus_tolerance_in =
      reader.number("plus_tolerance", Dimension::length, LineRange::not_negative).value_or(0);
  if (!has_bore(line.kind)) return;
  const auto inside = reader.required_number("inside", Dimension::length, LineRange::positive);
  line.inside_diameter_in = inside.value_or(0);
  if (inside && line.outside_diameter_in > 0 && *inside >= line.outside_diameter_in)
    reader.error(reader.where("inside"),
                 fmt::format("inside: must be smaller than outside, found {} in against {} in",
                             *inside, line.outside_diameter_in));
}

/// To the centreline, whichever of the two ways the entry measures it.
std::optional<SourcedValue> least_bend_radius_in(EntryReader& reader, const Line& line) {
  constexpr std::string_view to_inside = "minimum_inside_bend_radius";
  auto radius =
      reader.value("minimum_bend_radius", Dimension::length, LineRange::positive, line.size_source);
  auto inside = reader.value(to_inside, Dimension::length, LineRange::positive, line.size_source);
  if (radius && inside) {
    reader.error(
        reader.where(to_inside),
        fmt::format("{}: 'minimum_bend_radius' is stated too: leave one of them out", to_inside));
    return std::nullopt;
  }
  if (!inside) return radius;
  inside->value += line.largest_radius_in();
  inside->source.text += ", measured to the inside of the bend, half of the outside diameter added";
  return inside;
}

void read_bending(EntryReader& reader, Line& line) {
  line.minimum_bend_radius_in = least_bend_radius_in(reader, line);
  line.usual_bend_radius_in =
      reader.number("usual_bend_radius", Dimension::length, LineRange::positive);
  if (!line.minimum_bend_radius_in) return;
  const double least = line.minimum_bend_radius_in->value;
  if (!line.usual_bend_radius_in) line.usual_bend_radius_in = least;
  if (*line.usual_bend_radius_in < least)
    reader.error(reader.where("usual_bend_radius"),
                 fmt::format("usual_bend_radius: must not be under the minimum, found {} in "
                             "against {} in to the centreline",
                             *line.usual_bend_radius_in, least));
}

void read_properties(EntryReader& reader, Line& line) {
  const Source& from = line.size_source;
  line.support_spacing_in =
      reader.value("support_spacing", Dimension::length, LineRange::positive, from);
  line.weight_lb_per_in =
      reader.value("weight", Dimension::mass_per_length, LineRange::positive, from);
  line.expansion_per_degf = reader.value("expansion", Dimension::plain, LineRange::expansion, from);
  line.slack_fraction = reader.value("slack", Dimension::plain, LineRange::slack, from);
  line.cut_allowance_in = reader.number("cut_allowance", Dimension::length, LineRange::not_negative)
                              .value_or(usual_cut_allowance_in(line.kind));
  if (has_bore(line.kind))
    line.youngs_modulus_psi =
        reader.value("youngs_modulus", Dimension::pressure, LineRange::positive, from);
  if (line.kind != LineKind::cable) return;
  line.construction = reader.text(reader.entry(), "construction", false);
  line.breaking_strength_lbf =
      reader.value("breaking_strength", Dimension::force, LineRange::positive, from);
  line.axial_stiffness_lbf =
      reader.value("axial_stiffness", Dimension::force, LineRange::positive, from);
}

}  // namespace

std::optional<Line> read_line_entry(const YamlNode& node, BareLength bare, bool built_in,
                                    std::vector<Diagnostic>& errors) {
  const std::size_t errors_before = errors.size();
  EntryReader reader(node, bare, built_in, errors);
  if (node.kind != YamlNode::Kind::map) {
    reader.error(node.where,
                 fmt::format("expected a line's keys and values, found {}", found_words(node)));
    return std::nullopt;
  }

  Line line;
  line.name = reader.text(node, "name", true);
  const std::optional<LineKind> kind = reader.kind();
  reader.check_keys(kind);
  line.material = reader.text(node, "material", false);
  line.size_source = reader.source(node);
  // What else an entry must and may say depends on its kind.
  if (!kind) return std::nullopt;
  line.kind = *kind;
  read_size(reader, line);
  read_bending(reader, line);
  read_properties(reader, line);
  if (!built_in) line.where = node.where;
  if (errors.size() != errors_before) return std::nullopt;
  return line;
}

}  // namespace linewright
