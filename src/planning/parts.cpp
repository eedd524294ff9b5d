#include "planning/parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "planning/line_parts.hpp"
#include "planning/parts_tally.hpp"
#include "planning/schedule.hpp"
#include "words/fitting_words.hpp"

namespace linewright {

namespace {

// Standards are from memory: MS21919 clamps, MS35489 grommets, MS21044 self-locking nuts.
constexpr std::string_view clamp_standard = "MS21919";
constexpr std::string_view grommet_standard = "MS35489";
constexpr std::string_view nut_standard = "MS21044";
constexpr std::string_view clamp_screw = "No. 10-32";
constexpr std::string_view not_stated = "size not stated";

std::string node_item(NodeKind kind) {
  switch (kind) {
    case NodeKind::static_port:
      return "static port";
    case NodeKind::pitot_probe:
      return "pitot probe";
    case NodeKind::instrument:
      return "instrument connection";
    case NodeKind::drain:
      return "drain";
    case NodeKind::tee:
      return "tee";
    case NodeKind::union_fitting:
      return "union";
    case NodeKind::bulkhead:
      return "bulkhead union";
    case NodeKind::cap:
      return "cap";
    case NodeKind::valve:
      return "valve";
    case NodeKind::end:
    case NodeKind::horn:
    case NodeKind::pedal:
      return {};
  }
  return {};
}

class Parts {
 public:
  Parts(const PreparedProject& prepared, const PartsOptions& options)
      : prepared_(prepared),
        tally_(*prepared.project, options),
        phrasing_(options.phrasing),
        schedule_(schedule(prepared, ScheduleOrder::route)) {}

  PartsList list() {
    PartsList list{prepared_.project->name, {}, {}, schedule_.assumptions};
    add_line_parts(prepared_, tally_, notes_);
    for (const ScheduledSupport& each : schedule_.supports) add_support(each);
    for (const ScheduledHole& each : schedule_.holes) add_guard(each);
    for (const Node& each : prepared_.project->nodes) add_node(each);
    for (const PreparedRoute& each : prepared_.routes) add_ends(each);
    for (const Task& each : prepared_.project->tasks) add_task(each);
    list.rows = tally_.rows();
    list.notes = std::move(notes_);
    return list;
  }

 private:
  void add_one(const Purchase& kind, const std::string& used_for, Vec3 at, int count = 1) {
    tally_.add(kind, count, used_for, tally_.closure_over({at}));
  }

  void add_self_locking(const std::string& size, const std::string& used_for, Vec3 at) {
    add_one({"self-locking nut", size, std::string(nut_standard)}, used_for, at,
            self_locking_nuts(0));
  }

  /// What comes apart again is taken to be one bolt with its nut.
  void add_task(const Task& task) {
    if (task.again > 0)
      add_one({"self-locking nut", "size not stated", std::string(nut_standard)}, task.name,
              task.at, self_locking_nuts(task.again));
  }

  std::string bore_words(const std::optional<double>& bore_in) const {
    return bore_in ? phrasing_.length(*bore_in) + " bore" : "bore not stated";
  }

  void add_support(const ScheduledSupport& support) {
    if (support.hold == "clamp") {
      add_one({"clamp", support.clamp.empty() ? std::string(not_stated) : support.clamp,
               std::string(clamp_standard)},
              support.route, support.at);
      add_one({"screw", std::string(clamp_screw)}, support.route, support.at);
      add_self_locking(std::string(clamp_screw), support.route, support.at);
    } else if (support.hold == "pulley") {
      add_one({"pulley", groove_words(support) + " groove, " + line_of(support.route)},
              support.route, support.at);
      add_one({"bolt", std::string(not_stated)}, support.route, support.at);
      add_self_locking(std::string(not_stated), support.route, support.at);
    } else if (!support.is_holes_own) {
      const bool grommet = support.hold == "grommet";
      add_one({support.hold, bore_words(support.size_in),
               grommet ? std::string(grommet_standard) : std::string()},
              support.route, support.at);
    }
  }

  std::string groove_words(const ScheduledSupport& support) const {
    return support.size_in ? phrasing_.length(*support.size_in) : "?";
  }

  const std::string& line_of(const std::string& route) const {
    return prepared_.find_route(route)->line->name;
  }

