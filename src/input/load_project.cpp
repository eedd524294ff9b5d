#include "input/load_project.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "input/built_reader.hpp"
#include "input/bundle_reader.hpp"
#include "input/closure_reader.hpp"
#include "input/cross_check.hpp"
#include "input/derive/derive.hpp"
#include "input/derive/expanded.hpp"
#include "input/fitting_entry.hpp"
#include "input/line_entry.hpp"
#include "input/load_as_if.hpp"
#include "input/mesh_entry.hpp"
#include "input/network_reader.hpp"
#include "input/project_files.hpp"
#include "input/route_reader.hpp"
#include "input/set_values.hpp"
#include "input/settings_reader.hpp"
#include "input/structure_reader.hpp"

namespace linewright {

namespace {

constexpr double format_number = 1;

/// Longer lines are no help under an error.
constexpr std::size_t longest_shown_line_bytes = 1000;

/// Sections that stand in files of their own in larger projects.
constexpr std::array<ProjectReader::Key, 10> part_sections{
    "structure", "closures", "tasks",    "nodes",   "routes",
    "bundles",   "lines",    "fittings", "waivers", "built"};

/// Keys that are looked at before the rest of the file is.
constexpr ProjectReader::Key format_key("linewright");
constexpr MapReader<line_map>::Key line_name_key("name");

/// True when the file says that it is written in another format: then nothing else in it can be
/// relied on.
bool is_other_format(const YamlNode& root, ReadContext& context) {
  const YamlNode* format = root.find(format_key->name);
  if (format == nullptr) {
    if (root.kind == YamlNode::Kind::map)
      context.error(root.where, "a project file starts with 'linewright: 1'",
                    "add the line 'linewright: 1' at its top");
    return false;
  }
  const double number = read_number(*format, format_key->number, context);
  if (number < format_number || number > format_number) {
    context.error(format->where,
                  fmt::format("this program reads format 1, found {}", format->text));
    return true;
  }
  return false;
}

/// Notes the name that an entry of `lines` or `fittings` gives.
void note_entry_name(Named kind, const YamlNode& node, ProjectDraft& draft) {
  const YamlNode* name = node.find(line_name_key->name);
  if (name != nullptr && name->kind == YamlNode::Kind::scalar && !name->text.empty())
    draft.given.push_back({kind, name->text, name->where});
  else
    draft.names_complete = false;
}

void read_line(const YamlNode& node, ReadContext& context) {
  ProjectDraft& draft = context.draft;
  note_entry_name(Named::line, node, draft);
  auto line = read_line_entry(node, context.bare, false);
  if (line)
    draft.project.catalogue.lines.push_back(*std::move(line));
  else
    for (const Diagnostic& error : line.error()) draft.errors.add(error);
}

void read_fitting(const YamlNode& node, ReadContext& context) {
  ProjectDraft& draft = context.draft;
  note_entry_name(Named::fitting, node, draft);
  auto fitting = read_fitting_entry(node, context.bare, false);
  if (fitting)
    draft.project.catalogue.fittings.push_back(*std::move(fitting));
  else
    for (const Diagnostic& error : fitting.error()) draft.errors.add(error);
}

/// An included file cannot speak for the whole project.
void refuse_project_keys(const YamlNode& root, ReadContext& context) {
  for (const YamlEntry& entry : root.entries)
    if (std::any_of(settings_keys.begin(), settings_keys.end(),
                    [&](const KeySpec& key) { return key.name == entry.key; }))
      context.error(entry.key_where, fmt::format("'{}' belongs in the project file, not in one "
                                                 "that it includes",
                                                 entry.key));
}

/// Names are read section by section; "first at" is said in the order of the file.
void sort_names_by_place(std::vector<NamePlace>::iterator first,
                         std::vector<NamePlace>::iterator last) {
  std::stable_sort(first, last, [](const NamePlace& a, const NamePlace& b) {
    return std::tie(a.where.line, a.where.column) < std::tie(b.where.line, b.where.column);
  });
}

/// True for what projects keep in files of their own: it has no name and includes nothing, and has
/// not both the nodes and the routes that even a small project needs.
bool looks_like_a_part(const YamlNode& root) {
  const auto has = [&root](ProjectReader::Key key) { return root.find(key->name) != nullptr; };
  const bool has_content = std::any_of(part_sections.begin(), part_sections.end(), has);
  return has_content && !has("name") && !has("include") && !(has("nodes") && has("routes"));
}

/// What such a file names is in others, and not missing.
void refuse_part(const YamlNode& root, ReadContext& context) {
  context.error(root.where, "this looks like a part of a project, not like a project file",
                "check the project file that includes it");
  context.draft.names_complete = false;
}

/// Room for so many more and, where they are most of what there will be, for no others: of ten
/// thousand lines what a list sets aside beyond them is many megabytes.
template <typename T>
void make_room(std::vector<T>& list, std::size_t more) {
  if (more > list.size()) list.reserve(list.size() + more);
}

void read_file(const YamlNode& root, ReadContext& context, bool included) {
  ProjectDraft& draft = context.draft;
  if (!included && looks_like_a_part(root)) refuse_part(root, context);
  if (is_other_format(root, context)) {
    draft.names_complete = false;
    return;
  }
  const auto names_before = static_cast<std::ptrdiff_t>(draft.given.size());
  ProjectReader fields(root, context);
  if (fields.may_hide_names()) draft.names_complete = false;
  context.bare = read_units(fields);
  if (!fields.has("units")) draft.files_without_units.push_back(root.where.file);
  if (included)
    refuse_project_keys(root, context);
  else
    read_settings(fields, context);
  for (const YamlNode& item : fields.items("attitudes")) read_attitude(item, context);
  if (const YamlNode* structure = fields.find("structure")) read_structure(*structure, context);
  for (const YamlNode& item : fields.items("closures")) read_closure(item, context);
  for (const YamlNode& item : fields.items("tasks")) read_task(item, context);
  const std::vector<YamlNode>& nodes = fields.items("nodes");
  make_room(draft.project.nodes, nodes.size());
  for (const YamlNode& item : nodes) read_node(item, context);
  for (const YamlNode& item : fields.items("lines")) read_line(item, context);
  for (const YamlNode& item : fields.items("fittings")) read_fitting(item, context);
  const std::vector<YamlNode>& routes = fields.items("routes");
  make_room(draft.project.routes, routes.size());
  for (const YamlNode& item : routes) read_route(item, context);
  for (const YamlNode& item : fields.items("bundles")) read_bundle(item, context);
  for (const YamlNode& item : fields.items("waivers")) read_waiver(item, context);
  for (const YamlNode& item : fields.items("built")) read_measurement(item, context);
  sort_names_by_place(draft.given.begin() + names_before, draft.given.end());
}

/// Attitudes that stand so near to level flight are it [common practice, no source].
constexpr double level_within_deg = 3;

bool is_level(const Attitude& attitude) {
  return std::abs(attitude.pitch_deg) <= level_within_deg &&
         std::abs(attitude.roll_deg) <= level_within_deg;
}

/// Whoever states how the aeroplane is parked states no less than one who states nothing.
void add_level_flight(Project& project) {
  std::vector<Attitude>& attitudes = project.attitudes;
  if (attitudes.empty() || std::any_of(attitudes.begin(), attitudes.end(), is_level)) return;
  attitudes.push_back({"level flight", 0, 0, attitudes.front().where});
  project.assumptions.push_back(
      "no attitude within 3 degrees of level is stated: water was looked for in level flight, too");
}

/// Says what the readers took for what the files do not state; planning/taken_values has the rest.
void add_assumptions(ProjectDraft& draft) {
  std::vector<std::string>& assumptions = draft.project.assumptions;
  if (!draft.files_without_units.empty())
    assumptions.push_back(
        fmt::format("units are not stated in {}: bare lengths were taken as inches",
                    fmt::join(draft.files_without_units, ", ")));
  const std::vector<Route>& routes = draft.project.routes;
  const bool any_air = std::any_of(routes.begin(), routes.end(),
                                   [](const Route& route) { return is_air(route.system); });
  if (any_air && draft.project.attitudes.empty())
    assumptions.push_back("attitudes are not stated: water was looked for in level flight only");
  if (draft.panels_without_thickness > 0)
    assumptions.push_back(fmt::format("panels that state no thickness: {}; {} in was taken",
                                      draft.panels_without_thickness, usual_panel_thickness_in));
  if (draft.edges_unstated > 0)
    assumptions.push_back(fmt::format("holes and channels that state no edge: {}; bare was taken",
                                      draft.edges_unstated));
  if (draft.volumes_taken_in3 > 0)
    assumptions.push_back(
        fmt::format("volumes that state no unit: {}; in3 was taken", draft.volumes_taken_in3));
  if (draft.volumes_taken_mm3 > 0)
    assumptions.push_back(
        fmt::format("volumes that state no unit: {}; mm3 was taken", draft.volumes_taken_mm3));
  if (draft.taken_beside_mm > 0)
    assumptions.push_back(
        fmt::format("forces, temperatures and the like that state no unit, where lengths are in "
                    "mm: {}; lbf, degF, psi, lbf/in and ft/min were taken",
                    draft.taken_beside_mm));
  if (draft.measuring_unstated && !draft.project.built.empty())
    assumptions.push_back("measuring_tolerance is not stated: 1/32 in was taken");
  add_mesh_assumptions(draft);
}

using FileIndex = std::unordered_map<std::string_view, std::size_t>;

FileIndex index_files(const std::vector<ParsedFile>& files) {
  FileIndex index;
  for (std::size_t i = 0; i < files.size(); ++i) index.emplace(files[i].name, i);
  return index;
}

void show_lines(std::vector<Diagnostic>& errors, const std::vector<ParsedFile>& files,
                const FileIndex& index) {
  for (Diagnostic& error : errors) {
    const auto file = index.find(error.where.file);
    if (file == index.end() || !error.source_line.empty() || error.where.line < 1) continue;
    const std::vector<std::string>& lines = files[file->second].lines;
    const auto line = static_cast<std::size_t>(error.where.line) - 1;
    if (line < lines.size() && lines[line].size() <= longest_shown_line_bytes)
      error.source_line = lines[line];
  }
}

/// A message with the names of mirror images as those of what they are images of, which makes one
/// of what is said of both.
std::string as_of_originals(std::string message, const std::vector<TwinPlace>& twins) {
  for (const TwinPlace& twin : twins) {
    const std::string name = quoted_text(twin.name);
    for (std::size_t at = message.find(name); at != std::string::npos; at = message.find(name, at))
      message.replace(at, name.size(), quoted_text(twin.original));
  }
  return message;
}

/// In order of their places. What is wrong at one place in a thing and in its mirror image, or in
/// a frame and in one that is like it, is said once.
void sort_errors(std::vector<Diagnostic>& errors, const FileIndex& index,
                 const std::vector<TwinPlace>& twins) {
  const auto key = [&index](const Diagnostic& error) {
    const auto file = index.find(error.where.file);
    return std::tuple(file != index.end() ? file->second : index.size(), error.where.line,
                      error.where.column);
  };
  std::stable_sort(errors.begin(), errors.end(),
                   [&key](const Diagnostic& a, const Diagnostic& b) { return key(a) < key(b); });
  const auto same = [&twins](const Diagnostic& a, const Diagnostic& b) {
    return a.where == b.where &&
           as_of_originals(a.message, twins) == as_of_originals(b.message, twins);
  };
  errors.erase(std::unique(errors.begin(), errors.end(), same), errors.end());
}

struct Loaded {
  LoadResult result;
  std::vector<ParsedFile> files;  ///< their trees with all that was worked out
  std::vector<SetValue> set;
};

Loaded load(const std::filesystem::path& path, const Catalogue& built_in,
            const std::vector<std::string>& set_texts) {
  ProjectDraft draft;
  draft.project.catalogue = built_in;
  std::vector<ParsedFile> files = read_project_files(path, draft);
  ValuesSet set = set_values(files, set_texts, draft);
  const std::vector<ParsedFile> tables = derive(files, draft);
  for (ParsedFile& file : files) {
    if (!file.readable) continue;
    ReadContext context(draft, files.front().folder, file.folder);
    read_file(file.root, context, file.included);
    draft.taken_beside_mm += context.taken_beside_mm;
  }
  cross_check(draft, built_in);
  find_measured(draft);
  refuse_unread(files, draft);
  add_level_flight(draft.project);
  add_assumptions(draft);

  LoadResult result;
  result.files = std::move(draft.files);
  if (draft.errors.list.empty()) {
    result.project = std::move(draft.project);
    return {std::move(result), std::move(files), std::move(set.values)};
  }
  files.insert(files.end(), tables.begin(), tables.end());
  files.push_back(std::move(set.shown));
  std::vector<Diagnostic>& errors = draft.errors.list;
  const FileIndex index = index_files(files);
  show_lines(errors, files, index);
  sort_errors(errors, index, draft.twins);
  if (draft.errors.left_out)
    errors.push_back(
        {errors.back().where,
         fmt::format("there are more errors: only the first {} are listed", most_errors),
         {},
         {}});
  result.errors = std::move(errors);
  return {std::move(result), std::move(files), std::move(set.values)};
}

}  // namespace

LoadResult load_project(const std::filesystem::path& path, const Catalogue& built_in) {
  return load(path, built_in, {}).result;
}

LoadedAsIf load_as_if(const std::filesystem::path& path, const Catalogue& built_in,
                      const std::vector<std::string>& set) {
  Loaded loaded = load(path, built_in, set);
  return {std::move(loaded.result), std::move(loaded.set), std::move(loaded.files)};
}

void show_in_files(std::vector<Diagnostic>& errors, const std::vector<ParsedFile>& files) {
  const FileIndex index = index_files(files);
  show_lines(errors, files, index);
  sort_errors(errors, index, {});
}

Expected<std::string, std::vector<Diagnostic>> expand_project(const std::filesystem::path& path,
                                                              const Catalogue& built_in) {
  Loaded loaded = load(path, built_in, {});
  if (!loaded.result.project) return std::move(loaded.result.errors);
  return expanded(loaded.files);
}

}  // namespace linewright
