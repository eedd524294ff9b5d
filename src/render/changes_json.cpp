#include "render/changes_json.hpp"

#include "render/check_changes.hpp"

namespace linewright {

namespace {

std::string_view change_word(ChangeKind kind) {
  switch (kind) {
    case ChangeKind::appeared:
      return "new";
    case ChangeKind::altered:
      return "changed";
    case ChangeKind::passes_now:
      return "passes";
    case ChangeKind::disappeared:
      return "gone";
  }
  return "changed";
}

Json judgement_or_null(const Judgement* judgement) {
  return judgement ? json_judgement(*judgement) : Json(nullptr);
}

}  // namespace

Json json_changes(const Report& before, const Report& now) {
  Json changes = Json::array();
  for (const Change& change : changes_between(before, now, {}))
    changes.push_back({{"change", change_word(kind_of(change))},
                       {"check", judgement_or_null(change.now)},
                       {"was", judgement_or_null(change.was)}});
  return changes;
}

std::string changes_json(const Report& before, const Report& now, std::string_view time_of_day) {
  return json_line({{"linewright", json_header()},
                    {"time", time_of_day},
                    {"judged", true},
                    {"summary", json_summary(now)},
                    {"changes", json_changes(before, now)},
                    {"assumptions", now.assumptions}});
}

std::string not_judged_json(std::string_view time_of_day) {
  return json_line({{"linewright", json_header()},
                    {"time", time_of_day},
                    {"judged", false},
                    {"summary", nullptr},
                    {"changes", Json::array()},
                    {"assumptions", Json::array()}});
}

}  // namespace linewright
