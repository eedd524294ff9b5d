#include "planning/least_gap.hpp"

namespace linewright {

namespace {

bool concerns(const Judgement& judgement, const std::string& route) {
  return judgement.route == route || (judgement.with_is_route && judgement.with == route);
}

/// What is not known stands before every figure.
bool nearer(const Judgement& first, const Judgement& second) {
  return first.margin() < second.margin();
}

LeastGap gap_of(const Judgement& judgement, const std::string& route) {
  LeastGap gap;
  gap.rule = judgement.rule;
  gap.gap_in = judgement.value;
  gap.limit_in = judgement.limit;
  gap.verdict = judgement.verdict;
  gap.message = judgement.message;
  const bool own = judgement.route == route;
  gap.with = own ? judgement.with.value_or("") : judgement.route;
  if (own) gap.distance_in = judgement.distance_in;
  return gap;
}

}  // namespace

std::vector<LeastGap> least_gaps(const std::vector<Judgement>& judgements,
                                 const std::string& route) {
  std::vector<LeastGap> gaps;
  for (const std::string_view rule : gap_rules) {
    const Judgement* least = nullptr;
    for (const Judgement& each : judgements)
      if (each.rule == rule && concerns(each, route) && (!least || nearer(each, *least)))
        least = &each;
    if (least) gaps.push_back(gap_of(*least, route));
  }
  return gaps;
}

}  // namespace linewright
