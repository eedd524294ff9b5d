#include "planning/suggest_supports.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "lines/prepare.hpp"
#include "planning/support_way.hpp"

namespace linewright {

namespace {

/// A support that a judgement of it is this near to, along the line, is the one: corners that are
/// taken as straight change distances by less.
constexpr double same_place_in = 0.01;
/// Each round leaves out places at which a rule refuses a support.
constexpr int most_rounds = 4;

bool is_among(const std::string& rule, std::span<const std::string_view> rules) {
  return std::find(rules.begin(), rules.end(), rule) != rules.end();
}

bool is_same(const SupportFault& a, const SupportFault& b) {
  return a.judgement.rule == b.judgement.rule && a.judgement.route == b.judgement.route &&
         a.judgement.with == b.judgement.with && a.judgement.message == b.judgement.message;
}

double rounded(double value, double step) {
  return std::round(value / step) * step;
}

class Suggestion {
 public:
  Suggestion(const Project& project, const Obstacles& structure, const std::string& name,
             double place_step_in, const JudgeRoute& judge)
      : bare_project_(project), tried_(project), judge_(judge), place_step_in_(place_step_in) {
    const auto at = std::find_if(project.routes.begin(), project.routes.end(),
                                 [&](const Route& each) { return each.name == name; });
    index_ = static_cast<std::size_t>(at - project.routes.begin());
    // Where nodes have ports, a line begins at a face.
    const PreparedProject drawn = prepare_in(structure, project);
    const Centreline& line = drawn.routes[index_].centreline;
    BareRoute stripped = without_clamps(*at, line.at(0), line.at(line.length_in()));
    bare_project_.routes[index_] = std::move(stripped.route);
    // Of two lines that come near each other the first is judged, with its own distances.
    const auto moved = tried_.routes.begin() + (at - project.routes.begin());
    std::rotate(tried_.routes.begin(), moved, moved + 1);
    prepared_ = prepare_in(structure, bare_project_);
    places_ = support_places(prepared_, bare(), stripped.clamps);
    found_.route = name;
    found_.from = at->from;
    found_.replaces = static_cast<int>(stripped.clamps.size());
    found_.with = *at;
  }

  SupportSuggestion found() {
    if (!clear_of_supports()) return std::move(found_);
    SupportSearch search(places_, [&](const std::vector<int>& chosen, Places places) {
      std::vector<SupportPlace> supports = places_at(chosen);
      if (places == Places::as_written) write_down(supports);
      return unexcused(faults_with(supports));
    });
    const auto chosen = search.fewest();
    if (!chosen) {
      found_.gave_up = search.gave_up();
      if (search.stopped_by()) found_.faults.push_back(*search.stopped_by());
      return std::move(found_);
    }
    keep(places_at(*chosen));
    return std::move(found_);
  }

 private:
  const PreparedRoute& bare() const { return prepared_.routes[index_]; }

  std::vector<SupportPlace> places_at(const std::vector<int>& chosen) const {
    std::vector<SupportPlace> places;
    for (const int i : chosen) places.push_back(places_[static_cast<std::size_t>(i)]);
    return places;
  }

  std::vector<SupportPlace> all_places() const {
    std::vector<SupportPlace> places;
    for (std::size_t i = 1; i + 1 < places_.size(); ++i)
      if (!places_[i].stays) places.push_back(places_[i]);
    return places;
  }

  std::vector<SupportFault> faults_with(const std::vector<SupportPlace>& chosen) {
    return faults_of(with_supports(bare(), chosen));
  }

  std::vector<SupportFault> faults_of(const Route& route) {
    tried_.routes.front() = route;
    std::vector<SupportFault> faults;
    for (RouteFault& each : judge_(tried_)) {
      SupportFault fault{std::move(each.judgement), 0, each.clamp_lost};
      place(fault);
      faults.push_back(std::move(fault));
    }
    return faults;
  }

  /// Where a judgement is along the route, whichever of two routes it counts its distance on.
  void place(SupportFault& fault) const {
    const Judgement& judgement = fault.judgement;
    if (judgement.route == found_.route) {
      fault.distance_in = judgement.distance_in.value_or(0);
      return;
    }
    fault.beyond_end = judgement.rule == "support-spacing" || judgement.rule == "resonance";
    if (judgement.at) fault.distance_in = nearest_distance_in(bare().centreline, *judgement.at);
    const PreparedRoute* other = prepared_.find_route(judgement.route);
    fault.placed = fault.beyond_end;
    if (!fault.beyond_end || !other) return;
    const auto is_joined = [&](const Node* node) {
      return !node->held() && (other->from == node || other->to == node);
    };
    if (is_joined(bare().from))
      fault.distance_in = 0;
    else if (is_joined(bare().to))
      fault.distance_in = bare().length_in();
  }

