#include "lines/route_change.hpp"

#include <algorithm>
#include <tuple>

#include "model/places_in_files.hpp"

namespace linewright {

namespace {

using Places = std::vector<const SourceLocation*>;
using Moves = std::vector<std::pair<SourceLocation, SourceLocation>>;

template <typename VisitAll>
Places listed(const VisitAll& visit_all) {
  Places places;
  visit_all([&places](const SourceLocation& where) { places.push_back(&where); });
  return places;
}

bool comes_before(const SourceLocation& a, const SourceLocation& b) {
  return std::tie(a.line, a.column, a.file) < std::tie(b.line, b.column, b.file);
}

/// Puts the places of a thing, which `visit_all` goes through, where they are now, and notes from
/// where to where; false where they are not as many.
template <typename VisitAll>
bool move_to(const Places& now, const VisitAll& visit_all, Moves& moves) {
  std::size_t count = 0;
  visit_all([&count](SourceLocation&) { ++count; });
  if (count != now.size()) return false;
  auto next = now.begin();
  visit_all([&](SourceLocation& where) {
    moves.emplace_back(where, **next);
    where = **next++;
  });
  return true;
}

/// Each place once; false where one place became two.
bool put_in_order(Moves& moves) {
  std::sort(moves.begin(), moves.end(), [](const auto& a, const auto& b) {
    return std::tie(a.first.line, a.first.column, a.first.file, a.second.line, a.second.column) <
           std::tie(b.first.line, b.first.column, b.first.file, b.second.line, b.second.column);
  });
  moves.erase(std::unique(moves.begin(), moves.end()), moves.end());
  return std::adjacent_find(moves.begin(), moves.end(), [](const auto& a, const auto& b) {
           return a.first == b.first;
         }) == moves.end();
}

bool same_names(const std::vector<Route>& before, const std::vector<Route>& now) {
  return std::equal(before.begin(), before.end(), now.begin(), now.end(),
                    [](const Route& a, const Route& b) { return a.name == b.name; });
}

/// True where the route is the same, and notes where its parts are now.
bool is_the_same(Route before, const Route& now, Moves& moves) {
  const Places places = listed([&](const auto& visit) { visit_places_of_route(now, visit); });
  Moves of_route;
  if (!move_to(
          places, [&](const auto& visit) { visit_places_of_route(before, visit); }, of_route))
    return false;
  if (before != now) return false;
  moves.insert(moves.end(), of_route.begin(), of_route.end());
  return true;
}

}  // namespace

std::optional<SourceLocation> RouteChange::now_at(const SourceLocation& before) const {
  if (moved.empty()) return before;
  const auto found = std::lower_bound(moved.begin(), moved.end(), before,
                                      [](const auto& each, const SourceLocation& place) {
                                        return comes_before(each.first, place);
                                      });
  if (found == moved.end() || found->first != before) return std::nullopt;
  return found->second;
}

std::optional<RouteChange> change_of_routes(const Project& before, const Project& now) {
  if (!same_names(before.routes, now.routes)) return std::nullopt;
  RouteChange change;
  Project rest = before;
  const Places places = listed([&](const auto& visit) { visit_places_beside_routes(now, visit); });
  if (!move_to(
          places, [&](const auto& visit) { visit_places_beside_routes(rest, visit); },
          change.moved))
    return std::nullopt;
  for (std::size_t i = 0; i < now.routes.size(); ++i)
    if (!is_the_same(before.routes[i], now.routes[i], change.moved)) change.routes.push_back(i);
  rest.routes = now.routes;
  rest.assumptions = now.assumptions;
  if (rest != now) return std::nullopt;
  const bool nothing_moved =
      std::all_of(change.moved.begin(), change.moved.end(),
                  [](const auto& each) { return each.first == each.second; });
  if (nothing_moved)
    change.moved.clear();
  else if (!put_in_order(change.moved))
    return std::nullopt;
  return change;
}

}  // namespace linewright
