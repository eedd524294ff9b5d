#pragma once
// Places that follow from what is there, worked out when they are asked for.

#include <deque>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "input/derive/project_items.hpp"
#include "input/parsed_file.hpp"
#include "input/project_draft.hpp"
#include "model/fitting.hpp"

namespace linewright {

/// Works out every place that a project states by reference, and every mirror image, in the trees
/// of its files. What cannot be worked out is an error of the draft; its place in the tree is
/// `unread`, unless it is the readers that say what is wrong with it.
class Derivation {
 public:
  Derivation(std::vector<ParsedFile>& files, ProjectDraft& draft);

  void run();

  /// Every named thing, twins among them.
  std::deque<ProjectItem>& items() { return items_.all(); }
  ProjectItem* find(Named kind, std::string_view name) { return items_.find(kind, name); }

  /// Where the node is, or nothing where that is not known.
  std::optional<Vec3> node_at(std::string_view name);
  /// The middle of the hole in the middle of its web or wall, or nothing.
  std::optional<Vec3> hole_at(std::string_view name);
  /// Of a line of the catalogue or of the project, the largest; nothing where it is not known.
  std::optional<double> outside_diameter_in(std::string_view line);
  /// A fitting of the catalogue or of the project; nothing where it is not known or has a fault.
  std::optional<Fitting> fitting(std::string_view name);
  /// Says that what a key names is not there, but not while a file is unread: it may be in that
  /// one.
  void report_no_name(const SourceLocation& where, std::string message,
                      std::string suggestion = {});
  /// The same of a part; also that what the key has is no name.
  void report_no_part(const YamlNode& name);
  /// Works the thing out; false where it depends on itself, which is reported.
  bool work_out(ProjectItem& item);

  /// What the map says under the key, in inches; nothing where it says nothing or, after an error,
  /// where that is no such length.
  std::optional<double> length_in(const YamlNode& map, const KeySpec& key, BareLength bare);

  void error(const SourceLocation& where, std::string message, std::string suggestion = {}) {
    draft_.add_error(where, std::move(message), std::move(suggestion));
  }

 private:
  void work_out_itself(ProjectItem& item);
  void work_out_twin(ProjectItem& item);
  void place_node_item(ProjectItem& item);
  /// Gives an arm that is `on` a mover that mover's pivot and axis.
  void place_arm(YamlNode* arm, BareLength bare);
  /// Puts the nodes that a mover's points name into their places.
  void place_pins(ProjectItem& mover);
  void place_hole(ProjectItem& item);
  /// Notes beside each `fitting` the ports that follow from it.
  void note_ports();
  void report_circle(const ProjectItem& item);
  std::string twin_name(ProjectItem& item, Named kind, const YamlNode& name);
  /// Where the thing asks for a twin and cannot have one, that is an error, and the answer false.
  bool can_have_twin(const ProjectItem& item);
  /// Why the thing's image would lie on the thing itself; empty where it would not.
  std::string_view why_no_side(const ProjectItem& item);
  bool stretched_over_twins(const ProjectItem& panel);
  bool frame_crosses_middle(const ProjectItem& frame);
  bool hole_crosses_middle(const ProjectItem& item);
  bool lies_on_both_sides(ProjectItem& item);

  ProjectDraft& draft_;
  ProjectItems items_;
  std::vector<const ProjectItem*> working_;
};

}  // namespace linewright
