#include "planning/loss_words.hpp"

#include <fmt/format.h>

#include <cmath>

namespace linewright {

namespace {

/// What arithmetic may add to a loss that is a whole tenth.
constexpr double rounding = 1e-7;

std::string tenths(double count, const LeakGauge& gauge) {
  return fmt::format("{:.1f} {}", count == 0 ? 0.0 : count / 10, gauge.unit());
}

}  // namespace

std::string loss_words(double loss, const LeakGauge& gauge) {
  return tenths(std::ceil(loss * 10 - rounding), gauge);
}

std::string loss_words_down(double loss, const LeakGauge& gauge) {
  return tenths(std::floor(loss * 10 + rounding), gauge);
}

}  // namespace linewright
