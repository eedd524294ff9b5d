#include "commands/watch/watch.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "commands/watch/file_watch.hpp"
#include "commands/watch/page_server.hpp"
#include "commands/watch/telling.hpp"
#include "system/path_text.hpp"
#include "system/stop_signal.hpp"

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
    if (const auto at_once = telling.at_once(opened); at_once && !show(*at_once)) break;
    told = telling.of(opened);
  }
  return {ExitCode::bad_input, "", ""};
}

}  // namespace linewright
