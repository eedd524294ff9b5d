#pragma once
// What a control cable ends in, how its turnbuckles adjust, and what the pilot pulls it with.

#include <optional>

#include "model/source.hpp"

namespace linewright {

/// `swaged`: a fork, eye, ball or stud that the cable is pressed into. `thimble`: the cable goes
/// round an eye and back through a sleeve or a splice.
enum class CableEndKind { swaged, thimble };

/// What an end of a cable lets it do on the part it pulls: nothing, turn about a pin, or turn any
/// way.
enum class EndJoint { fixed, pin, ball };

/// What the pilot works an elevator or ailerons with.
enum class ControlGrip { stick, wheel };

/// How one end of a cable takes hold of a node or of a turnbuckle.
struct CableEnd {
  CableEndKind kind = CableEndKind::swaged;
  /// From the middle of the node's pin, or from the turnbuckle's end, to where the cable comes out.
  double takes_up_in = 0;
  /// Cable beyond that place: what goes into a swaged terminal, or round a thimble and back.
  double inside_in = 0;
  SourceLocation where;
  std::optional<EndJoint> joint = {};  ///< at the node, or at the turnbuckle

  friend bool operator==(const CableEnd&, const CableEnd&) = default;
};

struct CableEnds {
  std::optional<CableEnd> from;
  std::optional<CableEnd> to;

  friend bool operator==(const CableEnds&, const CableEnds&) = default;
};

/// A turnbuckle's length, measured as its attachment's is, screwed all the way in and as far out
/// as its threads allow.
struct Adjustment {
  double shortest_in = 0;
  double longest_in = 0;

  double middle_in() const { return (shortest_in + longest_in) / 2; }
  /// What is left from the middle, in and out alike.
  double each_way_in() const { return (longest_in - shortest_in) / 2; }

  friend bool operator==(const Adjustment&, const Adjustment&) = default;
};

/// The pilot's end of a control: the pull on its cable for each pound at stick, wheel or pedal.
struct ControlLever {
  double ratio = 1;
  std::optional<double> pilot_force_lbf;  ///< where the builder states one
  SourceLocation where;
  bool two_pilots = false;  ///< the project has dual controls, which both can pull at once
  std::optional<double> weight_lbf = {};  ///< of the aeroplane, where the project states it

  friend bool operator==(const ControlLever&, const ControlLever&) = default;
};

}  // namespace linewright
