#include "lines/free_run.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <unordered_map>

namespace linewright {

namespace {

/// Guards against networks that hang together in a mesh: the runs through one grow beyond all
/// bounds.
constexpr std::size_t longest_run_legs = 16;
constexpr int most_tails_from_support = 256;

class Walker {
 public:
  explicit Walker(const PreparedProject& prepared) : prepared_(prepared) {
    for (std::size_t i = 0; i < prepared.routes.size(); ++i) {
      lines_at_[prepared.routes[i].from].push_back({static_cast<int>(i), true});
      lines_at_[prepared.routes[i].to].push_back({static_cast<int>(i), false});
    }
  }

  std::vector<FreeRun> walk() {
    for (std::size_t i = 0; i < prepared_.routes.size(); ++i) start_on(static_cast<int>(i));
    add_spans_never_met();
    return std::move(runs_);
  }

 private:
  struct LineEnd {
    int route = 0;
    bool at_start = false;
  };

  const PreparedRoute& route(int index) const {
    return prepared_.routes[static_cast<std::size_t>(index)];
  }

  void start_on(int index) {
    const std::vector<Support>& supports = route(index).supports;
    for (std::size_t i = 0; i < supports.size(); ++i) {
      const int support = static_cast<int>(i);
      if (i + 1 < supports.size()) {
        RunLeg leg{index, supports[i].distance_in, supports[i + 1].distance_in};
        if (leg.length_in() > 1e-9)
          emit({{leg}, {index, support}, {index, support + 1}, leg.length_in()});
      }
      if (i == 0) follow_tail(index, support, 0);
      if (i + 1 == supports.size()) follow_tail(index, support, route(index).length_in());
    }
  }

  void follow_tail(int index, int support, double end_in) {
    const double start = route(index).supports[static_cast<std::size_t>(support)].distance_in;
    if (std::abs(end_in - start) <= 1e-9) return;
    FreeRun run;
    run.first = {index, support};
    tails_ = 0;
    go_on(run, {index, start, end_in});
  }

  /// Adds a leg that reaches a route's end node and goes on from there.
  void go_on(FreeRun run, const RunLeg& leg) {
    if (tails_ > most_tails_from_support) return;
    ++tails_;
    run.legs.push_back(leg);
    run.length_in += leg.length_in();
    if (tails_ > most_tails_from_support || run.legs.size() >= longest_run_legs) {
      run.cut_short = true;
      emit(run);
      return;
    }
    const PreparedRoute& here = route(leg.route);
    const Node* node = leg.to_in == 0 ? here.from : here.to;
    bool dead_end = true;
    for (const LineEnd& next : lines_at_.at(node)) {
      if (visited(run, next.route)) continue;
      dead_end = false;
      enter(run, next.route, next.at_start, through_in(leg, next.route, next.at_start));
    }
    if (dead_end) emit(run);
  }

  static bool visited(const FreeRun& run, int index) {
    return std::any_of(run.legs.begin(), run.legs.end(),
                       [index](const RunLeg& leg) { return leg.route == index; });
  }

  /// From one line to the next, through the fitting between them.
  double through_in(const RunLeg& leg, int next, bool at_start) const {
    const PreparedRoute& here = route(leg.route);
    const bool by_from = leg.to_in == 0;
    return through_fitting_in(by_from ? *here.from : *here.to,
                              by_from ? here.from_port : here.to_port,
                              at_start ? route(next).from_port : route(next).to_port);
  }

  void enter(FreeRun run, int index, bool at_start, double through_in) {
    const PreparedRoute& next = route(index);
    run.length_in += through_in;
    const double start = at_start ? 0 : next.length_in();
    if (next.supports.empty()) {
      go_on(run, {index, start, at_start ? next.length_in() : 0});
      return;
    }
    const int support = at_start ? 0 : static_cast<int>(next.supports.size()) - 1;
    const RunLeg leg{index, start, next.supports[static_cast<std::size_t>(support)].distance_in};
    run.legs.push_back(leg);
    run.length_in += leg.length_in();
    run.last = {index, support};
    // Each run is met from both ends; keep it once.
    if (std::tie(run.first.route, run.first.support) < std::tie(run.last.route, run.last.support))
      emit(run);
  }

  void emit(const FreeRun& run) { runs_.push_back(run); }

  void add_spans_never_met() {
    std::vector<bool> met(prepared_.routes.size(), false);
    for (const FreeRun& run : runs_)
      for (const RunLeg& leg : run.legs) met[static_cast<std::size_t>(leg.route)] = true;
    for (std::size_t i = 0; i < prepared_.routes.size(); ++i) {
      if (met[i]) continue;
      const int index = static_cast<int>(i);
      const double length = route(index).length_in();
      emit({{{index, 0, length}}, {}, {}, length});
    }
  }

  const PreparedProject& prepared_;
  std::unordered_map<const Node*, std::vector<LineEnd>> lines_at_;  ///< in the routes' order
  std::vector<FreeRun> runs_;
  int tails_ = 0;  ///< followed from the present support
};

}  // namespace

std::vector<FreeRun> free_runs(const PreparedProject& prepared) {
  return Walker(prepared).walk();
}

}  // namespace linewright
