#include "render/finding_folds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <tuple>

#include "render/finding_text.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

constexpr std::array by_gravity = {Verdict::fail, Verdict::unknown, Verdict::warn, Verdict::waived,
                                   Verdict::pass};

using FoldKey = std::tuple<std::string_view, Verdict, std::string_view>;

/// Folds that still take what is of one route, or has one mend, by the first of their members.
/// There is never more than one for a key: a second is begun only where none takes.
class OpenFolds {
 public:
  explicit OpenFolds(const std::vector<FindingFold>& folds) : folds_(folds) {}

  /// The first fold that takes the judgement; nothing where none does.
  std::optional<std::size_t> taking(const Judgement& judgement) const {
    if (judgement.verdict == Verdict::pass) return std::nullopt;
    std::optional<std::size_t> first;
    const auto by_route = by_route_.find({judgement.rule, judgement.verdict, judgement.route});
    if (by_route != by_route_.end() && folds_[by_route->second].one_route) first = by_route->second;
    const auto by_mend = by_mend_.find({judgement.rule, judgement.verdict, judgement.mend});
    if (!judgement.mend.empty() && by_mend != by_mend_.end() && folds_[by_mend->second].one_mend)
      first = std::min(first.value_or(by_mend->second), by_mend->second);
    return first;
  }

  void begin(const Judgement& judgement, std::size_t fold) {
    by_route_[{judgement.rule, judgement.verdict, judgement.route}] = fold;
    by_mend_[{judgement.rule, judgement.verdict, judgement.mend}] = fold;
  }

 private:
  const std::vector<FindingFold>& folds_;
  std::map<FoldKey, std::size_t> by_route_;
  std::map<FoldKey, std::size_t> by_mend_;
};

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
std::string place_head(const FindingFold& fold, const Judgement& judgement, bool same_message) {
  std::string words = location_prefix(judgement.location);
  if (!fold.one_route) words += route_lead(judgement);
  if (!same_message) words += judgement.message;
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
  OpenFolds open(folds);
  for (const Verdict verdict : by_gravity) {
    if (verdict == Verdict::pass && !with_passes) continue;
    for (const Judgement& judgement : report.judgements) {
      if (judgement.verdict != verdict) continue;
      if (const auto fold = open.taking(judgement)) {
        add(folds[*fold], judgement);
        continue;
      }
      open.begin(judgement, folds.size());
      folds.push_back({{&judgement}});
    }
  }
  return folds;
}

FoldKind kind_of(const FindingFold& fold) {
  const Judgement& first = *fold.judgements.front();
  std::vector<std::string> mends;
  for (const Judgement* each : fold.judgements) mends.push_back(each->mend);
  return {first.rule, first.verdict, std::move(mends)};
}

std::string more_text(const FindingFold& fold, std::size_t more, const TextStyle& style) {
  const Judgement& first = *fold.judgements.front();
  return wrapped("",
                 fmt::format("{}: {}: {} more like the {} before: --verbose shows them",
                             verdict_text(first.verdict, style), first.rule, more, places_listed));
}

std::string fold_text(const FindingFold& fold, const RoutesByName& routes, const TextStyle& style) {
  const Judgement& first = *fold.judgements.front();
  std::vector<std::vector<FindingLine>> lines;
  for (const Judgement* each : fold.judgements)
    lines.push_back(finding_lines(*each, routes.find(each->route), style.phrasing));
  if (lines.size() == 1) {
    std::string text = finding_head(first, route_lead(first) + first.message, style);
    for (const FindingLine& line : lines.front()) text += labelled(line);
    return text;
  }
  const bool same_message = one_message(fold);
  std::vector<bool> shared;
  for (std::size_t label = 0; label < lines.front().size(); ++label)
    shared.push_back(is_shared(lines, label));
  std::string text = finding_head(first, head_words(fold), style);
  const bool all = style.verbose || lines.size() <= places_listed + 1;
  const std::size_t listed = all ? lines.size() : places_listed;
  for (std::size_t i = 0; i < listed; ++i) {
    text += place_head(fold, *fold.judgements[i], same_message);
    for (std::size_t label = 0; label < lines[i].size(); ++label)
      if (!shared[label]) text += labelled(lines[i][label], 4);
  }
  if (!all)
    text +=
        wrapped("  - ", fmt::format("and {} more: --verbose lists them", lines.size() - listed));
  for (std::size_t label = 0; label < lines.front().size(); ++label)
    if (shared[label]) text += labelled(lines.front()[label]);
  return text;
}

}  // namespace linewright
