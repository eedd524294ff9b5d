#include "planning/close_up.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

#include "lines/closed_over.hpp"
#include "planning/air_system.hpp"
#include "planning/led_through.hpp"

namespace linewright {

namespace {

using Reached = std::vector<std::vector<ReachedBy>>;

std::string kind_word(ThingKind kind) {
  switch (kind) {
    case ThingKind::support:
    case ThingKind::fairlead:
    case ThingKind::pulley:
      return "support";
    case ThingKind::grommet:
      return "grommet";
    case ThingKind::sleeve:
      return "sleeve";
    case ThingKind::turnbuckle:
      return "turnbuckle";
    case ThingKind::terminal:
    case ThingKind::attachment:
    case ThingKind::fitting:
      break;
  }
  return "fitting";
}

/// Where the hands of a task have to be, as indices into the places asked for.
struct TaskPlaces {
  const Task* task = nullptr;
  std::size_t one = 0;
  std::size_t other = 0;
  std::vector<std::size_t> ends;  ///< loose ends that are connected then
};

/// Everything that a hand may have to come to, asked for at once.
struct ClosurePlaces {
  std::vector<Vec3> all;
  std::vector<Thing> things;  ///< in the order of the first places
  std::vector<TaskPlaces> tasks;

  std::size_t add(Vec3 place) {
    all.push_back(place);
    return all.size() - 1;
  }
};

ClosurePlaces places_of(const PreparedProject& prepared) {
  ClosurePlaces places;
  places.things = reachable_things(prepared);
  for (const Thing& thing : places.things) places.add(thing.at);
  for (const Task& task : prepared.project->tasks) {
    TaskPlaces at{&task, 0, 0, {}};
    if (task.two_hands) {
      const auto sides = both_sides(prepared, task.on, task.at);
      at.one = places.add(sides[0]);
      at.other = places.add(sides[1]);
    } else {
      at.one = at.other = places.add(task.at);
    }
    for (const Node& node : prepared.project->nodes)
      if (node.loose && node.loose->until == task.name) at.ends.push_back(places.add(node.at));
    places.tasks.push_back(at);
  }
  return places;
}

bool can_be_done(const TaskPlaces& at, const Reached& reached, const std::vector<WayIn>& ways) {
  const bool ends = std::all_of(at.ends.begin(), at.ends.end(),
                                [&](std::size_t end) { return !reached[end].empty(); });
  if (!ends || reached[at.one].empty() || reached[at.other].empty()) return false;
  return !at.task->two_hands || both_at_once(ways, reached[at.one], reached[at.other]);
}

/// Closures and tasks that come before `name`, through others too.
std::set<std::string> steps_before(const std::string& name, const std::vector<Before>& order) {
  std::multimap<std::string_view, const Before*> waits;
  for (const Before& each : order) waits.emplace(each.then, &each);
  std::set<std::string> seen;
  std::vector<std::string> open{name};
  while (!open.empty()) {
    const std::string at = open.back();
    open.pop_back();
    const auto [first, last] = waits.equal_range(at);
    for (auto each = first; each != last; ++each)
      if (seen.insert(each->second->first).second) open.push_back(each->second->first);
  }
  seen.erase(name);
  return seen;
}

class Planner {
 public:
  Planner(const PreparedProject& prepared, ClosurePlaces places)
      : prepared_(prepared),
        project_(*prepared.project),
        places_(std::move(places)),
        reach_(prepared, places_.all),
        that_cover_(closures_that_cover(*prepared.project)) {
    for (const Closure& closure : project_.closures) closures_.emplace(closure.name, &closure);
  }

  CloseUp plan() {
    put_in_order();
    now_ = reached({});
    list_not_reached();
    for (const std::string& step : steps_) take(step);
    add_tests();
    for (const Closure& closure : project_.closures)
      if (!that_cover_.contains(closure.name)) result_.unknown.push_back(closure.name);
    add_notes();
    return std::move(result_);
  }

 private:
  /// The same closures are asked for more than once. All of `closed` cover something.
  const Reached& reached(const std::set<std::string>& closed) {
    const auto known = known_.find(closed);
    if (known != known_.end()) return known->second;
    return known_.emplace(closed, reach_.reached(closed)).first->second;
  }

