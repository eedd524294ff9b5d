#pragma once
// A project while its files are being read: what is known so far, which names it gives and uses,
// and everything found wrong. The readers add to it; cross checks follow when all files are in.

#include <filesystem>
#include <string>
#include <vector>

#include "input/diagnostic.hpp"
#include "input/quantity.hpp"
#include "model/project.hpp"

namespace linewright {

/// Errors kept of one run. A file that is wrong throughout (a mesh, say) needs no longer list.
inline constexpr std::size_t most_errors = 1000;

/// What a name stands for. Names are distinct within a kind.
enum class Named { part, hole, node, route, closure, attitude, line };

/// The kind in words: "node".
std::string_view kind_word(Named kind);

/// A name at the place that gives it or uses it.
struct NamePlace {
  Named kind = Named::part;
  std::string name;
  SourceLocation where;
};

/// A closure's word that another comes before it.
struct ClosureOrder {
  std::string closure;
  std::string after;
  SourceLocation where;
};

/// What a mesh's entry leaves out and its file does not say either.
struct UnstatedMesh {
  std::string name;
  std::string unit_taken;  ///< "inches", or empty where the project states the unit
  bool crease_angle = false;
  bool thickness = false;
};

struct ProjectDraft {
  Project project;
  std::vector<NamePlace> given;
  std::vector<NamePlace> used;
  std::vector<ClosureOrder> closure_orders;
  /// False when a file or a name could not be read: a name that is missing may be there.
  bool names_complete = true;
  int panels_without_thickness = 0;
  int edges_unstated = 0;
  std::vector<UnstatedMesh> unstated_meshes;
  std::vector<std::string> files_without_units;
  /// Every file that was read or looked for: where its name stands, and what it is a link to.
  std::vector<std::filesystem::path> files;
  std::vector<Diagnostic> errors;

  /// Adds an error; beyond `most_errors` only the fact that there are more is kept.
  void add_error(const SourceLocation& where, std::string message, std::string suggestion = {});
  bool errors_left_out = false;

  /// Notes a file that the project consists of, whether it is there or not.
  void note_file(const std::filesystem::path& path);
};

/// What the readers of one file share.
struct ReadContext {
  ProjectDraft& draft;
  std::filesystem::path project_folder;  ///< canonical
  std::filesystem::path file_folder;     ///< of the file being read, canonical
  BareLength bare = BareLength::inch;

  void error(const SourceLocation& where, std::string message, std::string suggestion = {}) {
    draft.add_error(where, std::move(message), std::move(suggestion));
  }
};

/// "static.yaml:4:9", for a message that points to a second place.
std::string place_words(const SourceLocation& where);

/// The text in single quotes, cut where it is long, with control characters replaced, so that a
/// message stays one readable line whatever the file holds.
std::string quoted_text(std::string_view text);

}  // namespace linewright
