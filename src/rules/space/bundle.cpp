#include <algorithm>
#include <cmath>

#include "geometry/plane/packing.hpp"
#include "lines/line_pairs.hpp"
#include "lines/near/nearest_lines.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow moving{.name = "moving-control",
                          .subject = "a control cable or rod that moves, tied to anything",
                          .value = 0,
                          .unit = Unit::none,
                          .source = "14 CFR 23.685(a): nothing may jam or foul a control",
                          .mark = Mark::verified};
constexpr LimitRow vapour{.name = "wire-to-vapour",
                          .subject = "a wire tied to a line with flammable vapour",
                          .value = 0,
                          .unit = Unit::none,
                          .source = "AC 43.13-1B CHG 1 para 11-96: 2 in apart in any case",
                          .mark = Mark::verified};
constexpr LimitRow pressure{.name = "wire-to-pressure",
                            .subject = "a wire tied to an instrument line",
                            .value = 0,
                            .unit = Unit::none,
                            .source = "a chafed wire burns through the tube it is tied to",
                            .mark = Mark::common_practice,
                            .broken = Verdict::warn};
constexpr LimitRow lines_overlap{.name = "overlap",
                                 .subject = "two lines of a bundle, as drawn",
                                 .value = 0,
                                 .source = "geometry: no two things in one place",
                                 .mark = Mark::calculated};
constexpr LimitRow beside{.name = "beside",
                          .subject = "lines of a bundle from each other, as drawn",
                          .value = tie_reach_in,
                          .sense = LimitSense::at_most,
                          .source = "a tie draws together what lies beside each other",
                          .mark = Mark::common_practice,
                          .broken = Verdict::warn};
constexpr LimitRow spacing{.name = "tie-spacing",
                           .subject = "from tie to tie",
                           .value = 12,
                           .sense = LimitSense::at_most,
                           .source =
                               "AC 43.13-1B para 11-158 b: lines are tied where more than "
                               "12 in is left between supports",
                           .mark = Mark::verified};

constexpr auto bundle_limits =
    limit_table({moving, vapour, pressure, lines_overlap, beside, spacing});

/// Places along a stretch at which the lines' gaps are looked at are no farther apart.
constexpr double apart_in = 0.25;
/// Lines drawn tangent are not in one place for the sagitta of their arcs.
constexpr double touching_in = 2 * Centreline::default_sagitta_in;
/// Lines of a bundle that lie farther apart than this are not looked at more closely.
constexpr double largest_gap_in = 1000;

Judgement at_bundle(const RuleContext& context, const TiedBundle& bundle,
                    const PreparedRoute& route, double along_in) {
  Judgement judgement = context.at(route, along_in);
  judgement.location = bundle.bundle->where;
  return judgement;
}

bool is(const PreparedRoute& route, LineKind kind) {
  return route.line->kind == kind;
}

/// What forbids that two lines are tied to each other; nullptr for nothing.
const LimitRow* forbidding(const PreparedRoute& first, const PreparedRoute& second) {
  if (moves_control(first) || moves_control(second)) return &moving;
  if (is(first, LineKind::wire) == is(second, LineKind::wire)) return nullptr;
  const PreparedRoute& other = is(first, LineKind::wire) ? second : first;
  if (other.route->system == SystemKind::vent) return &vapour;
  return is_air(other.route->system) ? &pressure : nullptr;
}

Judgement judge_kinds(const RuleContext& context, const TiedBundle& bundle, const TiedMember& first,
                      const TiedMember& second) {
  const PreparedRoute& route = *first.route;
  const std::string& other = second.route->route->name;
  Judgement judgement = at_bundle(context, bundle, route, first.low_in);
  judgement.with = other;
  judgement.with_is_route = true;
  const LimitRow* row = forbidding(route, *second.route);
  if (holds_true(judgement, !row, row ? *row : moving)) {
    judgement.message = "may be tied to " + other;
    return judgement;
  }
  judgement.message = "tied to " + other + " in " + bundle.bundle->name + ": " +
                      (row == &moving   ? "nothing is tied to a control that moves"
                       : row == &vapour ? "no wire is tied to a line with flammable vapour"
                                        : "a wire lies on a pressure line");
  judgement.mend = "take one of the two out of the bundle, and clamp them apart";
  return judgement;
}

