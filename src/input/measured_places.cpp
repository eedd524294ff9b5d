#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "input/built_reader.hpp"
#include "input/suggest_name.hpp"
#include "model/support_name.hpp"

namespace linewright {

namespace {

constexpr std::size_t most_supports_listed = 12;

bool is_number(const std::string& text) {
  return !text.empty() && std::all_of(text.begin(), text.end(),
                                      [](char each) { return each >= '0' && each <= '9'; });
}

/// Names that a point answers to, the one that is printed first.
std::vector<std::string> names_of(const RoutePoint& point) {
  std::vector<std::string> names{support_name(point)};
  if (!point.through.empty()) {
    names.push_back(point.through);
    names.push_back("grommet " + point.through);
    names.push_back("bushing " + point.through);
  }
  if (!point.to.empty()) names.push_back(point.to);
  return names;
}

/// "1 clamp on S3L, 2 hole F4-a", of all of a route's supports or of those at some of its points.
std::string listed(const Route& route, const std::vector<int>& points) {
  const std::vector<int> numbers = support_numbers(route.points);
  std::vector<std::string> words;
  for (const int point : points) {
    const auto i = static_cast<std::size_t>(point);
    words.push_back(fmt::format("{} {}", numbers[i], support_name(route.points[i])));
  }
  if (words.size() > most_supports_listed) return "linewright walk-round lists them";
  return fmt::format("{}", fmt::join(words, ", "));
}

std::vector<int> supports_of(const Route& route) {
  const std::vector<int> numbers = support_numbers(route.points);
  std::vector<int> points;
  for (std::size_t i = 0; i < numbers.size(); ++i)
    if (numbers[i] > 0) points.push_back(static_cast<int>(i));
  return points;
}

void find_by_number(const Route& route, Measurement& measured, ProjectDraft& draft) {
  const std::vector<int> supports = supports_of(route);
  const std::string& text = measured.support;
  const std::size_t number = text.size() < 8 ? static_cast<std::size_t>(std::stoi(text)) : 0;
  if (number >= 1 && number <= supports.size()) {
    measured.of = supports[number - 1];
    return;
  }
  draft.add_error(measured.where,
                  fmt::format("route {} has no support {}", quoted_text(route.name), text),
                  supports.empty() ? "it has no supports between its ends: name the node at one of "
                                     "them, or state a 'distance'"
                                   : "its supports: " + listed(route, supports));
}

void find_by_name(const Route& route, Measurement& measured, ProjectDraft& draft) {
  std::vector<int> found;
  std::vector<std::string> known{route.from, route.to};
  for (const int point : supports_of(route)) {
    const std::vector<std::string> names = names_of(route.points[static_cast<std::size_t>(point)]);
    known.push_back(names.front());
    if (std::find(names.begin(), names.end(), measured.support) != names.end())
      found.push_back(point);
  }
  if (measured.support == route.from) found.push_back(Measurement::from_node);
  if (measured.support == route.to) found.push_back(Measurement::to_node);
  if (found.size() == 1) {
    measured.of = found.front();
    return;
  }
  if (found.empty()) {
    const std::string meant = suggest_name(measured.support, known);
    const std::vector<std::string> ends{route.from, route.to};
    const std::vector<int> supports = supports_of(route);
    draft.add_error(
        measured.where,
        fmt::format("route {} has no support {}", quoted_text(route.name),
                    quoted_text(measured.support)),
        (meant.empty() ? std::string() : meant + " ") +
            (supports.empty() ? "" : "its supports: " + listed(route, supports) + "; ") +
            fmt::format("its ends: {}", fmt::join(ends, ", ")));
    return;
  }
  std::erase_if(found, [](int point) { return point < 0; });
  draft.add_error(measured.where,
                  fmt::format("route {} has more than one support {}", quoted_text(route.name),
                              quoted_text(measured.support)),
                  "say which by its number: " + listed(route, found));
}

void find_support(Measurement& measured, ProjectDraft& draft) {
  if (measured.support.empty()) return;
  const std::vector<Route>& routes = draft.project.routes;
  const auto route = std::find_if(routes.begin(), routes.end(),
                                  [&](const Route& each) { return each.name == measured.route; });
  if (route == routes.end()) return;
  if (is_number(measured.support))
    find_by_number(*route, measured, draft);
  else
    find_by_name(*route, measured, draft);
}

/// A gap is to a part, a hole or another route.
void check_other_side(const Measurement& measured, ProjectDraft& draft) {
  if (measured.to.empty() || !draft.names_complete) return;
  if (measured.to == measured.route) {
    draft.add_error(measured.where, "a gap is measured to something else than the line itself");
    return;
  }
  constexpr std::array kinds{Named::part, Named::hole, Named::route};
  std::vector<std::string> known;
  for (const NamePlace& given : draft.given) {
    if (std::find(kinds.begin(), kinds.end(), given.kind) == kinds.end()) continue;
    if (given.name == measured.to) return;
    known.push_back(given.name);
  }
  draft.add_error(measured.where,
                  fmt::format("there is no part, hole or route {}", quoted_text(measured.to)),
                  suggest_name(measured.to, known));
}

}  // namespace

void find_measured(ProjectDraft& draft) {
  for (Measurement& measured : draft.project.built) {
    find_support(measured, draft);
    check_other_side(measured, draft);
  }
}

}  // namespace linewright
