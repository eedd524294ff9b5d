#include "planning/schedule.hpp"

#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "render/layout.hpp"
#include "render/schedule_csv.hpp"
#include "render/schedule_json.hpp"
#include "render/schedule_text.hpp"

namespace linewright {

namespace {

struct OrderWord {
  std::string_view word;
  ScheduleOrder order;
};

constexpr OrderWord order_words[] = {{"part", ScheduleOrder::part},
                                     {"route", ScheduleOrder::route},
                                     {"frame", ScheduleOrder::frame}};

std::string schedule_rendered(const Schedule& schedule, const ResultForm& form) {
  switch (form.format) {
    case Format::json:
      return schedule_json(schedule);
    case Format::csv:
      return schedule_csv(schedule, form.style.phrasing.unit);
    case Format::svg:
    case Format::sarif:  // not of this command
    case Format::text:
      break;
  }
  return schedule_text(schedule, form.style);
}

}  // namespace

Outcome schedule(const std::filesystem::path& project, const std::string& by,
                 const ResultForm& form) {
  for (const OrderWord& each : order_words) {
    if (each.word != by) continue;
    const auto opened = open_project(project);
    if (!opened) return opened.error();
    return {ExitCode::nothing_failed,
            schedule_rendered(schedule(prepare(*opened), each.order), form), ""};
  }
  return refusal(with_suggestion("--by takes part, route, frame, not '" + one_line(by) + "'", by,
                                 {"part", "route", "frame"}));
}

}  // namespace linewright
