#include "input/closure_reader.hpp"

#include "input/keys/network_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

namespace {

Opening read_opening(const YamlNode& node, ReadContext& context) {
  MapReader<opening_map> fields(node, context);
  Opening opening;
  opening.where = node.where;
  opening.name = fields.text("name");
  opening.centre = fields.place("centre");
  opening.diameter_in = fields.number("diameter");
  return opening;
}

void read_after(const YamlNode& item, Closure& closure, ReadContext& context) {
  std::string name = read_text(item, "the name of a closure", context);
  if (name.empty()) return;
  context.draft.used.push_back({Named::closure, name, item.where});
  context.draft.closure_orders.push_back({closure.name, name, item.where});
  closure.after.push_back(std::move(name));
}

}  // namespace

void read_closure(const YamlNode& node, ReadContext& context) {
  MapReader<closure_map> fields(node, context);
  Closure closure;
  closure.where = node.where;
  closure.name = fields.own_name(context.draft);
  for (const YamlNode& item : fields.items("after")) read_after(item, closure, context);
  for (const YamlNode& item : fields.items("openings"))
    closure.openings.push_back(read_opening(item, context));
  if (!closure.openings.empty() && !fields.has("reach"))
    context.error(node.where, "a closure with openings needs 'reach': how far a hand gets in");
  closure.reach_in = fields.optional_number("reach").value_or(0);
  context.draft.project.closures.push_back(std::move(closure));
}

}  // namespace linewright
