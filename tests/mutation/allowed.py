"""Figures that no test could hold to 2 %, each with its reason."""

ALLOWED = {
    ("src/physics/airspeed.cpp", "sonic_mach"): "how near to the speed of sound counts as at it",
    ("src/physics/drainage.cpp", "infinity"): "so many times infinity is infinity",
    ("src/physics/drainage.hpp", "least_pool_depth_in"): "a depth that counts as none",
}
