#pragma once
// How a cable's tension changes with temperature in its own airframe: rigid, or giving as the
// project states.

#include <optional>
#include <string>

#include "lines/prepared.hpp"

namespace linewright {

/// True for two cables of one control.
bool work_together(const PreparedRoute& route, const PreparedRoute& other);

struct TensionChange {
  double slope_lbf_per_degf = 0;
  double slack_in_per_lbf = 0;  ///< what is left over of the cable for each pound below none
};

/// Of an aluminium airframe and a cable by its line's stretch and expansion; nothing where one of
/// them is not known. Where the airframe gives, cables of one control whose figures are known
/// shorten it together.
std::optional<TensionChange> tension_change(const PreparedProject& prepared,
                                            const PreparedRoute& route);

/// The stiffness that holds for the route: its own, else the project's; nothing for rigid.
std::optional<double> airframe_stiffness_lbf_per_in(const PreparedProject& prepared,
                                                    const PreparedRoute& route);

/// "in a rigid airframe" or "in an airframe of 1200 lbf/in".
std::string airframe_words(const PreparedProject& prepared, const PreparedRoute& route);

}  // namespace linewright
