#include "input/line_entry.hpp"

#include <fmt/format.h>

#include <string>
#include <utility>

#include "input/keys/line_keys.hpp"
#include "input/map_reader.hpp"
#include "input/sourced_value.hpp"

namespace linewright {
namespace {

bool may_have_bore(LineKind kind) {
  return kind != LineKind::cable && kind != LineKind::wire && kind != LineKind::conduit;
}

/// What is trimmed off both ends together once the line is in place. Common practice; hoses,
/// cables and casings are made up to length with their fittings.
double usual_cut_allowance_in(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
    case LineKind::plastic_tube:
      return 1.0;
    case LineKind::wire:
      return 6.0;
    case LineKind::hose:
    case LineKind::cable:
    case LineKind::rod:
    case LineKind::conduit:
      return 0.0;
  }
  return 0.0;
}

/// Reads the parts of one entry.
class EntryReader {
 public:
  using Fields = MapReader<line_map>;

  EntryReader(const YamlNode& node, bool built_in, ValueContext& context)
      : fields_(node, context, built_in ? built_in_line_map : line_map),
        built_in_(built_in),
        context_(context) {}

  /// The line, as far as it could be read.
  Line read() {
    line_.name = fields_.text("name");
    const auto kind = fields_.word<line_kinds>("kind");
    line_.material = fields_.optional_text("material");
    line_.size_source = read_source(fields_.fields(), built_in_, context_);
    // What else an entry must and may say depends on its kind.
    if (!kind) return line_;
    line_.kind = *kind;
    if (!may_have_bore(line_.kind)) fields_.refuse_keys_of(bored_lines);
    if (line_.kind != LineKind::cable) fields_.refuse_keys_of(cable_lines);
    if (line_.kind != LineKind::conduit) fields_.refuse_keys_of(conduit_lines);
    read_size();
    read_bending();
    read_properties();
    return line_;
  }

 private:
  /// A number with its source: the entry's own unless the value states another.
  std::optional<SourcedValue> value(Fields::Optional<KeyKind::number> key) {
    const YamlNode* node = fields_.fields().find(key);
    return node != nullptr ? value_in(*node, key) : std::nullopt;
  }

  std::optional<SourcedValue> value_in(const YamlNode& node, const KeySpec& key) {
    return read_sourced_value(fields_.fields(), key, node, line_.size_source, built_in_, context_);
  }

  void read_stock_lengths() {
    constexpr Fields::Key key("stock_lengths");
    for (const YamlNode& item : fields_.items("stock_lengths"))
      if (const auto length = value_in(item, key)) line_.stock_lengths_in.push_back(*length);
  }

  void read_size() {
    line_.outside_diameter_in = fields_.number("outside");
    line_.plus_tolerance_in = fields_.optional_number("plus_tolerance");
    if (!may_have_bore(line_.kind)) return;
    // A rod may be solid.
    line_.inside_diameter_in = line_.kind == LineKind::rod
                                   ? fields_.optional_number("inside").value_or(0)
                                   : fields_.number("inside");
    if (line_.inside_diameter_in >= line_.outside_diameter_in)
      context_.error(fields_.where_of("inside"),
                     fmt::format("inside: must be smaller than outside, found {} in against {} in",
                                 line_.inside_diameter_in, line_.outside_diameter_in));
  }

  /// To the centreline, whichever of the two ways the entry measures it.
  std::optional<SourcedValue> least_bend_radius_in() {
    constexpr std::string_view to_inside = "minimum_inside_bend_radius";
    auto radius = value("minimum_bend_radius");
    auto inside = value("minimum_inside_bend_radius");
    if (radius && inside) {
      context_.error(
          fields_.where_of("minimum_inside_bend_radius"),
          fmt::format("{}: 'minimum_bend_radius' is stated too: leave one of them out", to_inside));
      return std::nullopt;
    }
    if (!inside) return radius;
    inside->value += line_.largest_radius_in();
    inside->source.text +=
        ", measured to the inside of the bend, half of the outside diameter added";
    return inside;
  }

  void read_bending() {
    line_.minimum_bend_radius_in = least_bend_radius_in();
    line_.flexing_bend_radius_in = value("flexing_bend_radius");
    line_.usual_bend_radius_in = fields_.optional_number("usual_bend_radius");
    if (line_.kind == LineKind::conduit) line_.bend_total_deg = value("bend_total");
    if (!line_.minimum_bend_radius_in) return;
    const double least = line_.minimum_bend_radius_in->value;
    if (!line_.usual_bend_radius_in) line_.usual_bend_radius_in = least;
    if (*line_.usual_bend_radius_in < least)
      context_.error(fields_.where_of("usual_bend_radius"),
                     fmt::format("usual_bend_radius: must not be under the minimum, found {} in "
                                 "against {} in to the centreline",
                                 *line_.usual_bend_radius_in, least));
  }

  void read_properties() {
    line_.support_spacing_in = value("support_spacing");
    line_.weight_lb_per_in = value("weight");
    line_.expansion_per_degf = value("expansion");
    line_.slack_fraction = value("slack");
    line_.cut_allowance_in =
        fields_.optional_number("cut_allowance").value_or(usual_cut_allowance_in(line_.kind));
    read_stock_lengths();
    if (may_have_bore(line_.kind)) line_.youngs_modulus_psi = value("youngs_modulus");
    if (line_.kind != LineKind::cable) return;
    line_.construction = fields_.optional_text("construction");
    line_.breaking_strength_lbf = value("breaking_strength");
    line_.axial_stiffness_lbf = value("axial_stiffness");
  }

  Fields fields_;
  bool built_in_;
  ValueContext& context_;
  Line line_;
};

}  // namespace

Expected<Line, std::vector<Diagnostic>> read_line_entry(const YamlNode& node, BareLength bare,
                                                        bool built_in) {
  ErrorList errors;
  ValueContext context{errors, bare};
  Line line = EntryReader(node, built_in, context).read();
  if (!errors.list.empty()) return std::move(errors.list);
  if (!built_in) line.where = node.where;
  return line;
}

}  // namespace linewright
