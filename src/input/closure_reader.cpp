#include "input/closure_reader.hpp"

#include <cmath>

#include "input/keys/closure_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

namespace {

using OpeningReader = MapReader<opening_map>;

/// An outline must have an area, or nothing goes through.
void read_outline(OpeningReader& fields, Opening& opening, ReadContext& context) {
  opening.outline = fields.places("outline");
  Vec3 sum;
  Vec3 area;
  for (std::size_t i = 0; i < opening.outline.size(); ++i) {
    sum = sum + opening.outline[i];
    area =
        area + cross(opening.outline[i] - opening.outline.front(),
                     opening.outline[(i + 1) % opening.outline.size()] - opening.outline.front());
  }
  if (!opening.outline.empty()) opening.centre = sum / static_cast<double>(opening.outline.size());
  if (opening.outline.size() < 3 || norm(area) < smallest_length_in)
    context.error(fields.where_of("outline"),
                  "an opening's outline needs three corners that are not in line");
  static constexpr std::array<OpeningReader::Key, 4> others{"centre", "diameter", "normal", "size"};
  for (const OpeningReader::Key& key : others)
    if (fields.has(key))
      context.error(fields.where_of(key),
                    "an opening's 'outline' says where it is and how large: "
                    "leave the other out");
}

void read_middle(OpeningReader& fields, Opening& opening, ReadContext& context,
                 const SourceLocation& where) {
  if (fields.lacks("centre")) context.error(where, "an opening needs 'centre', or an 'outline'");
  opening.centre = fields.optional_place("centre").value_or(Vec3{});
  opening.normal = fields.optional_direction("normal");
  opening.diameter_in = fields.optional_number("diameter");
  if (fields.has("size")) opening.size_in = fields.pair("size");
  const bool lacks_both = fields.lacks("size") && fields.lacks("diameter");
  if (lacks_both || (fields.has("size") && fields.has("diameter")))
    context.error(where, "an opening needs either 'diameter' or 'size', or an 'outline'");
  else if (fields.has("size") && fields.lacks("normal"))
    context.error(where, "an opening with a 'size' needs 'normal': the direction it faces");
}

Opening read_opening(const YamlNode& node, ReadContext& context) {
  OpeningReader fields(node, context);
  Opening opening;
  opening.where = node.where;
  opening.name = fields.text("name");
  if (fields.has("outline"))
    read_outline(fields, opening, context);
  else if (node.kind == YamlNode::Kind::map)
    read_middle(fields, opening, context, node.where);
  opening.reach_in = fields.optional_number("reach").value_or(0);
  opening.crawl = fields.optional_flag("crawl").value_or(false);
  return opening;
}

void read_after(const YamlNode& item, std::vector<std::string>& after, ReadContext& context) {
  std::string name = read_text(item, "the name of a closure or task", context);
  if (name.empty()) return;
  context.draft.used.push_back({Named::step, name, item.where});
  after.push_back(std::move(name));
}

void read_covered(const YamlNode& item, std::vector<std::string>& covers, ReadContext& context) {
  std::string name = read_text(item, "the name of a part", context);
  if (name.empty()) return;
  context.draft.used.push_back({Named::part, name, item.where});
  covers.push_back(std::move(name));
}

}  // namespace

void read_closure(const YamlNode& node, ReadContext& context) {
  MapReader<closure_map> fields(node, context);
  Closure closure;
  closure.where = node.where;
  closure.name = fields.own_name(context.draft);
  for (const YamlNode& item : fields.items("covers")) read_covered(item, closure.covers, context);
  for (const YamlNode& item : fields.items("after")) read_after(item, closure.after, context);
  closure.reach_in = fields.optional_number("reach").value_or(0);
  for (const YamlNode& item : fields.items("openings")) {
    Opening opening = read_opening(item, context);
    const bool stated = item.find("reach") != nullptr;
    if (!stated && !fields.has("reach"))
      context.error(item.where,
                    "an opening needs 'reach', here or at its closure: how far an arm "
                    "gets in");
    if (!stated) opening.reach_in = closure.reach_in;
    closure.openings.push_back(std::move(opening));
  }
  context.draft.project.closures.push_back(std::move(closure));
}

void read_task(const YamlNode& node, ReadContext& context) {
  MapReader<task_map> fields(node, context);
  Task task;
  task.where = node.where;
  task.name = fields.own_name(context.draft);
  task.at = fields.place("at");
  task.on = fields.optional_name("on", context.draft);
  for (const YamlNode& item : fields.items("after")) read_after(item, task.after, context);
  task.two_hands = fields.optional_word<hand_counts>("needs").value_or(Hands::one) == Hands::two;
  if (task.two_hands && !fields.has("on"))
    context.error(node.where,
                  "a task that needs 2 hands needs 'on': the part they hold it on both "
                  "sides of");
  const double again = fields.optional_number("again").value_or(0);
  if (std::isfinite(again)) task.again = static_cast<int>(again);
  context.draft.project.tasks.push_back(std::move(task));
}

}  // namespace linewright
