#include "commands/watch/watch.hpp"

#include <fmt/format.h>

#include <ctime>
#include <optional>
#include <utility>

#include "commands/checked_report.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "commands/watch/file_watch.hpp"
#include "commands/watch/page_server.hpp"
#include "commands/written_report.hpp"
#include "render/changes_json.hpp"
#include "render/check_changes.hpp"
#include "render/check_text.hpp"
#include "render/layout.hpp"
#include "render/report/report_page.hpp"
#include "render/time_of_day.hpp"
#include "system/path_text.hpp"
#include "system/stop_signal.hpp"
#include "system/whole_file.hpp"

namespace linewright {

namespace {

/// Why there is nothing to watch, or nowhere to write, or nothing.
std::optional<Outcome> refused_at_once(const WatchOptions& asked, const OpenedProject& opened) {
  const CheckOptions& options = asked.check;
  if (options.only_rule) {
    const std::string wrong = unknown_name("rule", *options.only_rule, rule_names(), see_all_rules);
    if (!wrong.empty()) return refusal(wrong);
  }
  std::error_code ignored;
  if (asked.report) {
    const std::filesystem::path folder = asked.report->parent_path();
    if (!folder.empty() && !std::filesystem::is_directory(folder, ignored))
      return refusal(fmt::format("cannot write '{}': there is no folder '{}'",
                                 text_of(*asked.report), text_of(folder)));
  }
  const bool there =
      !opened.files.empty() && std::filesystem::is_regular_file(opened.files.front(), ignored);
  if (there || opened.project) return std::nullopt;
  return opened.project.error();
}

/// Reads the project until all files that it turns out to consist of were looked at beforehand, so
/// that no save is missed.
OpenedProject open_covered(const CheckOptions& options, FileWatch& files) {
  OpenedProject opened = open_with_files(options.project, options.set);
  while (files.cover(opened.files)) opened = open_with_files(options.project, options.set);
  return opened;
}

/// What is told of one check after another.
class Telling {
 public:
  /// `server` may be nullptr: nothing is served.
  Telling(const WatchOptions& options, PageServer* server)
      : options_(options.check),
        page_(options.report),
        server_(server),
        replaces_(options.replace_report) {}

  Outcome of(const OpenedProject& opened) {
    const std::time_t now = std::time(nullptr);
    const std::string time = time_of_day(now);
    const Expected<Report, Outcome> report = judged(opened);
    Outcome told = report ? of(*report, time) : of(report.error(), time);
    if (page_ || server_) told.errors += hand_out(opened, report, now);
    told_before_ = true;
    return told;
  }

 private:
  Expected<Report, Outcome> judged(const OpenedProject& opened) {
    return checked_report(opened, options_, meshes_);
  }

  /// The page shows every rule and route, whatever the terminal was asked to show.
  Expected<std::string, Outcome> page_of(const OpenedProject& opened, const Report& shown,
                                         std::time_t now) {
    const PageOrder order{options_.form.style.phrasing, true, now};
    if (!options_.only_rule && !options_.only_route)
      return written_report(*opened.project, shown, options_.project, order, meshes_);
    CheckOptions all = options_;
    all.only_rule.reset();
    all.only_route.reset();
    const auto report = checked_report(opened, all, meshes_);
    if (!report) return report.error();
    return written_report(*opened.project, *report, options_.project, order, meshes_);
  }

  /// Writes the page, over its last state, and serves it. Returns what went wrong, empty for
  /// nothing.
  std::string hand_out(const OpenedProject& opened, const Expected<Report, Outcome>& report,
                       std::time_t now) {
    auto page =
        report ? page_of(opened, *report, now) : Expected<std::string, Outcome>(report.error());
    const std::string when = date_of(now) + " " + time_of_day(now);
    std::string text = page ? *std::move(page) : refused_page(page.error().errors, when);
    if (server_) server_->show(text);
    if (!page_) return {};
    const std::string wrong = write_output_file({*page_, std::move(text)}, replaces_);
    if (!wrong.empty()) return refusal(one_line(wrong)).errors;
    replaces_ = true;
    return {};
  }

  Outcome of(const Report& report, const std::string& time) {
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
  Outcome of(Outcome refused, const std::string& time) const {
    if (told_before_) refused.errors = "\n" + time + "\n" + refused.errors;
    if (options_.form.format == Format::json) refused.result = not_judged_json(time);
    return refused;
  }

  const CheckOptions& options_;
  const std::optional<std::filesystem::path>& page_;
  PageServer* server_;
  bool replaces_;
  MeshStore meshes_;
  std::optional<Report> last_;
  bool told_before_ = false;
};

}  // namespace

Outcome watch(const WatchOptions& asked, const Show& show) {
  const CheckOptions& options = asked.check;
  const StopSignal stop;
  FileWatch files;
  OpenedProject opened = open_covered(options, files);
  if (std::optional<Outcome> refused = refused_at_once(asked, opened)) return *refused;
  std::unique_ptr<PageServer> server;
  if (asked.serve) {
    auto started = PageServer::started();
    if (!started) return refusal(started.error());
    server = *std::move(started);
  }
  Telling telling(asked, server.get());
  Outcome told = telling.of(opened);
  // Without the address there is no use in serving: it is told however quiet the rest is.
  if (server) told.errors += "linewright: the report is at " + server->address() + "\n";
  if (!options.form.style.quiet)
    told.errors += "linewright: watching the project's files; Ctrl-C ends\n";
  while (show(told)) {
    if (files.wait(stop.descriptor()) == Woken::by_stop) return {told.code, "", ""};
    opened = open_covered(options, files);
    told = telling.of(opened);
  }
  return {ExitCode::bad_input, "", ""};
}

}  // namespace linewright
