#pragma once
// Holds what is said of one aeroplane, described in two ways, against each other.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "input/load_project.hpp"
#include "input/project_folder.hpp"
#include "lines/prepare.hpp"
#include "model/placement.hpp"
#include "rules/judge.hpp"

namespace linewright {

/// Rounding: what is searched for is searched for to a millionth of an inch or better.
inline constexpr double rounding_in = 1e-6;
/// Along a line near its least margin the margin changes by less than that in this much.
inline constexpr double place_in = 0.02;

/// How much alike the judgements of two descriptions have to be.
struct Closeness {
  /// The first of equal places is told by FS, BL and WL. In a mirror, or turned, it may be another.
  bool places = true;
  double values_in = rounding_in;
  /// What is true of a system, a node or a control is said on the first of its routes.
  bool routes = true;
};

/// Which side of the aeroplane a static port is on is told by BL 0.
inline bool is_of_sides(const Judgement& judgement) {
  return judgement.rule == "network" && judgement.message.find("side") != std::string::npos;
}

/// What is said of an aeroplane, each thing with its place in the aeroplane as first described.
struct Answer {
  std::vector<Judgement> judgements;

  explicit Answer(const Project& project, const Placement& back = {}) {
    const PreparedProject prepared = prepare(project);
    judgements = judge(prepared, Phrasing{});
    std::erase_if(judgements, is_of_sides);
    for (Judgement& judgement : judgements)
      if (judgement.at) judgement.at = back.apply(*judgement.at);
  }
};

inline bool near(std::optional<double> a, std::optional<double> b, double within) {
  if (!a || !b) return a.has_value() == b.has_value();
  return std::abs(*a - *b) <= within;
}

/// Of a node's fitting, rather than of a line.
inline bool is_of_a_fitting(const Judgement& judgement) {
  return judgement.message.starts_with("the fitting at ");
}

inline bool said_on_any(const Judgement& judgement) {
  return is_of_a_fitting(judgement) || judgement.rule == "network" ||
         judgement.rule == "control-feel" || judgement.rule == "access";
}

inline bool same_thing(const Judgement& a, const Judgement& b, const Closeness& closeness) {
  if (a.rule != b.rule || a.verdict != b.verdict || a.unit != b.unit) return false;
  if (a.with == b.with && (a.route == b.route || (!closeness.routes && said_on_any(a))))
    return true;
  // Of two holes with sheet between them, that which lies first is named first, on whichever side.
  if (a.rule == "hole-edge" && a.route == b.route) return true;
  // Of two lines that are near each other, either may be named first.
  return a.with_is_route && b.with_is_route && a.route == *b.with && b.route == *a.with;
}

/// What is true of the whole of a line, or of all lines of a system, is said at the start of one.
inline bool of_the_whole(const Judgement& judgement) {
  return judgement.distance_in == 0.0 && !judgement.with;
}

inline bool same_place(const Judgement& a, const Judgement& b) {
  if (!a.at || !b.at) return a.at.has_value() == b.at.has_value();
  if (a.rule == "hole-edge" && a.with != b.with) return true;
  // What is true of a whole bundle is said where it begins, and beside the demo's union, which
  // points along a stringer, every place is as near as the others.
  if (a.rule == "bundle" || is_of_a_fitting(a)) return true;
  return a.route != b.route || (of_the_whole(a) && of_the_whole(b)) ||
         distance(*a.at, *b.at) <= place_in;
}

inline bool alike(const Judgement& a, const Judgement& b, const Closeness& closeness) {
  if (!same_thing(a, b, closeness)) return false;
  if (closeness.places && !same_place(a, b)) return false;
  // A gap changes by no more than its place does.
  const double moved = a.at && b.at ? std::min(place_in, distance(*a.at, *b.at)) : 0;
  return near(a.value, b.value, closeness.values_in + moved) &&
         near(a.margin(), b.margin(), closeness.values_in);
}

inline std::string words(const Judgement& judgement) {
  std::string all =
      fmt::format("{} {}: {} with {}: {}", judgement.rule, static_cast<int>(judgement.verdict),
                  judgement.route, judgement.with.value_or(""), judgement.message);
  if (judgement.value) all += fmt::format(", value {:.9f}", *judgement.value);
  if (judgement.limit) all += fmt::format(", limit {:.9f}", *judgement.limit);
  if (judgement.at)
    all +=
        fmt::format(", at {:.7f} {:.7f} {:.7f}", judgement.at->x, judgement.at->y, judgement.at->z);
  return all;
}

inline void expect_the_same(const Answer& expected, const Answer& found,
                            const Closeness& closeness = {}) {
  std::vector<Judgement> left = found.judgements;
  for (const Judgement& judgement : expected.judgements) {
    const auto like = std::find_if(left.begin(), left.end(), [&](const Judgement& each) {
      return alike(judgement, each, closeness);
    });
    if (like == left.end())
      ADD_FAILURE() << "only as first described: " << words(judgement);
    else
      left.erase(like);
  }
  for (const Judgement& judgement : left)
    ADD_FAILURE() << "only as described otherwise: " << words(judgement);
}

inline Project loaded_from(const std::filesystem::path& file) {
  LoadResult result = load_project(file, built_in_catalogue());
  if (!result.project) throw std::runtime_error(shown(result.errors));
  return std::move(*result.project);
}

inline std::filesystem::path demo_folder() {
  return std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / "routes";
}

}  // namespace linewright