/// The farthest that a member comes to another, as drawn, in its tied stretch.
struct Beside {
  double most_in = 0;
  double most_at_in = 0;
};

Beside beside_of(const TiedMember& member, const TiedMember& other) {
  Beside found;
  const double length = member.high_in - member.low_in;
  const int steps = std::max(1, static_cast<int>(std::ceil(length / apart_in)));
  for (int i = 0; i <= steps; ++i) {
    const double along = member.low_in + length * i / steps;
    const double gap = gap_to_member_in(*member.route, along, other);
    if (i == 0 || gap > found.most_in) found.most_in = gap, found.most_at_in = along;
  }
  return found;
}

/// Where a member lies tied, and where it parts from the others.
Stretch tied_stretch(const TiedMember& member) {
  return make_stretch(*member.route, std::max(0.0, member.low_in - parting_from_ties_in),
                      std::min(member.route->length_in(), member.high_in + parting_from_ties_in),
                      {});
}

/// No line lies in another, which is judged of each two: where they are tied, and past the last tie
/// as far as no other rule compares them. Of lines that end at one fitting `separation` judges how
/// they part.
Judgement judge_overlap(const RuleContext& context, const TiedBundle& bundle,
                        const TiedMember& first, const TiedMember& second) {
  const std::string& other = second.route->route->name;
  const auto nearest =
      nearest_lines(tied_stretch(first), tied_stretch(second), Reach::none, largest_gap_in,
                    [&](double along, double other_along) {
                      return !at_shared_node(*first.route, along, *second.route, other_along);
                    });
  Judgement judgement =
      at_bundle(context, bundle, *first.route, nearest ? nearest->distance_in : first.low_in);
  judgement.with = other;
  judgement.with_is_route = true;
  const double drawn = nearest ? nearest->gap_in : largest_gap_in;
  const double gap = drawn > -touching_in ? std::max(0.0, drawn) : drawn;
  if (holds(judgement, gap, {lines_overlap})) {
    judgement.message = "lies beside " + other + ", not in it";
    return judgement;
  }
  judgement.message = "lies in " + other + " as drawn";
  judgement.mend = "draw the two lines " + context.phrasing.length_up(-gap) + " farther apart";
  return judgement;
}

/// A member, the one of those before it that it lies nearest to, and how they lie.
struct Joined {
  const TiedMember* member = nullptr;
  const TiedMember* to = nullptr;
  Beside gaps;
};

/// From the first on, always the line that comes nearest to any that is in already: so a bundle
/// that falls apart in two shows where.
std::vector<Joined> joined_in_order(const TiedBundle& bundle) {
  std::vector<const TiedMember*> in{&bundle.members.front()};
  std::vector<const TiedMember*> left;
  for (std::size_t i = 1; i < bundle.members.size(); ++i) left.push_back(&bundle.members[i]);
  std::vector<Joined> order;
  while (!left.empty()) {
    Joined next;
    for (const TiedMember* member : left)
      for (const TiedMember* to : in) {
        const Beside gaps = beside_of(*member, *to);
        if (!next.member || gaps.most_in < next.gaps.most_in) next = {member, to, gaps};
      }
    std::erase(left, next.member);
    in.push_back(next.member);
    order.push_back(next);
  }
  return order;
}

Judgement judge_beside(const RuleContext& context, const TiedBundle& bundle, const Joined& joined) {
  const Beside& gaps = joined.gaps;
  const std::string& other = joined.to->route->route->name;
  Judgement judgement = at_bundle(context, bundle, *joined.member->route, gaps.most_at_in);
  judgement.with = other;
  judgement.with_is_route = true;
  const std::string gap = context.phrasing.length(gaps.most_in);
  if (holds(judgement, gaps.most_in, {beside})) {
    judgement.message = "lies within " + gap + " of " + other + " along " + bundle.bundle->name;
    return judgement;
  }
  judgement.message = "is " + gap + " from " + other + " within " + bundle.bundle->name +
                      ": too far for a tie, and judged there as not tied";
  judgement.mend = "draw the lines beside each other, or end the bundle before they part";
  return judgement;
}

