#include "input/derive/like_frames.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "input/derive/derived_nodes.hpp"
#include "input/derive/frame_shape.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/key_spec.hpp"
#include "input/suggest_name.hpp"

namespace linewright {

namespace {

/// What says where a frame stands, and so in which coordinates it is drawn.
constexpr std::array<std::pair<std::string_view, std::string_view>, 4> drawn_in{
    std::pair<std::string_view, std::string_view>{"station", "BL and WL"},
    {"buttock_line", "FS and WL"},
    {"waterline", "FS and BL"},
    {"plane", "a plane of its own"}};

/// The coordinates that a frame is drawn in; empty where it does not say where it stands.
std::string_view coordinates_of(const YamlNode& frame) {
  for (const auto& [key, coordinates] : drawn_in)
    if (frame.find(key) != nullptr) return coordinates;
  return {};
}

struct LikeFrame : DrawnFrame {
  enum class State { untouched, working, done } state = State::untouched;
  LikeFrame* source = nullptr;  ///< what it is like; nullptr for none, or for none that can be
};

class LikeFrames {
 public:
  LikeFrames(std::vector<ParsedFile>& files, ProjectDraft& draft) : draft_(draft) {
    for (ParsedFile& file : files) {
      YamlNode* structure = file.root.find("structure");
      YamlNode* frames = structure != nullptr ? structure->find("frames") : nullptr;
      if (frames == nullptr) continue;
      for (YamlNode& frame : frames->items) add(frame, bare_length_of(file.root));
    }
  }

  void complete() {
    for (LikeFrame& frame : frames_) complete(frame);
  }

 private:
  void add(YamlNode& frame, BareLength bare) {
    frames_.push_back({{&frame, bare}});
    const std::string name(quiet_text(frame, "name"));
    if (!name.empty()) by_name_.emplace(name, frames_.size() - 1);
    const std::string twin(quiet_text(frame, "mirror"));
    if (!twin.empty()) twins_.emplace(twin, name);
  }

  /// First the frames that it is like, and those that they are like: in a list rather than by calls
  /// within calls, for a project may have very many.
  void complete(LikeFrame& frame) {
    std::vector<LikeFrame*> chain;
    for (LikeFrame* each = &frame; each != nullptr && each->state == LikeFrame::State::untouched;
         each = each->source) {
      each->state = LikeFrame::State::working;
      chain.push_back(each);
      const YamlNode* like = each->node->find("like");
      each->source = like != nullptr ? source_of(*each, *like) : nullptr;
    }
    while (!chain.empty()) {
      take_over(*chain.back());
      chain.back()->state = LikeFrame::State::done;
      chain.pop_back();
    }
  }

  void take_over(LikeFrame& frame) {
    YamlNode& node = *frame.node;
    const YamlNode* like = node.find("like");
    const std::optional<Vec2> moved_in = moved(frame);
    if (like != nullptr) {
      const SourceLocation where = like->where;
      if (frame.source != nullptr && moved_in)
        take_shape(frame, *frame.source, *moved_in, where, draft_);
      else
        leave_unread(node);
    }
    remove_key(node, "like");
    remove_key(node, "moved");
  }

  /// Nothing where what is written is no place in a plane, which is said.
  std::optional<Vec2> moved(const LikeFrame& frame) {
    const YamlNode* written = frame.node->find("moved");
    if (written == nullptr) return Vec2{};
    if (frame.node->find("like") == nullptr) {
      draft_.add_error(written->where, "'moved' is of a frame that is 'like' another",
                       "leave 'moved' out, or say which frame it is 'like'");
      return std::nullopt;
    }
    const auto by_in = quiet_plane_point(written, frame.bare);
    if (!by_in) {
      draft_.add_error(written->where, "'moved' must be two lengths, drawn as the frame is",
                       "say 'moved: [0, -1.1]' where it stands 1.1 lower or farther left");
      return std::nullopt;
    }
    if (std::max(std::abs(by_in->u), std::abs(by_in->v)) > largest_length_in) {
      draft_.add_error(written->where,
                       fmt::format("'moved' must not be beyond {} in", largest_length_in));
      return std::nullopt;
    }
    if (frame.node->find("outline") != nullptr && frame.node->find("holes") != nullptr)
      draft_.add_error(written->where,
                       "'moved' moves nothing: outline and holes are the frame's own",
                       "leave 'moved' out");
    return by_in;
  }

  /// The frame that it is like; nullptr where there is none, which is said.
  LikeFrame* source_of(const LikeFrame& frame, const YamlNode& like) {
    if (like.kind != YamlNode::Kind::scalar || like.text.empty())
      return refuse(like, "'like' must be the name of a frame");
    const auto found = by_name_.find(like.text);
    if (found == by_name_.end()) return refuse_name(like);
    LikeFrame& source = frames_[found->second];
    if (source.state == LikeFrame::State::working)
      return refuse(
          like,
          fmt::format("frame {} is like itself", quoted_text(std::string(frame.name()))) +
              (&source == &frame ? "" : fmt::format(", by way of {}", quoted_text(like.text))),
          "describe one of them by its own 'outline'");
    const std::string_view own = coordinates_of(*frame.node);
    const std::string_view other = coordinates_of(*source.node);
    if (own.empty() || other.empty() || own == other) return &source;
    return refuse(
        like,
        fmt::format("frame {} is drawn in {}, and {} in {}: neither has the shape of the "
                    "other",
                    quoted_text(std::string(frame.name())), own, quoted_text(like.text), other),
        "name a frame that stands the same way, or give this one its own 'outline'");
  }

  LikeFrame* refuse_name(const YamlNode& like) {
    if (const auto twin = twins_.find(like.text); twin != twins_.end())
      return refuse(
          like,
          fmt::format("{} is the mirror image of {}", quoted_text(like.text),
                      quoted_text(twin->second)),
          fmt::format("say 'like: {}', and give this frame its own 'mirror'", twin->second));
    if (!draft_.names_complete) return nullptr;
    std::vector<std::string> names;
    for (const auto& [name, index] : by_name_) names.push_back(name);
    return refuse(like, fmt::format("there is no frame {}", quoted_text(like.text)),
                  suggest_name(like.text, names));
  }

  LikeFrame* refuse(const YamlNode& like, std::string message, std::string suggestion = {}) {
    draft_.add_error(like.where, std::move(message), std::move(suggestion));
    return nullptr;
  }

  /// Nothing more is said of what the frame would have taken over.
  void leave_unread(YamlNode& node) {
    const SourceLocation where = node.where;
    for (const std::string_view key : {"thickness", "outline"})
      if (node.find(key) == nullptr) set_value(node, key, unread_node(where));
    if (node.find("holes") == nullptr) draft_.names_complete = false;
  }

  ProjectDraft& draft_;
  std::vector<LikeFrame> frames_;
  std::map<std::string, std::size_t, std::less<>> by_name_;
  std::map<std::string, std::string, std::less<>> twins_;  ///< and what they are the twins of
};

}  // namespace

void complete_like_frames(std::vector<ParsedFile>& files, ProjectDraft& draft) {
  LikeFrames(files, draft).complete();
}

}  // namespace linewright