  /// Leaves out places at which no support may stand, and what no support changes. False where
  /// something is wrong that supports everywhere do not mend.
  bool clear_of_supports() {
    // Many supports would mend a line that is drawn too near to something: that is not theirs to
    // do.
    for (const SupportFault& fault : faults_of(found_.with)) add_beside(fault);
    const std::vector<SupportFault> without = faults_with({});
    const auto is_there_without = [&](const SupportFault& fault) {
      return std::any_of(without.begin(), without.end(),
                         [&](const SupportFault& each) { return is_same(each, fault); });
    };
    std::vector<SupportFault> everywhere;
    for (int round = 0; round < most_rounds; ++round) {
      everywhere = faults_with(all_places());
      const auto refused = [&](const SupportPlace& place) {
        return !place.stays &&
               std::any_of(everywhere.begin(), everywhere.end(), [&](const SupportFault& fault) {
                 return judges_the_support(fault) &&
                        std::abs(fault.distance_in - place.distance_in) < same_place_in &&
                        !is_there_without(fault);
               });
      };
      const auto first = places_.begin() + 1;
      const auto last = std::remove_if(first, places_.end() - 1, refused);
      if (last == places_.end() - 1) break;
      places_.erase(last, places_.end() - 1);
    }
    for (const SupportFault& fault : everywhere) {
      if (add_beside(fault)) continue;
      if (is_there_without(fault))
        unchanged_.push_back(fault);
      else
        found_.faults.push_back(fault);
    }
    return found_.faults.empty();
  }

  /// True for a fault of a rule that supports are not there for: it is no fault of any choice.
  bool add_beside(const SupportFault& fault) {
    const Judgement& judgement = fault.judgement;
    if (is_among(judgement.rule, support_rules)) return false;
    beside_.emplace(judgement.rule, judgement.with.value_or(""));
    return true;
  }

  static bool judges_the_support(const SupportFault& fault) {
    const std::string& rule = fault.judgement.rule;
    return rule == "support-mount" || rule == "bend-fit" || rule == "frame-crossing";
  }

  std::vector<SupportFault> unexcused(std::vector<SupportFault> faults) const {
    std::erase_if(faults, [&](const SupportFault& fault) {
      const Judgement& judgement = fault.judgement;
      if (!is_among(judgement.rule, support_rules))
        return beside_.contains({judgement.rule, judgement.with.value_or("")});
      return std::any_of(unchanged_.begin(), unchanged_.end(),
                         [&](const SupportFault& each) { return is_same(each, fault); });
    });
    return faults;
  }

  /// Puts supports on places that can be read off a tape.
  void write_down(std::vector<SupportPlace>& supports) const {
    for (SupportPlace& place : supports) {
      if (place.drawn || place.corner >= 0) continue;
      Vec3& at = place.point.at;
      at = {rounded(at.x, place_step_in_), rounded(at.y, place_step_in_),
            rounded(at.z, place_step_in_)};
    }
  }

  /// Says why each of the supports is there.
  void keep(std::vector<SupportPlace> chosen) {
    write_down(chosen);
    found_.faults = unexcused(faults_with(chosen));
    found_.possible = found_.faults.empty() && unchanged_.empty();
    found_.was_found = found_.faults.empty();
    found_.with = with_supports(bare(), chosen);
    for (std::size_t i = 0; i < chosen.size(); ++i) {
      std::vector<SupportPlace> others = chosen;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
      const SupportPlace& place = chosen[i];
      found_.supports.push_back({place.distance_in, place.point.at, place.on,
                                 place.point.hold == HoldKind::grommet ? "grommet" : "clamp",
                                 place.drawn, why_without(others)});
    }
    found_.faults.insert(found_.faults.end(), unchanged_.begin(), unchanged_.end());
  }

  std::string why_without(const std::vector<SupportPlace>& others) {
    const std::vector<SupportFault> faults = unexcused(faults_with(others));
    const auto worst = std::max_element(faults.begin(), faults.end(),
                                        [](const SupportFault& a, const SupportFault& b) {
                                          return a.judgement.verdict < b.judgement.verdict;
                                        });
    if (worst == faults.end()) return {};
    return worst->judgement.rule + ": " + worst->judgement.message;
  }

  Project bare_project_;
  Project tried_;
  const JudgeRoute& judge_;
  double place_step_in_;
  std::size_t index_ = 0;
  PreparedProject prepared_{nullptr, {}, Obstacles(Structure{})};
  std::vector<SupportPlace> places_;
  std::vector<SupportFault> unchanged_;  ///< wrong in the same way with all supports and with none
  /// Wrong as drawn or with all supports, by rule and other thing.
  std::set<std::pair<std::string, std::string>> beside_;
  SupportSuggestion found_;
};

}  // namespace

SupportSuggestion suggest_supports(const Project& project, const Obstacles& structure,
                                   const std::string& route, double place_step_in,
                                   const JudgeRoute& judge) {
  return Suggestion(project, structure, route, place_step_in, judge).found();
}

}  // namespace linewright
