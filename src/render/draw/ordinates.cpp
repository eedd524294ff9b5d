#include "render/draw/ordinates.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "render/amount.hpp"

namespace linewright {

namespace {

/// Nearer than this is one dimension: no tape tells them apart.
constexpr double one_dimension_in = 0.01;
constexpr double lines_apart_pt = 8.5;
constexpr double words_apart_pt = 34;
/// From the edge of the room to the words, which the thin lines bridge.
constexpr double bridge_pt = 12;

struct Ordinate {
  double value_in = 0;
  double from_pt = 0;  ///< where its line begins: the place farthest from the edge
};

/// One for each value, rising along the sheet.
std::vector<Ordinate> merged(std::vector<Ordinate> all) {
  std::sort(all.begin(), all.end(),
            [](const Ordinate& a, const Ordinate& b) { return a.value_in < b.value_in; });
  std::vector<Ordinate> kept;
  for (const Ordinate& each : all) {
    if (!kept.empty() && each.value_in - kept.back().value_in < one_dimension_in) {
      kept.back().from_pt = std::max(kept.back().from_pt, each.from_pt);
      continue;
    }
    kept.push_back(each);
  }
  return kept;
}

}  // namespace

std::vector<double> kept_apart(std::vector<double> wanted, double apart, double least,
                               double most) {
  double next = least;
  for (double& place : wanted) {
    place = std::max(place, next);
    next = place + apart;
  }
  double last = most;
  for (auto place = wanted.rbegin(); place != wanted.rend(); ++place) {
    *place = std::min(*place, last);
    last = *place - apart;
  }
  return wanted;
}

void draw_ordinates(Sheet& sheet, const PaperScale& scale, const PaperBox& room,
                    const std::vector<Vec2>& places, const Phrasing& phrasing) {
  std::vector<Ordinate> across;
  std::vector<Ordinate> up;
  for (const Vec2 at : places) {
    across.push_back({at.u, scale.y(at.v)});
    // Rising along the sheet is falling in the aeroplane.
    up.push_back({-at.v, -scale.x(at.u)});
  }
  across = merged(std::move(across));
  up = merged(std::move(up));
  std::vector<double> columns;
  for (const Ordinate& each : across) columns.push_back(scale.x(each.value_in));
  columns = kept_apart(std::move(columns), words_apart_pt, room.left + 20, room.right - 14);
  for (std::size_t i = 0; i < across.size(); ++i) {
    sheet.path("leader",
               fmt::format("M{0:.2f} {1:.1f}V{2:.1f}L{3:.1f} {4:.1f}", scale.x(across[i].value_in),
                           across[i].from_pt, room.top, columns[i], room.top - bridge_pt));
    sheet.text(columns[i], room.top - bridge_pt - 2, "small", "middle",
               bench_number(across[i].value_in, phrasing));
  }
  std::vector<double> rows;
  for (const Ordinate& each : up) rows.push_back(scale.y(-each.value_in));
  rows = kept_apart(std::move(rows), lines_apart_pt, room.top + 8, room.bottom - 4);
  for (std::size_t i = 0; i < up.size(); ++i) {
    sheet.path("leader",
               fmt::format("M{0:.1f} {1:.2f}H{2:.1f}L{3:.1f} {4:.1f}", -up[i].from_pt,
                           scale.y(-up[i].value_in), room.right, room.right + bridge_pt, rows[i]));
    sheet.text(room.right + bridge_pt + 1, rows[i] + 2.5, "small", "start",
               bench_number(-up[i].value_in, phrasing));
  }
}

}  // namespace linewright
