#pragma once
// Where arms begin: about a person, or in an opening.

#include <vector>

#include "lines/access/standing_parts.hpp"

namespace linewright {

/// Nobody comes in by an opening but as it says itself: all are shut but that of one way, counted
/// from 1 as `ways_in` has it.
void shut_openings(Room& room, const std::vector<OpeningShape>& shapes, std::size_t but_of_way);

/// Where a person stands who walks in from the edge of the body's grid, as lengths of `connected`.
std::vector<float> standing(const Room& for_body);

/// Where a person lies who came in by the opening, and not where one can stand outside.
std::vector<float> crawled(const OpeningShape& shape, const Room& for_body,
                           const std::vector<float>& outside);

/// Cells of the arm's grid within half the width of where a person's middle can be.
std::vector<Start> about_person(const std::vector<float>& person, const Room& for_body,
                                const Room& for_arm, double width_in);

/// Where the arm of an opening begins: in it, or just through its middle on either side.
std::vector<Start> in_opening(const OpeningShape& shape, const Room& for_arm,
                              const StandingParts& parts);

}  // namespace linewright
