#include "input/derive/frame_shape.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <string>
#include <utility>

#include "input/derive/derived_nodes.hpp"
#include "model/worth.hpp"

namespace linewright {

namespace {

/// Sums of tape measures have no more places than these [common practice, no source].
double tidy_in(double length_in) {
  return to_parts(length_in, 1e9);
}

/// What one frame takes over from another.
class ShapeCopy {
 public:
  ShapeCopy(const DrawnFrame& frame, const DrawnFrame& source, Vec2 moved_in, ProjectDraft& draft)
      : frame_(frame),
        source_(source),
        moved_in_(moved_in),
        draft_(draft),
        note_(fmt::format("like {}", source.name())) {}

  /// `like` is where the frame says so.
  void take(const SourceLocation& like) {
    if (const YamlNode* thickness = wanted("thickness")) {
      YamlNode copy = length(*thickness, quiet_length_in(*source_.node, "thickness", source_.bare));
      copy.note = note_;
      set_value(*frame_.node, "thickness", std::move(copy));
    }
    if (const YamlNode* outline = wanted("outline")) {
      YamlNode copy = points(*outline);
      copy.note = note_;
      set_value(*frame_.node, "outline", std::move(copy));
    }
    const YamlNode* holes = wanted("holes");
    if (holes == nullptr) return;
    // That a frame needs a name is said when it is read.
    if (frame_.name().empty())
      draft_.names_complete = false;
    else
      take_holes(*holes, like);
  }

 private:
  /// What the source has and the frame has not.
  const YamlNode* wanted(std::string_view key) const {
    return frame_.node->find(key) == nullptr ? source_.node->find(key) : nullptr;
  }

  bool as_written() const {
    return frame_.bare == source_.bare && moved_in_.u == 0 && moved_in_.v == 0;
  }

  /// A point that is no point stays as it is written, and the readers say so.
  YamlNode point(const YamlNode& node) const {
    const auto at = quiet_plane_point(&node, source_.bare);
    if (as_written() || !at) return node;
    return plane_point_node({tidy_in(at->u + moved_in_.u), tidy_in(at->v + moved_in_.v)},
                            node.where, frame_.bare, {});
  }

  YamlNode points(const YamlNode& node) const {
    YamlNode copy = node;
    for (YamlNode& item : copy.items) item = point(item);
    return copy;
  }

  /// What is no length stays as it is written, too.
  YamlNode length(const YamlNode& node, std::optional<double> length_in) const {
    return frame_.bare == source_.bare || !length_in
               ? node
               : length_node(*length_in, node.where, frame_.bare);
  }

  void take_holes(const YamlNode& holes, const SourceLocation& like) {
    YamlNode copies = holes;
    copies.note = note_;
    for (YamlNode& hole : copies.items) {
      if (hole.kind != YamlNode::Kind::map) continue;
      if (!rename(hole, like)) {
        draft_.names_complete = false;
        return;
      }
      // What is found about the copy is found here; what is wrong with a value is wrong there.
      hole.where = like;
      for (const std::string_view key : {"diameter", "bore", "edge_radius"})
        if (const YamlNode* written = hole.find(key))
          set_value(hole, key, length(*written, quiet_length_in(hole, key, source_.bare)));
      if (const YamlNode* outline = hole.find("outline"))
        set_value(hole, "outline", points(*outline));
      if (const YamlNode* centre = hole.find("centre")) set_value(hole, "centre", point(*centre));
    }
    set_value(*frame_.node, "holes", std::move(copies));
  }

  /// False, which is said, where nothing tells what the copy is called.
  bool rename(YamlNode& hole, const SourceLocation& like) {
    const std::string name(quiet_text(hole, "name"));
    const std::string_view mirror = quiet_text(hole, "mirror");
    if (!mirror.empty()) {
      if (const auto twin = name_of_copy(mirror))
        set_value(hole, "mirror", text_node(*twin, hole.find("mirror")->where));
      else if (goes_with_twin(mirror))
        remove_key(hole, "mirror");
      else
        return cannot_name(std::string(mirror), like);
    }
    const auto own = name_of_copy(name);
    if (!own) return cannot_name(name, like);
    set_value(hole, "name", text_node(*own, hole.find("name")->where));
    return true;
  }

  bool cannot_name(const std::string& name, const SourceLocation& like) {
    draft_.add_error(
        like,
        fmt::format(
            "nothing tells what the copy of hole {} is called: its name does not begin with "
            "its frame's",
            quoted_text(name)),
        fmt::format("call it '{}-…', or list the holes of {} under its own 'holes'", source_.name(),
                    quoted_text(std::string(frame_.name()))));
    return false;
  }

  /// With the copy's name in the place of the source's, or of its twin's.
  std::optional<std::string> name_of_copy(std::string_view name) const {
    const std::array<std::pair<std::string_view, std::string_view>, 2> frames{
        std::pair{source_.name(), frame_.name()},
        {quiet_text(*source_.node, "mirror"), quiet_text(*frame_.node, "mirror")}};
    for (const auto& [from, to] : frames)
      if (!from.empty() && !to.empty() && name.size() > from.size() && name.starts_with(from))
        return std::string(to) + std::string(name.substr(from.size()));
    return std::nullopt;
  }

  /// True for a hole of the source's twin, where the copy has none.
  bool goes_with_twin(std::string_view name) const {
    const std::string_view twin = quiet_text(*source_.node, "mirror");
    return !twin.empty() && name.starts_with(twin) && quiet_text(*frame_.node, "mirror").empty();
  }

  const DrawnFrame& frame_;
  const DrawnFrame& source_;
  Vec2 moved_in_;
  ProjectDraft& draft_;
  std::string note_;
};

}  // namespace

void take_shape(const DrawnFrame& frame, const DrawnFrame& source, Vec2 moved_in,
                const SourceLocation& like, ProjectDraft& draft) {
  ShapeCopy(frame, source, moved_in, draft).take(like);
}

}  // namespace linewright
