#include "render/close_up_json.hpp"

#include <utility>

#include "render/json_values.hpp"
#include "render/parts_json.hpp"

namespace linewright {

namespace {

Json item_json(const CloseUpItem& item) {
  return {{"kind", item.kind},
          {"name", item.name},
          {"route", text_or_null(item.route)},
          {"at", json_place(item.at)},
          {"reached_now_by", text_or_null(item.reached_now_by)},
          {"why", item.why}};
}

Json items_json(const std::vector<CloseUpItem>& items) {
  Json all = Json::array();
  for (const CloseUpItem& item : items) all.push_back(item_json(item));
  return all;
}

Json closure_json(const ClosureList& closure) {
  Json in_hand = Json::array();
  for (const PartRow& row : closure.in_hand) in_hand.push_back(part_row_json(row));
  return {{"name", closure.name},
          {"before", items_json(closure.before)},
          {"tests", closure.tests},
          {"in_hand", std::move(in_hand)}};
}

}  // namespace

std::string close_up_json(const CloseUp& plan) {
  Json closures = Json::array();
  for (const ClosureList& closure : plan.closures) closures.push_back(closure_json(closure));
  Json circles = Json::array();
  Json ways_round = Json::array();
  for (const ClosingCircle& circle : plan.circles) {
    circles.push_back(circle.names);
    ways_round.push_back(circle.why);
  }
  return json_text({{"linewright", json_header()},
                    {"project", {{"name", plan.project_name}}},
                    {"order", plan.order},
                    {"closures", std::move(closures)},
                    {"circles", std::move(circles)},
                    {"circles_why", std::move(ways_round)},
                    {"unknown", plan.unknown},
                    {"problems", plan.problems},
                    {"not_reached", items_json(plan.not_reached)},
                    {"notes", plan.notes},
                    {"assumptions", plan.assumptions}});
}

}  // namespace linewright
