#include "input/sourced_value.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "input/keys/line_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

Source read_source(FieldReader& fields, bool built_in, ValueContext& context) {
  Source source{fields.text(source_key), Mark::builder};
  if (!built_in) return source;
  const std::string written = fields.text(mark_key);
  const auto mark = std::find_if(source_marks.begin(), source_marks.end(),
                                 [&](const auto& each) { return each.word == written; });
  if (mark != source_marks.end())
    source.mark = mark->value;
  else if (!written.empty())
    context.error(fields.where_of(mark_key), fmt::format("mark: no such mark as '{}'", written));
  return source;
}

std::optional<SourcedValue> read_sourced_value(FieldReader& fields, const KeySpec& key,
                                               const YamlNode& node, const Source& own,
                                               bool built_in, ValueContext& context) {
  if (!built_in || node.kind != YamlNode::Kind::map)
    return SourcedValue{fields.number_in_node(key, node), own};
  MapReader<sourced_value_map> stated(node, context);
  const Source source = read_source(stated.fields(), built_in, context);
  const YamlNode* number = stated.require("value");
  if (number == nullptr) return std::nullopt;
  return SourcedValue{fields.number_in_node(key, *number), source};
}

}  // namespace linewright
