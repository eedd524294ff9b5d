#include "input/channel_check.hpp"

#include <fmt/format.h>

#include <cmath>

#include "model/channel_legs.hpp"

namespace linewright {

namespace {

/// A wall shorter than this is none.
constexpr double least_wall_in = 1e-6;

bool is_read(const Channel& channel) {
  double sum = 0;
  for (const Vec3 point : channel.path) sum += point.x + point.y + point.z;
  for (const Vec2 corner : channel.section) sum += corner.u + corner.v;
  return std::isfinite(sum);
}

/// The path's point at which it turns right back.
std::optional<OutlineFault> turned_back(const std::vector<Vec3>& path) {
  for (std::size_t i = 1; i + 1 < path.size(); ++i)
    if (dot(unit(path[i] - path[i - 1]), unit(path[i + 1] - path[i])) < least_corner_cosine)
      return OutlineFault{
          "the path turns right back here, and its section would fold over itself: describe each "
          "leg as a channel of its own",
          i};
  return std::nullopt;
}

}  // namespace

std::optional<OutlineFault> fold_fault(const Channel& channel) {
  if (!is_read(channel)) return std::nullopt;
  if (auto fault = turned_back(channel.path)) return fault;
  const std::vector<ChannelLeg> legs = channel_legs(channel.path);
  for (std::size_t i = 0; i < legs.size(); ++i)
    for (std::size_t corner = 0; corner < channel.section.size(); ++corner) {
      const double left_in = legs[i].length_in(channel.section[corner]);
      if (left_in > least_wall_in) continue;
      return OutlineFault{
          fmt::format("the section folds over itself on the leg that ends here: its turns take "
                      "{:.3g} in of the section's corner {}, and the leg has {:.3g} in; describe "
                      "it as a channel of its own, or draw the path along the inside of its turns",
                      distance(legs[i].from, legs[i].to) - left_in, corner + 1,
                      distance(legs[i].from, legs[i].to)),
          i + 1};
    }
  return std::nullopt;
}

}  // namespace linewright
