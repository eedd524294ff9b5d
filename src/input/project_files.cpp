#include "input/project_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <system_error>
#include <utility>

#include "input/keys/project_keys.hpp"
#include "input/map_reader.hpp"
#include "input/project_paths.hpp"
#include "input/text_file.hpp"
#include "system/path_text.hpp"
#include "system/true_path.hpp"

namespace linewright {

namespace fs = std::filesystem;

namespace {

constexpr MapReader<project_map>::Key include_key("include");

struct Include {
  std::string written;
  SourceLocation where;
};

/// Follows includes from the project file.
class FileWalk {
 public:
  FileWalk(fs::path project_folder, ProjectDraft& draft)
      : project_folder_(std::move(project_folder)), draft_(draft) {}

  /// Takes a file whose text is at hand, then its includes.
  void take(const ProjectPath& file, std::string_view text) {
    bytes_ += text.size();
    open_.push_back(file);
    for (const Include& include : read(file, text)) follow(include, file.path.parent_path());
    open_.pop_back();
  }

  std::vector<ParsedFile> take_files() { return std::move(files_); }

 private:
  /// Reads one file, and says what it includes.
  std::vector<Include> read(const ProjectPath& file, std::string_view text) {
    YamlDocument document = read_yaml(text, file.shown);
    ParsedFile& parsed = files_.emplace_back();
    parsed.name = file.shown;
    parsed.lines = std::move(document.lines);
    parsed.folder = file.path.parent_path();
    parsed.included = open_.size() > 1;
    if (!document.errors.empty()) {
      draft_.names_complete = false;
      for (Diagnostic& error : document.errors) draft_.errors.add(std::move(error));
      return {};
    }
    parsed.readable = true;
    parsed.root = std::move(document.root);
    ReadContext context(draft_, project_folder_, parsed.folder);
    return includes(parsed.root, context);
  }

  static std::vector<Include> includes(const YamlNode& root, ReadContext& context) {
    std::vector<Include> all;
    const YamlNode* list = root.find(include_key->name);
    if (list == nullptr) return all;
    for (const YamlNode& item : read_items(*list, context)) {
      std::string written = read_text(item, "the name of a file", context);
      if (!written.empty()) all.push_back({std::move(written), item.where});
    }
    return all;
  }

  void follow(const Include& include, const fs::path& base) {
    if (const std::optional<std::string> why_not = try_follow(include, base)) {
      draft_.names_complete = false;
      draft_.add_error(include.where, *why_not);
    }
  }

  /// Takes the included file, or says why not.
  std::optional<std::string> try_follow(const Include& include, const fs::path& base) {
    const auto file = resolve_project_path(project_folder_, base, include.written);
    if (!file) return file.error();
    draft_.note_file(base / path_of(include.written));
    if (is_open(*file)) return fmt::format("files include each other: {}", chain_to(*file));
    const auto [first, is_new] = first_include_.try_emplace(file->path, include.where);
    if (!is_new)
      return fmt::format("{} is included twice: first at {}", quoted_text(include.written),
                         place_words(first->second));
    if (files_.size() >= most_project_files)
      return fmt::format("a project can have {} files at most", most_project_files);
    const auto text = read_text_file(file->path, file->shown);
    if (!text)
      return fmt::format("{} cannot be included: {}", quoted_text(include.written),
                         text.error().message);
    if (bytes_ + text->size() > most_project_bytes)
      return fmt::format(
          "the project's files together are larger than {} MiB, which is all "
          "that is read: give detailed shapes as meshes",
          most_project_bytes >> 20);
    take(*file, *text);
    return std::nullopt;
  }

  bool is_open(const ProjectPath& file) const {
    return std::any_of(open_.begin(), open_.end(),
                       [&](const ProjectPath& open) { return open.path == file.path; });
  }

  std::string chain_to(const ProjectPath& file) const {
    auto from = std::find_if(open_.begin(), open_.end(),
                             [&](const ProjectPath& open) { return open.path == file.path; });
    std::string chain;
    for (; from != open_.end(); ++from) chain += from->shown + " -> ";
    return chain + file.shown;
  }

  fs::path project_folder_;
  ProjectDraft& draft_;
  std::vector<ParsedFile> files_;
  std::vector<ProjectPath> open_;  ///< from the project file to the one being read
  std::map<fs::path, SourceLocation> first_include_;
  std::size_t bytes_ = 0;
};

/// A file's name in its folder, as the project's other files are named. A path that ends in a slash
/// names none.
std::string shown_name(const fs::path& file) {
  return file.has_filename() ? text_of(file.filename()) : "project.yaml";
}

}  // namespace

std::vector<ParsedFile> read_project_files(const fs::path& path, ProjectDraft& draft) {
  std::error_code failure;
  const bool is_folder = fs::is_directory(path, failure);
  const fs::path given = is_folder ? path / path_of("project.yaml") : path;
  const std::string given_name = shown_name(given);
  draft.note_file(given);
  const auto text = read_text_file(given, given_name);
  if (!text) {
    Diagnostic why_not = text.error();
    if (is_folder && !fs::exists(given, failure))
      why_not.suggestion = "a project's folder holds a 'project.yaml'";
    draft.errors.add(std::move(why_not));
    return {};
  }
  const fs::path project_file = true_path(given, failure);
  if (failure) {
    draft.add_error({given_name, 0, 0}, fmt::format("{} cannot be followed: {}",
                                                    quoted_text(given_name), failure.message()));
    return {};
  }
  FileWalk walk(project_file.parent_path(), draft);
  walk.take({project_file, text_of(project_file.filename())}, *text);
  return walk.take_files();
}

}  // namespace linewright
