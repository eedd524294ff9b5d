#include "planning/cable_cut.hpp"

#include <algorithm>

namespace linewright {

namespace {

/// What a piece begins or ends at: a node, or one side of a turnbuckle.
struct Anchor {
  std::string name;
  std::string end_words;  ///< for what is missing of it
  const std::optional<CableEnd>* end = nullptr;
  std::optional<double> at_in;  ///< along the route; nothing where it is not known
};

std::vector<const Attachment*> turnbuckles_along(const Route& route) {
  std::vector<const Attachment*> found;
  for (const Attachment& each : route.attached)
    if (each.is_turnbuckle()) found.push_back(&each);
  std::stable_sort(found.begin(), found.end(),
                   [](const Attachment* a, const Attachment* b) { return a->at_in < b->at_in; });
  return found;
}

/// Two anchors a piece, in order along the route.
std::vector<Anchor> anchors(const PreparedRoute& route, CableCut& cut) {
  const Route& stated = *route.route;
  std::vector<Anchor> found{
      {stated.from, "its end at " + stated.from + " (ends.from)", &stated.ends.from, 0.0}};
  const std::vector<const Attachment*> turnbuckles = turnbuckles_along(stated);
  for (std::size_t i = 0; i < turnbuckles.size(); ++i) {
    const Attachment& each = *turnbuckles[i];
    const std::string name =
        turnbuckles.size() > 1 ? "turnbuckle " + std::to_string(i + 1) : "turnbuckle";
    cut.turnbuckles.push_back({name, each.at_in, each.length_in, each.adjustment});
    std::optional<double> start;
    std::optional<double> end;
    if (each.adjustment) {
      start = each.at_in - each.adjustment->middle_in() / 2;
      end = each.at_in + each.adjustment->middle_in() / 2;
    } else {
      cut.missing.push_back("the adjustment of its " + name + " (attached: adjustment)");
    }
    found.push_back(
        {name, "its end at the " + name + " (attached: ends.from)", &each.ends.from, start});
    found.push_back(
        {name, "its end beyond the " + name + " (attached: ends.to)", &each.ends.to, end});
  }
  found.push_back(
      {stated.to, "its end at " + stated.to + " (ends.to)", &stated.ends.to, route.length_in()});
  return found;
}

/// Cable between where it comes out of one end and goes into the other, stretched as rigged;
/// nothing where an end or its place is not known.
std::optional<double> free_length_in(const Anchor& from, const Anchor& to) {
  if (!*from.end || !*to.end || !from.at_in || !to.at_in) return std::nullopt;
  return *to.at_in - *from.at_in - (*from.end)->takes_up_in - (*to.end)->takes_up_in;
}

/// Tension over AE: the share by which the rigged cable is longer than the cut one. Nothing for one
/// that would break.
std::optional<double> rigged_strain(const PreparedRoute& route) {
  const Line& line = *route.line;
  if (!route.route->tension || !line.axial_stiffness_lbf) return std::nullopt;
  if (line.breaking_strength_lbf &&
      route.route->tension->rigged_lbf > line.breaking_strength_lbf->value)
    return std::nullopt;
  return route.route->tension->rigged_lbf / line.axial_stiffness_lbf->value;
}

bool states_ends(const Route& route) {
  const auto stated = [](const CableEnds& ends) { return ends.from || ends.to; };
  return stated(route.ends) ||
         std::any_of(route.attached.begin(), route.attached.end(),
                     [&](const Attachment& each) { return stated(each.ends) || each.adjustment; });
}

void add_pieces(const PreparedRoute& route, CableCut& cut) {
  const std::vector<Anchor> ends = anchors(route, cut);
  const std::optional<double> strain = rigged_strain(route);
  for (const Anchor& each : ends)
    if (!*each.end) cut.missing.push_back(each.end_words);
  double sum = 0;
  double bedding_in = 0;
  bool all_known = strain.has_value();
  for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
    CablePiece piece{ends[i].name, ends[i + 1].name, std::nullopt};
    const std::optional<double> stretched = free_length_in(ends[i], ends[i + 1]);
    if (stretched && *stretched <= 0)
      cut.missing.push_back("room for cable between " + piece.from + " and " + piece.to +
                            ": their ends take up all of it");
    if (stretched && *stretched > 0 && strain) {
      const double unloaded = *stretched / (1 + *strain);
      piece.cut_length_in = unloaded + (*ends[i].end)->inside_in + (*ends[i + 1].end)->inside_in;
      sum += *piece.cut_length_in;
      bedding_in += constructional_stretch_share * unloaded;
    }
    all_known = all_known && piece.cut_length_in;
    cut.pieces.push_back(std::move(piece));
  }
  if (!all_known) return;
  cut.cut_length_in = sum;
  cut.bedding_in_in = bedding_in;
}

}  // namespace

std::optional<bool> CableCut::takes_up_tolerance() const {
  if (!each_way_in) return std::nullopt;
  return *each_way_in >= tolerance_in;
}

std::optional<bool> CableCut::takes_up_all() const {
  if (!each_way_in || !bedding_in_in) return std::nullopt;
  return *each_way_in >= tolerance_in + *bedding_in_in;
}

CableCut cable_cut(const PreparedRoute& route, double build_tolerance_in) {
  CableCut cut;
  cut.tolerance_in = 2 * build_tolerance_in;
  const double allowance = route.line->cut_allowance_in;
  if (allowance > 0 && !states_ends(*route.route)) {
    cut.cut_length_in = route.length_in() + allowance;
    return cut;
  }
  add_pieces(route, cut);
  double each_way = 0;
  for (const Turnbuckle& turnbuckle : cut.turnbuckles) {
    if (!turnbuckle.adjustment) return cut;
    each_way += turnbuckle.adjustment->each_way_in();
  }
  if (!cut.turnbuckles.empty()) cut.each_way_in = each_way;
  return cut;
}

}  // namespace linewright
