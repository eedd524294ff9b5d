#pragma once
// The commands, each a function from its options to an outcome.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "commands/outcome.hpp"
#include "render/report.hpp"

namespace linewright {

enum class Format { text, json, csv, svg, sarif };

/// What every command that prints a result is told about its form.
struct ResultForm {
  Format format = Format::text;
  TextStyle style;

  /// JSON is in inches, as its keys say, whatever unit the text is asked for.
  Phrasing phrasing() const { return format == Format::json ? Phrasing{} : style.phrasing; }
};

struct CheckOptions {
  std::filesystem::path project;  ///< a project file, or a folder with project.yaml
  std::optional<std::string> only_rule;
  std::optional<std::string> only_route;
  bool strict = false;  ///< a warning counts as a fail
  ResultForm form;
  std::vector<std::string> set;  ///< "PATH=VALUE" each, in place of what the files say
};

/// Judges a project by every rule.
Outcome check(const CheckOptions& options);

/// The whole of it as one page of HTML, to look at and to print.
Outcome report(const CheckOptions& options);

/// Options of `draw`, as written.
struct DrawWords {
  std::optional<std::string> view;     ///< "side", "plan", "front" or "strip"
  std::optional<std::string> station;  ///< front: a length
  std::optional<std::string> frame;    ///< front: instead of the station
  std::optional<std::string> route;    ///< strip
  bool true_scale = false;             ///< a frame or a strip at full size, on pages
  std::optional<std::string> paper;    ///< of these pages: "letter" or "a4"
};

/// One view of it as SVG, with what was found.
Outcome draw(const CheckOptions& options, const DrawWords& words);

struct CompareOptions {
  std::filesystem::path first;
  std::optional<std::filesystem::path> second;  ///< absent: the first as `set` would have it
  std::vector<std::string> set;                 ///< "PATH=VALUE" each, in the second
  ResultForm form;
};

/// Lays two projects side by side: verdicts, lengths, volumes, parts. A failure where the second
/// has a fail or an unknown that the first has not.
Outcome compare(const CompareOptions& options);

/// Options of `export`, as written.
struct ExportWords {
  std::optional<std::string> to;     ///< "gltf" or "dxf"
  std::optional<std::string> frame;  ///< of a dxf
};

/// The whole as a model in space with the verdicts of `check`, or a frame to cut by machine.
Outcome export_project(const CheckOptions& options, const ExportWords& words);

/// The project as one file, with every place and mirror image that was worked out written down.
Outcome expand(const std::filesystem::path& project);

/// Lengths and bend schedules of every route.
Outcome cutlist(const std::filesystem::path& project, const ResultForm& form);

/// Every support and hole with its place and what is drilled; `by`: "part", "route" or "frame".
Outcome schedule(const std::filesystem::path& project, const std::string& by,
                 const ResultForm& form);

/// Options of `parts`, as written.
struct PartsWords {
  std::optional<std::string> spares;  ///< "10%"
  std::optional<std::string> by;      ///< "closure"
};

/// What to buy.
Outcome parts(const std::filesystem::path& project, const PartsWords& words,
              const ResultForm& form);

/// Tension, stretch, friction and spans of the control cables, or of the one called `only_route`.
Outcome rig(const std::filesystem::path& project, const std::optional<std::string>& only_route,
            const ResultForm& form);

/// What must be in, done and tested before each closure goes on. Fails where that has no order.
Outcome close_up(const std::filesystem::path& project, const ResultForm& form);

struct SuggestOptions {
  std::filesystem::path project;
  std::optional<std::string> only_route;  ///< absent: every tube, hose and wire
  bool write = false;                     ///< nothing but the points to paste
  ResultForm form;
};

/// Where the fewest supports go. Fails where there are none that do, or where other rules then find
/// something that they do not find as drawn.
Outcome suggest(const SuggestOptions& options);

/// Lists the rules.
Outcome list_rules(const ResultForm& form);

/// Prints the manual of a rule, or of a key of project files in every map that has it, or both.
Outcome explain(const std::string& word, const ResultForm& form);

struct CatalogueOptions {
  std::optional<std::string> name;               ///< only this entry, with full sources
  std::optional<std::filesystem::path> project;  ///< with this project's own lines
  ResultForm form;
};

/// Lists what routes can be made of, or one entry of it.
Outcome catalogue(const CatalogueOptions& options);

/// The JSON Schema of project files, or of what a command prints as JSON.
Outcome schema(const std::optional<std::string>& of);

/// Writes a small project that checks clean into `directory`: all of its files or none.
Outcome init(const std::filesystem::path& directory, bool quiet);

}  // namespace linewright
