#pragma once
// The shape of one frame in another.

#include <string_view>

#include "input/derive/quiet_values.hpp"
#include "input/project_draft.hpp"
#include "input/yaml_document.hpp"
#include "model/vector.hpp"

namespace linewright {

/// A frame as its file draws it.
struct DrawnFrame {
  YamlNode* node = nullptr;
  BareLength bare = BareLength::inch;

  std::string_view name() const { return quiet_text(*node, "name"); }
};

/// Gives `frame` the outline, thickness and holes of `source` where it has none of its own, moved
/// in its plane. A hole whose copy has no name is an error of the draft; `like` is where the frame
/// says whose shape it has.
void take_shape(const DrawnFrame& frame, const DrawnFrame& source, Vec2 moved_in,
                const SourceLocation& like, ProjectDraft& draft);

}  // namespace linewright
