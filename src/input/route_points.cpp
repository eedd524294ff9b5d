#include "input/route_points.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "input/derive/derived_nodes.hpp"
#include "input/derive/yaml_writer.hpp"
#include "input/keys/route_keys.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

namespace {

template <typename Value, std::size_t size>
std::string word_for(const std::array<Choice<Value>, size>& choices, Value value) {
  const auto found = std::find_if(choices.begin(), choices.end(),
                                  [&](const auto& choice) { return choice.value == value; });
  return std::string(found->word);
}

class PointText {
 public:
  PointText(const Route& route, const WrittenLength& written) : route_(route), written_(written) {}

  YamlNode map_of(const RoutePoint& point, bool passed_free) {
    map_.kind = YamlNode::Kind::map;
    list("at", {length(point.at.x), length(point.at.y), length(point.at.z)});
    put_length("bend", point.bend_in);
    if (point.hold) put("hold", word_for(hold_kinds, *point.hold));
    if (!point.to.empty()) put("to", point.to);
    if (!point.through.empty()) put("through", point.through);
    put_length("diameter", point.diameter_in);
    if (point.axis)
      list("axis", {fmt::format("{}", point.axis->x), fmt::format("{}", point.axis->y),
                    fmt::format("{}", point.axis->z)});
    if (point.given != PointGiven::corner) put("given", word_for(pulley_givens, point.given));
    put_length("bore", point.bore_in);
    if (passed_free) put("passes", word_for(passings, Passing::free));
    if (point.guards) put("guards", fmt::format("{}", *point.guards));
    put_length("guard_gap", point.guard_gap_in);
    put_length("outside", point.outside_in);
    put_length("width", point.width_in);
    return map_;
  }

 private:
  std::string length(double inches) const { return written_(inches, route_.in_millimetres); }

  void put(std::string_view key, std::string text) {
    set_value(map_, key, text_node(std::move(text), {}));
  }
  void put_length(std::string_view key, const std::optional<double>& inches) {
    if (inches) put(key, length(*inches));
  }
  void list(std::string_view key, std::initializer_list<std::string> numbers) {
    YamlNode row;
    row.kind = YamlNode::Kind::sequence;
    for (const std::string& number : numbers) row.items.push_back(text_node(number, {}));
    set_value(map_, key, std::move(row));
  }

  const Route& route_;
  const WrittenLength& written_;
  YamlNode map_;
};

YamlNode points_of(const Route& route, const WrittenLength& written) {
  YamlNode points;
  points.kind = YamlNode::Kind::sequence;
  const auto add = [&](const RoutePoint& point, bool passed_free) {
    points.items.push_back(PointText(route, written).map_of(point, passed_free));
  };
  for (std::size_t i = 0; i <= route.points.size(); ++i) {
    for (const FreeFairlead& free : route.free_fairleads)
      if (free.leg == static_cast<int>(i)) add(free.fairlead, true);
    if (i < route.points.size()) add(route.points[i], false);
  }
  return points;
}

}  // namespace

std::string route_points_text(const std::vector<Route>& routes, const WrittenLength& written) {
  YamlNode list;
  list.kind = YamlNode::Kind::sequence;
  for (const Route& route : routes) {
    YamlNode map;
    map.kind = YamlNode::Kind::map;
    set_value(map, "name", text_node(route.name, {}));
    set_value(map, "points", points_of(route, written));
    list.items.push_back(std::move(map));
  }
  YamlNode root;
  root.kind = YamlNode::Kind::map;
  set_value(root, "routes", std::move(list));
  return yaml_text_of(root);
}

}  // namespace linewright
