#pragma once
// The exponential return of a leaking system, fitted to readings with noise and the odd slip.

#include <optional>
#include <vector>

namespace linewright {

/// One reading as the pressure across the leak, temperature already taken out, and how far that
/// correction moved it.
struct DecaySample {
  double time_s = 0;
  double differential_pa = 0;
  double temperature_pa = 0;  ///< taken off for temperature; 0 where none is logged
};

/// D(t) = D0 exp(-k t), t from the first reading.
struct DecayFit {
  double start_s = 0;
  double initial_pa = 0;
  double rate_per_s = 0;        ///< k = 1 / tau; below zero where the readings move away
  double rate_error_per_s = 0;  ///< standard error
  double noise_pa = 0;          ///< standard deviation of a reading about the curve

  double differential_pa(double time_s) const;
};

/// Robust least squares: slips far outside the noise count in proportion to their distance, not to
/// its square. Nothing for fewer than three samples, or where no curve can be fitted.
std::optional<DecayFit> fit_decay(const std::vector<DecaySample>& samples);

/// The factor t for which a normal variable lies within t standard errors, estimated with so many
/// degrees of freedom, in 95 of 100 cases: Student's distribution, two-sided. For three degrees and
/// more, within 1 %; with fewer it answers that of three.
double student_factor_95(int degrees_of_freedom);

}  // namespace linewright
