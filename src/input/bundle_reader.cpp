#include "input/bundle_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "input/keys/route_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

namespace {

void read_member(const YamlNode& item, Bundle& bundle, ReadContext& context) {
  std::string name = read_text(item, "the name of a route", context);
  if (name.empty()) return;
  if (std::find(bundle.routes.begin(), bundle.routes.end(), name) != bundle.routes.end()) {
    context.error(item.where,
                  fmt::format("the route {} is in the bundle already", quoted_text(name)));
    return;
  }
  context.draft.used.push_back({Named::route, name, item.where});
  bundle.routes.push_back(std::move(name));
}

}  // namespace

void read_bundle(const YamlNode& node, ReadContext& context) {
  MapReader<bundle_map> fields(node, context);
  Bundle bundle;
  bundle.where = node.where;
  bundle.name = fields.own_name(context.draft);
  const std::vector<YamlNode>& members = fields.items("routes");
  for (const YamlNode& item : members) read_member(item, bundle, context);
  if (fields.has("routes") && members.size() == 1)
    context.error(fields.where_of("routes"), "a bundle needs two routes or more");
  bundle.from_in = fields.number("from");
  bundle.to_in = fields.number("to");
  if (bundle.from_in >= bundle.to_in)
    context.error(fields.where_of("to"), "a bundle must end beyond where it starts");
  bundle.ties_in = fields.number("ties");
  context.draft.project.bundles.push_back(std::move(bundle));
}

}  // namespace linewright
