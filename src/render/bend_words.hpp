#pragma once
// How a bend schedule is read at the bench, in the words that every format gives.

#include <string_view>

namespace linewright {

/// The bender stands still: what is turned is the end that is already bent, so the hand points at
/// that end. By the other hand the line comes out as its mirror image.
inline constexpr std::string_view rotation_words =
    "Rotation: the line goes through the bender with its first node ahead, and all bends are made "
    "to the same side. Before the bend, turn the whole line about itself by this angle, by the "
    "right-hand rule with the thumb toward the first node, where it is already bent: seen from "
    "that end, counter-clockwise where the angle is positive.";

}  // namespace linewright
