#include "render/suggest_json.hpp"

#include <utility>

#include "render/json_values.hpp"

namespace linewright {

namespace {

Json support_json(const SuggestedSupport& support) {
  return {{"distance_in", json_number(support.distance_in)},
          {"at", json_place(support.at)},
          {"on", text_or_null(support.on)},
          {"hold", support.hold},
          {"why", text_or_null(support.why)},
          {"drawn", support.drawn}};
}

Json suggestion_json(const SupportSuggestion& route) {
  Json supports = Json::array();
  for (const SuggestedSupport& support : route.supports) supports.push_back(support_json(support));
  Json faults = Json::array();
  for (const SupportFault& fault : route.faults) {
    Json each = json_judgement(fault.judgement);
    each["along_in"] = json_number(fault.distance_in);
    faults.push_back(std::move(each));
  }
  return {{"name", route.route},
          {"possible", route.possible},
          {"supports", std::move(supports)},
          {"replaces", route.replaces},
          {"faults", std::move(faults)},
          {"gave_up", route.gave_up}};
}

}  // namespace

std::string suggest_json(const SuggestReport& report) {
  Json routes = Json::array();
  for (const SupportSuggestion& route : report.routes) routes.push_back(suggestion_json(route));
  Json new_faults = Json::array();
  for (const Judgement& judgement : report.new_faults)
    new_faults.push_back(json_judgement(judgement));
  return json_text({{"linewright", json_header()},
                    {"project", {{"name", report.project_name}}},
                    {"routes", std::move(routes)},
                    {"new_faults", std::move(new_faults)},
                    {"assumptions", report.assumptions}});
}

}  // namespace linewright
