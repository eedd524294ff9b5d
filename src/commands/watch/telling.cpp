#include "commands/watch/telling.hpp"

#include <string_view>
#include <utility>

#include "commands/written_report.hpp"
#include "render/changes_json.hpp"
#include "render/check_changes.hpp"
#include "render/check_text.hpp"
#include "render/layout.hpp"
#include "render/report/report_page.hpp"
#include "render/time_of_day.hpp"
#include "system/whole_file.hpp"

namespace linewright {

namespace {

constexpr std::string_view not_confirmed = "not confirmed yet: everything is judged once more\n";
constexpr std::string_view confirmed = "confirmed\n";
constexpr std::string_view told_wrong =
    "linewright: the answer before this one was wrong; with these changes it is right\n";

bool says_the_same(const Report& a, const Report& b) {
  return a.judgements == b.judgements && a.assumptions == b.assumptions;
}

}  // namespace

Telling::Telling(const WatchOptions& options, PageServer* server)
    : options_(options.check),
      page_(options.report),
      server_(server),
      replaces_(options.replace_report) {}

std::optional<Outcome> Telling::at_once(const OpenedProject& opened) {
  told_at_once_ = false;
  if (!judged_ || !may_tell_at_once()) return std::nullopt;
  const std::optional<Report> report =
      report_at_once(opened, options_, meshes_, *judged_, last_->judgements);
  if (!report) return std::nullopt;
  told_at_once_ = true;
  now_ = std::time(nullptr);
  Outcome told = told_of(*report);
  told.result += not_confirmed;
  return told;
}

Outcome Telling::of(const OpenedProject& opened) {
  const Expected<Report, Outcome> report = checked_report(opened, options_, meshes_);
  Outcome told;
  if (report && told_at_once_ && says_the_same(*report, *last_)) {
    told = {exit_code(*report, options_.strict), std::string(confirmed), ""};
  } else {
    now_ = std::time(nullptr);
    told = report ? told_of(*report) : told_of(report.error());
    if (report && told_at_once_) told.errors += told_wrong;
  }
  judged_.reset();
  if (report && may_tell_at_once()) judged_ = JudgedProject{*opened.project, meshes_.last_fields()};
  if (page_ || server_) told.errors += hand_out(opened, report);
  told_before_ = true;
  return told;
}

/// The next answer rests on one of all rules and routes.
bool Telling::may_tell_at_once() const {
  const bool of_all = !options_.only_rule && !options_.only_route;
  return of_all && !page_ && !server_ && options_.form.format == Format::text;
}

/// The page shows every rule and route, whatever the terminal was asked to show.
Expected<std::string, Outcome> Telling::page_of(const OpenedProject& opened, const Report& shown) {
  const PageOrder order{options_.form.style.phrasing, true, now_};
  if (!options_.only_rule && !options_.only_route)
    return written_report(*opened.project, shown, options_.project, order, meshes_);
  CheckOptions all = options_;
  all.only_rule.reset();
  all.only_route.reset();
  const auto report = checked_report(opened, all, meshes_);
  if (!report) return report.error();
  return written_report(*opened.project, *report, options_.project, order, meshes_);
}

/// Writes the page, over its last state, and serves it. Returns what went wrong, empty for nothing.
std::string Telling::hand_out(const OpenedProject& opened,
                              const Expected<Report, Outcome>& report) {
  auto page = report ? page_of(opened, *report) : Expected<std::string, Outcome>(report.error());
  const std::string when = date_of(now_) + " " + time_of_day(now_);
  std::string text = page ? *std::move(page) : refused_page(page.error().errors, when);
  if (server_) server_->show(text);
  if (!page_) return {};
  const std::string wrong = write_output_file({*page_, std::move(text)}, replaces_);
  if (!wrong.empty()) return refusal(one_line(wrong)).errors;
  replaces_ = true;
  return {};
}

Outcome Telling::told_of(const Report& report) {
  const std::string time = time_of_day(now_);
  Outcome told{exit_code(report, options_.strict), "", ""};
  const TextStyle& style = options_.form.style;
  if (options_.form.format == Format::json)
    told.result = changes_json(last_.value_or(Report{}), report, time);
  else if (last_)
    told.result = changes_text(*last_, report, time, style);
  else
    told.result = (told_before_ ? "\n" + time + "\n" : "") + check_text(report, style);
  last_ = report;
  return told;
}

/// The last good judgements are kept to compare with.
Outcome Telling::told_of(Outcome refused) const {
  const std::string time = time_of_day(now_);
  if (told_before_) refused.errors = "\n" + time + "\n" + refused.errors;
  if (options_.form.format == Format::json) refused.result = not_judged_json(time);
  return refused;
}

}  // namespace linewright
