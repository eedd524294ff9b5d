#include "lines/near/line_neighbours.hpp"

#include <algorithm>

namespace linewright {

namespace {

std::vector<std::size_t> each_once(std::vector<std::size_t> lines) {
  std::sort(lines.begin(), lines.end());
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  return lines;
}

std::vector<Bounds> joined_bounds(const std::vector<std::vector<Bounds>>& lines) {
  std::vector<Bounds> all;
  for (const std::vector<Bounds>& line : lines) all.insert(all.end(), line.begin(), line.end());
  return all;
}

}  // namespace

Bounds bounds_with_reach(const Stretch& stretch, Reach reach) {
  return grown(stretch.bounds, stretch.thickest_radius_in + Centreline::default_sagitta_in +
                                   stretch.envelope.widest_in(reach));
}

std::vector<Bounds> bounds_with_reach(const std::vector<Stretch>& stretches, Reach reach) {
  std::vector<Bounds> bounds;
  for (const Stretch& stretch : stretches) bounds.push_back(bounds_with_reach(stretch, reach));
  return bounds;
}

LineNeighbours::LineNeighbours(const std::vector<std::vector<Bounds>>& lines)
    : bounds_(joined_bounds(lines)), first_{0}, index_(bounds_) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    line_of_.insert(line_of_.end(), lines[i].size(), i);
    first_.push_back(line_of_.size());
  }
}

std::vector<std::size_t> LineNeighbours::lines_of(const std::vector<std::size_t>& boxes) const {
  std::vector<std::size_t> lines;
  for (const std::size_t box : boxes) lines.push_back(line_of_[box]);
  return lines;
}

std::vector<std::size_t> LineNeighbours::near(const Stretch& stretch, Reach reach,
                                              double horizon_in) const {
  return each_once(lines_of(index_.near(bounds_with_reach(stretch, reach), horizon_in)));
}

std::vector<std::size_t> LineNeighbours::after(std::size_t line, double horizon_in) const {
  std::vector<std::size_t> found;
  for (std::size_t i = first_[line]; i < first_[line + 1]; ++i)
    for (const std::size_t other : lines_of(index_.near(bounds_[i], horizon_in)))
      if (other > line) found.push_back(other);
  return each_once(std::move(found));
}

}  // namespace linewright
