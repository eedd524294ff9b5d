#include "commands/leak_test.hpp"

#include <fmt/format.h>

#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "input/leak_readings.hpp"
#include "input/text_file.hpp"
#include "lines/prepare.hpp"
#include "planning/air_part.hpp"
#include "planning/leak_judge.hpp"
#include "planning/leak_judge_part.hpp"
#include "planning/test_connection.hpp"
#include "render/chart/leak_chart.hpp"
#include "render/diagnostic_text.hpp"
#include "render/layout.hpp"
#include "render/leak_test_json.hpp"
#include "render/leak_test_text.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

std::string quoted_list(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "'" : ", '") + one_line(name) + "'";
  return text;
}

std::vector<std::string> systems_to_test(const Project& project) {
  std::vector<std::string> names = system_names(project);
  std::erase_if(names, [&](const std::string& name) {
    const SystemKind kind = kind_of_system(project, name);
    return kind != SystemKind::static_air && kind != SystemKind::pitot;
  });
  return names;
}

/// The one system that is meant, or what is wrong with the word.
Expected<std::string, Outcome> chosen_system(const Project& project, const std::string& wanted) {
  const std::vector<std::string> meant = systems_meant(project, wanted);
  if (meant.size() == 1) return meant.front();
  if (meant.size() > 1)
    return refusal(fmt::format("there are {} systems '{}': {}; name one of them", meant.size(),
                               one_line(wanted), quoted_list(meant)));
  const std::vector<std::string> names = systems_to_test(project);
  if (names.empty()) return refusal("the project has no static or pitot system to test");
  return refusal(unknown_name("system", wanted, names) + " (there are: " + quoted_list(names) +
                 ")");
}

std::string wrong_setup(const LeakTestSetup& setup, SystemKind kind) {
  if (kind == SystemKind::pitot && setup.drop_inhg)
    return "--drop is for static systems; a pitot test takes --airspeed";
  if (kind == SystemKind::static_air && setup.airspeed_kt)
    return "--airspeed is for pitot systems; a static test takes --drop";
  return {};
}

/// True where the options make it a test of a part, or one that counts the test set's volume.
bool is_part_test(const LeakTestOptions& options) {
  return options.at || !options.caps.empty() || options.setup.gauge_volume_in3;
}

/// The plan, and for a test of a part what it is a test of.
struct PlannedTest {
  LeakTestPlan plan;
  std::optional<AirPart> part;
};

Expected<PlannedTest, Outcome> planned(const AirSystem& system, const LeakTestOptions& options) {
  PlannedTest test;
  if (is_part_test(options)) {
    auto part =
        part_of_system(system, options.at.value_or(test_connection(system).at), options.caps);
    if (const std::string* error = std::get_if<std::string>(&part))
      return refusal(one_line(*error));
    test.part = std::get<AirPart>(std::move(part));
  }
  auto plan =
      test.part ? plan_part_test(*test.part, options.setup) : plan_leak_test(system, options.setup);
  if (const std::string* error = std::get_if<std::string>(&plan)) return refusal(one_line(*error));
  test.plan = std::get<LeakTestPlan>(std::move(plan));
  return test;
}

/// `prepared` stays for as long as the result is used.
Expected<PlannedTest, Outcome> plan_for(const Project& project, const PreparedProject& prepared,
                                        const LeakTestOptions& options) {
  const auto name = chosen_system(project, options.system);
  if (!name) return name.error();
  const std::string wrong = wrong_setup(options.setup, kind_of_system(project, *name));
  if (!wrong.empty()) return refusal(wrong);
  const std::vector<AirSystem> pieces = air_systems(prepared, *name);
  if (pieces.empty())
    return refusal("a leak test is known for static and pitot systems only, and '" +
                   one_line(*name) + "' is neither");
  if (pieces.size() > 1)
    return refusal(fmt::format(
        "system '{}' is in {} pieces that no node joins, one with {}, another with {}: join them, "
        "or give each a name of its own",
        one_line(*name), pieces.size(), pieces[0].network.links.front().route->route->name,
        pieces[1].network.links.front().route->route->name));
  return planned(pieces.front(), options);
}

Outcome refused_readings(const std::vector<Diagnostic>& errors) {
  Outcome outcome;
  outcome.code = ExitCode::bad_input;
  for (const Diagnostic& error : errors) outcome.errors += diagnostic_text(error, "");
  outcome.errors += fmt::format("linewright: {} {} in the readings; nothing was judged\n",
                                errors.size(), errors.size() == 1 ? "error" : "errors");
  return outcome;
}

Expected<JudgedLog, Outcome> judged_log(const PlannedTest& test, const LeakTestSetup& setup,
                                        const std::filesystem::path& file) {
  const LeakTestPlan& plan = test.plan;
  const std::string name = text_of(file);
  if (name.empty()) return refusal("the file of the readings has an empty name");
  const auto bytes = read_text_file(file, name);
  if (!bytes) return refused_readings({bytes.error()});
  auto log = read_leak_log(
      *bytes, name,
      plan.gauge.is_static() ? LoggedQuantity::altitude_ft : LoggedQuantity::airspeed_kt);
  if (!log) return refused_readings(log.error());
  JudgedLog judged{name, *std::move(log), {}};
  auto verdict =
      test.part ? judge_part(*test.part, setup, judged.log) : judge_leak(plan, judged.log);
  if (const std::string* error = std::get_if<std::string>(&verdict))
    return refused_readings({{{name, 0, 0}, *error, "", ""}});
  judged.verdict = std::get<LeakVerdict>(std::move(verdict));
  return judged;
}

std::string leak_test_rendered(const LeakTestReport& report, const ResultForm& form) {
  if (form.format == Format::json) return leak_test_json(report);
  if (form.format == Format::svg) return leak_chart(report);
  return report.judged ? leak_verdict_text(report, form.style) : leak_plan_text(report, form.style);
}

}  // namespace

Outcome leak_test(const LeakTestOptions& options) {
  const auto project = open_project(options.project);
  if (!project) return project.error();
  const PreparedProject prepared = prepare(*project);
  const auto test = plan_for(*project, prepared, options);
  if (!test) return test.error();
  LeakTestReport report{project->name, project->assumptions, test->plan, {}};
  Outcome outcome;
  if (options.readings) {
    auto judged = judged_log(*test, options.setup, *options.readings);
    if (!judged) return judged.error();
    report.judged = *std::move(judged);
    if (report.judged->verdict.answer != LeakAnswer::pass) outcome.code = ExitCode::failed;
  }
  outcome.result = leak_test_rendered(report, options.form);
  if (!options.record) return outcome;
  outcome.beside = NewFile{options.record->file, leak_record_text(report, options.record->date)};
  return outcome;
}

}  // namespace linewright