  /// What is snapped, pressed or laid round the edge of a hole, by hole and web.
  void add_guard(const ScheduledHole& hole) {
    const std::string web = phrasing_.length(hole.thickness_in) + " web";
    if (hole.edge == EdgeGuard::edge_trim) {
      tally_.add({"edge trim", "for " + web, {}, "in"}, hole.round_in, hole.name,
                 tally_.closure_over({hole.centre}));
      return;
    }
    if (hole.edge != EdgeGuard::grommet && hole.edge != EdgeGuard::bushing) return;
    const bool grommet = hole.edge == EdgeGuard::grommet;
    const std::string across =
        hole.diameter_in ? phrasing_.length(*hole.diameter_in) + " hole" : "outline";
    add_one({grommet ? "grommet" : "bushing", bore_words(hole.bore_in) + ", " + across + ", " + web,
             grommet ? std::string(grommet_standard) : std::string()},
            hole.name, hole.centre);
  }

  /// By its fitting where that is stated, else by what is joined there: "3 x tube-nylon-1/4". A
  /// casing comes with what holds its ends.
  void add_node(const Node& node) {
    const std::string item = node_item(node.kind);
    std::map<std::string, int> lines;
    for (const PreparedRoute& route : prepared_.routes)
      if (route.line->kind != LineKind::conduit)
        lines[route.line->name] += (route.from == &node) + (route.to == &node);
    std::erase_if(lines, [](const auto& each) { return each.second == 0; });
    if (item.empty() || lines.empty()) return;
    if (const Fitting* fitting = prepared_.project->catalogue.find_fitting(node.fitting))
      return add_one(
          {std::string(fitting_kind_words(fitting->kind)), fitting->name, fitting->standard},
          node.name, node.at);
    std::string size;
    for (const auto& [line, count] : lines) {
      size += size.empty() ? "" : ", ";
      size += count == 1 ? line : fmt::format("{} x {}", count, line);
    }
    add_one({item, size}, node.name, node.at);
  }

  void add_end(const PreparedRoute& route, const CableEnd& end, Vec3 at, bool at_node) {
    const std::string& name = route.route->name;
    const std::string& line = route.line->name;
    if (end.kind == CableEndKind::swaged) {
      add_one({"swaged terminal", line}, name, at);
    } else {
      add_one({"thimble", line}, name, at);
      add_one({"sleeve or splice of a thimble", line}, name, at);
    }
    if (at_node && end.joint == EndJoint::pin) add_turning_bolt(name, at);
  }

  void add_ends(const PreparedRoute& route) {
    if (route.line->kind == LineKind::cable) add_cable_hardware(route);
    if (route.line->kind != LineKind::rod) return;
    for (const Node* node : {route.from, route.to}) {
      add_one({"rod end", route.line->name}, route.route->name, node->at);
      add_turning_bolt(route.route->name, node->at);
    }
  }

  /// 14 CFR 23.607(b): no self-locking nut alone on a bolt that turns in operation.
  void add_turning_bolt(const std::string& used_for, Vec3 at) {
    for (const std::string item : {"drilled bolt", "castle nut", "cotter pin"})
      add_one({item, std::string(not_stated)}, used_for, at);
  }

  void add_cable_hardware(const PreparedRoute& route) {
    const Route& stated = *route.route;
    std::vector<std::string> missing;
    const auto end = [&](const std::optional<CableEnd>& each, Vec3 at, bool at_node,
                         const std::string& where) {
      if (each)
        add_end(route, *each, at, at_node);
      else
        missing.push_back(where);
    };
    end(stated.ends.from, route.from->at, true, stated.from);
    end(stated.ends.to, route.to->at, true, stated.to);
    for (const Attachment& each : stated.attached) {
      const Vec3 at = route.centreline.at(std::clamp(each.at_in, 0.0, route.length_in()));
      if (each.is_turnbuckle()) {
        add_one({"turnbuckle", phrasing_.length(each.length_in) + " long, " + route.line->name},
                stated.name, at);
        end(each.ends.from, at, false, "its turnbuckle");
        end(each.ends.to, at, false, "its turnbuckle");
      } else if (!is_end(route, each)) {
        add_one({each.kind, route.line->name}, stated.name, at);
      }
    }
    if (missing.empty()) return;
    missing.erase(std::unique(missing.begin(), missing.end()), missing.end());
    notes_.push_back(fmt::format("{}: what the cable ends in at {} is not stated and not counted",
                                 stated.name, fmt::join(missing, ", ")));
  }

  /// True for the body of an end that `ends` states and that is counted by it.
  static bool is_end(const PreparedRoute& route, const Attachment& attachment) {
    const bool at_from = attachment.at_in < route.length_in() / 2;
    const auto& end = at_from ? route.route->ends.from : route.route->ends.to;
    return end && attachment.kind.find("terminal") != std::string::npos;
  }

  const PreparedProject& prepared_;
  PartsTally tally_;
  Phrasing phrasing_;
  Schedule schedule_;
  std::vector<std::string> notes_;
};

}  // namespace

PartsList parts_list(const PreparedProject& prepared, const PartsOptions& options) {
  return Parts(prepared, options).list();
}

}  // namespace linewright
