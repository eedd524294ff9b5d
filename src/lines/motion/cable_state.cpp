#include "lines/motion/cable_state.hpp"

#include <algorithm>

#include "physics/pilot_force.hpp"

namespace linewright {

namespace {

CableState state_at_rest(const PreparedProject& prepared, const PreparedRoute& route) {
  CableState state;
  state.change = tension_change(prepared, route);
  if (!route.route->tension) return state;
  const double rigged = route.route->tension->rigged_lbf;
  state.coldest_lbf = rigged;
  state.hottest_lbf = rigged;
  if (!state.change) return state;
  state.range =
      tension_range(rigged, state.change->slope_lbf_per_degf, prepared.project->temperature);
  state.coldest_lbf = state.range->lowest_lbf;
  state.hottest_lbf = state.range->highest_lbf;
  state.coldest_slack_in = thermal_slack_in(*state.change, state.coldest_lbf);
  return state;
}

/// What keeps a cable from being held against another of its control; empty for nothing.
std::string missing_for_loop(const PreparedRoute& route) {
  if (!route.route->tension) return "the rigged tension of " + route.route->name;
  if (!route.line->axial_stiffness_lbf) return "the stretch of " + route.line->name;
  return {};
}

bool can_be_looped(const PreparedRoute& route) {
  return missing_for_loop(route).empty();
}

LoopedCable looped(const PreparedRoute& route, double tension_lbf, double slack_in) {
  return {.tension_lbf = std::max(0.0, tension_lbf),
          .slack_in = slack_in,
          .stiffness_lbf_per_in = route.line->axial_stiffness_lbf->value / route.length_in()};
}

LoopedCable coldest(const PreparedRoute& route, const CableState& state) {
  return looped(route, state.coldest_lbf, state.coldest_slack_in);
}

LoopedCable hottest(const PreparedRoute& route, const CableState& state) {
  const double slack = state.change ? thermal_slack_in(*state.change, state.hottest_lbf) : 0;
  return looped(route, state.hottest_lbf, slack);
}

double airframe_give_in_per_lbf(const PreparedProject& prepared, const PreparedRoute& route) {
  const std::optional<double> stiffness = airframe_stiffness_lbf_per_in(prepared, route);
  return stiffness ? 1 / *stiffness : 0;
}

/// True where the pull leaves less of a cable.
bool leaves_less(const SlackSide& a, const SlackSide& b) {
  return a.slack_in > b.slack_in || (a.slack_in == b.slack_in && a.tension_lbf < b.tension_lbf);
}

void add_slack_side(const PreparedProject& prepared, std::size_t index,
                    std::vector<CableState>& states) {
  const PreparedRoute& route = prepared.routes[index];
  CableState& state = states[index];
  if (!can_be_looped(route)) return;
  for (std::size_t i = 0; i < states.size(); ++i) {
    const PreparedRoute& other = prepared.routes[i];
    if (!work_together(route, other)) continue;
    const std::optional<double> own = limit_pull_lbf(*other.route);
    const std::optional<double> pull = own ? own : limit_pull_lbf(*route.route);
    std::string missing = missing_for_loop(other);
    if (missing.empty() && !states[i].change)
      missing = "the thermal expansion of " + other.route->line;
    if (missing.empty() && !pull) missing = "the limit load of " + other.route->name;
    if (!missing.empty()) {
      if (state.missing_beside.empty()) state.missing_beside = std::move(missing);
      continue;
    }
    const PulledLoop loop = pulled_loop(coldest(other, states[i]), coldest(route, state), *pull,
                                        airframe_give_in_per_lbf(prepared, route));
    const SlackSide side{loop.other_lbf, loop.other_slack_in, &other, *pull};
    if (!state.slack_side || leaves_less(side, *state.slack_side)) state.slack_side = side;
  }
}

LoopedCable as_rigged(const PreparedRoute& route, const CableState&) {
  return looped(route, route.route->tension->rigged_lbf, 0);
}

/// The cable's own tension while it is pulled and all of its control were `at_rest` before: the
/// most that it is beside any of them.
template <typename AtRest>
std::optional<double> pulled_in_pair_lbf(const PreparedProject& prepared,
                                         const std::vector<CableState>& states, std::size_t index,
                                         double pull_lbf, const AtRest& at_rest) {
  const PreparedRoute& route = prepared.routes[index];
  std::optional<double> most;
  if (!can_be_looped(route)) return most;
  for (std::size_t i = 0; i < states.size(); ++i) {
    const PreparedRoute& other = prepared.routes[i];
    if (!work_together(route, other) || !can_be_looped(other)) continue;
    const PulledLoop loop = pulled_loop(at_rest(route, states[index]), at_rest(other, states[i]),
                                        pull_lbf, airframe_give_in_per_lbf(prepared, route));
    most = std::max(most.value_or(0), loop.pulled_lbf);
  }
  return most;
}

void add_pulled(const PreparedProject& prepared, std::size_t index,
                std::vector<CableState>& states) {
  const Route& route = *prepared.routes[index].route;
  CableState& state = states[index];
  if (!route.tension) return;
  if (const auto pull = limit_pull_lbf(route)) {
    const auto paired = pulled_in_pair_lbf(prepared, states, index, *pull, as_rigged);
    state.pulled_as_rigged_lbf =
        paired ? *paired : pulled_alone_lbf(route.tension->rigged_lbf, *pull);
  }
  if (const auto pull = pilot_pull_lbf(route)) {
    const auto paired = pulled_in_pair_lbf(prepared, states, index, *pull, hottest);
    state.pilot_pulled_lbf =
        paired ? *paired : pulled_alone_lbf(std::max(0.0, state.hottest_lbf), *pull);
  }
}

}  // namespace

std::optional<double> CableState::most_lbf() const {
  const double most =
      std::max({hottest_lbf, pulled_as_rigged_lbf.value_or(0), pilot_pulled_lbf.value_or(0)});
  return most > 0 ? std::optional(most) : std::nullopt;
}

double thermal_slack_in(const TensionChange& change, double tension_lbf) {
  return std::max(0.0, -tension_lbf) * change.slack_in_per_lbf;
}

std::optional<double> travel_lost_in(const PreparedRoute& route, const CableState& state) {
  if (!state.pulled_as_rigged_lbf || !route.line->axial_stiffness_lbf) return std::nullopt;
  const double gained_lbf =
      std::max(0.0, *state.pulled_as_rigged_lbf - route.route->tension->rigged_lbf);
  return cable_stretch_in(gained_lbf,
                          {.length_in = route.length_in(),
                           .axial_stiffness_lbf = route.line->axial_stiffness_lbf->value});
}

std::vector<CableState> cable_states(const PreparedProject& prepared) {
  std::vector<CableState> states(prepared.routes.size());
  for (std::size_t i = 0; i < states.size(); ++i)
    if (prepared.routes[i].line->kind == LineKind::cable)
      states[i] = state_at_rest(prepared, prepared.routes[i]);
  for (std::size_t i = 0; i < states.size(); ++i) {
    if (prepared.routes[i].line->kind != LineKind::cable) continue;
    add_slack_side(prepared, i, states);
    add_pulled(prepared, i, states);
  }
  return states;
}

}  // namespace linewright
