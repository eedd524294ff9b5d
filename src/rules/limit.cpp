#include "rules/limit.hpp"

#include <cmath>

#include "words/phrasing.hpp"

namespace linewright {

namespace {

bool is_broken(double value, const Limit& limit) {
  return !(limit.lacking(value) <= limit_rounding);
}

/// True where the second of two limits that hold is nearer, or the graver of two that are broken.
bool comes_first(double value, const Limit& known, const Limit& other) {
  const bool known_broken = is_broken(value, known);
  const bool other_broken = is_broken(value, other);
  if (known_broken != other_broken) return other_broken;
  if (known_broken) return other.broken > known.broken;
  return other.lacking(value) >= known.lacking(value);
}

void put_limit(Judgement& judgement, const Limit& limit) {
  judgement.unit = limit.unit;
  judgement.sense = limit.sense;
  judgement.source = limit.source;
}

}  // namespace

Limit::Limit(const LimitRow& row) : Limit(row.value, row) {}

Limit::Limit(double limit_value, const LimitRow& row)
    : value(limit_value), unit(row.unit), sense(row.sense), source(cite(row)), broken(row.broken) {}

Limit::Limit(const SourcedValue& figure, Unit judged_unit, LimitSense right_side)
    : value(figure.value),
      unit(judged_unit),
      sense(right_side),
      source(cite(figure.source)),
      broken(broken_limit(figure.source.mark)) {}

Limit operator*(const LimitRow& row, double size) {
  return {row.value * size, row};
}

bool holds(Judgement& judgement, double value, std::span<const Limit> limits) {
  const Limit* first = &limits.front();
  for (const Limit& each : limits.subspan(1))
    if (comes_first(value, *first, each)) first = &each;
  const bool held = !is_broken(value, *first);
  put_limit(judgement, *first);
  judgement.value = std::abs(value - first->value) <= limit_rounding ? first->value : value;
  judgement.limit = first->value;
  judgement.verdict = held ? Verdict::pass : first->broken;
  return held;
}

bool holds(Judgement& judgement, double value, std::initializer_list<Limit> limits) {
  return holds(judgement, value, std::span(limits.begin(), limits.size()));
}

bool holds_true(Judgement& judgement, bool is_right, const LimitRow& row) {
  judgement.source = cite(row);
  judgement.verdict = is_right ? Verdict::pass : row.broken;
  return is_right;
}

void leave_unknown(Judgement& judgement, const Limit& limit) {
  put_limit(judgement, limit);
  judgement.verdict = Verdict::unknown;
}

std::string cite(const LimitRow& row) {
  return cite(Source{std::string(row.source), row.mark});
}

}  // namespace linewright
