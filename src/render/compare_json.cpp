#include "render/compare_json.hpp"

#include "render/changes_json.hpp"
#include "render/json_values.hpp"

namespace linewright {

namespace {

Json side_json(const Report& report, const std::string& path) {
  return {{"path", path},
          {"project", {{"name", report.project_name}}},
          {"summary", json_summary(report)},
          {"set", json_set(report)},
          {"assumptions", report.assumptions}};
}

Json compared_json(const RouteCut* cut) {
  if (cut == nullptr) return nullptr;
  return {{"line", cut->line},
          {"length_in", json_number(cut->length_in)},
          {"cut_length_in", json_number(cut->cut_length_in)},
          {"volume_in3", json_number(cut->volume_in3)},
          {"mass_lb", json_number(cut->mass_lb)}};
}

Json compared_json(const SystemCut* cut) {
  if (cut == nullptr) return nullptr;
  return {{"length_in", json_number(cut->length_in)}, {"volume_in3", json_number(cut->volume_in3)}};
}

template <typename Part>
Json sides_json(const std::vector<SidesOf<Part>>& all) {
  Json json = Json::array();
  for (const SidesOf<Part>& sides : all)
    json.push_back({{"name", (sides.b != nullptr ? sides.b : sides.a)->name},
                    {"a", compared_json(sides.a)},
                    {"b", compared_json(sides.b)}});
  return json;
}

Json quantity_json(const PartRow* row) {
  if (row == nullptr) return nullptr;
  return json_number(row->quantity);
}

Json parts_changed_json(const Comparison& comparison) {
  Json json = Json::array();
  for (const SidesOf<PartRow>& sides : parts_changed(comparison)) {
    const PartRow& row = sides.b != nullptr ? *sides.b : *sides.a;
    json.push_back({{"item", row.item},
                    {"size", row.size},
                    {"unit", row.unit},
                    {"a", quantity_json(sides.a)},
                    {"b", quantity_json(sides.b)}});
  }
  return json;
}

}  // namespace

std::string compare_json(const Comparison& comparison) {
  return json_text({{"linewright", json_header()},
                    {"a", side_json(comparison.a, comparison.a_path)},
                    {"b", side_json(comparison.b, comparison.b_path)},
                    {"worse", is_worse(comparison)},
                    {"changes", json_changes(comparison.a, comparison.b)},
                    {"routes", sides_json(routes_beside(comparison))},
                    {"systems", sides_json(systems_beside(comparison))},
                    {"parts", parts_changed_json(comparison)}});
}

}  // namespace linewright
