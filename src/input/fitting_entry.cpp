#include "input/fitting_entry.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "input/keys/fitting_keys.hpp"
#include "input/map_reader.hpp"
#include "input/sourced_value.hpp"

namespace linewright {
namespace {

/// Reads the parts of one entry.
class FittingReader {
 public:
  using Fields = MapReader<fitting_map>;

  FittingReader(const YamlNode& node, bool built_in, ValueContext& context)
      : fields_(node, context, built_in ? built_in_fitting_map : fitting_map),
        built_in_(built_in),
        context_(context) {}

  /// The fitting, as far as it could be read.
  Fitting read() {
    fitting_.name = fields_.text("name");
    const auto kind = fields_.word<fitting_kinds>("kind");
    fitting_.standard = fields_.optional_text("standard");
    fitting_.source = read_source(fields_.fields(), built_in_, context_);
    fitting_.tube_diameter_in = fields_.number("tube");
    if (const YamlNode* node = fields_.require("body_diameter"))
      fitting_.body_diameter_in =
          in_node(*node, Fields::Key("body_diameter")).value_or(SourcedValue{});
    fitting_.nut_in = value("nut");
    fitting_.insertion_in = value("insertion");
    fitting_.bore_in = value("bore");
    fitting_.thread_in = value("thread");
    if (kind) {
      fitting_.kind = *kind;
      if (*kind != FittingKind::bulkhead_union) fields_.refuse_keys_of(bulkhead_fittings);
      read_take_up();
    }
    check_insertion();
    return fitting_;
  }

 private:
  std::optional<SourcedValue> in_node(const YamlNode& node, const KeySpec& key) {
    return read_sourced_value(fields_.fields(), key, node, fitting_.source, built_in_, context_);
  }

  std::optional<SourcedValue> value(Fields::Optional<KeyKind::number> key) {
    const YamlNode* node = fields_.fields().find(key);
    return node != nullptr ? in_node(*node, key) : std::nullopt;
  }

  /// Past where its axes meet no tube goes: there is the other one.
  void check_insertion() {
    if (!fitting_.insertion_in || fitting_.take_up_in.empty()) return;
    const auto shortest = std::min_element(
        fitting_.take_up_in.begin(), fitting_.take_up_in.end(),
        [](const SourcedValue& a, const SourcedValue& b) { return a.value < b.value; });
    if (!(fitting_.insertion_in->value > shortest->value)) return;
    context_.error(
        fields_.where_of("insertion"),
        fmt::format("insertion: must be no more than the least 'take_up', {:g} in, or tubes would "
                    "meet in the fitting; found {:g} in",
                    shortest->value, fitting_.insertion_in->value));
  }

  /// One for each port, where one stands for all, too.
  void read_take_up() {
    constexpr Fields::Key key("take_up");
    if (fields_.require("take_up") == nullptr) return;
    for (const YamlNode& item : fields_.items("take_up"))
      if (const auto length = in_node(item, key)) fitting_.take_up_in.push_back(*length);
    const std::size_t wanted = ports_of(fitting_.kind);
    if (fitting_.take_up_in.size() == 1)
      fitting_.take_up_in.resize(wanted, fitting_.take_up_in.front());
    if (fitting_.take_up_in.size() != wanted)
      context_.error(fields_.where_of("take_up"),
                     fmt::format("take_up: must be one length for all {} ports, or one for each, "
                                 "found {}",
                                 wanted, fitting_.take_up_in.size()));
  }

  Fields fields_;
  bool built_in_;
  ValueContext& context_;
  Fitting fitting_;
};

}  // namespace

Expected<Fitting, std::vector<Diagnostic>> read_fitting_entry(const YamlNode& node, BareLength bare,
                                                              bool built_in) {
  ErrorList errors;
  ValueContext context{errors, bare};
  Fitting fitting = FittingReader(node, built_in, context).read();
  if (!errors.list.empty()) return std::move(errors.list);
  if (!built_in) fitting.where = node.where;
  return fitting;
}

}  // namespace linewright
