#include "input/derive/half_outlines.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "input/derive/derived_nodes.hpp"
#include "input/derive/frame_plane.hpp"
#include "input/derive/mirrored.hpp"
#include "input/derive/quiet_values.hpp"

namespace linewright {

namespace {

bool says_half(const YamlNode& map) {
  return quiet_text(map, "half") == "true" && !map.find("half")->quoted;
}

class HalfOutline {
 public:
  HalfOutline(YamlNode& map, const YamlNode& frame, BareLength bare, ProjectDraft& draft)
      : map_(map), frame_(frame), bare_(bare), draft_(draft) {}

  void complete() {
    const SourceLocation where = map_.find("half")->where;
    remove_key(map_, "half");
    YamlNode* outline = map_.find("outline");
    if (outline == nullptr) {
      // What a frame lacks is said when it is read.
      if (map_.find("like") != nullptr)
        draft_.add_error(where, "'half' is of an 'outline', which this frame has from another",
                         "leave 'half' out: what the other completes is taken over whole");
      if (&map_ != &frame_)
        draft_.add_error(where, "'half' is of an 'outline', which this hole has not",
                         "leave 'half' out: a round hole is described whole");
      return;
    }
    if (&map_ != &frame_) refuse_mirror();
    const auto plane = frame_plane(frame_, bare_);
    // Where the frame stands, or a corner, is no place, the readers say so.
    const auto corners = quiet_plane_points(outline, bare_);
    if (!plane || !corners) return;
    const PlaneSide side = plane_side(*plane);
    if (side == PlaneSide::neither)
      return refuse(*outline, where,
                    "half of this outline says nothing of the other half: its frame does not stand "
                    "square across BL 0",
                    "leave 'half' out, and give all corners");
    add_images(*outline, *corners, side);
  }

 private:
  void refuse_mirror() {
    const YamlNode* mirror = map_.find("mirror");
    if (mirror == nullptr) return;
    draft_.add_error(mirror->where, "a hole that is on both sides of BL 0 has no twin",
                     "leave out 'mirror', or 'half' where the outline is all of the hole");
    remove_key(map_, "mirror");
  }

  /// Nothing more is said of an outline that is refused.
  void refuse(YamlNode& outline, SourceLocation where, std::string message,
              std::string suggestion) {
    draft_.add_error(where, std::move(message), std::move(suggestion));
    outline = unread_node(outline.where);
  }

  void add_images(YamlNode& outline, const std::vector<Vec2>& corners, PlaneSide side) {
    const auto bl_of = [side](Vec2 corner) {
      return side == PlaneSide::first ? corner.u : corner.v;
    };
    const std::size_t written = corners.size();
    for (std::size_t i = 0; i < written; ++i) {
      if (bl_of(corners[i]) >= -on_middle_in) continue;
      return refuse(outline, outline.items[i].where,
                    fmt::format("corner {} of half an outline must not lie left of BL 0", i + 1),
                    "give the corners right of BL 0 alone: their mirror images are added");
    }
    YamlNode image = outline;
    for (YamlNode& corner : image.items) mirror_in_plane(corner, side);
    for (std::size_t i = written; i-- > 0;) {
      // Between others, a corner on BL 0 would be there twice, which the readers refuse.
      const bool at_end = i == 0 || i + 1 == written;
      if (at_end && bl_of(corners[i]) <= on_middle_in) continue;
      outline.items.push_back(std::move(image.items[i]));
    }
    outline.note = "with the mirror image of its right half";
  }

  YamlNode& map_;
  const YamlNode& frame_;
  BareLength bare_;
  ProjectDraft& draft_;
};

}  // namespace

void complete_half_outlines(ParsedFile& file, ProjectDraft& draft) {
  YamlNode* structure = file.root.find("structure");
  YamlNode* frames = structure != nullptr ? structure->find("frames") : nullptr;
  if (frames == nullptr) return;
  const BareLength bare = bare_length_of(file.root);
  for (YamlNode& frame : frames->items) {
    if (says_half(frame)) HalfOutline(frame, frame, bare, draft).complete();
    YamlNode* holes = frame.find("holes");
    if (holes == nullptr) continue;
    for (YamlNode& hole : holes->items)
      if (says_half(hole)) HalfOutline(hole, frame, bare, draft).complete();
  }
}

}  // namespace linewright
