#include "render/report.hpp"

#include <fmt/format.h>

namespace linewright {

namespace {

std::string_view colour_code(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return "32";
    case Verdict::warn:
      return "33";
    case Verdict::fail:
      return "1;31";
    case Verdict::unknown:
      return "1;35";
    case Verdict::waived:
      return "36";
  }
  return "0";
}

}  // namespace

void Tally::add(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      ++pass;
      break;
    case Verdict::warn:
      ++warn;
      break;
    case Verdict::fail:
      ++fail;
      break;
    case Verdict::unknown:
      ++unknown;
      break;
    case Verdict::waived:
      ++waived;
      break;
  }
}

Tally tally_of(const std::vector<Judgement>& judgements) {
  Tally tally;
  for (const Judgement& judgement : judgements) tally.add(judgement.verdict);
  return tally;
}

std::string_view verdict_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return "pass";
    case Verdict::warn:
      return "warn";
    case Verdict::fail:
      return "fail";
    case Verdict::unknown:
      return "unknown";
    case Verdict::waived:
      return "waived";
  }
  return "unknown";
}

std::string verdict_text(Verdict verdict, const TextStyle& style) {
  if (!style.colour) return std::string(verdict_word(verdict));
  return fmt::format("\x1b[{}m{}\x1b[0m", colour_code(verdict), verdict_word(verdict));
}

}  // namespace linewright
