#pragma once
// What a rule says about one place.

#include <optional>
#include <string>
#include <vector>

#include "model/measurement.hpp"
#include "model/seldom.hpp"
#include "model/source.hpp"
#include "model/vector.hpp"

namespace linewright {

/// `unknown` means that the data to judge is missing; it is never a pass.
enum class Verdict { pass, warn, fail, unknown, waived };

/// What `value` and `limit` are measured in.
enum class Unit { none, inch, cubic_inch, degree, pound_force, foot, second, hertz };

/// Which side of the limit is right.
enum class LimitSense { at_least, at_most };

/// What a waiver accepted.
struct Waived {
  std::string reason;
  Verdict was = Verdict::unknown;

  friend bool operator==(const Waived&, const Waived&) = default;
};

/// One thing judged. Optional members are absent where they have no meaning.
struct Judgement {
  std::string rule;
  Verdict verdict = Verdict::unknown;
  std::string route;                ///< empty only for what concerns no route
  std::optional<std::string> with;  ///< the other thing: a part, hole, node or route
  bool with_is_route = false;
  std::optional<Vec3> at;
  std::optional<double> distance_in;  ///< along the route from its `from` node
  std::optional<double> value;
  std::optional<double> limit;
  Unit unit = Unit::none;
  LimitSense sense = LimitSense::at_least;
  std::string message;  ///< what is wrong, or what was found right, one sentence without a stop
  std::string source;   ///< why: the rule's source, and how far it was checked
  std::string mend;     ///< one thing a person can do; empty for a pass
  SourceLocation location;
  Seldom<Measured> measured = {};  ///< what was measured there on the aeroplane
  Seldom<Waived> waived = {};      ///< set where the verdict is `waived`

  /// The verdict that it was, or would be, without a waiver.
  Verdict unwaived() const { return waived ? waived->was : verdict; }

  /// How far on the right side of the limit; negative where it is broken.
  std::optional<double> margin() const {
    if (!value || !limit) return std::nullopt;
    return sense == LimitSense::at_least ? *value - *limit : *limit - *value;
  }

  friend bool operator==(const Judgement&, const Judgement&) = default;
};

/// True when the first is the graver finding of two that have a limit: by verdict, then by margin.
inline bool graver(const Judgement& first, const Judgement& second) {
  if (first.verdict != second.verdict) return first.verdict > second.verdict;
  return first.margin() < second.margin();
}

}  // namespace linewright
