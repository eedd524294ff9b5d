#include "commands/check_many.hpp"

#include <algorithm>
#include <exception>

#include "commands/checked_report.hpp"
#include "commands/mesh_store.hpp"
#include "render/check_json.hpp"
#include "render/check_text.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

/// What a project comes to where the program itself fails: the others are still judged.
Outcome internal_error(const std::filesystem::path& project, const std::string& what) {
  return {ExitCode::internal_error,
          {},
          "linewright: internal error in " + text_of(project) + ": " + what + "\n"};
}

class ManyChecks {
 public:
  ManyChecks(const CheckOptions& options, bool as_lines) : options_(options), as_lines_(as_lines) {}

  void add(const std::filesystem::path& project) {
    CheckOptions options = options_;
    options.project = project;
    try {
      const auto report = checked_report(options, meshes_);
      if (!report)
        add_refusal(project, report.error());
      else
        add_report(project, *report);
    } catch (const std::exception& error) {
      add_refusal(project, internal_error(project, error.what()));
    }
  }

  Outcome taken() { return std::move(all_); }

 private:
  void add_report(const std::filesystem::path& project, const Report& report) {
    const ExitCode code = exit_code(report, options_.strict);
    all_.code = std::max(all_.code, code);
    if (as_lines_) {
      all_.result += check_json_line(text_of(project), static_cast<int>(code), report);
      return;
    }
    if (!all_.result.empty()) all_.result += "\n";
    all_.result += "== " + text_of(project) + "\n" + check_text(report, options_.form.style);
  }

  void add_refusal(const std::filesystem::path& project, const Outcome& refusal) {
    all_.code = std::max(all_.code, refusal.code);
    all_.errors += refusal.errors;
    if (as_lines_)
      all_.result +=
          refused_json_line(text_of(project), static_cast<int>(refusal.code), refusal.errors);
  }

  const CheckOptions& options_;
  bool as_lines_;
  MeshStore meshes_;
  Outcome all_;
};

}  // namespace

Outcome check_many(const CheckOptions& options, const std::vector<std::filesystem::path>& projects,
                   bool as_lines) {
  if (!as_lines && options.form.format != Format::text)
    return refusal("--format json and sarif hold one project; with several use --format jsonl");
  ManyChecks checks(options, as_lines);
  for (const std::filesystem::path& project : projects) checks.add(project);
  return checks.taken();
}

}  // namespace linewright
