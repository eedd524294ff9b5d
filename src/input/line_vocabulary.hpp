#pragma once
// The words and ranges of a catalogue entry: kinds of line, marks of a source, keys.

#include <fmt/format.h>

#include <array>
#include <string>
#include <string_view>

#include "model/line.hpp"

namespace linewright {

struct KindName {
  std::string_view name;
  LineKind kind;
};

inline constexpr std::array kind_names{
    KindName{"rigid-tube", LineKind::rigid_tube},
    KindName{"plastic-tube", LineKind::plastic_tube},
    KindName{"hose", LineKind::hose},
    KindName{"cable", LineKind::cable},
    KindName{"wire", LineKind::wire},
};

struct MarkName {
  std::string_view name;
  Mark mark;
};

inline constexpr std::array mark_names{
    MarkName{"verified", Mark::verified},
    MarkName{"verified-secondary", Mark::verified_secondary},
    MarkName{"from-memory", Mark::from_memory},
    MarkName{"common-practice", Mark::common_practice},
    MarkName{"calculated", Mark::calculated},
};

/// Which kinds of line a key has a meaning for.
enum class LineScope { all, bored, cables };

struct LineKey {
  std::string_view name;
  LineScope scope;
};

inline constexpr std::array line_keys{
    LineKey{"name", LineScope::all},
    LineKey{"kind", LineScope::all},
    LineKey{"material", LineScope::all},
    LineKey{"construction", LineScope::cables},
    LineKey{"outside", LineScope::all},
    LineKey{"inside", LineScope::bored},
    LineKey{"plus_tolerance", LineScope::all},
    LineKey{"minimum_bend_radius", LineScope::all},
    LineKey{"minimum_inside_bend_radius", LineScope::all},
    LineKey{"usual_bend_radius", LineScope::all},
    LineKey{"support_spacing", LineScope::all},
    LineKey{"weight", LineScope::all},
    LineKey{"youngs_modulus", LineScope::bored},
    LineKey{"expansion", LineScope::all},
    LineKey{"slack", LineScope::all},
    LineKey{"breaking_strength", LineScope::cables},
    LineKey{"axial_stiffness", LineScope::cables},
    LineKey{"cut_allowance", LineScope::all},
    LineKey{"source", LineScope::all},
};

/// Which numbers make sense for a key; the upper ends catch per cents and millionths.
enum class LineRange { positive, not_negative, slack, expansion };

inline constexpr double largest_slack = 0.2;
inline constexpr double largest_expansion_per_degf = 1e-3;

constexpr bool has_bore(LineKind kind) {
  return kind == LineKind::rigid_tube || kind == LineKind::plastic_tube || kind == LineKind::hose;
}

constexpr bool applies(LineScope scope, LineKind kind) {
  switch (scope) {
    case LineScope::all:
      return true;
    case LineScope::bored:
      return has_bore(kind);
    case LineScope::cables:
      return kind == LineKind::cable;
  }
  return false;
}

/// The kinds that a narrower scope names, in words.
constexpr std::string_view scope_words(LineScope scope) {
  return scope == LineScope::cables ? "cables" : "tubes and hoses";
}

/// What is trimmed off both ends together once the line is in place. Common practice; hoses and
/// cables are made up to length with their fittings.
constexpr double usual_cut_allowance_in(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
    case LineKind::plastic_tube:
      return 1.0;
    case LineKind::wire:
      return 6.0;
    case LineKind::hose:
    case LineKind::cable:
      return 0.0;
  }
  return 0.0;
}

/// What is wrong with `value` for a key of this range; empty where nothing is.
inline std::string out_of_range(LineRange range, double value) {
  switch (range) {
    case LineRange::positive:
      return value > 0 ? "" : "must be greater than zero";
    case LineRange::not_negative:
      return value >= 0 ? "" : "must not be negative";
    case LineRange::slack:
      return value >= 0 && value <= largest_slack
                 ? ""
                 : fmt::format("must be a fraction of the length from 0 to {}", largest_slack);
    case LineRange::expansion:
      return value > 0 && value <= largest_expansion_per_degf
                 ? ""
                 : fmt::format("must be per degree Fahrenheit, above 0 and at most {}",
                               largest_expansion_per_degf);
  }
  return "";
}

}  // namespace linewright
