#include "input/derive/derive.hpp"

#include <fmt/format.h>

#include <string>
#include <string_view>
#include <utility>

#include "input/derive/derivation.hpp"
#include "input/derive/derived_nodes.hpp"
#include "input/derive/half_outlines.hpp"
#include "input/derive/like_frames.hpp"
#include "input/derive/table_rows.hpp"
#include "input/keys/route_keys.hpp"
#include "input/keys/structure_keys.hpp"
#include "input/project_files.hpp"
#include "input/project_paths.hpp"
#include "input/text_file.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

/// Brings in the tables that routes and frames name.
class TableFiles {
 public:
  TableFiles(const std::filesystem::path& project_folder, ProjectDraft& draft)
      : project_folder_(project_folder), draft_(draft) {}

  void bring_in(ParsedFile& file) {
    if (YamlNode* routes = file.root.find("routes"))
      for (YamlNode& route : routes->items)
        replace(route, "points_from", "points", point_map, "at", {"fs", "bl", "wl"}, file);
    YamlNode* structure = file.root.find("structure");
    YamlNode* frames = structure != nullptr ? structure->find("frames") : nullptr;
    if (frames == nullptr) return;
    for (YamlNode& frame : frames->items) {
      refuse_slanted(frame);
      replace(frame, "holes_from", "holes", hole_map, "centre", axes_of(frame), file);
    }
  }

  std::vector<ParsedFile> take() { return std::move(tables_); }

 private:
  /// The coordinates that a place in the frame's web has.
  static std::vector<std::string> axes_of(const YamlNode& frame) {
    if (frame.find("buttock_line") != nullptr) return {"fs", "wl"};
    if (frame.find("waterline") != nullptr) return {"fs", "bl"};
    return {"bl", "wl"};
  }

  /// What a table has in BL and WL is not drawn in a slanted plane.
  void refuse_slanted(YamlNode& frame) {
    const YamlNode* table = frame.find("holes_from");
    if (table == nullptr || frame.find("plane") == nullptr) return;
    draft_.add_error(table->where,
                     "a table of holes is of a frame at a station, a buttock line or a waterline",
                     "list the holes of a slanted frame under 'holes'");
    remove_key(frame, "holes_from");
  }

  void replace(YamlNode& node, std::string_view from, std::string_view key, const MapSpec& map,
               std::string_view place_key, const std::vector<std::string>& axes,
               const ParsedFile& file) {
    const YamlNode* named = node.find(from);
    if (named == nullptr) return;
    const SourceLocation where = named->where;
    if (node.find(key) != nullptr)
      draft_.add_error(where, fmt::format("'{}' and '{}' say the same thing", key, from),
                       "leave one of them out");
    else if (named->kind != YamlNode::Kind::scalar || named->text.empty())
      draft_.add_error(where, fmt::format("'{}' must be the name of a file", from));
    else
      add_rows(node, named->text, where, key, map, place_key, axes, file);
    remove_key(node, from);
  }

  void add_rows(YamlNode& node, const std::string& written, const SourceLocation& where,
                std::string_view key, const MapSpec& map, std::string_view place_key,
                const std::vector<std::string>& axes, const ParsedFile& file) {
    const auto path = resolve_project_path(project_folder_, file.folder, written);
    if (!path) return draft_.add_error(where, path.error());
    draft_.note_file(file.folder / path_of(written));
    if (tables_.size() >= most_project_files)
      return draft_.add_error(
          where, fmt::format("a project can have {} tables at most", most_project_files));
    const auto text = read_text_file(path->path, path->shown);
    if (!text)
      return draft_.add_error(
          where, fmt::format("{} cannot be read: {}", quoted_text(written), text.error().message));
    bytes_ += text->size();
    if (bytes_ > most_project_bytes)
      return draft_.add_error(where, fmt::format("the project's tables together are larger than {} "
                                                 "MiB, which is all that is read",
                                                 most_project_bytes >> 20));
    ParsedFile& table = tables_.emplace_back();
    table.name = path->shown;
    for (std::string_view rest = *text; !rest.empty();) {
      const std::size_t end = std::min(rest.find('\n'), rest.size());
      table.lines.emplace_back(rest.substr(0, end));
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    YamlNode list;
    list.kind = YamlNode::Kind::sequence;
    list.where = where;
    list.note = fmt::format("from {}", path->shown);
    auto rows = table_rows(*text, path->shown, map, place_key, axes, draft_.errors);
    if (!rows) {
      draft_.names_complete = false;
      return;
    }
    list.items = std::move(*rows);
    set_value(node, key, std::move(list));
  }

  const std::filesystem::path& project_folder_;
  ProjectDraft& draft_;
  std::vector<ParsedFile> tables_;
  std::size_t bytes_ = 0;
};

/// The first value that could not be worked out, or nullptr.
const YamlNode* first_unread(const YamlNode& node) {
  if (node.kind == YamlNode::Kind::unread) return &node;
  for (const YamlNode& item : node.items)
    if (const YamlNode* found = first_unread(item)) return found;
  for (const YamlEntry& entry : node.entries)
    if (const YamlNode* found = first_unread(entry.value)) return found;
  return nullptr;
}

}  // namespace

std::vector<ParsedFile> derive(std::vector<ParsedFile>& files, ProjectDraft& draft) {
  if (files.empty()) return {};
  TableFiles tables(files.front().folder, draft);
  for (ParsedFile& file : files) {
    tables.bring_in(file);
    complete_half_outlines(file, draft);
  }
  complete_like_frames(files, draft);
  Derivation(files, draft).run();
  return tables.take();
}

void refuse_unread(const std::vector<ParsedFile>& files, ProjectDraft& draft) {
  if (!draft.errors.list.empty()) return;
  for (const ParsedFile& file : files) {
    const YamlNode* found = first_unread(file.root);
    if (found == nullptr) continue;
    draft.add_error(found->where, "the place of this could not be worked out",
                    "give it 'at', in three lengths");
    return;
  }
}

}  // namespace linewright