  /// A task that a closure puts out of reach comes before it.
  std::vector<Before> order_by_reach(const std::vector<Before>& stated) {
    std::vector<Before> before;
    if (places_.tasks.empty()) return before;
    for (const Closure& closure : project_.closures) {
      if (!that_cover_.contains(closure.name)) continue;
      std::set<std::string> closed = steps_before(closure.name, stated);
      std::erase_if(closed, [&](const std::string& name) { return !that_cover_.contains(name); });
      const Reached open = reached(closed);
      closed.insert(closure.name);
      const Reached& shut = reached(closed);
      for (const TaskPlaces& at : places_.tasks)
        if (can_be_done(at, open, reach_.ways()) && !can_be_done(at, shut, reach_.ways()))
          before.push_back({at.task->name, closure.name,
                            hands_words(*at.task) + " to " + at.task->name + " once " +
                                closure.name + " is on"});
    }
    return before;
  }

  static std::string hands_words(const Task& task) {
    return task.two_hands ? "no two hands come" : "no hand comes";
  }

  void put_in_order() {
    std::vector<std::string> names;
    for (const Closure& closure : project_.closures) names.push_back(closure.name);
    for (const Task& task : project_.tasks) names.push_back(task.name);
    std::vector<Before> before = stated_order(project_);
    const std::vector<Before> by_reach = order_by_reach(before);
    before.insert(before.end(), by_reach.begin(), by_reach.end());
    const ClosingOrder order = closing_order(names, before);
    steps_ = order.order;
    for (const std::vector<std::string>& circle : order.circles) add_circle(circle, before);
  }

  void add_circle(const std::vector<std::string>& names, const std::vector<Before>& before) {
    ClosingCircle circle{names, {}};
    for (std::size_t i = 0; i < names.size(); ++i) {
      const std::string& then = names[(i + 1) % names.size()];
      const auto link = std::find_if(before.begin(), before.end(), [&](const Before& each) {
        return each.first == names[i] && each.then == then;
      });
      if (link != before.end()) circle.why.push_back(link->why);
    }
    result_.circles.push_back(std::move(circle));
  }

  std::string way_to(std::size_t place) const {
    const std::vector<ReachedBy>& ways = now_[place];
    return ways.empty() ? "" : reach_.ways()[static_cast<std::size_t>(ways.front().way)].name;
  }

  CloseUpItem item_of(std::size_t thing) const {
    const Thing& each = places_.things[thing];
    return {kind_word(each.kind), each.name, each.route->route->name, each.at, way_to(thing), ""};
  }

  void list_not_reached() {
    for (std::size_t i = 0; i < places_.things.size(); ++i)
      if (now_[i].empty()) result_.not_reached.push_back(item_of(i));
    for (const TaskPlaces& at : places_.tasks)
      if (!can_be_done(at, now_, reach_.ways()))
        result_.problems.push_back(hands_words(*at.task) + " to task " + at.task->name +
                                   ", even while nothing is closed");
  }

  void take(const std::string& step) {
    const auto closure = closures_.find(step);
    if (closure != closures_.end()) return take_closure(*closure->second);
    for (const TaskPlaces& at : places_.tasks)
      if (at.task->name == step) take_task(at);
  }

  /// Circles are told of already; here more than one closure together put it out of reach.
  void take_task(const TaskPlaces& at) {
    const Reached& first = reached({});
    if (!can_be_done(at, first, reach_.ways()) || can_be_done(at, now_, reach_.ways())) return;
    const bool in_circle = std::any_of(
        result_.circles.begin(), result_.circles.end(), [&](const ClosingCircle& circle) {
          return std::find(circle.names.begin(), circle.names.end(), at.task->name) !=
                 circle.names.end();
        });
    if (!in_circle)
      result_.problems.push_back(hands_words(*at.task) + " to task " + at.task->name +
                                 " in its turn: what comes before it closes it in");
  }

  void take_closure(const Closure& closure) {
    ClosureList list{closure.name, {}, {}, {}};
    const bool covers = that_cover_.contains(closure.name);
    if (covers) closed_.insert(closure.name);
    const Reached& after = reached(closed_);
    if (covers) {
      add_things(list, closure, after);
      note_covers(after);
    }
    add_tasks(list, closure, after);
    add_loose_ends(list, closure);
    result_.order.push_back(closure.name);
    result_.closures.push_back(std::move(list));
    if (covers) now_ = after;
  }

