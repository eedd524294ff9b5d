#include "render/rules_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "model/units.hpp"
#include "render/amount.hpp"
#include "render/layout.hpp"
#include "render/rule_examples.hpp"

namespace linewright {

namespace {

/// "at least 0.25 in", "at most 0.5 times the spacing".
std::string limit_value(const LimitRow& row, const Phrasing& phrasing) {
  const std::string_view side = sense_words(row.sense);
  if (!row.times.empty()) return fmt::format("{} {:g} times the {}", side, row.value, row.times);
  if (row.unit == Unit::inch && phrasing.unit == LengthUnit::millimetre)
    return fmt::format("{} {} mm", side, fixed_number(row.value * mm_per_in, 2));
  const std::string number = fmt::format("{} {}", side, row.value);
  return row.unit == Unit::none ? number : fmt::format("{} {}", number, unit_word(row.unit));
}

std::string limit_text(const LimitRow& row, const TextStyle& style) {
  std::string text = wrapped("  ", row.subject);
  text += fmt::format("    limit:   {}\n", limit_value(row, style.phrasing));
  text += fmt::format("    broken:  {}\n", verdict_text(row.broken, style));
  return text + wrapped("    source:  ", cite(row));
}

std::string examples_text(const RuleExamples& examples) {
  return "\nExamples\n" + wrapped("  Not so:  ", examples.fails.differs) + "\n" +
         std::string(examples.fails.messages) + "\n" +
         wrapped("  But so:  ", examples.passes.differs) + "\n" + passes_in_place(examples);
}

}  // namespace

std::string rules_text(const std::vector<const Rule*>& rules, const TextStyle& style) {
  std::size_t widest = 0;
  for (const Rule* rule : rules) widest = std::max(widest, columns_of(rule->name));
  std::string text;
  for (const Rule* rule : rules) text += wrapped(left(rule->name, widest + 2), rule->purpose);
  if (!style.quiet) text += "\nFor one rule's manual: linewright explain RULE\n";
  return text;
}

std::string rule_manual_text(const Rule& rule, const TextStyle& style) {
  std::string text = wrapped("", fmt::format("{}: {}", rule.name, rule.purpose));
  text += "\nWhat it judges\n" + paragraphs(2, rule.explanation);
  text += "\nLimits\n";
  for (const LimitRow& row : rule.limits) text += limit_text(row, style);
  if (!rule.catalogue_limits.empty()) text += paragraphs(2, rule.catalogue_limits);
  if (rule.limits.empty() && rule.catalogue_limits.empty()) text += "  none but geometry\n";
  text += "\nHow to mend it\n" + paragraphs(2, rule.mend);
  const RuleExamples examples = examples_of(rule.name);
  return examples.fails.messages.empty() ? text : text + examples_text(examples);
}

}  // namespace linewright
