#include "render/finding_folds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "render/finding_text.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

constexpr std::array by_gravity = {Verdict::fail, Verdict::unknown, Verdict::warn, Verdict::waived,
                                   Verdict::pass};

bool takes(const FindingFold& fold, const Judgement& judgement) {
  const Judgement& first = *fold.judgements.front();
  if (first.rule != judgement.rule || first.verdict != judgement.verdict) return false;
  if (judgement.verdict == Verdict::pass) return false;
  return (fold.one_route && first.route == judgement.route) ||
         (fold.one_mend && !judgement.mend.empty() && first.mend == judgement.mend);
}

void add(FindingFold& fold, const Judgement& judgement) {
  const Judgement& first = *fold.judgements.front();
  fold.one_route = fold.one_route && first.route == judgement.route;
  fold.one_mend = fold.one_mend && first.mend == judgement.mend;
  fold.judgements.push_back(&judgement);
}

std::string route_lead(const Judgement& judgement) {
  return judgement.route.empty() ? std::string() : judgement.route + ": ";
}

/// True where all members say the same under this label.
bool is_shared(const std::vector<std::vector<FindingLine>>& lines, std::size_t label) {
  return std::all_of(lines.begin(), lines.end(),
                     [&](const auto& each) { return each[label] == lines.front()[label]; });
}

bool one_message(const FindingFold& fold) {
  return std::all_of(fold.judgements.begin(), fold.judgements.end(), [&](const Judgement* each) {
    return each->message == fold.judgements.front()->message;
  });
}

std::string head_words(const FindingFold& fold) {
  const Judgement& first = *fold.judgements.front();
  std::string words = fold.one_route ? route_lead(first) : std::string();
  if (one_message(fold)) words += first.message + ", in ";
  words += fmt::format("{} places", fold.judgements.size());
  if (fold.one_route) return words;
  std::set<std::string_view> routes;
  for (const Judgement* each : fold.judgements) routes.insert(each->route);
  return words + fmt::format(" on {} routes", routes.size());
}

/// One place of several: what only it says.
std::string place_head(const FindingFold& fold, const Judgement& judgement) {
  std::string words = location_prefix(judgement.location);
  if (!fold.one_route) words += route_lead(judgement);
  if (!one_message(fold)) words += judgement.message;
  while (words.ends_with(' ') || words.ends_with(':')) words.pop_back();
  return words.empty() ? words : wrapped("  - ", words);
}

}  // namespace

int gravity_rank(Verdict verdict) {
  return static_cast<int>(std::find(by_gravity.begin(), by_gravity.end(), verdict) -
                          by_gravity.begin());
}

std::vector<FindingFold> folded_findings(const Report& report, bool with_passes) {
  std::vector<FindingFold> folds;
  for (const Verdict verdict : by_gravity) {
    if (verdict == Verdict::pass && !with_passes) continue;
    for (const Judgement& judgement : report.judgements) {
      if (judgement.verdict != verdict) continue;
      const auto fold = std::find_if(folds.begin(), folds.end(), [&](const FindingFold& each) {
        return takes(each, judgement);
      });
      if (fold == folds.end())
        folds.push_back({{&judgement}});
      else
        add(*fold, judgement);
    }
  }
  return folds;
}

std::string fold_text(const FindingFold& fold, const Report& report, const TextStyle& style) {
  const Judgement& first = *fold.judgements.front();
  std::vector<std::vector<FindingLine>> lines;
  for (const Judgement* each : fold.judgements)
    lines.push_back(finding_lines(*each, report.find_route(each->route), style.phrasing));
  if (lines.size() == 1) {
    std::string text = finding_head(first, route_lead(first) + first.message, style);
    for (const FindingLine& line : lines.front()) text += labelled(line);
    return text;
  }
  std::string text = finding_head(first, head_words(fold), style);
  // Asked once a label: asked again for each of a great many places, it would take their square.
  std::vector<bool> shared;
  for (std::size_t label = 0; label < lines.front().size(); ++label)
    shared.push_back(is_shared(lines, label));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    text += place_head(fold, *fold.judgements[i]);
    for (std::size_t label = 0; label < lines[i].size(); ++label)
      if (!shared[label]) text += labelled(lines[i][label], 4);
  }
  for (std::size_t label = 0; label < lines.front().size(); ++label)
    if (shared[label]) text += labelled(lines.front()[label]);
  return text;
}

}  // namespace linewright
