#pragma once

#include "planning/leak_test_plan.hpp"

namespace linewright {

/// Where to connect the test set to a system, and what to seal. The first static port, or the
/// probe, is best; failing that a drain, an open end or a tee.
TestConnection test_connection(const AirSystem& system);

/// The same for a part of a system, with the test set where it was asked for.
TestConnection part_connection(const AirPart& part);

}  // namespace linewright