  void add_things(ClosureList& list, const Closure& closure, const Reached& after) {
    const std::string why = "no hand comes to it once " + closure.name + " is on";
    const PreparedRoute* last = nullptr;
    for (std::size_t i = 0; i < places_.things.size(); ++i) {
      if (now_[i].empty() || !after[i].empty()) continue;
      const Thing& thing = places_.things[i];
      CloseUpItem item = item_of(i);
      item.why = thing.kind == ThingKind::turnbuckle ? "adjusted and safetied: " + why : why;
      item.why += goes_on_words(thing, closure);
      if (thing.route != last && listed_.insert(thing.route).second) {
        const bool wire = thing.route->route->system == SystemKind::wire;
        list.before.push_back(
            {wire ? "wire" : "line", item.route, item.route, item.at, item.reached_now_by,
             "it has to lie in what holds it: " + why + led_through_words(*thing.route, closure)});
      }
      last = thing.route;
      list.before.push_back(std::move(item));
    }
  }

  /// Of what is fixed to a part that is not there before the closure goes on.
  std::string goes_on_words(const Thing& thing, const Closure& closure) const {
    for (const RoutePoint& point : thing.route->route->points)
      if (point.where == thing.where && !point.to.empty() &&
          goes_on_with(*prepared_.project, point.to, closure))
        return "; yet " + point.to + ", which it is fixed to, goes on with " + closure.name +
               ": fit it as that goes on, the line in it, or fix it to what stays";
    return {};
  }

  /// Of a line that cannot lie in all that holds it before the closure goes on.
  std::string led_through_words(const PreparedRoute& route, const Closure& closure) const {
    const std::string through = led_through(prepared_, route, closure);
    if (through.empty()) return through;
    return "; yet it goes through " + through + ", which goes on with " + closure.name +
           ": lead it through as that goes on, with the slack to do so, or part it there by a "
           "union";
  }

  /// Those that the closure puts out of reach, and those that it is stated to wait for.
  void add_tasks(ClosureList& list, const Closure& closure, const Reached& after) {
    for (const TaskPlaces& at : places_.tasks) {
      const Task& task = *at.task;
      const bool stated =
          std::find(closure.after.begin(), closure.after.end(), task.name) != closure.after.end();
      const bool closed_in =
          can_be_done(at, now_, reach_.ways()) && !can_be_done(at, after, reach_.ways());
      if ((!stated && !closed_in) || !tasks_listed_.insert(task.name).second) continue;
      std::string why = closed_in ? hands_words(task) + " to it once " + closure.name + " is on"
                                  : closure.name + " is stated to come after it";
      if (task.again > 0)
        why += fmt::format(
            "; it is to come apart {} more",
            task.again == 1 ? std::string("once") : fmt::format("{} times", task.again));
      list.before.push_back({"task", task.name, "", task.at, way_to(at.one), why});
    }
  }

  /// What hangs loose while the closure goes on.
  void add_loose_ends(ClosureList& list, const Closure& closure) {
    const auto place_in_order = [&](const std::string& name) {
      return std::find(steps_.begin(), steps_.end(), name) - steps_.begin();
    };
    for (std::size_t i = 0; i < places_.things.size(); ++i) {
      const Thing& thing = places_.things[i];
      if (!thing.node || !thing.node->loose) continue;
      const LooseEnd& loose = *thing.node->loose;
      if (place_in_order(loose.until) < place_in_order(closure.name)) continue;
      std::string why = "loose until " + loose.until +
                        ": capped against dirt, wrapped so that it beats on nothing, tied up clear "
                        "of moving parts";
      if (loose.coil_in > 0) why += fmt::format(", with {:g} in coiled", loose.coil_in);
      if (is_air(thing.route->route->system))
        why += "; the leak test passes through it only with the cap on";
      list.before.push_back(
          {"loose-end", thing.name, thing.route->route->name, thing.at, way_to(i), why});
    }
  }

