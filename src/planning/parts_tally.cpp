#include "planning/parts_tally.hpp"

#include <algorithm>
#include <cmath>

#include "lines/closed_over.hpp"

namespace linewright {

namespace {

constexpr double rounding = 1e-9;

double spares_of(const PartRow& row, double share) {
  const double wanted = row.quantity * share;
  return row.unit == "in" ? wanted : std::ceil(wanted - rounding);
}

}  // namespace

PartsTally::PartsTally(const Project& project, const PartsOptions& options)
    : project_(project), options_(options), closures_(closures_in_order(project)) {}

std::size_t PartsTally::rank_of(const std::optional<std::string>& closure) const {
  if (!closure) return closures_.size();
  return static_cast<std::size_t>(std::find(closures_.begin(), closures_.end(), *closure) -
                                  closures_.begin());
}

std::optional<std::string> PartsTally::closure_over(const std::vector<Vec3>& places) const {
  std::optional<std::string> first;
  for (const Vec3 place : places) {
    auto over = first_closure_over(project_, closures_, place);
    if (rank_of(over) < rank_of(first)) first = std::move(over);
  }
  return first;
}

void PartsTally::add(const Purchase& kind, double quantity, const std::string& used_for,
                     const std::optional<std::string>& needed_before) {
  auto row = std::find_if(rows_.begin(), rows_.end(), [&](const PartRow& each) {
    return each.item == kind.item && each.size == kind.size && each.unit == kind.unit &&
           (!options_.by_closure || each.needed_before == needed_before);
  });
  if (row == rows_.end()) {
    rows_.push_back({kind.item, kind.size, kind.standard, 0, kind.unit});
    row = std::prev(rows_.end());
    row->needed_before = needed_before;
  }
  row->quantity += quantity;
  if (rank_of(needed_before) < rank_of(row->needed_before)) row->needed_before = needed_before;
  if (std::find(row->used_for.begin(), row->used_for.end(), used_for) == row->used_for.end())
    row->used_for.push_back(used_for);
}

std::vector<PartRow> PartsTally::rows() const {
  std::vector<PartRow> rows = rows_;
  for (PartRow& row : rows) row.spares = spares_of(row, options_.spares_share);
  if (options_.by_closure)
    std::stable_sort(rows.begin(), rows.end(), [&](const PartRow& a, const PartRow& b) {
      return rank_of(a.needed_before) < rank_of(b.needed_before);
    });
  return rows;
}

}  // namespace linewright
