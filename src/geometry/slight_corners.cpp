#include "geometry/slight_corners.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace linewright {
namespace {

/// In a longer row nothing is taken for straight: no tape measures so many points, and every two
/// of them are compared.
constexpr std::size_t longest_row = 500;

/// How far and about which axis a line turns at a corner: turns about one axis add up, and turns to
/// and fro do not.
Vec3 turn_at(const std::vector<PathCorner>& corners, std::size_t corner) {
  const Vec3 before = corners[corner].at - corners[corner - 1].at;
  const Vec3 after = corners[corner + 1].at - corners[corner].at;
  const Vec3 axis = cross(before, after);
  const double length = norm(axis);
  return length > 0 ? axis * (angle_between_rad(before, after) / length) : Vec3{};
}

double off_segment_in(Vec3 point, Vec3 from, Vec3 to) {
  const Vec3 along = to - from;
  const double squared_length = dot(along, along);
  const double t =
      squared_length > 0 ? std::clamp(dot(point - from, along) / squared_length, 0.0, 1.0) : 0;
  return distance(point, from + along * t);
}

/// The corners strictly between two that stay.
struct Row {
  std::size_t first = 0;
  std::size_t last = 0;
};

class SlightCorners {
 public:
  SlightCorners(const std::vector<PathCorner>& corners, double within_in)
      : corners_(corners), within_in_(within_in), turns_(corners.size()) {
    for (std::size_t i = 1; i + 1 < corners.size(); ++i) turns_[i] = turn_at(corners, i);
  }

  bool is_small(std::size_t corner) const {
    return norm(turns_[corner]) <= largest_slight_turn_rad;
  }

  /// Finds those of a row whose two ends stay.
  void find(Row whole, std::vector<bool>& slight) const {
    if (whole.last - whole.first > longest_row) return;
    std::vector<Row> rows{whole};
    while (!rows.empty()) {
      const Row row = rows.back();
      rows.pop_back();
      if (row.last - row.first < 2) continue;
      if (is_straight(row)) {
        for (std::size_t i = row.first + 1; i < row.last; ++i) slight[i] = true;
        continue;
      }
      const std::size_t bend = sharpest(row);
      rows.push_back({row.first, bend});
      rows.push_back({bend, row.last});
    }
    if (adds_up(whole, slight))
      for (std::size_t i = whole.first + 1; i < whole.last; ++i) slight[i] = false;
  }

 private:
  bool is_straight(Row row) const {
    for (std::size_t i = row.first + 1; i < row.last; ++i)
      if (!(off_segment_in(corners_[i].at, corners_[row.first].at, corners_[row.last].at) <
            within_in_))
        return false;
    return true;
  }

  std::size_t sharpest(Row row) const {
    std::size_t most = row.first + 1;
    for (std::size_t i = most; i < row.last; ++i)
      if (norm(turns_[i]) > norm(turns_[most])) most = i;
    return most;
  }

  /// True where slight corners of the row, from any one to any other, turn too far together.
  bool adds_up(Row row, const std::vector<bool>& slight) const {
    std::vector<Vec3> sums{Vec3{}};
    for (std::size_t i = row.first + 1; i < row.last; ++i)
      if (slight[i]) sums.push_back(sums.back() + turns_[i]);
    for (std::size_t i = 0; i < sums.size(); ++i)
      for (std::size_t j = i + 1; j < sums.size(); ++j)
        if (norm(sums[j] - sums[i]) > largest_slight_turn_rad + 1e-12) return true;
    return false;
  }

  const std::vector<PathCorner>& corners_;
  double within_in_;
  std::vector<Vec3> turns_;
};

}  // namespace

std::vector<bool> slight_corners(const std::vector<PathCorner>& corners,
                                 const std::vector<bool>& may_be, double within_in) {
  std::vector<bool> slight(corners.size(), false);
  const SlightCorners finder(corners, within_in);
  std::size_t stays = 0;
  for (std::size_t i = 1; i < corners.size(); ++i) {
    const bool last = i + 1 == corners.size();
    if (!last && may_be[i] && finder.is_small(i)) continue;
    finder.find({stays, i}, slight);
    stays = i;
  }
  return slight;
}

}  // namespace linewright
