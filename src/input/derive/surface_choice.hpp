#pragma once
// Which face of a part a support stands on, and how far the line is off it.

#include <optional>
#include <string>
#include <vector>

#include "input/derive/derivation.hpp"

namespace linewright {

/// The place that `on` and what goes with it say. `beside`: what the line comes from and goes to,
/// which tells the side where it is not stated. Nothing after an error. `off_in` is taken where the
/// map states none; nothing: it has to. `note` becomes where the place came from.
std::optional<Vec3> place_on_part(const YamlNode& map, BareLength bare,
                                  const std::vector<Vec3>& beside, std::optional<double> off_in,
                                  Derivation& derivation, std::string& note);

/// How far a clamp holds the middle of the route's line off what it stands on; nothing for another
/// support, or where the line is not known.
std::optional<double> clamp_height_in(const ProjectItem& route, const YamlNode& point,
                                      Derivation& derivation);

}  // namespace linewright
