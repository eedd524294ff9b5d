#include "rules/line/excited_band.hpp"

#include <algorithm>
#include <cmath>

#include "rules/limit.hpp"

namespace linewright {

std::vector<ExcitedBand> excited_bands(const Excitation& excitation, double widened_by) {
  if (!excitation.cruise) return {};
  const double low = excitation.cruise->low_rpm * (1 - widened_by) / 60;
  const double high = excitation.cruise->high_rpm * (1 + widened_by) / 60;
  const double blades = excitation.blades;
  if (high >= low * blades) return {{low, high * blades}};
  return {{low, high}, {low * blades, high * blades}};
}

const ExcitedBand* band_around(const std::vector<ExcitedBand>& bands, double frequency_hz) {
  for (const ExcitedBand& band : bands)
    if (frequency_hz > band.low_hz + limit_rounding && frequency_hz < band.high_hz - limit_rounding)
      return &band;
  return nullptr;
}

std::optional<double> tension_out_of_bands(const std::vector<ExcitedBand>& bands,
                                           const std::vector<double>& frequencies_hz,
                                           double tension_lbf, double lowest_lbf,
                                           double highest_lbf) {
  std::optional<double> nearest;
  for (double tension = std::max(1.0, std::ceil(lowest_lbf)); tension <= highest_lbf; ++tension) {
    const double factor = std::sqrt(tension / tension_lbf);
    const bool out = std::none_of(
        frequencies_hz.begin(), frequencies_hz.end(),
        [&](double frequency_hz) { return band_around(bands, frequency_hz * factor); });
    if (out && (!nearest || std::abs(tension - tension_lbf) < std::abs(*nearest - tension_lbf)))
      nearest = tension;
  }
  return nearest;
}

std::optional<PlaceRange> longest_range(double low_in, double high_in, double step_in,
                                        const std::function<bool(double)>& holds) {
  std::optional<PlaceRange> longest;
  std::optional<PlaceRange> current;
  const double last = std::floor(high_in / step_in);
  for (double step = std::ceil(low_in / step_in); step <= last; ++step) {
    const double at = step * step_in;
    if (!holds(at)) {
      current.reset();
      continue;
    }
    current = PlaceRange{current ? current->first_in : at, at};
    if (!longest || current->last_in - current->first_in > longest->last_in - longest->first_in)
      longest = current;
  }
  return longest;
}

}  // namespace linewright