/// "0.62 in across, for a clamp-10".
std::string girth_words(const RuleContext& context, const TiedBundle& bundle) {
  std::vector<double> diameters;
  for (const TiedMember& member : bundle.members)
    diameters.push_back(member.route->line->largest_diameter_in());
  const double girth = packed_diameter(diameters);
  std::string words = context.phrasing.length(girth) + " across";
  const ClampSize* fits = nullptr;
  for (const ClampSize& clamp : context.prepared.project->catalogue.clamps)
    if (clamp.nominal_diameter_in >= girth - limit_rounding &&
        (!fits || clamp.nominal_diameter_in < fits->nominal_diameter_in))
      fits = &clamp;
  return fits ? words + ", for a " + fits->name : words;
}

Judgement judge_ties(const RuleContext& context, const TiedBundle& bundle) {
  const TiedMember& first = bundle.members.front();
  Judgement judgement = at_bundle(context, bundle, *first.route, first.low_in);
  const Phrasing& phrasing = context.phrasing;
  if (bundle.bundle->to_in > first.route->length_in() + limit_rounding) {
    leave_unknown(judgement, spacing);
    judgement.message = bundle.bundle->name + " ends beyond its first line, which is " +
                        phrasing.length(first.route->length_in()) + " long";
    judgement.mend = "measure `from` and `to` along the first of its routes";
    return judgement;
  }
  const std::string ties = "ties " + phrasing.length(bundle.bundle->ties_in) + " apart";
  if (holds(judgement, bundle.bundle->ties_in, {spacing})) {
    judgement.message = ties + " on " + bundle.bundle->name + ", " + girth_words(context, bundle);
    return judgement;
  }
  judgement.message = ties + " on " + bundle.bundle->name + " are too far from each other";
  judgement.mend = "tie it every " + phrasing.length(phrasing.rounded_down(spacing.value));
  return judgement;
}

std::vector<Judgement> judge_bundle(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const TiedBundle& bundle : context.motion.ties.bundles()) {
    if (bundle.members.size() < 2) continue;
    judgements.push_back(judge_ties(context, bundle));
    for (const Joined& joined : joined_in_order(bundle))
      judgements.push_back(judge_beside(context, bundle, joined));
    for (std::size_t i = 0; i < bundle.members.size(); ++i) {
      const TiedMember& member = bundle.members[i];
      for (std::size_t j = i + 1; j < bundle.members.size(); ++j) {
        const TiedMember& other = bundle.members[j];
        judgements.push_back(judge_kinds(context, bundle, member, other));
        judgements.push_back(judge_overlap(context, bundle, member, other));
      }
    }
  }
  return judgements;
}

}  // namespace

const Rule& bundle_rule() {
  static const Rule rule{
      .name = "bundle",
      .purpose = "only what may be tied together is, and it lies together",
      .explanation =
          R"(A bundle ties lines to each other along a stretch of the first of them. Where its lines lie
within 1/2 in of each other as drawn, their surfaces from each other, separation and chafe leave
them out against each other, and as they part within 2 in past the last tie; against everything
else each of them counts as it is. Here it is judged what is tied to what, that no line lies in
another there or as they part, that each lies within reach of a tie from one other, and how far apart the ties are. A
control cable or rod that moves, or whose travel is not stated, is tied to nothing. The clamp
named is for the least circle round all of the lines. Ties hold lines together; they are no
supports, and each line needs its own.)",
      .mend = "Take out what may not be tied, and clamp it on its own.",
      .limits = bundle_limits,
      .catalogue_limits = "",
      .judge = judge_bundle};
  return rule;
}

}  // namespace linewright
