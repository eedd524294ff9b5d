#pragma once

#include <string>

#include "planning/leak_gauge.hpp"

namespace linewright {

/// A loss in words, "100.1 ft", rounded up to a tenth so that a loss over its limit never looks
/// like one within.
std::string loss_words(double loss, const LeakGauge& gauge);
/// The same rounded down: for what was lost at least.
std::string loss_words_down(double loss, const LeakGauge& gauge);

}  // namespace linewright
