#include "input/stretched_panels.hpp"

#include <fmt/format.h>

#include <cmath>
#include <unordered_map>

#include "input/outline_check.hpp"

namespace linewright {

namespace {

constexpr NumberSpec corner_number{.words = "a corner, counted from 1,",
                                   .dimension = Dimension::plain,
                                   .largest = most_corners,
                                   .smallest = 1,
                                   .whole = true};

using Frames = std::unordered_map<std::string, const Frame*>;

/// Two places of a frame's outline; nothing after an error.
std::optional<std::array<Vec3, 2>> edge_of(const StretchedPanel& stretched, const NamePlace& name,
                                           const Frames& frames, ProjectDraft& draft) {
  const auto found = frames.find(name.name);
  if (found == frames.end()) {
    const auto is_this = [&name](const NamePlace& given) {
      return given.kind == Named::part && given.name == name.name;
    };
    // A name that nothing has is an error of its own.
    if (std::any_of(draft.given.begin(), draft.given.end(), is_this))
      draft.add_error(name.where, fmt::format("{} is no frame: a panel is stretched over frames",
                                              quoted_text(name.name)));
    return std::nullopt;
  }
  const Frame& frame = *found->second;
  if (frame.outline.empty()) return std::nullopt;
  std::array<Vec3, 2> edge;
  for (std::size_t i = 0; i < 2; ++i) {
    const auto corner = static_cast<std::size_t>(stretched.corners[i]);
    if (corner > frame.outline.size()) {
      draft.add_error(stretched.corners_where,
                      fmt::format("frame {} has {} corners, counted from 1: there is no corner {}",
                                  quoted_text(frame.name), frame.outline.size(), corner));
      return std::nullopt;
    }
    edge[i] = frame.plane.in_space(frame.outline[corner - 1]);
  }
  return edge;
}

/// What is wrong with the panel from one frame's edge to the next; empty for nothing.
std::string bay_fault(const std::array<Vec3, 2>& first, const std::array<Vec3, 2>& second,
                      const std::vector<Vec3>& corners) {
  if (const auto fault = panel_fault(corners)) return fault->words;
  if (dot(first[1] - first[0], second[1] - second[0]) < 0)
    return "the two corners stand the other way round, and the panel would cross itself";
  return {};
}

void stretch(const StretchedPanel& stretched, const Frames& frames, ProjectDraft& draft) {
  Panel& panel = draft.project.structure.panels[stretched.panel];
  std::optional<std::array<Vec3, 2>> before;
  for (std::size_t i = 0; i < stretched.frames.size(); ++i) {
    const auto edge = edge_of(stretched, stretched.frames[i], frames, draft);
    if (!edge) return;
    if (before) {
      std::vector<Vec3> bay{(*before)[0], (*before)[1], (*edge)[1], (*edge)[0]};
      const std::string fault = bay_fault(*before, *edge, bay);
      if (!fault.empty())
        draft.add_error(
            stretched.frames[i].where,
            fmt::format("between frames {} and {}: {}", quoted_text(stretched.frames[i - 1].name),
                        quoted_text(stretched.frames[i].name), fault));
      panel.bays.push_back(std::move(bay));
    }
    before = edge;
  }
}

}  // namespace

void note_stretched(MapReader<panel_map>& fields, ReadContext& context) {
  StretchedPanel stretched;
  stretched.panel = context.draft.project.structure.panels.size();
  for (const YamlNode& item : fields.items("over")) {
    const std::string name = read_text(item, "the name of a frame", context);
    if (name.empty()) continue;
    context.draft.used.push_back({Named::part, name, item.where});
    stretched.frames.push_back({Named::part, name, item.where});
  }
  const YamlNode& over = *fields.find("over");
  if (over.items.size() < 2 && over.kind == YamlNode::Kind::sequence)
    context.error(over.where, fmt::format("a panel is stretched over two frames or more, found {}",
                                          over.items.size()));
  const YamlNode* corners = fields.require("corners");
  if (corners == nullptr) return;
  stretched.corners_where = corners->where;
  stretched.corners =
      read_pair(*corners, corner_number,
                "two corners of the frames' outlines, counted from 1: [2, 3]", context);
  const auto [first, second] = stretched.corners;
  if (!std::isfinite(first + second)) return;
  if (first == second)
    context.error(corners->where, "the two corners must differ");
  else
    context.draft.stretched_panels.push_back(std::move(stretched));
}

void stretch_panels(ProjectDraft& draft) {
  Frames frames;
  for (const Frame& frame : draft.project.structure.frames) frames.try_emplace(frame.name, &frame);
  for (const StretchedPanel& stretched : draft.stretched_panels) stretch(stretched, frames, draft);
}

}  // namespace linewright
