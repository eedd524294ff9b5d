#include "lines/tied_lines.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace linewright {

namespace {

double nearest_along_in(const PreparedRoute& route, Vec3 place) {
  double best = std::numeric_limits<double>::infinity();
  double along = 0;
  for (const PathChord& chord : route.centreline.chords(0, route.length_in())) {
    const Nearest found = nearest(place, Segment3{chord.from, chord.to});
    if (found.distance_in >= best) continue;
    best = found.distance_in;
    const double length = distance(chord.from, chord.to);
    const double share = length > 0 ? distance(chord.from, found.on_second) / length : 0;
    along = chord.start_in + (chord.end_in - chord.start_in) * share;
  }
  return along;
}

TiedMember member_of(const PreparedRoute& route, Vec3 from, Vec3 to) {
  TiedMember member{&route, nearest_along_in(route, from), nearest_along_in(route, to), {}};
  if (member.low_in > member.high_in) std::swap(member.low_in, member.high_in);
  member.chords =
      route.centreline.chords(std::max(0.0, member.low_in - parting_from_ties_in),
                              std::min(route.length_in(), member.high_in + parting_from_ties_in));
  return member;
}

bool is_in(const TiedMember& member, double along_in) {
  return along_in >= member.low_in - parting_from_ties_in &&
         along_in <= member.high_in + parting_from_ties_in;
}

const TiedMember* member_at(const TiedBundle& bundle, const PreparedRoute& route, double along_in) {
  for (const TiedMember& member : bundle.members)
    if (member.route == &route && is_in(member, along_in)) return &member;
  return nullptr;
}

}  // namespace

bool moves_control(const PreparedRoute& route) {
  return works_control(route.line->kind) && !route.stays();
}

double gap_to_member_in(const PreparedRoute& route, double along_in, const TiedMember& member) {
  const Vec3 place = route.centreline.at(along_in);
  double least = std::numeric_limits<double>::infinity();
  for (const PathChord& chord : member.chords)
    least = std::min(least, nearest(place, Segment3{chord.from, chord.to}).distance_in);
  return least - route.line->largest_radius_in() - member.route->line->largest_radius_in();
}

TiedLines::TiedLines(const PreparedProject& prepared) {
  for (const Bundle& bundle : prepared.project->bundles) {
    const PreparedRoute* first = prepared.find_route(bundle.routes.front());
    if (!first) continue;
    const Vec3 from = first->centreline.at(std::min(bundle.from_in, first->length_in()));
    const Vec3 to = first->centreline.at(std::min(bundle.to_in, first->length_in()));
    TiedBundle tied{&bundle, {}};
    for (const std::string& name : bundle.routes)
      if (const PreparedRoute* route = prepared.find_route(name))
        tied.members.push_back(member_of(*route, from, to));
    bundles_.push_back(std::move(tied));
  }
}

bool TiedLines::together(const PreparedRoute& first, double first_in, const PreparedRoute& second,
                         double second_in) const {
  if (moves_control(first) || moves_control(second)) return false;
  return std::any_of(bundles_.begin(), bundles_.end(), [&](const TiedBundle& bundle) {
    const TiedMember* mine = member_at(bundle, first, first_in);
    const TiedMember* theirs = member_at(bundle, second, second_in);
    return mine && theirs && gap_to_member_in(first, first_in, *theirs) <= tie_reach_in &&
           gap_to_member_in(second, second_in, *mine) <= tie_reach_in;
  });
}

}  // namespace linewright
