#pragma once
// A project while its files are being read: what is known so far, which names it gives and uses,
// and everything found wrong. The readers add to it; cross checks follow when all files are in.

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "input/error_list.hpp"
#include "input/named.hpp"
#include "model/project.hpp"

namespace linewright {

/// A name at the place that gives it or uses it.
struct NamePlace {
  Named kind = Named::part;
  std::string name;
  SourceLocation where;
};

/// A mirror image, and what it is one of.
struct TwinPlace {
  std::string name;
  std::string original;
  SourceLocation where;  ///< where `mirror` names it; line 0 where it only goes with a part's
};

/// A panel over frames, until all frames are known.
struct StretchedPanel {
  std::size_t panel = 0;          ///< index into the structure's panels
  std::vector<NamePlace> frames;  ///< in order
  std::array<double, 2> corners;  ///< of each outline, counted from 1
  SourceLocation corners_where;
};

/// How a node's fitting is turned, until all fittings are known.
struct AimedFitting {
  std::size_t node = 0;  ///< index into the project's nodes
  std::optional<Vec3> direction;
  std::optional<Vec3> branch;
  SourceLocation where;
  SourceLocation branch_where;
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
  /// False when a file or a name could not be read: a name that is missing may be there.
  bool names_complete = true;
  int panels_without_thickness = 0;
  int edges_unstated = 0;
  int volumes_taken_in3 = 0;  ///< that state no unit
  int volumes_taken_mm3 = 0;
  int taken_beside_mm = 0;  ///< in files in mm, forces and the like that state no unit
  bool measuring_unstated = false;
  std::vector<UnstatedMesh> unstated_meshes;
  std::vector<TwinPlace> twins;
  std::vector<StretchedPanel> stretched_panels;
  std::vector<AimedFitting> aimed_fittings;
  std::vector<std::string> files_without_units;
  /// Every file that was read or looked for: where its name stands, and what it is a link to.
  std::vector<std::filesystem::path> files;
  ErrorList errors;

  void add_error(const SourceLocation& where, std::string message, std::string suggestion = {});

  /// Notes a file that the project consists of, whether it is there or not.
  void note_file(const std::filesystem::path& path);
};

/// What the readers of one file share.
struct ReadContext : ValueContext {
  ReadContext(ProjectDraft& all, std::filesystem::path project, std::filesystem::path file)
      : ValueContext{all.errors},
        draft(all),
        project_folder(std::move(project)),
        file_folder(std::move(file)) {}

  ProjectDraft& draft;
  std::filesystem::path project_folder;  ///< canonical
  std::filesystem::path file_folder;     ///< of the file being read, canonical
};

/// "static.yaml:4:9", for a message that points to a second place.
std::string place_words(const SourceLocation& where);

/// The text in single quotes, cut where it is long, with control characters replaced, so that a
/// message stays one readable line whatever the file holds.
std::string quoted_text(std::string_view text);

}  // namespace linewright