  bool is_of(const Thing& thing, const std::string& system) const {
    if (!thing.node) return thing.route->route->system_name == system;
    return std::any_of(prepared_.routes.begin(), prepared_.routes.end(),
                       [&](const PreparedRoute& route) {
                         return route.route->system_name == system &&
                                (route.from == thing.node || route.to == thing.node);
                       });
  }

  /// The closures that cover something of a system: joints of it, and, last, what holds its lines.
  struct Covers {
    std::vector<std::size_t> joints;
    std::size_t last = 0;
  };

  void note_covers(const Reached& after) {
    const std::size_t here = result_.closures.size();
    for (const std::string& system : system_names(project_)) {
      const SystemKind kind = kind_of_system(project_, system);
      if (!is_air(kind) || kind == SystemKind::vent) continue;
      for (std::size_t i = 0; i < places_.things.size(); ++i) {
        const Thing& thing = places_.things[i];
        if (now_[i].empty() || !after[i].empty() || !is_of(thing, system)) continue;
        Covers& covers = covers_[system];
        covers.last = here;
        if (thing.node && (covers.joints.empty() || covers.joints.back() != here))
          covers.joints.push_back(here);
      }
    }
  }

  /// A leak that is found behind a closure is not mended: a system is tested before each that
  /// covers a joint of it. Where none does, before the last that covers what holds its lines.
  void add_tests() {
    for (auto& [system, covers] : covers_) {
      if (covers.joints.empty()) covers.joints.push_back(covers.last);
      for (const std::size_t closure : covers.joints)
        result_.closures[closure].tests.push_back(system);
    }
  }

  void add_notes() {
    const Structure& structure = project_.structure;
    if (structure.panels.empty() && structure.meshes.empty())
      result_.notes.push_back(
          "no skin is described, neither panels nor a mesh: everything was taken to be reached "
          "from outside");
    for (const WayIn& way : reach_.ways())
      if (!way.doubt.empty())
        result_.notes.push_back("opening " + way.name + " of " + way.closure + " is " + way.doubt);
    result_.notes.push_back(fmt::format(
        "Reach is worked out on a grid of {:.3g} in; where that leaves a doubt, the hand does not "
        "come there. Lines, their fittings, pulleys and movers do not stand in the way.",
        reach_.cell_in()));
  }

  const PreparedProject& prepared_;
  const Project& project_;
  ClosurePlaces places_;
  ArmReach reach_;
  std::set<std::string> that_cover_;  ///< closures
  std::unordered_map<std::string_view, const Closure*> closures_;
  std::map<std::set<std::string>, Reached> known_;
  std::vector<std::string> steps_;  ///< closures and tasks
  std::set<std::string> closed_;
  Reached now_;
  std::set<const PreparedRoute*> listed_;
  std::map<std::string, Covers> covers_;  ///< of each system
  std::set<std::string> tasks_listed_;
  CloseUp result_;
};

/// Closures and tasks in order, where nothing is drawn that a hand could come to.
CloseUp order_only(const Project& project) {
  std::vector<std::string> names;
  for (const Closure& closure : project.closures) names.push_back(closure.name);
  const ClosingOrder order = closing_order(names, stated_order(project));
  CloseUp result;
  for (const std::string& name : order.order) {
    result.order.push_back(name);
    result.closures.push_back({name, {}, {}, {}});
  }
  for (const std::vector<std::string>& circle : order.circles)
    result.circles.push_back({circle, {}});
  return result;
}

/// What is needed before a closure is ordered in time for it.
void add_in_hand(const PreparedProject& prepared, CloseUp& plan) {
  for (const PartRow& row : parts_list(prepared, {.by_closure = true}).rows)
    for (ClosureList& closure : plan.closures)
      if (row.needed_before == closure.name) closure.in_hand.push_back(row);
}

}  // namespace

CloseUp close_up(const PreparedProject& prepared) {
  const Project& project = *prepared.project;
  ClosurePlaces places = places_of(prepared);
  const bool nothing = project.closures.empty() || places.all.empty();
  CloseUp result = nothing ? order_only(project) : Planner(prepared, std::move(places)).plan();
  add_in_hand(prepared, result);
  result.project_name = project.name;
  result.assumptions = project.assumptions;
  return result;
}

}  // namespace linewright
