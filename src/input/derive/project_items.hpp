#pragma once
// What a project's files name, found in their trees before these are read.

#include <deque>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "input/key_spec.hpp"
#include "input/named.hpp"
#include "input/parsed_file.hpp"

namespace linewright {

/// How far a thing is worked out.
enum class Progress { untouched, working, done };

/// A named thing of the project, or the twin of one on the other side of BL 0.
struct ProjectItem {
  Named kind = Named::part;
  std::string name;
  YamlNode* node = nullptr;  ///< its map; of a twin: filled in when it is worked out
  const MapSpec* map = nullptr;
  const ParsedFile* file = nullptr;
  BareLength bare = BareLength::inch;
  ProjectItem* holder = nullptr;  ///< of a hole: the part that it is in
  ProjectItem* twin = nullptr;    ///< on the other side; of a twin: what it is the twin of
  bool is_twin = false;
  bool refused = false;       ///< of a twin: it cannot be, which is reported
  bool no_twin_said = false;  ///< that it lies on one side and has no twin is reported
  Progress progress = Progress::untouched;
};

/// "hole 'F4-a'".
std::string named_item(const ProjectItem& item);

/// Every named part, hole, node, route and line. Twins that `mirror` asks for are among them.
class ProjectItems {
 public:
  /// The files stay where they are as long as this is used.
  explicit ProjectItems(std::vector<ParsedFile>& files);

  /// In the order of the files; a twin comes right after what it is the twin of.
  std::deque<ProjectItem>& all() { return items_; }

  /// The first of that name, or nullptr.
  ProjectItem* find(Named kind, std::string_view name);

  /// Puts the twins into the trees, each after what it is the twin of. Holes of a part that has a
  /// twin go with the part.
  void insert_twins();

 private:
  struct Inserted {
    YamlNode* map;         ///< that has the list
    std::string_view key;  ///< under which it has it
    std::size_t index;
    ProjectItem* twin;
  };

  void add_file(ParsedFile& file);
  void add_list(YamlNode& from, std::string_view key, Named kind, const MapSpec& map,
                const ParsedFile& file, ProjectItem* holder);
  void insert_twins_of(Named kind);
  ProjectItem* add(const ProjectItem& item);

  std::deque<ProjectItem> items_;
  std::deque<YamlNode> twin_nodes_;
  std::vector<Inserted> inserted_;
  std::map<std::pair<Named, std::string>, ProjectItem*, std::less<>> by_name_;
};

}  // namespace linewright
