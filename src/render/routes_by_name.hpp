#pragma once
// Finds the routes of a report by name, without a look at each.

#include <string_view>
#include <unordered_map>

#include "render/report.hpp"

namespace linewright {

/// The report must outlive it, its routes unchanged.
class RoutesByName {
 public:
  explicit RoutesByName(const Report& report) {
    for (const RouteReport& route : report.routes) routes_.emplace(route.cut.name, &route);
  }
  /// Nothing where the report lists no such route.
  const RouteReport* find(std::string_view name) const {
    const auto found = routes_.find(name);
    return found == routes_.end() ? nullptr : found->second;
  }

 private:
  std::unordered_map<std::string_view, const RouteReport*> routes_;
};

}  // namespace linewright
