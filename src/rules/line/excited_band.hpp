#pragma once
// The frequencies that a propeller shakes at while it cruises, and how a span can be kept out of
// them.

#include <functional>
#include <optional>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// Frequencies from one edge to the other; the edges themselves are outside.
struct ExcitedBand {
  double low_hz = 0;
  double high_hz = 0;
};

/// The bands that the first and the blade order sweep over the cruise speeds, widened on both sides
/// by this share; bands that touch are one. Rising. None where no cruise band is stated.
std::vector<ExcitedBand> excited_bands(const Excitation& excitation, double widened_by);

/// The band that the frequency lies in, or nullptr.
const ExcitedBand* band_around(const std::vector<ExcitedBand>& bands, double frequency_hz);

/// Whole pounds of tension nearest to `tension_lbf`, within the two limits, at which none of the
/// frequencies, which go with the square root of the tension, lies in a band.
std::optional<double> tension_out_of_bands(const std::vector<ExcitedBand>& bands,
                                           const std::vector<double>& frequencies_hz,
                                           double tension_lbf, double lowest_lbf,
                                           double highest_lbf);

/// A range of places.
struct PlaceRange {
  double first_in = 0;
  double last_in = 0;
};

/// The longest range of multiples of `step_in`, between two places, that all hold.
std::optional<PlaceRange> longest_range(double low_in, double high_in, double step_in,
                                        const std::function<bool(double)>& holds);

}  // namespace linewright
