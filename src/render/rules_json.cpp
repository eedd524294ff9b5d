#include "render/rules_json.hpp"

#include "render/amount.hpp"
#include "render/json_values.hpp"
#include "render/layout.hpp"
#include "render/rule_examples.hpp"

namespace linewright {

namespace {

Json rule_json(const Rule& rule) {
  Json limits = Json::array();
  for (const LimitRow& row : rule.limits)
    limits.push_back({{"name", row.name},
                      {"subject", row.subject},
                      {"value", json_number(row.value)},
                      {"unit", row.times.empty() ? unit_word(row.unit) : row.times},
                      {"sense", sense_word(row.sense)},
                      {"source", row.source},
                      {"mark", mark_word(row.mark)},
                      {"broken", verdict_word(row.broken)}});
  return {{"name", rule.name},
          {"purpose", rule.purpose},
          {"explanation", unwrapped(rule.explanation)},
          {"limits", std::move(limits)},
          {"catalogue_limits", rule.catalogue_limits},
          {"mend", rule.mend}};
}

}  // namespace

std::string rules_json(const std::vector<const Rule*>& rules) {
  Json list = Json::array();
  for (const Rule* rule : rules) list.push_back(rule_json(*rule));
  return json_text({{"linewright", json_header()}, {"rules", std::move(list)}});
}

Json rule_manual(const Rule& rule) {
  Json manual = rule_json(rule);
  const RuleExamples examples = examples_of(rule.name);
  manual["examples"] = {{"fails", examples.fails.messages}, {"passes", examples.passes.messages}};
  return manual;
}

}  // namespace linewright
