#pragma once

#include "planning/leak_test_plan.hpp"

namespace linewright {

/// Where to connect the test set to a system, and what to seal. The first static port, or the
/// probe, is best; failing that a drain, an open end or a tee.
TestConnection test_connection(const AirSystem& system);

}  // namespace linewright
