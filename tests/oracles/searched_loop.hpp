#pragma once
// A closed loop of two cables, found by turning its lever a little at a time: each cable carries
// what its stretch asks for and never pushes, and the airframe shortens by what both pull.

#include <algorithm>

#include "physics/cable.hpp"

namespace linewright {

struct SearchedLoop {
  double pulled_lbf = 0;
  double other_lbf = 0;
  double other_slack_in = 0;
};

/// The loop with its lever turned by `turned_in` along the cables, before any balance of the lever.
inline SearchedLoop turned_loop(const LoopedCable& pulled, const LoopedCable& other,
                                double turned_in, double give_in_per_lbf) {
  const auto longer_by = [](const LoopedCable& cable, double in) {
    return cable.tension_lbf / cable.stiffness_lbf_per_in - cable.slack_in + in;
  };
  const auto pull = [](const LoopedCable& cable, double stretch_in) {
    return cable.stiffness_lbf_per_in * std::max(0.0, stretch_in);
  };
  // How far the airframe shortens: what it shortens by falls as it does, so halving finds it.
  double low = -10;
  double high = 10;
  for (int i = 0; i < 100; ++i) {
    const double shorter = (low + high) / 2;
    const double both = pull(pulled, longer_by(pulled, turned_in - shorter)) +
                        pull(other, longer_by(other, -turned_in - shorter));
    const double asked = give_in_per_lbf * (both - pulled.tension_lbf - other.tension_lbf);
    (asked > shorter ? low : high) = shorter;
  }
  const double other_stretch = longer_by(other, -turned_in - low);
  return {pull(pulled, longer_by(pulled, turned_in - low)), pull(other, other_stretch),
          std::max(0.0, -other_stretch)};
}

/// The lever turned until what the cables pull differs by `pull_lbf`.
inline SearchedLoop searched_loop(const LoopedCable& pulled, const LoopedCable& other,
                                  double pull_lbf, double give_in_per_lbf) {
  double low = -10;
  double high = 10;
  for (int i = 0; i < 100; ++i) {
    const double turned = (low + high) / 2;
    const SearchedLoop loop = turned_loop(pulled, other, turned, give_in_per_lbf);
    (loop.pulled_lbf - loop.other_lbf < pull_lbf ? low : high) = turned;
  }
  return turned_loop(pulled, other, high, give_in_per_lbf);
}

}  // namespace linewright
