#include "render/parts_json.hpp"

#include "render/json_values.hpp"

namespace linewright {

namespace {

/// Things are counted, lengths measured.
Json quantity_json(const PartRow& row, double quantity) {
  if (row.unit == "in") return json_number(quantity);
  return static_cast<int>(quantity);
}

}  // namespace

Json part_row_json(const PartRow& row) {
  return {{"item", row.item},
          {"size", row.size},
          {"standard", row.standard.empty() ? Json(nullptr) : Json(row.standard)},
          {"quantity", quantity_json(row, row.quantity)},
          {"unit", row.unit},
          {"spares", quantity_json(row, row.spares)},
          {"for", row.used_for},
          {"needed_before", row.needed_before ? Json(*row.needed_before) : Json(nullptr)}};
}

std::string parts_json(const PartsList& list) {
  Json parts = Json::array();
  for (const PartRow& row : list.rows) parts.push_back(part_row_json(row));
  return json_text({{"linewright", json_header()},
                    {"project", {{"name", list.project_name}}},
                    {"parts", std::move(parts)},
                    {"notes", list.notes},
                    {"assumptions", list.assumptions}});
}

}  // namespace linewright
